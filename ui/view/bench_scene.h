#pragma once
// The scene: an item for each part and jumper of the picture's bench, found by id.

#include "ui/view/bench_item.h"

#include <QGraphicsScene>

#include <map>
#include <string>
#include <vector>

namespace tiepoint::ui {

class BenchScene : public QGraphicsScene {
public:
    explicit BenchScene(const Picture& picture, QObject* parent = nullptr);

    /// Brings the items in line with the picture's bench. `restyled`: every look changed (theme).
    void follow(bool restyled = false);
    /// Shows these things pale, and all others fully.
    void setPale(const std::vector<std::string>& ids);

    /// The resting looks of all parts, and of the jumpers over them.
    void addItems(Patches& patches) const;
    /// Goes up whenever one of these looks changed.
    std::uint64_t changes() const { return changes_; }

private:
    BenchItem& itemOf(const std::string& id, bool jumper);

    struct Entry {
        BenchItem* item;  ///< the scene's
        bool jumper;
        bool alive;
    };
    const Picture& picture_;
    std::uint64_t changes_ = 0;
    std::map<std::string, Entry, std::less<>> items_;
};

}  // namespace tiepoint::ui
