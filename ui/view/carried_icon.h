#pragma once
// What hangs at the pointer while it is over no hole: a picture of the part or jumper in place of the arrow, everywhere on the screen.

#include "ui/paint/picture.h"
#include "ui/view/camera.h"

#include <QPixmap>

#include <optional>
#include <string>

namespace tiepoint::ui {

class CarriedIcon {
public:
    /// Both must outlive it.
    CarriedIcon(const Picture& picture, const Camera& camera) : picture_(picture), camera_(camera) {}
    ~CarriedIcon() { show(std::nullopt, std::nullopt); }
    CarriedIcon(const CarriedIcon&) = delete;
    CarriedIcon& operator=(const CarriedIcon&) = delete;

    /// A part, or a jumper of a colour, or the usual pointer.
    void show(const std::optional<Part>& part, std::optional<int> jumperColour);

private:
    QPixmap pixmapOf(const std::optional<Part>& part, std::optional<int> jumperColour) const;

    const Picture& picture_;
    const Camera& camera_;
    std::string shown_;  ///< the part's id or the colour's number
};

}  // namespace tiepoint::ui
