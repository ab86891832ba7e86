#include "ui/gesture/place_gesture.h"

#include "core/bench/resolve.h"
#include "core/edit/boxes.h"
#include "core/edit/copies.h"
#include "core/edit/placement.h"
#include "ui/gesture/selecting.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kReachMm = 2.5;
constexpr const char* kOverHoles = "let go over holes";

Point turnedQuarters(Point p, int quarterTurns) {
    for (int i = 0; i < ((quarterTurns % 4) + 4) % 4; ++i) p = {-p.y, p.x};
    return p;
}

/// From the middle of the body to the tip of the first lead, unturned.
Point firstLeadFromMiddle(const Package& package) {
    if (package.reach == Reach::Bending) return {-package.defaultSpan * kPitchMm / 2, 0};
    std::vector<std::optional<Point>> tips;
    for (const Point leg : package.footprint) tips.emplace_back(leg * kPitchMm);
    const auto pose = poseOf(package, tips);
    return pose ? *tips.front() - pose->centre : Point{};
}

/// "resistance=330".
void applySetting(Part& part, const QString& preset) {
    const auto equals = preset.indexOf(QLatin1Char('='));
    const int index = part.kind->valueIndex(preset.left(equals).toStdString());
    if (equals < 0 || index < 0) return;
    const ValueSpec& spec = part.kind->values[static_cast<std::size_t>(index)];
    const QString figure = preset.mid(equals + 1);
    if (spec.type != ValueType::Choice) {
        part.values[static_cast<std::size_t>(index)] = figure.toDouble();
        return;
    }
    const auto choice = std::find_if(spec.choices.begin(), spec.choices.end(),
                                     [&](const Choice& c) { return QString::fromStdString(c.name) == figure; });
    if (choice != spec.choices.end())
        part.values[static_cast<std::size_t>(index)] = static_cast<double>(choice - spec.choices.begin());
}

void applyPreset(Part& part, const QString& preset) {
    for (const QString& setting : preset.split(QLatin1Char(';'))) applySetting(part, setting);
}

}  // namespace

Part PlaceGesture::fresh(const Bench& bench, const PartKind& kind, const QString& preset) {
    Part part = makePart(kind, freeId(bench, kind.prefix));
    applyPreset(part, preset);
    if (kind.hasCap) part.cap = freeCapLetter(bench);
    return part;
}

PlaceGesture::Aim PlaceGesture::aim(Point at) const {
    const Package& package = packageOf(part_);
    const auto anchor =
        nearestHole(bench(), at + turnedQuarters(firstLeadFromMiddle(package), quarterTurns_), kReachMm);
    if (!anchor) return {std::nullopt, kOverHoles};
    Aim aim{placedAt(bench(), part_, *anchor, quarterTurns_), {}};
    if (const auto why = refusal(bench(), *aim.part)) aim.refused = *why;
    return aim;
}

/// A box stands where it is let go, if nothing is there; over a board or another box it finds its place beside the boards.
Part PlaceGesture::standing(Point at) const {
    const Package& package = packageOf(part_);
    const Point landing = boxLandsAt(at - Point{package.bodyLengthMm / 2, package.bodyWidthMm / 2});
    Bench with = bench();
    with.parts.push_back(part_);
    Part box = part_;
    if (moveBoxEdit(with, part_.id, landing)) box.at = landing;
    return box;
}

Point PlaceGesture::handleFor(Point hole) const {
    return hole - turnedQuarters(firstLeadFromMiddle(packageOf(part_)), quarterTurns_);
}

void PlaceGesture::move(const Pointer& pointer) {
    Marks& marks = hand().marks();
    hand().clearMarks();
    if (part_.kind->package->reach == Reach::Flying) {
        hand().setAtPointer(part_, std::nullopt);
        const bool here = standing(pointer.at).at.has_value();
        const bool atRight = part_.kind->package->rightOfBoards;
        marks.say = here      ? "stands here"
                    : atRight ? "stands at the right of the boards"
                              : "stands at the left of the boards";
        marks.sayAt = pointer.at;
        return hand().showMarks();
    }
    const Aim aimed = aim(pointer.at);
    hand().setAtPointer(aimed.part ? std::nullopt : std::optional(part_), std::nullopt);
    marks.carried = aimed.part;
    if (aimed.part) {
        for (const auto& lead : aimed.part->leads) {
            if (lead) marks.targets.push_back(*lead);
        }
        marks.refused = !aimed.refused.empty();
    }
    marks.say = aimed.refused;
    marks.sayAt = pointer.at;
    hand().lightNets(netsOf(hand().picture(), marks.targets));
    hand().showMarks();
}

bool PlaceGesture::key(int key, const Pointer& pointer) {
    if (key != Qt::Key_BracketLeft && key != Qt::Key_BracketRight) return false;
    quarterTurns_ += key == Qt::Key_BracketRight ? 1 : -1;
    move(pointer);
    return true;
}

void PlaceGesture::release(const Pointer& pointer) {
    const bool flying = part_.kind->package->reach == Reach::Flying;
    const Aim aimed = flying ? Aim{standing(pointer.at), {}} : aim(pointer.at);
    cancel();
    finish();
    if (!aimed.refused.empty()) return hand().flash(aimed.refused, pointer.at);
    if (const auto why = hand().document().push({"Place " + part_.id, {AddPart{*aimed.part}}}))
        return hand().flash(why->toStdString(), pointer.at);
    hand().setSelection({QString::fromStdString(part_.id)});
}

void PlaceGesture::cancel() {
    hand().clearMarks();
    hand().setAtPointer(std::nullopt, std::nullopt);
}

}  // namespace tiepoint::ui
