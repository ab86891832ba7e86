#include "ui/lesson/glide.h"

#include "ui/paint/bench_painter.h"

#include <QEasingCurve>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kComeDownMs = 420, kComeDownTickMs = 16;
constexpr double kFromAboveMm = 16;
constexpr double kLayBare = 0.7;  ///< of the time: then the step itself comes through
constexpr std::size_t kMostGliding = 24;

bool isReduced() { return qEnvironmentVariableIsSet("TIEPOINT_NO_MOTION"); }

}  // namespace

Glide::Glide(BenchView& view, QWidget* parent) : QWidget(parent), view_(view) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    hide();
    ticking_.setInterval(kComeDownTickMs);
    connect(&ticking_, &QTimer::timeout, this, [this] {
        if (since_.elapsed() >= kComeDownMs) return end();
        update();
    });
}

void Glide::keepBefore() {
    end();
    if (!view_.isVisible()) return;
    before_ = view_.viewport()->grab();
    beforeBench_ = view_.picture().layout->bench;
    beforeSight_ = view_.viewportTransform();
}

void Glide::addThing(const QRectF& mm, const std::function<void(QPainter&)>& paint, QPointF awayMm) {
    const QRectF pixels = view_.viewportTransform().mapRect(mm).adjusted(-2, -2, 2, 2);
    const double ratio = devicePixelRatioF();
    QPixmap picture((pixels.size() * ratio).toSize());
    if (picture.isNull()) return;
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(-pixels.topLeft());
    painter.setTransform(view_.viewportTransform(), true);
    paint(painter);
    things_.push_back({picture, pixels.topLeft(), view_.pixelsPerMm() * awayMm});
}

void Glide::begin() {
    things_.clear();
    const Picture& picture = view_.picture();
    if (!beforeBench_ || before_.isNull() || isReduced()) return end();
    const Bench &now = picture.bench(), &before = *beforeBench_;
    for (int i = 0; i < static_cast<int>(now.parts.size()) && things_.size() < kMostGliding; ++i) {
        const Part& part = now.parts[static_cast<std::size_t>(i)];
        const Part* old = before.findPart(part.id);
        if ((old && old->leads == part.leads && old->kind == part.kind) || standsOnTable(part)) continue;
        const QRectF frame = partBounds(picture, i);
        QPointF away(0, -kFromAboveMm);
        if (old && !old->leads.empty() && old->leads[0] && part.leads[0]) {
            const auto from = holeMm(before, *old->leads[0]), to = holeMm(now, *part.leads[0]);
            if (from && to) away = toQt(*from) - toQt(*to);
        }
        addThing(
            frame, [&](QPainter& painter) { paintPart(painter, picture, i); }, away);
    }
    for (int i = 0; i < static_cast<int>(now.jumpers.size()) && things_.size() < kMostGliding; ++i) {
        const Jumper& jumper = now.jumpers[static_cast<std::size_t>(i)];
        const Jumper* old = before.findJumper(jumper.id);
        if (old && old->ends == jumper.ends) continue;
        const QRectF frame = jumperBounds(picture, i);
        addThing(
            frame, [&](QPainter& painter) { paintJumper(painter, picture, i); }, QPointF(0, -kFromAboveMm));
    }
    if (things_.empty()) return end();
    setGeometry(QRect(view_.viewport()->mapTo(parentWidget(), QPoint()), view_.viewport()->size()));
    since_.start();
    ticking_.start();
    show();
    raise();
}

void Glide::end() {
    ticking_.stop();
    things_.clear();
    before_ = {};
    beforeBench_ = nullptr;
    hide();
}

void Glide::paintEvent(QPaintEvent*) {
    if (before_.isNull()) return;
    QPainter painter(this);
    const double share = std::min(1.0, static_cast<double>(since_.elapsed()) / kComeDownMs);
    const double come = QEasingCurve(QEasingCurve::OutCubic).valueForProgress(share);
    painter.setOpacity(share < kLayBare ? 1 : (1 - share) / (1 - kLayBare));
    painter.save();
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(beforeSight_.inverted() * view_.viewportTransform());  // the view may have another place now
    painter.drawPixmap(0, 0, before_);
    painter.restore();
    painter.setOpacity(1);
    for (const Thing& thing : things_) painter.drawPixmap(thing.to + (1 - come) * thing.away, thing.picture);
}

}  // namespace tiepoint::ui
