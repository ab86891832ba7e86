#pragma once
// The strips that hang together with a part by parts and jumpers, as far as the next rail or supply; a meter that only looks on joins
// nothing. What a circuit does depends on them and on the rails, but not on what else is fed from the same rails. Keeps a reference to
// the layout; safe from any thread.

#include "core/nets/layout.h"

#include <vector>

namespace tiepoint {

class Neighbourhood {
public:
    Neighbourhood(const Layout& layout, int part);

    /// Whether a thing with its ends in these holes belongs to it: an end lies in one of its strips, or it ties only rails and supplies.
    bool concerns(const std::vector<Hole>& holes) const;
    bool holds(const Hole& hole) const;

private:
    void markHubs();
    void reach(int part);
    bool isHub(const Hole& hole) const;

    const Layout& layout_;
    std::vector<char> hub_, near_;  ///< by strip
};

}  // namespace tiepoint
