#include "app/progress.h"

#include <fmt/format.h>
#include <unistd.h>

#include <cstdio>
#include <utility>

namespace tiepoint::app {

ProgressBar::ProgressBar(std::string what, std::size_t of)
    : what_(std::move(what)),
      of_(of),
      seen_(::isatty(STDERR_FILENO) != 0) {}

ProgressBar::~ProgressBar() {
    if (seen_ && drawn_ >= 0) std::fputs("\r\x1b[K", stderr);
}

void ProgressBar::show(std::size_t done) {
    constexpr int kAll = 100, kCells = 30;
    const int percent = of_ == 0 ? kAll : static_cast<int>(kAll * done / of_);
    if (!seen_ || percent == drawn_) return;
    drawn_ = percent;
    const int filled = kCells * percent / kAll;
    const std::string bar =
        fmt::format("\r{} [{}{}] {} of {}", what_, std::string(static_cast<std::size_t>(filled), '#'),
                    std::string(static_cast<std::size_t>(kCells - filled), '.'), done, of_);
    std::fputs(bar.c_str(), stderr);
    std::fflush(stderr);
}

}  // namespace tiepoint::app
