#pragma once
// An application for fonts and painters, without a window and without a display. One at a time, in the main thread.

#include <QGuiApplication>

#include <optional>

namespace tiepoint::app {

class Offscreen {
public:
    Offscreen();

private:
    int argumentCount_ = 1;
    char name_[9] = "tiepoint";
    char* arguments_[2] = {name_, nullptr};
    std::optional<QGuiApplication> application_;
};

}  // namespace tiepoint::app
