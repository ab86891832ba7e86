#pragma once
// A small picture of a bench, drawn by the same painters as the large one. Any thread may draw one.

#include "core/bench/bench.h"
#include "core/bench/views.h"
#include "ui/paint/picture.h"
#include "ui/theme/theme.h"

#include <QImage>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint::ui {

struct Miniature {
    std::shared_ptr<const Bench> bench;
    const Theme* theme = nullptr;
    QSize size;        ///< device-independent pixels
    double ratio = 1;  ///< of the device
    Views views;
    bool live = true;                     ///< it runs
    bool pressed = true;                  ///< while it runs every cap is held, so that what it does is seen
    std::optional<Rect> frameMm;          ///< what is shown of the table; nothing: all of it
    std::vector<std::string> cornered;    ///< small corners hold these parts, jumpers and boards
    std::vector<Hole> pointed;            ///< rings as a guide has them
    std::optional<Hop> hop;               ///< as a guide asks for it
    std::shared_ptr<const Bench> before;  ///< where those of them lay that the bench has no more; may be null
    bool isEmpty() const { return !bench || size.isEmpty(); }
};

/// Where the boards of a bench lie; a half board's place where it has none.
Rect boardsFrameMm(const Bench& bench);

QImage paintMiniature(const Miniature& miniature);

}  // namespace tiepoint::ui
