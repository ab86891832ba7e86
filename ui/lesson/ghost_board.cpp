#include "ui/lesson/ghost_board.h"

#include "core/course/ghost.h"
#include "ui/lesson/lesson_sizes.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QImage>
#include <QPainter>

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kIdeaOpacity = 0.45, kIdeaFadeShare = 0.06;
constexpr double kIdeaCollarMm = 4.05, kIdeaCollarBreadthMm = 1.0;
constexpr double kIdeaRingMm = 1.0;
constexpr int kIdeaHatches = 20;

/// Without colour, at less than half its strength, the edges fading to nothing.
QImage greyed(const QImage& image) {
    QImage grey = image.convertToFormat(QImage::Format_ARGB32);
    const double fade = std::max(1.0, kIdeaFadeShare * grey.width());
    for (int y = 0; y < grey.height(); ++y) {
        auto* row = reinterpret_cast<QRgb*>(grey.scanLine(y));
        for (int x = 0; x < grey.width(); ++x) {
            const double edge = std::min(1.0, std::min(x, grey.width() - 1 - x) / fade);
            const int light = qGray(row[x]);
            row[x] = qRgba(light, light, light, qRound(qAlpha(row[x]) * kIdeaOpacity * edge));
        }
    }
    return grey;
}

}  // namespace

GhostBoard::GhostBoard(const LessonRun& run, const BenchView& view, QWidget* parent)
    : QWidget(parent),
      run_(run),
      view_(view),
      look_{&theme(ThemeName::Day), 1} {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    hide();
}

void GhostBoard::setLook(const Look& look) {
    look_ = look;
    refresh();
}

QPointF GhostBoard::seen(Point mm) const { return origin_ + scale_ * toQt(mm); }

void GhostBoard::refresh() {
    grey_ = {};
    flag_ = {};
    if (!run_.showsWrongIdea() || width() < 2 || height() < 2) return;
    const WrongIdea& idea = *run_.present().ask->wrong;
    setAccessibleName(qs(idea.idea + ": " + idea.breaks));
    Picture picture = view_.picture();
    picture.snapshot = ghostOf(situationOf(*run_.lesson(), run_.step()), idea);
    picture.layout = picture.snapshot->layout;
    picture.marks = {};
    picture.changes = nullptr;
    picture.findings = nullptr;
    picture.pinned = nullptr;
    picture.netTags = nullptr;
    picture.views.readings = false;
    picture.views.voltage = false;
    picture.arrangeTable();
    scale_ = view_.pixelsPerMm();
    // As high on the screen as the true one, its boards' left edge just inside.
    const QPointF boards = view_.fromMm({picture.table->boardsMm.left, picture.table->boardsMm.top});
    const double inside = 0.06 * width();
    origin_ = QPointF(inside - scale_ * picture.table->boardsMm.left,
                      view_.y() + boards.y() - y() - scale_ * picture.table->boardsMm.top);
    const double ratio = devicePixelRatioF();
    QImage image(size() * ratio, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    picture.pixelsPerMm = scale_ * ratio;
    {
        PixelSheet sheet(image);
        QPainter painter(&sheet);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(origin_ * ratio);
        painter.scale(picture.pixelsPerMm, picture.pixelsPerMm);
        paintBench(painter, picture);
    }
    QImage grey = greyed(image);
    grey.setDevicePixelRatio(ratio);
    grey_ = QPixmap::fromImage(grey);
    update();
}

void GhostBoard::paintEvent(QPaintEvent*) {
    if (grey_.isNull() || !run_.showsWrongIdea()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.drawPixmap(0, 0, grey_);
    sheet_.begin();
    paintTags(painter);
    paintBreak(painter);
}

std::vector<GhostBoard::Tag> GhostBoard::tags() const {
    const Bench& bench = *run_.present().bench;
    const double high = window()->height(), gap = 0.006 * high;
    const QFont font = uiFont(high / kSmallestLines, QFont::DemiBold);
    const Rect boards = view_.picture().table->boardsMm;
    std::vector<Tag> all;
    for (const auto& [hole, text] : run_.present().ask->wrong->tags) {
        const Point at = *holeMm(bench, hole);
        const bool above = at.y < boards.top + boards.height / 2;
        const QPointF end = seen(at);
        const QSizeF size = wordsSize(qs(text), font, 1e4, false) + QSizeF(0.022 * high, 0.014 * high);
        const double edge = seen({0, above ? boards.top : boards.top + boards.height}).y();
        const double top = above ? edge - size.height() - 0.012 * high : edge + 0.012 * high;
        const double left = std::clamp(end.x() - size.width() / 2, 1.0, std::max(1.0, width() - size.width() - 1));
        all.push_back({QRectF(left, top, size.width(), size.height()), end, qs(text), above});
    }
    // Those that would touch slide apart, as far as their leaders still meet them.
    std::ranges::sort(all, {}, [](const Tag& tag) { return std::pair(!tag.above, tag.end.x()); });
    for (std::size_t i = 1; i < all.size(); ++i) {
        Tag &left = all[i - 1], &right = all[i];
        const double over = left.frame.right() + gap - right.frame.left();
        if (left.above != right.above || over <= 0) continue;
        left.frame.translate(-std::min(over / 2, left.frame.right() - left.end.x() - gap), 0);
        right.frame.moveLeft(std::min(left.frame.right() + gap, right.end.x() - gap));
    }
    return all;
}

void GhostBoard::paintTags(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const double high = window()->height();
    const QFont font = uiFont(high / kSmallestLines, QFont::DemiBold);
    const QColor ink = theme.dimText;
    for (const auto& [frame, end, text, above] : tags()) {
        painter.setPen(QPen(ink, high / 540));
        painter.drawLine(QPointF(end.x(), above ? frame.bottom() : frame.top()),
                         end + QPointF(0, (above ? -1 : 1) * kIdeaRingMm * scale_));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(end, kIdeaRingMm * scale_, kIdeaRingMm * scale_);
        painter.setBrush(theme.card);
        painter.drawRoundedRect(frame, 5, 5);
        sheet_.draw(painter, frame, text, {font, ink, Qt::AlignCenter});
    }
}

/// The collar of what can't be, and the flag that says why.
void GhostBoard::paintBreak(QPainter& painter) {
    const WrongIdea& idea = *run_.present().ask->wrong;
    flag_ = {};
    if (idea.brokenAt.empty()) return;
    const Theme& theme = *look_.theme;
    Picture picture = view_.picture();
    const int part = picture.bench().partIndex(idea.brokenAt), jumper = picture.bench().jumperIndex(idea.brokenAt);
    if (part < 0 && jumper < 0) return;
    const QRectF around = (part >= 0 ? partShape(picture, part) : jumperShape(picture, jumper)).boundingRect();
    const QPointF centre = seen(fromQt(around.center()));
    const double radius = kIdeaCollarMm * scale_, breadth = kIdeaCollarBreadthMm * scale_;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.card, breadth));
    painter.drawEllipse(centre, radius, radius);
    constexpr int kSixteenths = 16, kCircle = 360;
    painter.setPen(QPen(theme.overload, breadth, Qt::SolidLine, Qt::FlatCap));
    const QRectF ring(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius);
    for (int i = 0; i < kIdeaHatches; ++i)
        painter.drawArc(ring, i * kCircle * kSixteenths / kIdeaHatches, kCircle * kSixteenths / kIdeaHatches / 2);
    const double high = window()->height();
    const QFont font = uiFont(high / kSmallestLines, QFont::DemiBold);
    const double most = width() * 0.86;
    const QSizeF words = wordsSize(qs(idea.breaks), font, most - 0.03 * high, true);
    const QSizeF size(std::min(most, words.width() + 0.034 * high), words.height() + 0.018 * high);
    const Rect boards = picture.table->boardsMm;
    const double top = seen({0, boards.top + boards.height}).y() + 0.012 * high;
    flag_ = QRectF(std::clamp(centre.x() - size.width() / 2, 0.0, std::max(0.0, width() - size.width())),
                   std::min(top, height() - size.height()), size.width(), size.height());
    painter.setPen(QPen(theme.overload, high / 360));
    painter.drawLine(centre + QPointF(0, radius + breadth / 2), QPointF(centre.x(), flag_.top()));
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.overload);
    painter.drawRoundedRect(flag_, 4, 4);
    sheet_.draw(painter, flag_.adjusted(0.012 * high, 0, -0.012 * high, 0), qs(idea.breaks),
                {font, theme.dark ? theme.benchBottom : QColor(Qt::white), Qt::AlignCenter, true});
}

}  // namespace tiepoint::ui
