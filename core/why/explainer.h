#pragma once
// What the two halves of an answer share: the question asked and the words for figures. Internal to core/why; belongs to one thread.

#include "core/snapshot/readings.h"
#include "core/why/current_path.h"
#include "core/why/explain.h"
#include "core/why/remedies.h"

namespace tiepoint {

class Explainer {
public:
    Explainer(const Snapshot& snapshot, int part, const ResistorDrawer& drawer)
        : snapshot_(snapshot),
          index_(part),
          drawer_(drawer) {
        answer_.part = self().id;
    }

    Answer run();

private:
    // explain.cpp
    const Bench& bench() const { return *snapshot_.layout->bench; }
    const Part& self() const { return bench().parts[index_]; }
    bool works(const Snapshot& snapshot, int part) const;
    void add(std::string text, std::vector<std::string> parts = {}, std::vector<Hole> holes = {});
    static std::string currentWords(const Snapshot& snapshot, int part);
    static std::string percentInWords(double share);
    std::string wayInWords(const CurrentPath& path) const;
    std::string outcomeInWords(const Snapshot& then) const;

    // explain_idle.cpp: no current
    void explainIdle();
    void sayWhatIsReached();
    void sayWhatWasTried(std::size_t switches, const Nearest& nearest);
    void sayMissing(const std::vector<Throw>& throws, const Digits& now, const Reached& reached);
    void offer(const std::vector<Throw>& throws, const Digits& now, const Reached& reached,
               const std::string& mend = {}, Edit edit = {});

    // explain_running.cpp: current runs
    void explainLight();
    void explainHeat();
    void sayHeat(const RatingShare& rated, const PathLink* link);
    void explainSupply();
    void saySharing(const CurrentPath& path);
    void sayLimit(const CurrentPath& path);
    void offerResistance();
    void offerFindings();

    // explain_meter.cpp: instruments
    void explainReading();
    Figure voltageAcross() const;

    const Snapshot& snapshot_;
    int index_;
    const ResistorDrawer& drawer_;
    Answer answer_;
};

}  // namespace tiepoint
