#pragma once
// What a bench and its variants do in every position of switches and knobs: the stage on which they are compared. Each position is a base of
// its own whose variants are solved by ports (core/variants); what no variant can say (broken rails, conditions, parts that come) is solved
// from scratch.
//
// Switches are thrown in every combination while those are few, else as core/behaviour plans it; each knob then goes to both ends. First comes
// the bench as it stands, then everything thrown, then those the fewest throws away.
// Belongs to one thread; stoppable (core/base/stopping.h).

#include "core/nets/layout.h"
#include "core/snapshot/throws.h"
#include "core/variants/variant_solver.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// One position, solved; the figures mean something only where the status is Solved.
struct Scene {
    Status status = Status::None;
    std::vector<double> elementAmpere;  ///< by element: see Play::firstElement
    std::vector<double> leadVolt;       ///< by lead; NaN: floating
};

/// A bench in every position.
struct Play {
    std::shared_ptr<const Layout> layout;  ///< as it stands; only states differ from scene to scene
    std::vector<int> firstElement;         ///< by part; its elements follow in the order of its model
    std::vector<Scene> scenes;             ///< by position of the stage, as many as were asked for
};

class Stage {
public:
    Stage(std::shared_ptr<const Layout> layout, const Inputs& now, std::size_t mostPositions);

    const Bench& bench() const { return *layout_->bench; }
    const std::vector<Throw>& throws() const { return throws_; }
    const std::vector<Digits>& positions() const { return positions_; }
    /// Whether every combination of switches is among the positions.
    bool complete() const { return complete_; }

    /// Puts the positions into another order; plays made before keep theirs.
    void reorder(const std::vector<std::size_t>& order);

    static constexpr std::size_t kAllScenes = static_cast<std::size_t>(-1);
    /// The bench as it stands, and a variant of it; of the positions only so many, those that tell most.
    Play play(std::size_t scenes = kAllScenes);
    Play play(const Variant& variant, std::size_t scenes = kAllScenes);
    /// Another bench with the same parts in the same order, and perhaps more behind them; from scratch.
    Play playInFull(std::shared_ptr<const Bench> bench, std::size_t scenes = kAllScenes);

private:
    struct Desk {
        std::shared_ptr<const Bench> bench;
        Inputs inputs;
        std::unique_ptr<VariantSolver> solver;
    };

    void planPositions(const Inputs& now, std::size_t most);
    void setUp(const Digits& digits);
    void throwPart(Part& part, int index, const Digits& digits) const;
    Play emptyPlay(std::shared_ptr<const Bench> bench, std::size_t scenes) const;

    std::shared_ptr<const Layout> layout_;
    std::vector<Throw> throws_;
    std::vector<Digits> positions_;
    std::vector<Desk> desks_;
    Inputs now_;
    bool complete_ = true;
};

}  // namespace tiepoint
