#pragma once
// A paint device that is measured as another one and has all painting pass through an engine of its own. Use from the thread that paints.

#include "ui/paint/path_engine.h"

#include <QPaintDevice>

#include <memory>

namespace tiepoint::ui {

class RelayDevice : public QPaintDevice {
public:
    QPaintEngine* paintEngine() const override { return engine_.get(); }

protected:
    /// The target must outlive the device and the painter on it.
    RelayDevice(const QPaintDevice& target, std::unique_ptr<PathEngine> engine)
        : target_(target),
          engine_(std::move(engine)) {}

    /// The target's, in its own pixels: a ratio is carried by the painter's transform.
    int metric(PaintDeviceMetric metric) const override;

private:
    const QPaintDevice& target_;
    std::unique_ptr<PathEngine> engine_;
};

}  // namespace tiepoint::ui
