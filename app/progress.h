#pragma once
// A bar on standard error that says how far long work has come; only where a person looks at it.

#include <cstddef>
#include <string>

namespace tiepoint::app {

class ProgressBar {
public:
    ProgressBar(std::string what, std::size_t of);
    ~ProgressBar();
    ProgressBar(const ProgressBar&) = delete;
    ProgressBar& operator=(const ProgressBar&) = delete;

    /// So many are done. From any thread, one call at a time.
    void show(std::size_t done);

private:
    std::string what_;
    std::size_t of_;
    bool seen_;
    int drawn_ = -1;  ///< per cent
};

}  // namespace tiepoint::app
