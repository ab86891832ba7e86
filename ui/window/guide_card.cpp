#include "ui/window/guide_card.h"

#include "ui/theme/panels.h"
#include "ui/view/bench_marks.h"
#include "ui/window/tap_picture.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kPictureSide = 24, kPictureBelow = 14;  ///< as the cards and the tray
constexpr double kSlipLeft = 24;                         // in line with the first card
constexpr double kSlipHeadline = 36, kSlipReason = 26, kSlipAction = 24;
constexpr double kReasonTop = 62, kActionHeight = 48, kActionBelow = 22, kReasonGap = 8;
constexpr double kSilhouetteTop = 24, kSilhouetteBreadth = 44, kSilhouetteHeight = 20, kSilhouetteGap = 10;
constexpr double kStepLine = 42;      ///< the silhouettes of the steps with their words
constexpr double kMetalShare = 0.44;  ///< of a slip's card, for the close-ups
constexpr double kGuidePad = 28, kDot = 13, kDotGap = 9, kDotsTop = 36, kButtonsTop = 176;

}  // namespace

GuideCard::GuideCard(BenchView& view, LiveBench& live, QWidget* parent)
    : QWidget(parent),
      view_(view),
      look_{&theme(ThemeName::Day), 1},
      pictureButton_(new QToolButton(this)),
      closeButton_(new QToolButton(this)),
      closeups_(new MetalCloseups(this)) {
    pictureButton_->setText(QStringLiteral("The tap and the pipe"));
    pictureButton_->setCheckable(true);
    closeButton_->setText(QStringLiteral("\u00d7"));
    closeButton_->setAccessibleName(QStringLiteral("Close the guide"));
    connect(pictureButton_, &QToolButton::toggled, this, [this](bool shown) {
        pictureShown_ = shown;
        placeIn(frame_);
        update();
    });
    connect(closeButton_, &QToolButton::clicked, this, &GuideCard::end);
    connect(&live, &LiveBench::snapshotReady, this, &GuideCard::follow);
    hide();
}

void GuideCard::begin() {
    running_ = true;
    advice_ = {};
    pictureButton_->setChecked(false);
    follow();
    show();
    raise();
    placeIn(frame_);
}

void GuideCard::end() {
    if (!running_) return;
    running_ = false;
    view_.marks().set(&Marks::guide, std::vector<Hole>());
    view_.marks().set(&Marks::hop, std::optional<Hop>());
    hide();
    Q_EMIT ended();
}

void GuideCard::follow() {
    if (!running_) return;
    const auto snapshot = view_.picture().snapshot;  // of the present bench, or none
    if (!snapshot) return;
    const bool wasSlip = isSlip(), showedMetal = showsMetal();
    advice_ = firstBuildAdvice(*snapshot, advice_.step);
    markWay();
    std::string said = advice_.title + (isSlip() ? " " : ": ") + advice_.text;
    if (isSlip()) said += " " + advice_.action + ".";
    const QString words = QString::fromStdString(said);
    if (accessibleName() != words) setAccessibleName(words);
    if (showsMetal())
        closeups_->show(snapshot->layout->bench, *advice_.mend, advice_.now, advice_.then);
    else
        closeups_->hide();
    if (wasSlip != isSlip() || showedMetal != showsMetal()) placeIn(frame_);
    update();
}

/// Where a leg has to move, both places are marked; else the holes that come next.
void GuideCard::markWay() {
    std::optional<Hop> hop;
    if (showsMetal()) hop = Hop{*advice_.mend->is, *advice_.mend->belongs};
    view_.marks().set(&Marks::guide, hop ? std::vector<Hole>() : advice_.holes);
    view_.marks().set(&Marks::hop, hop);
}

void GuideCard::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    setStyleSheet(
        QStringLiteral(
            "QToolButton { color: %1; background: transparent; border: none; padding: 0 %3px; font-weight: 600; }"
            "QToolButton:hover, QToolButton:focus, QToolButton:checked { color: %2; text-decoration: underline; }")
            .arg(theme.accent.name(), theme.text.name())
            .arg(look.ipx(8)));
    for (QToolButton* button : {pictureButton_, closeButton_}) button->setFont(look.font(text::kSmall + 1));
    closeups_->setLook(look);
    arrange();
    update();
}

void GuideCard::placeIn(const QRect& frame) {
    frame_ = frame;
    if (isSlip()) {
        QRect broad = frame;
        broad.setLeft(look_.ipx(kSlipLeft));
        if (showsMetal()) broad.setBottom(parentWidget()->height() - look_.ipx(kPictureBelow));
        setGeometry(broad);
        raise();
        return arrange();
    }
    QRect place = frame;
    if (pictureShown_) {  // over the other cards and the tray, never over the board
        const int side = look_.ipx(kPictureSide);
        place.setLeft(side);
        place.setRight(parentWidget()->width() - side);
        place.setBottom(parentWidget()->height() - look_.ipx(kPictureBelow));
        raise();
    }
    setGeometry(place);
    arrange();
}

void GuideCard::arrange() {
    const QSize close = closeButton_->sizeHint(), picture = pictureButton_->sizeHint();
    pictureButton_->setVisible(!isSlip());
    const int metalLeft = static_cast<int>(look_.px(kGuidePad) + slipBreadth() + look_.px(kGuidePad));
    closeups_->setGeometry(metalLeft, look_.ipx(kSilhouetteTop - 8),
                           width() - metalLeft - look_.ipx(16) - close.width(), height() - look_.ipx(kSilhouetteTop));
    closeButton_->setGeometry(width() - look_.ipx(16) - close.width(), look_.ipx(18), close.width(), look_.ipx(36));
    pictureButton_->setGeometry(look_.ipx(kGuidePad - 8), look_.ipx(kButtonsTop), picture.width(), look_.ipx(36));
}

void GuideCard::paintEvent(QPaintEvent*) {
    sheet_.begin();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    if (isSlip()) return paintSlip(painter);
    const int column = wordsBreadth();
    if (pictureShown_) {
        const double pad = look_.px(kGuidePad);
        paintTapPicture(painter, sheet_, look_,
                        QRectF(column + pad, pad, closeButton_->x() - column - 2 * pad, height() - 2 * pad));
    }
    paintStep(painter);
}

double GuideCard::slipBreadth() const {
    const double breadth = width() - 2 * look_.px(kGuidePad);
    return showsMetal() ? (1 - kMetalShare) * breadth : breadth;
}

/// Which step it is, as small boards: done ones tinted, the present one solid.
void GuideCard::paintSilhouettes(QPainter& painter) {
    const Theme& theme = *look_.theme;
    double x = look_.px(kGuidePad);
    for (int step = 0; step < kFirstBuildSteps; ++step) {
        const QColor fill = step < advice_.step    ? mix(theme.card, theme.accent, 0.22)
                            : step == advice_.step ? theme.text
                                                   : QColor(Qt::transparent);
        const QRectF board(x, look_.px(kSilhouetteTop), look_.px(kSilhouetteBreadth), look_.px(kSilhouetteHeight));
        paintSmallBoard(painter, board, fill, theme.dimText, look_.px(1.6));
        x += look_.px(kSilhouetteBreadth + kSilhouetteGap);
    }
    const Lesson& lesson = firstBuildLesson();
    const QString caption = QString::fromStdString(lesson.steps[static_cast<std::size_t>(advice_.step)].caption);
    const double left = x + look_.px(6), right = look_.px(kGuidePad) + slipBreadth();
    sheet_.draw(painter, QRectF(left, look_.px(kSilhouetteTop - 6), right - left, look_.px(kSilhouetteHeight + 12)),
                QStringLiteral("Step %1 of %2: %3").arg(advice_.step + 1).arg(kFirstBuildSteps).arg(caption),
                {look_.font(text::kSmall + 1), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
}

/// What went wrong, why, and in a frame what to do.
void GuideCard::paintSlip(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const double left = look_.px(kGuidePad), breadth = slipBreadth();
    double down = 0;
    if (showsMetal()) {
        paintSilhouettes(painter);
        down = look_.px(kStepLine);
    }
    const double right = showsMetal() ? left + breadth : closeButton_->x();
    sheet_.draw(painter, QRectF(left, down + look_.px(14), right - left, look_.px(46)),
                QString::fromStdString(advice_.title),
                {look_.font(kSlipHeadline, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    const QRectF frame(left, height() - look_.px(kActionBelow + kActionHeight), breadth, look_.px(kActionHeight));
    const double reasonTop = down + look_.px(kReasonTop);
    sheet_.draw(painter, QRectF(left, reasonTop, breadth, frame.top() - look_.px(kReasonGap) - reasonTop),
                QString::fromStdString(advice_.text),
                {look_.font(kSlipReason), theme.text, Qt::AlignLeft | Qt::AlignTop, true});
    painter.setPen(QPen(theme.accent, look_.px(2.2)));
    painter.setBrush(mix(theme.card, theme.accent, theme.dark ? 0.14 : 0.09));
    painter.drawRoundedRect(frame, look_.px(6), look_.px(6));
    sheet_.draw(painter, frame.adjusted(look_.px(18), 0, -look_.px(12), 0), QString::fromStdString(advice_.action),
                {look_.font(kSlipAction, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
}

int GuideCard::wordsBreadth() const { return pictureShown_ ? frame_.width() : width(); }

void GuideCard::paintStep(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const int column = wordsBreadth();
    // Steps: done ones are filled, the present one is a ring, the others are small.
    double x = look_.px(kGuidePad);
    for (int i = 0; i < kFirstBuildSteps; ++i) {
        const double r = look_.px(i == advice_.step ? kDot * 0.62 : kDot * 0.5);
        painter.setPen(QPen(theme.accent, look_.px(2.5)));
        painter.setBrush(i < advice_.step ? QBrush(theme.accent) : QBrush(Qt::NoBrush));
        painter.drawEllipse(QPointF(x + look_.px(kDot / 2), look_.px(kDotsTop)), r, r);
        x += look_.px(kDot + kDotGap);
    }
    const double wordsLeft = x + look_.px(10);
    sheet_.draw(painter, QRectF(wordsLeft, look_.px(16), std::min(column, closeButton_->x()) - wordsLeft, look_.px(40)),
                QString::fromStdString(advice_.title),
                {look_.font(text::kBody, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    const QRectF text(look_.px(kGuidePad), look_.px(62), column - 2 * look_.px(kGuidePad), look_.px(kButtonsTop - 62));
    sheet_.draw(painter, text, QString::fromStdString(advice_.text),
                {look_.font(text::kSmall + 1), theme.text, Qt::AlignLeft | Qt::AlignTop, true});
}

void GuideCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        end();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
