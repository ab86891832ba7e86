#include "ui/window/start_card.h"

#include "core/bench/bench_file.h"
#include "core/course/shipped.h"
#include "core/words/words.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QDateTime>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLocale>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kShareOfWindow = 0.83, kVeil = 0.6;
constexpr double kStartSide = 24, kStartBelow = 14, kStartPad = 30, kHeader = 78, kRecoveryRow = 58;
constexpr int kCourseColumns = 2;
constexpr double kCourseRow = 112, kCourseGap = 8, kColumnGap = 16, kOwnHeight = 116, kOwnGap = 16;
constexpr double kFirstPanelShare = 0.185, kWordButtonHeight = 54;
constexpr double kExercisesAway = 26, kExercisesWords = 120;
constexpr std::size_t kMostOwn = 4;
constexpr qint64 kLargestPictured = 1 << 20;  // bytes of a file of one's own

/// A lesson's second step, where most of it stands, in the view that it is taught in.
Miniature pictureOfLesson(const ShippedLesson& shipped) {
    const Lesson& lesson = *shipped.lesson;
    const int step = std::min(1, lesson.stepCount() - 1);
    Miniature picture;
    picture.bench = situationOf(lesson, step).bench;
    for (const LessonStep& each : lesson.steps) {
        if (!each.show || !(each.show->strips || each.show->voltage)) continue;
        picture.views = *each.show;
        break;
    }
    picture.frameMm = boardsFrameMm(*picture.bench);
    return picture;
}

/// "today", "yesterday", "Monday", "12 Nov".
QString dayWords(const QDateTime& then) {
    constexpr int kWeek = 7;
    const qint64 days = then.date().daysTo(QDate::currentDate());
    if (days == 0) return QStringLiteral("today");
    if (days == 1) return QStringLiteral("yesterday");
    const bool near = days > 1 && days < kWeek;
    return QLocale(QLocale::English).toString(then.date(), near ? QStringLiteral("dddd") : QStringLiteral("d MMM"));
}

}  // namespace

StartCard::StartCard(const std::vector<Recovery>& recoveries, const QStringList& recent, QWidget* parent)
    : QWidget(parent),
      look_{&theme(ThemeName::Day), 1},
      recoveries_(recoveries),
      first_(new FirstPanel(pictures_, this)),
      new_(new WordButton(QStringLiteral("New bench"), WordButton::Shape::Plain, this)),
      open_(new WordButton(QStringLiteral("Open a file…"), WordButton::Shape::Plain, this)),
      recover_(new WordButton(QStringLiteral("Recover"), WordButton::Shape::Plain, this)),
      forget_(new WordButton(QStringLiteral("Throw away"), WordButton::Shape::Plain, this)),
      close_(new WordButton(QStringLiteral("To the bench"), WordButton::Shape::Link, this)) {
    setAccessibleName(QStringLiteral("Start"));
    setFocusPolicy(Qt::ClickFocus);
    recover_->setVisible(!recoveries_.empty());
    forget_->setVisible(!recoveries_.empty());
    addBenches();
    addExercises();
    addOwn(recent);
    connectButtons();
    std::vector<QWidget*> order{first_->beginButton()};
    order.insert(order.end(), benches_.begin(), benches_.end());
    order.insert(order.end(), exercises_.begin(), exercises_.end());
    order.insert(order.end(), {new_, open_});
    order.insert(order.end(), own_.begin(), own_.end());
    order.insert(order.end(), {recover_, forget_, close_});
    for (std::size_t i = 1; i < order.size(); ++i) setTabOrder(order[i - 1], order[i]);
}

StartCard::~StartCard() = default;

void StartCard::connectButtons() {
    connect(first_->beginButton(), &QAbstractButton::clicked, this, &StartCard::firstChosen);
    connect(new_, &QAbstractButton::clicked, this, &StartCard::newChosen);
    connect(open_, &QAbstractButton::clicked, this, &StartCard::openChosen);
    connect(close_, &QAbstractButton::clicked, this, [this] {
        hide();
        Q_EMIT closed();
    });
    connect(recover_, &QAbstractButton::clicked, this, [this] { Q_EMIT recoveryChosen(recoveries_.front()); });
    connect(forget_, &QAbstractButton::clicked, this, [this] {
        Q_EMIT recoveryRefused(recoveries_.front());
        recoveries_.erase(recoveries_.begin());
        recover_->setVisible(!recoveries_.empty());
        forget_->setVisible(!recoveries_.empty());
        arrange();
        update();
    });
}

void StartCard::setVisible(bool visible) {
    // The keyboard goes back to whoever takes it: passed on from key to key it would seem to have been sent to the bench with Tab.
    if (QWidget* focus = focusWidget(); !visible && focus) focus->clearFocus();
    QWidget::setVisible(visible);
}

void StartCard::addBenches() {
    for (const ShippedLesson& each : shippedLessons()) {
        if (each.number == 0) continue;  // the first build stands in front
        const QString name = qs(each.name);
        auto* button = new BenchButton(name,
                                       {QString::number(each.number), qs(each.lesson->title), qs(each.lesson->summary),
                                        QStringLiteral("%1 min").arg(each.lesson->minutes)},
                                       this);
        connect(button, &QAbstractButton::clicked, this, [this, name] { Q_EMIT lessonChosen(name); });
        connect(button, &BenchButton::resized, this,
                [this, button, &each] { draw(button, [&each] { return pictureOfLesson(each); }); });
        benches_.push_back(button);
    }
}

void StartCard::addExercises() {
    for (const ShippedLesson& each : shippedExercises()) {
        auto* button = new WordButton(qs(each.lesson->title), WordButton::Shape::Link, this);
        button->setToolTip(plainTip(qs(each.lesson->summary)));
        button->setAccessibleName(QStringLiteral("Exercise: ") + qs(each.lesson->title));
        connect(button, &QAbstractButton::clicked, this, [this, name = qs(each.name)] { Q_EMIT lessonChosen(name); });
        exercises_.push_back(button);
    }
}

void StartCard::addOwn(const QStringList& recent) {
    for (const QString& path : recent) {
        if (own_.size() == kMostOwn) return;
        const QFileInfo file(path);
        QString name = file.fileName();
        for (const char* ending : {".json", ".bench"})
            if (name.endsWith(QLatin1String(ending))) name.chop(static_cast<int>(qstrlen(ending)));
        auto* button = new BenchButton(path, {{}, plainText(name), dayWords(file.lastModified())}, this);
        button->setToolTip(plainTip(path));
        connect(button, &QAbstractButton::clicked, this, [this, path] { Q_EMIT fileChosen(path); });
        connect(button, &BenchButton::resized, this, [this, button, path] {
            draw(button, [path] {
                Miniature picture;
                if (QFileInfo(path).size() > kLargestPictured) return picture;
                auto read = readBenchFile(path.toStdString());
                if (!read) return picture;
                picture.bench = std::make_shared<const Bench>(std::move(read).value().bench);
                picture.frameMm = boardsFrameMm(*picture.bench);
                return picture;
            });
        });
        own_.push_back(button);
    }
}

void StartCard::draw(BenchButton* button, const PicturesBeside::Fill& fill) {
    const QSize size = button->pictureSize();
    if (size.isEmpty()) return;
    pictures_.order(
        [fill, size, theme = look_.theme, ratio = devicePixelRatioF()] {
            Miniature picture = fill();
            picture.size = size;
            picture.ratio = ratio;
            picture.theme = theme;
            return picture;
        },
        [this, button, size, theme = look_.theme](const QImage& image) {
            if (button->pictureSize() == size && look_.theme == theme) button->setPicture(image);
        });
}

std::vector<WordButton*> StartCard::wordButtons() const {
    std::vector<WordButton*> all{new_, open_, recover_, forget_, close_};
    all.insert(all.end(), exercises_.begin(), exercises_.end());
    return all;
}

void StartCard::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    for (BenchButton* button : benches_) button->setLook(look);
    for (BenchButton* button : own_) button->setLook(look);
    for (WordButton* button : wordButtons()) button->setLook(look);
    first_->setLook(look);
    update();
}

void StartCard::placeIn(const QRect& frame) {
    setGeometry(frame);
    arrange();
}

QRectF StartCard::surface() const {
    const double high = std::min(kShareOfWindow * window()->height(), height() - look_.px(kStartBelow));
    const double side = look_.px(kStartSide);
    return {side, height() - high, width() - 2 * side, high - look_.px(kStartBelow)};
}

void StartCard::arrange() {
    const double pad = look_.px(kStartPad), buttonHeight = look_.px(kWordButtonHeight);
    const QRectF inside = surface().adjusted(pad, look_.px(14), -pad, -look_.px(18));
    const double closeWidth = close_->wantedWidth();
    close_->setGeometry(
        QRectF(inside.right() - closeWidth, inside.top() + look_.px(4), closeWidth, buttonHeight).toRect());
    arrangeExercises(QRectF(inside.left(), close_->y(), close_->x() - inside.left(), buttonHeight));
    double top = inside.top() + look_.px(kHeader);
    if (!recoveries_.empty()) {
        double right = inside.right();
        for (WordButton* button : {forget_, recover_}) {
            right -= button->wantedWidth();
            button->setGeometry(QRectF(right, top - look_.px(10), button->wantedWidth(), buttonHeight).toRect());
            right -= look_.px(6);
        }
        top += look_.px(kRecoveryRow);
    }
    ownRow_ = QRectF(inside.left(), inside.bottom() - look_.px(kOwnHeight), inside.width(), look_.px(kOwnHeight));
    const QRectF lessons(inside.left(), top, inside.width(), ownRow_.top() - look_.px(kOwnGap) - top);
    first_->setGeometry(
        QRectF(lessons.left(), lessons.top(), kFirstPanelShare * inside.width(), lessons.height()).toRect());
    arrangeBenches(lessons.adjusted(first_->width() + look_.px(kColumnGap), 0, 0, 0));
    arrangeOwn(ownRow_);
}

void StartCard::arrangeExercises(const QRectF& head) {
    double right = head.right() - look_.px(kExercisesAway);
    for (auto each = exercises_.rbegin(); each != exercises_.rend(); ++each) {
        const double breadth = (*each)->wantedWidth();
        right -= breadth;
        (*each)->setGeometry(QRectF(right, head.top(), breadth, head.height()).toRect());
    }
    const double words = look_.px(kExercisesWords);
    exerciseWords_ = {right - words, head.top(), exercises_.empty() ? 0 : words, head.height()};
}

void StartCard::arrangeBenches(const QRectF& area) {
    const int rows = (static_cast<int>(benches_.size()) + kCourseColumns - 1) / kCourseColumns;
    const double gap = look_.px(kCourseGap), columnGap = look_.px(kColumnGap);
    const double high = std::min(look_.px(kCourseRow), (area.height() - (rows - 1) * gap) / rows);
    const double step = (area.height() - high) / std::max(1, rows - 1);
    const double breadth = (area.width() - (kCourseColumns - 1) * columnGap) / kCourseColumns;
    for (int i = 0; i < static_cast<int>(benches_.size()); ++i) {
        const int column = i / rows, row = i % rows;
        const QPointF at(area.left() + column * (breadth + columnGap), area.top() + row * step);
        benches_[static_cast<std::size_t>(i)]->setGeometry(QRectF(at, QSizeF(breadth, high)).toRect());
    }
}

void StartCard::arrangeOwn(const QRectF& row) {
    const double buttonHeight = look_.px(kWordButtonHeight), gap = look_.px(8);
    const double buttonTop = row.bottom() - buttonHeight;
    const double breadth = (first_->width() - gap) / 2;
    new_->setGeometry(QRectF(row.left(), buttonTop, breadth, buttonHeight).toRect());
    open_->setGeometry(QRectF(row.left() + breadth + gap, buttonTop, breadth, buttonHeight).toRect());
    const double left = first_->geometry().right() + look_.px(kColumnGap);
    const double each = (row.right() - left - (kMostOwn - 1) * gap) / kMostOwn;
    for (std::size_t i = 0; i < own_.size(); ++i)
        own_[i]->setGeometry(QRectF(left + static_cast<double>(i) * (each + gap), row.top() + look_.px(8), each,
                                    row.height() - look_.px(8))
                                 .toRect());
}

QString StartCard::recoveryWords() const {
    const Recovery& recovery = recoveries_.front();
    const QString what =
        recovery.sourcePath.isEmpty() ? QStringLiteral("a bench that had no file yet") : plainText(recovery.sourcePath);
    return QStringLiteral("Unsaved work was left behind: %1, %2.")
        .arg(what, QLocale().toString(recovery.savedAt, QLocale::ShortFormat));
}

/// What stands beside the buttons of the last row.
void StartCard::paintOwn(QPainter& painter) {
    const Theme& theme = *look_.theme;
    painter.setPen(QPen(theme.cardEdge, std::max(1.0, look_.px(1.5))));
    const double line = ownRow_.top() - look_.px(kOwnGap) / 2;
    painter.drawLine(QPointF(ownRow_.left(), line), QPointF(ownRow_.right(), line));
    sheet_.draw(painter, QRectF(ownRow_.left(), ownRow_.top() + look_.px(8), first_->width(), look_.px(40)),
                QStringLiteral("Your benches"),
                {look_.font(text::kBody, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    if (!own_.empty()) return;
    sheet_.draw(painter, ownRow_.adjusted(first_->width() + look_.px(kColumnGap), 0, 0, 0),
                QStringLiteral("What you save will stand here."),
                {look_.font(text::kSmall + 1), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
}

void StartCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = *look_.theme;
    painter.fillRect(rect(), withAlpha(mix(theme.benchTop, theme.benchBottom, 0.5), kVeil));
    const QRectF card = surface();
    paintCard(painter, look_, card);
    const double pad = look_.px(kStartPad);
    sheet_.begin();
    if (!exercises_.empty())
        sheet_.draw(painter, exerciseWords_, QStringLiteral("Exercises:"),
                    {look_.font(text::kBody - 2), theme.dimText, Qt::AlignRight | Qt::AlignVCenter});
    const double titleRight = exerciseWords_.isEmpty() ? card.right() - pad : exerciseWords_.left();
    sheet_.draw(painter,
                QRectF(card.left() + pad, card.top() + look_.px(14), titleRight - card.left() - pad, look_.px(60)),
                qs("A model harbour in " + say("count.number", {{"count", benches_.size()}}) + " lessons"),
                {look_.font(text::kTitle + 4, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    paintOwn(painter);
    if (recoveries_.empty()) return;
    const QRectF row(card.left() + pad, recover_->y(), recover_->x() - card.left() - pad - look_.px(10),
                     recover_->height());
    sheet_.draw(painter, row, recoveryWords(),
                {look_.font(text::kBody - 2), theme.text, Qt::AlignLeft | Qt::AlignVCenter, true});
}

void StartCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) {
        hide();
        Q_EMIT closed();
    } else if (auto* button = qobject_cast<QAbstractButton*>(focusWidget());
               button && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) {
        button->click();
    } else {
        QWidget::keyPressEvent(event);
    }
}

void StartCard::mousePressEvent(QMouseEvent* event) {
    if (surface().contains(event->position())) return QWidget::mousePressEvent(event);
    hide();
    Q_EMIT closed();
}

}  // namespace tiepoint::ui
