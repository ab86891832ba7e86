#pragma once
// Follows what instruments and pinned readings of a bench are about while it runs: reads their figures off solutions at the ends and the
// thirds of each smooth piece, and hands the cubics to whoever keeps them. What is kept is bounded; once made, following and publishing
// allocate nothing but what a published value lacks in room.
// What of a part is followed its kind says: elements that read "trace" are the channels of an oscilloscope, any other reading is a
// meter's. One thread at a time.

#include "core/nets/layout.h"
#include "core/scope/averager.h"
#include "core/scope/spark.h"
#include "core/scope/sweeper.h"
#include "core/solve/operating_point.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// How the knobs of an oscilloscope stand.
ScopeSettings scopeSettings(const Part& part);
/// The screen of an oscilloscope in a circuit at rest: a flat line for each channel. `nowSecond` stands at its right edge.
ScopeTrace standingTrace(const Bench& bench, const Solution& solution, int part, double nowSecond);
/// Whether parts of that kind have channels that are traced.
bool isScope(const PartKind& kind);

class Recorder {
public:
    Recorder() = default;
    explicit Recorder(std::shared_ptr<const Layout> layout);

    /// What goes on with the same settings keeps what it has seen, by ids.
    void takeOver(Recorder& before);
    /// Nothing is followed.
    bool isEmpty() const { return channels_.empty(); }
    /// Whether some instrument needs every piece of the run, however short.
    bool needsPieces() const { return !scopes_.empty() || !meters_.empty(); }
    /// Time begins anew.
    void begin(double second);
    /// Seconds of the bench for each second that is seen.
    void setRate(double rate);
    /// Where the way leads that is gone next: instruments leave out what would be gone again by then.
    void towards(double second) { goal_ = second; }
    /// Instruments of which a hand is on the button: one that swept once waits for the next trigger.
    void setHeld(const Inputs& inputs);

    /// The readings at the beginning (0), the thirds (1, 2) and the end (3) of a piece.
    void read(const Solution& solution, std::size_t at);
    /// The piece between these instants.
    void take(double fromSecond, double untilSecond);
    void publish(Traces& out) const;

private:
    struct Channel {
        int element = -1;    ///< of an instrument: its place in the solution
        bool volts = false;  ///< across it; else the current through it
        const PinnedReading* pinned = nullptr;
        std::array<double, 4> at{};
    };
    struct Scope {
        int part;
        std::array<int, 2> channels;
        Sweeper sweeper;
        bool held = false, skipped = false;
    };
    struct Meter {
        int channel, part, spec;
        Averager averager;
    };
    struct Pinned {
        int channel;
        Spark spark;
    };

    int addElement(int part, int spec, bool volts);
    double readOne(const Channel& channel, const Solution& solution) const;
    void findElements(const Solution& solution);

    std::shared_ptr<const Layout> layout_;
    std::vector<Channel> channels_;
    std::vector<std::pair<int, int>> specOf_;  ///< by channel: part and element of its model
    std::vector<Scope> scopes_;
    std::vector<Meter> meters_;
    std::vector<Pinned> pinned_;
    std::shared_ptr<const ElementPlaces> places_;
    double goal_ = 0, rate_ = 1;
};

}  // namespace tiepoint
