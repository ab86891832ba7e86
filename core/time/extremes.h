#pragma once
// Which instants of a run show how far its figures went: the current of each lead and the voltages between the leads of each part. What is
// over within a microsecond, such as the charge of the metal, harms nothing and doesn't count.
// Thread rule: one thread at a time.

#include "core/nets/layout.h"
#include "core/time/settled.h"

#include <memory>
#include <vector>

namespace tiepoint {

class Extremes {
public:
    explicit Extremes(const Layout& layout);

    /// `second`: from the beginning; `seconds`: how long it held.
    void add(const Solution& solution, double second, double seconds, bool lasting);
    /// The fewest instants that show each figure about as far as it went, where that is further than what lasts.
    std::vector<Extreme> chosen(const Solution& lasting) const;

private:
    struct Figure {
        int lead = -1, other = -1;  ///< the current of a lead, or the voltage from it to another
    };
    struct Instant {
        double second = 0;
        Solution solution;
    };
    struct Record {
        double most = 0;  ///< times its side
        std::shared_ptr<const Instant> at;
    };

    double read(const Figure& figure, const Solution& solution) const;

    const Layout& layout_;
    std::vector<Figure> figures_;
    std::vector<double> before_, held_;  ///< by figure: at the last instant; what held
    std::vector<Record> way_, lasting_;  ///< by figure and side: least, greatest
};

}  // namespace tiepoint
