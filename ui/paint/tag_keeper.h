#pragma once
// Places the tags of a picture: its pinned readings and, where they are shown, the volts of its nets. Remembers where they stood, so that a
// tag stays there while it can. What is dear is found once for a bench; a figure that changes costs a comparison. Belongs to one thread.

#include "ui/paint/picture.h"
#include "ui/paint/tag_ground.h"

#include <optional>

namespace tiepoint::ui {

class TagKeeper {
public:
    /// Gives the picture its tags; none of nets where it isn't live.
    void arrange(Picture& picture);

private:
    struct Wishes {
        std::vector<TagWish> wishes;    ///< pinned ones first
        std::vector<PinnedTag> pinned;  ///< by wish, not placed yet
        std::vector<NetTag> nets;       ///< the same for the others
    };
    void followGround(const Picture& picture);
    Wishes wishesOf(const Picture& picture) const;
    void addHung(Wishes& all, const Picture& picture) const;
    void addPinned(Wishes& all, const Picture& picture) const;
    void addNets(Wishes& all, const Picture& picture) const;
    std::optional<TagPlace> before(const std::vector<TagFoot>& feet) const;
    void follow(Wishes& all);

    std::shared_ptr<const Layout> layout_;
    std::shared_ptr<const Table> table_;
    WordSizes sizes_;
    std::shared_ptr<const TagGround> ground_;
    std::vector<TagPlace> stood_;                ///< all that are placed
    std::vector<std::pair<double, int>> asked_;  ///< width and rank of each wish that they were placed for
    std::vector<std::optional<TagPlace>> places_;
};

}  // namespace tiepoint::ui
