#pragma once
// The table as a graphics scene: an item for each board, part, jumper, note and tag of the picture's bench, found by id and by place. What
// lies under a place is asked of it, and the canvas draws what its items say. It derives from the document: its boards are the grid of
// holes, strips and rails, which union-find joins into nets; these go to the solver. Belongs to the window's thread.

#include "ui/scene/bench_item.h"

#include <QGraphicsScene>

#include <array>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace tiepoint::ui {

class BenchScene : public QGraphicsScene {
public:
    /// The picture must outlive it.
    explicit BenchScene(const Picture& picture, QObject* parent = nullptr);

    /// The nets of a bench, from the grid of its boards: union-find over their strips and rails, see core/nets.
    static std::shared_ptr<const Layout> deriveNets(std::shared_ptr<const Bench> bench) {
        return buildLayout(std::move(bench));
    }

    /// Brings the items in line with the picture's bench. `restyled`: every look changed (theme).
    void follow(bool restyled = false);
    /// The same for the tags alone, whose places follow the snapshot.
    void followTags();
    /// Shows these things pale, and all others fully.
    void setPale(const std::vector<std::string>& ids);

    /// What lies under a place of the bench.
    Under under(Point at) const;
    /// Ids of the parts and jumpers that a rubber band takes, in the order of the bench.
    std::vector<std::string> touchedBy(const QRectF& band) const;

    /// The looks of all boards at rest.
    void addBoards(Patches& patches) const { addKind(patches, Kind::Board); }
    /// The resting looks of all parts, and of the jumpers over them.
    void addItems(Patches& patches) const;

private:
    enum class Kind { Board, Part, Jumper, Note, Tag };
    static constexpr std::size_t kKinds = 5;
    /// By the order of their list.
    using Items = std::vector<BenchItem*>;

    template <class Item, class Things>
    void followKind(Kind kind, const Things& things, bool restyled);
    void addKind(Patches& patches, Kind kind) const;
    Items& listOf(Kind kind) { return items_[static_cast<std::size_t>(kind)]; }
    const Items& listOf(Kind kind) const { return items_[static_cast<std::size_t>(kind)]; }

    const Picture& picture_;
    std::array<Items, kKinds> items_;  ///< the scene's
    std::array<std::map<std::string, BenchItem*, std::less<>>, kKinds> byId_;
};

}  // namespace tiepoint::ui
