#pragma once
// The small trace beside a pinned reading: least and greatest over the last seconds as they are seen, in few columns. Bounded memory; no
// allocation after it is made. One thread at a time.

#include "core/scope/traces.h"

#include <cstdint>
#include <vector>

namespace tiepoint {

class Spark {
public:
    static constexpr int kColumns = 60;
    static constexpr double kSeenSecond = 4;  ///< on the wall's clock

    Spark();
    /// Another rate of time begins a new trace: a column stands for as long on the wall.
    void follow(double benchSecondsPerSeen);
    void begin();
    void take(double second, double value);
    /// Fills what is drawn; leaves whose it is. `small`: what is nothing beside the reading's unit.
    void publish(PinnedTrace& out, double small) const;

private:
    double rate_ = 0, columnSecond_ = 1;
    std::int64_t now_ = 0;
    bool begun_ = false;
    std::vector<std::int64_t> tag_;
    std::vector<float> least_, greatest_;
};

}  // namespace tiepoint
