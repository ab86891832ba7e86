#include "ui/view/bench_scene.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kPale = 0.25;

}  // namespace

BenchScene::BenchScene(const Picture& picture, QObject* parent) : QGraphicsScene(parent), picture_(picture) {
    setItemIndexMethod(NoIndex);  // all items are usually in sight, and none is looked up by place
}

BenchItem& BenchScene::itemOf(const std::string& id, bool jumper) {
    auto found = items_.find(id);
    if (found != items_.end() && found->second.jumper != jumper) {
        delete found->second.item;
        items_.erase(found);
        found = items_.end();
    }
    if (found == items_.end()) {
        auto* item = new BenchItem(picture_);
        item->setZValue(jumper ? 1 : 0);
        found = items_.emplace(id, Entry{item, jumper, true}).first;
        addItem(item);
    }
    found->second.alive = true;
    return *found->second.item;
}

void BenchScene::follow(bool restyled) {
    ++changes_;
    for (auto& [id, entry] : items_) entry.alive = false;
    const Bench& bench = picture_.bench();
    for (std::size_t i = 0; i < bench.parts.size(); ++i)
        itemOf(bench.parts[i].id, false).followPart(static_cast<int>(i), restyled);
    for (std::size_t i = 0; i < bench.jumpers.size(); ++i)
        itemOf(bench.jumpers[i].id, true).followJumper(static_cast<int>(i), restyled);
    for (auto it = items_.begin(); it != items_.end();) {
        if (!it->second.alive) {
            delete it->second.item;
            it = items_.erase(it);
        } else {
            ++it;
        }
    }
}

void BenchScene::setPale(const std::vector<std::string>& ids) {
    ++changes_;
    for (auto& [id, entry] : items_) {
        const bool pale = std::find(ids.begin(), ids.end(), id) != ids.end();
        entry.item->setOpacity(pale ? kPale : 1);
    }
}

void BenchScene::addItems(Patches& patches) const {
    const Bench& bench = picture_.bench();
    for (const Part& part : bench.parts) items_.find(part.id)->second.item->addPatch(patches);
    for (const Jumper& jumper : bench.jumpers) items_.find(jumper.id)->second.item->addPatch(patches);
}

}  // namespace tiepoint::ui
