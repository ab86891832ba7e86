#include "ui/scene/bench_scene.h"

#include "ui/scene/board_item.h"
#include "ui/scene/jumper_item.h"
#include "ui/scene/part_item.h"
#include "ui/scene/slip_items.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kPale = 0.25;

}  // namespace

BenchScene::BenchScene(const Picture& picture, QObject* parent) : QGraphicsScene(parent), picture_(picture) {
    setItemIndexMethod(NoIndex);  // an index of places would be put in order again at every edit
}

/// Keeps the item of each thing that is still there.
template <class Item, class Things>
void BenchScene::followKind(Kind kind, const Things& things, bool restyled) {
    auto& byId = byId_[static_cast<std::size_t>(kind)];
    auto before = std::exchange(byId, {});
    listOf(kind).clear();
    for (int index = 0; index < static_cast<int>(things.size()); ++index) {
        const std::string& id = things[static_cast<std::size_t>(index)].id;
        auto found = before.extract(id);
        BenchItem* item = found ? found.mapped() : new Item(picture_, id);
        item->follow(index, restyled);
        if (!found) addItem(item);
        listOf(kind).push_back(item);
        byId.emplace(id, item);
    }
    for (const auto& [id, item] : before) delete item;
}

void BenchScene::follow(bool restyled) {
    const Bench& bench = picture_.bench();
    followKind<BoardItem>(Kind::Board, bench.boards, restyled);
    followKind<PartItem>(Kind::Part, bench.parts, restyled);
    followKind<JumperItem>(Kind::Jumper, bench.jumpers, restyled);
    followKind<NoteItem>(Kind::Note, bench.notes, restyled);
    followTags();
}

void BenchScene::followTags() {
    static const std::vector<PinnedTag> kNone;
    followKind<TagItem>(Kind::Tag, picture_.pinned ? *picture_.pinned : kNone, false);
}

void BenchScene::setPale(const std::vector<std::string>& ids) {
    for (const Kind kind : {Kind::Part, Kind::Jumper}) {
        for (BenchItem* item : listOf(kind))
            item->setOpacity(std::find(ids.begin(), ids.end(), item->id()) == ids.end() ? 1 : kPale);
    }
}

Under BenchScene::under(Point at) const {
    Under under;
    for (const QGraphicsItem* item : items(QPointF(at.x, at.y), Qt::IntersectsItemShape, Qt::DescendingOrder)) {
        if (static_cast<const BenchItem*>(item)->meet(at, under)) break;
    }
    return under;
}

std::vector<std::string> BenchScene::touchedBy(const QRectF& band) const {
    std::vector<std::string> ids;
    for (const Kind kind : {Kind::Part, Kind::Jumper}) {
        for (const BenchItem* item : listOf(kind)) {
            if (item->boundingRect().intersects(band) && item->isTouched(band)) ids.push_back(item->id());
        }
    }
    return ids;
}

void BenchScene::addKind(Patches& patches, Kind kind) const {
    for (const BenchItem* item : listOf(kind)) item->addPatches(patches);
}

void BenchScene::addItems(Patches& patches) const {
    addKind(patches, Kind::Part);
    addKind(patches, Kind::Jumper);
}

}  // namespace tiepoint::ui
