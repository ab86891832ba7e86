#include "ui/view/bench_hand.h"

namespace tiepoint::ui {

void BenchHand::releaseAll() {
    latched_.clear();
    needs_.live.releaseAll();
}

}  // namespace tiepoint::ui
