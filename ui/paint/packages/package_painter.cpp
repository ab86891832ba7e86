// The table of package painters, and what they share.

#include "ui/paint/packages/package_painter.h"

#include "core/base/quantity.h"
#include "core/bench/resolve.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <array>
#include <numbers>

namespace tiepoint::ui {
namespace {

struct Entry {
    std::string_view package;
    const PackagePainter& (*painter)();
};

constexpr auto kPainters = std::to_array<Entry>({
    {"axial-quarter-watt", &resistorPainter},
    {"diode-axial", &diodePainter},
    {"led-5mm", &ledPainter},
    {"push-button", &pushButtonPainter},
    {"slide-switch", &slideSwitchPainter},
    {"potentiometer", &potentiometerPainter},
    {"lamp-wired", &lampPainter},
    {"toggle", &togglePainter},
    {"bench-supply", &benchSupplyPainter},
    {"usb-supply", &usbSupplyPainter},
    {"cells", &cellsPainter},
    {"block-9v", &block9VPainter},
    {"multimeter", &multimeterPainter},
    {"dip", &dipPainter},
    {"to-92", &to92Painter},
    {"radial-can", &radialCanPainter},
    {"ceramic-disc", &ceramicDiscPainter},
    {"axial-choke", &axialChokePainter},
    {"buzzer", &buzzerPainter},
    {"motor-can", &motorCanPainter},
    {"relay-changeover", &relayChangeoverPainter},
    {"signal-source", &signalSourcePainter},
    {"logic-probe", &logicProbePainter},
    {"diode-do-41", &plasticDiodePainter},
    {"photoresistor-5mm", &photoresistorPainter},
    {"thermistor-bead", &thermistorPainter},
    {"phototransistor-5mm", &phototransistorPainter},
    {"rgb-led-5mm", &rgbLedPainter},
    {"solar-cell", &solarCellPainter},
    {"oscilloscope", &oscilloscopePainter},
});

}  // namespace

const PackagePainter* findPackagePainter(std::string_view packageName) {
    for (const Entry& entry : kPainters) {
        if (entry.package == packageName) return &entry.painter();
    }
    return nullptr;
}

QRectF PartScene::bodyRect() const {
    const Package& package = packageOf(part);
    const double length = package.bodyLengthMm, width = package.bodyWidthMm;
    return {-length / 2, -width / 2, length, width};
}

std::string_view PartScene::choice(std::string_view name) const {
    const int index_ = part.kind->valueIndex(name);
    if (index_ < 0) return {};
    const auto& choices = part.kind->values[static_cast<std::size_t>(index_)].choices;
    const auto chosen = static_cast<std::size_t>(part.value(index_));
    return chosen < choices.size() ? std::string_view(choices[chosen].name) : std::string_view{};
}

double PartScene::value(std::string_view name) const {
    const int index_ = part.kind->valueIndex(name);
    return index_ < 0 ? 0 : part.value(index_);
}

double PartScene::state(std::string_view name) const {
    const int index_ = part.kind->stateIndex(name);
    return index_ < 0 ? 0 : part.stateValue(index_);
}

std::vector<PartPath> PackagePainter::paths(const PartScene& scene) const {
    QPainterPath line(toQt(scene.place.leadsMm[0]));
    line.lineTo(toQt(scene.place.leadsMm[1]));
    return {{line, {0}, PathLook::OverBody, 0, 1}};
}

QPainterPath PackagePainter::body(const PartScene& scene) const {
    constexpr double kRadiusMm = 0.5;
    return bodyTransform(scene).map(roundedBox(scene.bodyRect(), kRadiusMm));
}

QTransform bodyTransform(const PartScene& scene) {
    QTransform transform;
    transform.translate(scene.place.pose.centre.x, scene.place.pose.centre.y);
    transform.rotateRadians(scene.place.pose.angle);
    return transform;
}

BodyFrame::BodyFrame(QPainter& painter, const PartScene& scene) : painter_(painter) {
    painter_.save();
    painter_.setTransform(bodyTransform(scene), true);
}

BodyFrame::~BodyFrame() { painter_.restore(); }

QPointF fallInBody(const PartScene& scene, QPointF offset) {
    QTransform back;
    back.rotateRadians(-scene.place.pose.angle);
    return back.map(offset);
}

void paintPaleCase(QPainter& painter, const Theme& theme, const QRectF& box, double radiusMm, double steel) {
    painter.setPen(outlinePen(faded(theme.dark ? theme.metalEdge : theme.furnishing.ink, 0.85), theme.outlineMm * 1.3));
    painter.setBrush(faded(blend(theme.boardBottom, theme.furnishing.steelDark, steel), 0.97));
    painter.drawPath(roundedBox(box, radiusMm));
    painter.setPen(outlinePen(theme.metalEdge, theme.outlineMm));
}

void paintPinInside(QPainter& painter, const Theme& theme, double x) {
    constexpr double kHalfMm = 0.55;
    painter.setBrush(theme.metalLight);
    painter.drawPath(roundedBox(QRectF(x - kHalfMm, -2 * kHalfMm, 2 * kHalfMm, 4 * kHalfMm), 0.25));
}

void paintBladeInside(QPainter& painter, const Theme& theme, double lengthMm) {
    constexpr double kHalfMm = 0.36, kBeyondMm = 0.35;
    painter.setBrush(
        shadeDown(theme, {0, -kHalfMm, 1, 2 * kHalfMm}, blend(theme.metalLight, Qt::white, 0.4), theme.metalDark));
    painter.drawPath(roundedBox(QRectF(-kBeyondMm, -kHalfMm, lengthMm + 2 * kBeyondMm, 2 * kHalfMm), 0.3));
}

void paintBareLeads(QPainter& painter, const PartScene& scene) {
    for (std::size_t i = 0; i < scene.place.leadsMm.size(); ++i) {
        paintBareLead(painter, scene.theme, toQt(scene.place.exitsMm[i]), toQt(scene.place.leadsMm[i]));
    }
}

QString valueLabel(const Part& part) {
    const int index = valueBesideId(*part.kind);
    if (index < 0) return {};
    return QString::fromStdString(
        formatSetting(part.value(index), part.kind->values[static_cast<std::size_t>(index)].unit));
}

}  // namespace tiepoint::ui
