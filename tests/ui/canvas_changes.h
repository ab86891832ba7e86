#pragma once
// Every kind of change that a picture may go through, each drawn at random.

#include "canvas_stage.h"
#include "core/bench/pinned.h"
#include "core/edit/edit.h"
#include "core/findings/finding.h"
#include "core/snapshot/changes.h"

#include <functional>
#include <iterator>

namespace tiepoint::ui {

class Chance {
public:
    explicit Chance(unsigned seed) : random_(seed) {}
    int upTo(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
    bool coin() { return upTo(2) != 0; }
    double within(double low, double high) { return low + (high - low) * upTo(10'000) / 10'000.0; }
    template <class Range>
    const auto& of(const Range& range) {
        return *std::next(std::begin(range), upTo(static_cast<int>(std::size(range))));
    }
    /// A place about the boards, off every grid.
    Point place() { return {within(-5, 90), within(-5, 60)}; }
    Hole hole() {
        constexpr Line kLines[] = {Line::A, Line::C, Line::E, Line::G, Line::J, Line::TopPlus, Line::BottomMinus};
        return {"A", of(kLines), 1 + upTo(25)};
    }

private:
    std::mt19937 random_;
};

struct PictureChange {
    const char* name;
    std::function<void(CanvasStage&, Chance&)> change;
};

/// Moves the end of a jumper that lies in the bottom rail.
inline Bench withJumperMoved(Bench bench, int column) {
    for (Jumper& jumper : bench.jumpers) {
        if (jumper.id == "W2") jumper.ends[1] = Hole{"A", Line::BottomMinus, column};
    }
    return bench;
}

inline Finding findingAt(Chance& chance) {
    Finding finding;
    finding.severity = static_cast<Severity>(chance.upTo(3));
    if (chance.upTo(4)) finding.rule = "some-rule";
    finding.text = "Something is there.";
    if (chance.coin()) finding.parts = {chance.coin() ? "D1" : "W1", "R1"};
    finding.holes = {chance.hole(), chance.hole()};
    if (finding.parts.empty()) finding.alongMetal = chance.coin();
    if (finding.alongMetal) finding.holes = {test::holeAt("A.top+7"), test::holeAt("A.a8"), test::holeAt("A.c8")};
    if (finding.alongMetal) finding.parts = {"W1"};
    return finding;
}

inline const std::vector<PictureChange>& pictureChanges() {
    static const std::vector<PictureChange> kChanges{
        {"press",
         [](CanvasStage& stage, Chance& chance) {
             const char* button = chance.coin() ? "S1" : "S2";
             if (!stage.inputs.held.erase(button)) stage.inputs.held.insert(button);
             stage.solve();
         }},
        {"press with what it changed",
         [](CanvasStage& stage, Chance& chance) {
             const auto before = stage.picture.snapshot;
             if (!stage.inputs.held.erase("S1")) stage.inputs.held.insert("S1");
             stage.solve();
             auto changes = compareSnapshots(*before, *stage.picture.snapshot);
             stage.picture.changes =
                 chance.upTo(3) ? std::make_shared<const std::vector<Change>>(std::move(changes)) : nullptr;
         }},
        {"edit",
         [](CanvasStage& stage, Chance& chance) { stage.edit(withJumperMoved(stage.bench(), 14 + chance.upTo(8))); }},
        {"a value",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             bench.parts[static_cast<std::size_t>(bench.partIndex("R1"))].values[0] = chance.coin() ? 330 : 100;
             stage.edit(std::move(bench));
         }},
        {"the supply's lever",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             Part& supply = bench.parts[static_cast<std::size_t>(bench.partIndex("PS1"))];
             supply.state[static_cast<std::size_t>(supply.kind->stateIndex("on"))] = chance.upTo(4) ? 1 : 0;
             stage.edit(std::move(bench));
         }},
        {"the meter's dial",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             bench.parts[static_cast<std::size_t>(bench.partIndex("M1"))].state[0] = chance.upTo(5);
             stage.edit(std::move(bench));
         }},
        {"order of parts",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             std::swap(bench.jumpers[static_cast<std::size_t>(chance.upTo(3))], bench.jumpers[1]);
             std::swap(bench.parts[1], bench.parts[3]);
             stage.edit(std::move(bench));
         }},
        {"a board",
         [](CanvasStage& stage, Chance&) {
             Bench bench = stage.bench();
             if (bench.boards.size() > 1) {
                 bench.boards.pop_back();
             } else {
                 bench = test::BenchBuilder(bench).board("B", "mini", 34, 2).build();
             }
             stage.edit(std::move(bench));
         }},
        {"notes",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             bench.notes.clear();
             if (chance.upTo(3)) bench.notes.push_back({"N1", chance.hole(), "Mind the fog at the pier", {}});
             stage.edit(std::move(bench));
         }},
        {"pins",
         [](CanvasStage& stage, Chance& chance) {
             Bench bench = stage.bench();
             bench.pinned.clear();
             if (chance.upTo(3)) bench.pinned.push_back({"P1", VoltsAt{test::holeAt("A.b16")}, {}});
             if (chance.coin()) bench.pinned.push_back({"P2", WattsOf{"D1"}, {}});
             if (chance.coin()) bench.pinned.push_back({"P3", AmperesIn{"W1", {}}, {}});
             if (chance.coin())
                 bench.pinned.push_back({"P4", VoltsBetween{test::holeAt("A.a8"), test::holeAt("A.a14")}, {}});
             stage.edit(std::move(bench));
         }},
        {"hover",
         [](CanvasStage& stage, Chance& chance) {
             stage.picture.marks.hoverNet = chance.upTo(stage.picture.layout->netCount + 4) - 4;
             stage.picture.marks.hoverNet = std::max(-1, stage.picture.marks.hoverNet);
             stage.picture.marks.hoverAt = chance.place();
             stage.picture.marks.hoverPart = chance.coin() ? "S1" : "";
         }},
        {"selection",
         [](CanvasStage& stage, Chance& chance) {
             stage.picture.marks.selected.clear();
             for (const char* id : {"R1", "D1", "W2", "N1", "P1", "PS1"})
                 if (chance.upTo(3) == 0) stage.picture.marks.selected.emplace_back(id);
         }},
        {"findings",
         [](CanvasStage& stage, Chance& chance) {
             std::vector<Finding> findings;
             for (int i = chance.upTo(4); i > 0; --i) findings.push_back(findingAt(chance));
             stage.picture.marks.finding = chance.upTo(4) - 1;
             stage.picture.findings = std::make_shared<const std::vector<Finding>>(std::move(findings));
         }},
        {"a mend",
         [](CanvasStage& stage, Chance& chance) {
             Bench mended = withJumperMoved(stage.bench(), 14 + chance.upTo(8));
             if (chance.coin()) mended.parts[static_cast<std::size_t>(mended.partIndex("R1"))].values[0] = 150;
             if (chance.coin()) mended.jumpers.pop_back();
             stage.picture.marks.mended = chance.upTo(3) ? std::make_shared<const Bench>(std::move(mended)) : nullptr;
         }},
        {"a group in the hand",
         [](CanvasStage& stage, Chance& chance) {
             auto group = std::make_shared<Bench>(withJumperMoved(stage.bench(), 14 + chance.upTo(8)));
             group->parts.resize(1);
             stage.picture.marks.refused = chance.coin();
             stage.scene->setPale(chance.coin() ? std::vector<std::string>{"R1", "W2"} : std::vector<std::string>{});
             stage.picture.marks.group = chance.upTo(3) ? group : nullptr;
         }},
        {"a part in the hand",
         [](CanvasStage& stage, Chance& chance) {
             Part part = *stage.bench().findPart("R2");
             part.leads = {chance.hole(), chance.hole()};
             stage.picture.marks.refused = chance.coin();
             stage.picture.marks.carried = chance.upTo(3) ? std::optional(part) : std::nullopt;
         }},
        {"a wire in the hand",
         [](CanvasStage& stage, Chance& chance) {
             Marks& marks = stage.picture.marks;
             marks.drawn.reset();
             marks.drawnFree.reset();
             marks.probe.reset();
             marks.drawnColour = chance.upTo(8);
             if (chance.upTo(3) == 0) marks.drawnFree = {chance.place(), chance.place()};
             if (chance.upTo(3) == 0) marks.probe = {chance.place(), chance.place()};
             if (chance.upTo(3) == 0) {
                 marks.drawn = Jumper{"W9", {chance.hole(), chance.hole()}, 2, chance.coin(), {}};
             }
         }},
        {"targets, cursor and guide",
         [](CanvasStage& stage, Chance& chance) {
             Marks& marks = stage.picture.marks;
             marks.targets.clear();
             marks.guide.clear();
             for (int i = chance.upTo(4); i > 0; --i) marks.targets.push_back(chance.hole());
             for (int i = chance.upTo(2); i > 0; --i) marks.guide.push_back(chance.hole());
             marks.cursor = chance.coin() ? std::optional(chance.hole()) : std::nullopt;
             marks.refused = chance.coin();
         }},
        {"words, a band, something lit",
         [](CanvasStage& stage, Chance& chance) {
             Marks& marks = stage.picture.marks;
             marks.say = chance.coin() ? "the hole is taken" : "";
             marks.sayAt = chance.place();
             const Point corner = chance.place();
             marks.band =
                 chance.coin() ? std::optional(QRectF(corner.x, corner.y, chance.within(1, 40), 17.31)) : std::nullopt;
             marks.lit = chance.coin() ? (chance.coin() ? "D1" : "W1") : "";
             stage.litNets.clear();
             if (chance.coin()) stage.litNets.push_back(chance.upTo(stage.picture.layout->netCount));
         }},
        {"views",
         [](CanvasStage& stage, Chance& chance) {
             Views& views = stage.picture.views;
             views.voltage = chance.upTo(3) == 0;
             views.strips = chance.upTo(3) == 0;
             views.readings = chance.upTo(3) != 0;
             views.arrows = chance.upTo(4) ? Arrows::Conventional : chance.coin() ? Arrows::Electrons : Arrows::Off;
             views.lockedFullScaleAmpere = chance.upTo(3) ? std::nullopt : std::optional(0.05);
         }},
        {"turning over",
         [](CanvasStage& stage, Chance&) {
             stage.picture.views.turned = !stage.picture.views.turned;
             stage.arrange();
         }},
        {"projecting",
         [](CanvasStage& stage, Chance&) {
             const bool projecting = stage.picture.sizes.numberMm > 0;
             stage.picture.sizes = projecting ? WordSizes{}
                                              : projectedSizes(CanvasStage::kLogical.height(),
                                                               stage.frame.pixelsPerMm / stage.frame.devicePixelRatio);
             stage.arrange();
         }},
        {"a theme",
         [](CanvasStage& stage, Chance& chance) {
             stage.picture.theme = &theme(static_cast<ThemeName>(chance.upTo(3)));
             stage.scene->follow();
         }},
        {"a pan",
         [](CanvasStage& stage, Chance& chance) {
             stage.frame.origin += QPoint(chance.upTo(161) - 80, chance.upTo(81) - 40);
             stage.frame.origin.setX(std::clamp(stage.frame.origin.x(), -200, stage.frame.viewport.width() - 40));
             stage.frame.origin.setY(std::clamp(stage.frame.origin.y(), -150, stage.frame.viewport.height() - 40));
         }},
        {"a zoom",
         [](CanvasStage& stage, Chance& chance) {
             constexpr double kZooms[] = {4.3, 4.3 * 1.25, 4.3 * 1.5625, 13, 2.75};
             stage.zoom(chance.of(kZooms));
             stage.arrange();
         }},
        {"another size of the window",
         [](CanvasStage& stage, Chance& chance) {
             const QSizeF logical(CanvasStage::kLogical.width() - chance.upTo(60), CanvasStage::kLogical.height());
             stage.frame.viewport = (logical * stage.frame.devicePixelRatio).toSize();
         }},
        {"nothing but time", [](CanvasStage&, Chance&) {}},
    };
    return kChanges;
}

}  // namespace tiepoint::ui
