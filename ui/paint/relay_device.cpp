#include "ui/paint/relay_device.h"

namespace tiepoint::ui {

int RelayDevice::metric(PaintDeviceMetric metric) const {
    switch (metric) {
        case PdmWidth:
            return target_.width();
        case PdmHeight:
            return target_.height();
        case PdmWidthMM:
            return target_.widthMM();
        case PdmHeightMM:
            return target_.heightMM();
        case PdmNumColors:
            return target_.colorCount();
        case PdmDepth:
            return target_.depth();
        case PdmDpiX:
            return target_.logicalDpiX();
        case PdmDpiY:
            return target_.logicalDpiY();
        case PdmPhysicalDpiX:
            return target_.physicalDpiX();
        case PdmPhysicalDpiY:
            return target_.physicalDpiY();
        case PdmDevicePixelRatio:
            return 1;
        default:
            return QPaintDevice::metric(metric);
    }
}

}  // namespace tiepoint::ui
