#include "ui/lesson/lesson_band.h"

#include "ui/lesson/lesson_sizes.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QWheelEvent>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kBoardShape = 2.7;          // breadth of a small board by its height
constexpr double kMostStepBreadth = 0.0525;  // of the width
constexpr int kDecimal = 10;
constexpr double kByTableShare = 0.18;  // of the height: how broad its button is

QString handsInWords(int hands) {
    return hands == 1 ? QStringLiteral("1 hand") : QStringLiteral("%1 hands").arg(hands);
}

}  // namespace

LessonBand::LessonBand(LessonRun& run, QWidget* parent) : QWidget(parent), run_(run), look_{&theme(ThemeName::Day), 1} {
    setFocusPolicy(Qt::StrongFocus);
    connect(&run, &LessonRun::changed, this, &LessonBand::follow);
    connect(&run, &LessonRun::stepChanged, this, [this] { focused_ = typed_ = -1; });
    hide();
}

void LessonBand::setLook(const Look& look) {
    look_ = look;
    update();
}

double LessonBand::side() const { return kLessonSideShare * high(); }

bool LessonBand::countsHands() const {
    return asks() && (run_.phase() == LessonRun::Phase::Vote || run_.phase() == LessonRun::Phase::VoteAgain);
}

int LessonBand::wantedHeight(int window) const {
    double shares = kStepsShare;
    if (asks()) shares += kQuestionShare + tableRow() + answerShare() + (run_.isVeiled() ? 0 : kSeenShare);
    if (ticks()) shares += kTablesShare;
    return qRound(shares * window);
}

void LessonBand::follow() {
    typed_ = -1;
    QString said;
    if (asks()) {
        said = qs(run_.present().ask->question);
        for (std::size_t i = 0; i < run_.present().ask->answers.size(); ++i)
            said += QStringLiteral(" %1: %2.").arg(i + 1).arg(qs(run_.present().ask->answers[i]));
        if (!run_.isVeiled()) said = qs(run_.present().ask->seen);
    } else if (ticks()) {
        said = QStringLiteral("Tables whose boards have been looked at");
    }
    if (said != accessibleName()) setAccessibleName(said);
    update();
}

QRectF LessonBand::answerPlace(int answer) const {
    if (!asks()) return {};
    const int count = static_cast<int>(run_.present().ask->answers.size());
    const double gap = kAnswerGapShare * high(), breadth = (width() - 2 * side() - (count - 1) * gap) / count;
    return {side() + answer * (breadth + gap), (kQuestionShare + tableRow()) * high(), breadth,
            answerShare() * high() - gap / 4};
}

QRectF LessonBand::byTablePlace() const {
    if (!countsHands()) return {};
    const double breadth = kByTableShare * high(), tall = 0.72 * kQuestionShare * high();
    return {width() - side() - breadth, (kQuestionShare * high() - tall) / 2, breadth, tall};
}

QRectF LessonBand::countedPlace(int table) const {
    if (!countsTables()) return {};
    const double gap = kAnswerGapShare * high() / 2, room = width() - 2 * side();
    const double breadth = (room - (LessonRun::kTables - 1) * gap) / LessonRun::kTables;
    return {side() + (table - 1) * (breadth + gap), kQuestionShare * high(), breadth, 0.8 * kTableRowShare * high()};
}

QRectF LessonBand::tablePlace(int table) const {
    if (!ticks()) return {};
    const double gap = kAnswerGapShare * high() / 2, room = width() - 2 * side();
    const double breadth = (room - (LessonRun::kTables - 1) * gap) / LessonRun::kTables;
    return {side() + (table - 1) * (breadth + gap), 0.12 * kTablesShare * high(), breadth,
            0.76 * kTablesShare * high()};
}

QRectF LessonBand::stepPlace(int step) const {
    const int count = std::max(1, run_.lesson() ? run_.lesson()->stepCount() : 1);
    const double gap = 0.019 * high();
    const double breadth = std::min(kMostStepBreadth * width(), (0.72 * width() - side()) / count - gap);
    const double tall = breadth / kBoardShape, row = kStepsShare * high();
    return {side() + step * (breadth + gap), height() - row + (row - tall) / 2, breadth, tall};
}

/// What a click changes: the hands of the table that is counted, or of all.
int LessonBand::counting(int answer) const {
    return run_.countsByTable() ? run_.handsOf(run_.table(), answer) : run_.hands(answer);
}

bool LessonBand::focusNextPrevChild(bool next) {
    if (!countsTables()) return QWidget::focusNextPrevChild(next);
    run_.setTable(std::clamp(run_.table() + (next ? 1 : -1), 1, LessonRun::kTables));
    return true;
}

int LessonBand::answerAt(QPointF place) const {
    for (int i = 0; asks() && i < static_cast<int>(run_.present().ask->answers.size()); ++i) {
        if (answerPlace(i).contains(place)) return i;
    }
    return -1;
}

void LessonBand::paintEvent(QPaintEvent*) {
    if (!run_.isRunning()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    sheet_.begin();
    if (asks()) paintQuestion(painter);
    if (ticks()) paintTables(painter);
    paintSteps(painter);
}

void LessonBand::paintQuestion(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const Prediction& ask = *run_.present().ask;
    const double button = countsHands() ? byTablePlace().width() + side() / 2 : 0;
    const QRectF row(side(), 0, width() - 2 * side() - button, kQuestionShare * high());
    sheet_.draw(painter, row, qs(ask.question),
                {uiFont(high() / kQuestionLines, QFont::DemiBold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    if (countsHands()) paintByTable(painter);
    for (int i = 0; i < static_cast<int>(ask.answers.size()); ++i) paintAnswer(painter, i);
    if (run_.isVeiled()) return;
    const QRectF seen(side(), (kQuestionShare + answerShare()) * high(), width() - 2 * side(), kSeenShare * high());
    sheet_.draw(painter, seen, qs(ask.seen),
                {uiFont(high() / kAnswerLines), theme.text, Qt::AlignLeft | Qt::AlignVCenter, true});
}

void LessonBand::paintAnswer(QPainter& painter, int answer) {
    const Theme& theme = *look_.theme;
    const QRectF frame = answerPlace(answer);
    const bool right = !run_.isVeiled() && answer == run_.present().ask->right;
    const double line = high() / 540;
    painter.setPen(QPen(right                                 ? theme.accent
                        : answer == focused_ && countsHands() ? theme.text
                                                              : theme.cardEdge,
                        right ? 1.8 * line : line));
    painter.setBrush(right ? mix(theme.card, theme.accent, theme.dark ? 0.18 : 0.10) : theme.card);
    painter.drawRoundedRect(frame, 3 * line, 3 * line);
    const QFont font = uiFont(high() / kAnswerLines, QFont::DemiBold);
    const double pad = 0.012 * high();
    // Beside words in the middle of the line; over a diagram in its corner.
    const double head = asksDiagrams() ? kAnswerShare * 0.6 * high() : frame.height();
    const QRectF number(frame.left() + pad, frame.top(), 0.028 * high(), head);
    sheet_.draw(painter, number, QString::number(answer + 1),
                {font, right ? theme.accent : theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
    const int hands = run_.hands(answer), before = run_.handsBefore(answer);
    const int here = countsTables() ? std::max(0, run_.handsOf(run_.table(), answer)) : -1;
    QString counted;
    if (here >= 0)
        counted = QStringLiteral("%1 of %2").arg(here).arg(std::max(0, hands));
    else if (hands >= 0)
        counted = handsInWords(hands);
    else if (run_.phase() == LessonRun::Phase::Talk && before >= 0)
        counted = handsInWords(before);
    if (here < 0 && run_.phase() >= LessonRun::Phase::VoteAgain && before >= 0 && hands >= 0)
        counted = QStringLiteral("%1, was %2").arg(hands).arg(before);
    const QFont small = uiFont(high() / kSmallestLines);
    const double handsBreadth = counted.isEmpty() ? 0 : wordsSize(counted, small, 1e4, false).width() + pad;
    sheet_.draw(painter, QRectF(frame.right() - handsBreadth - pad / 2, frame.top(), handsBreadth, head), counted,
                {small, theme.dimText, Qt::AlignRight | Qt::AlignVCenter});
    if (asksDiagrams()) {
        diagrams_.paint(painter, frame.adjusted(pad, pad, -pad, -pad), run_, answer, theme);
    } else {
        const QRectF words(number.right(), frame.top(), frame.right() - handsBreadth - pad - number.right(),
                           frame.height());
        sheet_.draw(painter, words, qs(run_.present().ask->answers[static_cast<std::size_t>(answer)]),
                    {font, theme.text, Qt::AlignLeft | Qt::AlignVCenter, true});
    }
    if (right) paintTickAt(painter, frame.topRight());
}

/// On the corner of the right answer.
void LessonBand::paintTickAt(QPainter& painter, QPointF corner) {
    const Theme& theme = *look_.theme;
    const double radius = 0.0125 * high();
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.accent);
    const QPointF centre = corner + QPointF(-radius, radius * 0.25);
    painter.drawEllipse(centre, radius, radius);
    QPainterPath tick(centre + QPointF(-0.45, 0.02) * radius);
    tick.lineTo(centre + QPointF(-0.1, 0.38) * radius);
    tick.lineTo(centre + QPointF(0.48, -0.36) * radius);
    painter.strokePath(tick, QPen(theme.card, 0.22 * radius, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
}

/// A framed number.
void LessonBand::paintTable(QPainter& painter, const QRectF& frame, int table, bool marked) {
    const Theme& theme = *look_.theme;
    const double line = high() / 540;
    painter.setPen(QPen(marked ? theme.accent : theme.cardEdge, marked ? 1.8 * line : line));
    painter.setBrush(marked ? mix(theme.card, theme.accent, theme.dark ? 0.18 : 0.10) : theme.card);
    painter.drawRoundedRect(frame, 3 * line, 3 * line);
    if (table <= 0) return;
    sheet_.draw(painter, frame, QString::number(table),
                {uiFont(high() / kSmallestLines, QFont::DemiBold), theme.text, Qt::AlignCenter});
}

/// The button that counts table by table, and then the tables: the one that is counted is framed, counted ones have a line below.
void LessonBand::paintByTable(QPainter& painter) {
    const Theme& theme = *look_.theme;
    paintTable(painter, byTablePlace(), 0, run_.countsByTable());
    sheet_.draw(painter, byTablePlace(), QStringLiteral("By table"),
                {uiFont(high() / kSmallestLines), theme.text, Qt::AlignCenter});
    for (int table = 1; countsTables() && table <= LessonRun::kTables; ++table) {
        const QRectF frame = countedPlace(table);
        paintTable(painter, frame, table, table == run_.table());
        if (!run_.isCounted(table)) continue;
        const double thick = high() / 270;
        painter.fillRect(QRectF(frame.left() + frame.width() / 4, frame.bottom() - 2 * thick, frame.width() / 2, thick),
                         theme.text);
    }
}

void LessonBand::paintTables(QPainter& painter) {
    const Theme& theme = *look_.theme;
    for (int table = 1; table <= LessonRun::kTables; ++table) {
        const QRectF frame = tablePlace(table);
        const bool ticked = run_.isTicked(table);
        paintTable(painter, frame, 0, ticked);
        sheet_.draw(painter, ticked ? frame.adjusted(0, 0, 0, -0.4 * frame.height()) : frame, QString::number(table),
                    {uiFont(high() / kAnswerLines, QFont::DemiBold), theme.text, Qt::AlignCenter});
        if (ticked) {
            Look look = look_;
            look.scale = high() / 1080;
            paintTick(painter, look, QPointF(frame.center().x(), frame.bottom() - 0.27 * frame.height()), true);
        }
    }
}

void LessonBand::paintSteps(QPainter& painter) {
    const Theme& theme = *look_.theme;
    const int count = run_.lesson()->stepCount();
    const double line = high() / 540;
    for (int step = 0; step < count; ++step) {
        const QColor ink = theme.cardEdge.lightness() > 120 ? theme.dimTextOnBench : theme.cardEdge;
        const QColor fill = step < run_.step()    ? mix(theme.card, theme.accent, 0.22)
                            : step == run_.step() ? theme.text
                                                  : QColor(Qt::transparent);
        paintSmallBoard(painter, stepPlace(step), fill, ink, line);
    }
    const QRectF last = stepPlace(count - 1);
    const double left = last.right() + 0.02 * high();
    QString words = QStringLiteral("Step %1 of %2").arg(run_.step() + 1).arg(count);
    if (run_.phase() == LessonRun::Phase::Talk) words += QStringLiteral(": talk to your neighbours");
    if (run_.phase() == LessonRun::Phase::VoteAgain) words += QStringLiteral(": vote again");
    sheet_.draw(painter, QRectF(left, last.center().y() - 0.03 * high(), width() - side() - left, 0.06 * high()), words,
                {uiFont(high() / kAnswerLines), theme.dimTextOnBench, Qt::AlignLeft | Qt::AlignVCenter});
}

void LessonBand::mousePressEvent(QMouseEvent* event) {
    const int answer = answerAt(event->position());
    if (answer >= 0 && countsHands()) {
        focused_ = answer;
        const int by = event->button() == Qt::RightButton ? -1 : 1;
        return run_.setHands(answer, std::max(0, counting(answer)) + by);
    }
    if (byTablePlace().contains(event->position())) return run_.setTable(run_.countsByTable() ? kWholeClass : 1);
    for (int table = 1; countsTables() && table <= LessonRun::kTables; ++table) {
        if (countedPlace(table).contains(event->position())) return run_.setTable(table);
    }
    for (int table = 1; ticks() && table <= LessonRun::kTables; ++table) {
        if (tablePlace(table).contains(event->position())) return run_.setTicked(table, !run_.isTicked(table));
    }
    for (int step = 0; run_.isRunning() && step < run_.lesson()->stepCount(); ++step) {
        if (stepPlace(step).adjusted(-4, -8, 4, 8).contains(event->position())) return run_.goTo(step);
    }
    QWidget::mousePressEvent(event);
}

void LessonBand::wheelEvent(QWheelEvent* event) {
    const int answer = answerAt(event->position());
    if (answer < 0 || !countsHands() || event->angleDelta().y() == 0) return QWidget::wheelEvent(event);
    run_.setHands(answer, std::max(0, counting(answer)) + (event->angleDelta().y() > 0 ? 1 : -1));
    event->accept();
}

bool LessonBand::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && countsHands() && focused_ >= 0) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const bool digit = key >= Qt::Key_0 && key <= Qt::Key_9;
        if (digit || key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_Left || key == Qt::Key_Right) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void LessonBand::keyPressEvent(QKeyEvent* event) {
    const int count = asks() ? static_cast<int>(run_.present().ask->answers.size()) : 0;
    const int key = event->key();
    if (countsHands() && (key == Qt::Key_Right || key == Qt::Key_Left)) {
        focused_ = std::clamp(focused_ + (key == Qt::Key_Right ? 1 : -1), 0, count - 1);
        typed_ = -1;
        return update();
    }
    if (countsHands() && focused_ >= 0 && (key == Qt::Key_Up || key == Qt::Key_Down))
        return run_.setHands(focused_, std::max(0, counting(focused_)) + (key == Qt::Key_Up ? 1 : -1));
    if (countsHands() && focused_ >= 0 && key >= Qt::Key_0 && key <= Qt::Key_9) {
        const int typed = std::max(0, typed_) * kDecimal + (key - Qt::Key_0);
        const int hands = typed > LessonRun::kMostHands ? key - Qt::Key_0 : typed;
        run_.setHands(focused_, hands);
        typed_ = hands;
        return;
    }
    QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
