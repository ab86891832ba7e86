#pragma once
// Life from a battery: for how many hours a bench runs until its cells are empty, their voltage sinking and their resistance rising
// meanwhile.
//
// A battery's charge is drawn from full (or from where its kind's condition says) to empty, 0.9 V a cell without load. At each of some
// steps the bench is solved with the cells as they are by then; how much charge they hold depends on the current, so that a step of the
// share s lasts Q(I) ds / I. Hours are the sum. The tables stand in battery.cpp with their sources.
// Pure; safe from any thread; stoppable.

#include "core/snapshot/snapshot.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// One instant of a battery's life.
struct BatteryMoment {
    double hours = 0;
    double used = 0;                 ///< share of its charge
    double volt = 0;                 ///< between its leads, under the load of the bench
    double ampere = 0;               ///< what it gives
    std::vector<double> brightness;  ///< by light of BatteryLife::lights
};

struct BatteryLife {
    std::string part;         ///< the supply that it is, or stands for
    std::string kind;         ///< label of the battery: "3 cells in a holder"
    double hours = 0;         ///< until it is empty; infinity where nothing is drawn
    std::vector<int> lights;  ///< parts that emit light
    std::vector<BatteryMoment> moments;
    std::string darkFirst;  ///< the light that goes dark before the end, though it shone at first; may be empty
    double darkHours = 0;   ///< when
    std::string why;        ///< why no hours are known, in one sentence; else empty
};

/// Whether parts of that kind are batteries whose life is known.
bool isBattery(const PartKind& kind);
/// Those of the catalogue.
std::vector<const PartKind*> batteryKinds();

/// A battery to take in place of the bench's first supply.
struct BatteryChoice {
    const PartKind* kind = nullptr;
    int count = 0;  ///< cells of a holder; 0: as many as the kind usually has
};

/// Of the bench's batteries the one that is empty first; nothing if it has none that is on. With a choice: of that battery in place of the
/// first supply that is on.
std::optional<BatteryLife> batteryLife(const std::shared_ptr<const Snapshot>& nominal,
                                       const BatteryChoice& choice = {});

/// "14 hours", "3 days", "40 minutes": how long it lasts, as people say it.
std::string lifeInWords(double hours);

}  // namespace tiepoint
