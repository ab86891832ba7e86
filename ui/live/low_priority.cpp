#include "ui/live/low_priority.h"

#ifdef __linux__
#include <sys/resource.h>
#include <unistd.h>
#endif

namespace tiepoint::ui {

void lowerPriority() {
#ifdef __linux__
    // The usual policy knows no priorities but niceness, which Linux keeps for each thread.
    constexpr int kNiceness = 19;  // the least: the picture must never wait
    setpriority(PRIO_PROCESS, static_cast<id_t>(gettid()), kNiceness);
#endif
}

}  // namespace tiepoint::ui
