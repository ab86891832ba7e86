#include "ui/lesson/paper_questions.h"

#include "ui/lesson/lesson_sizes.h"

#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr double kPaperTop = 0.14, kPaperHead = 0.1, kPaperRow = 0.2, kPaperNumber = 0.06, kPaperFoot = 0.08;

}  // namespace

PaperQuestions::PaperQuestions(QWidget* stage) : QWidget(stage), look_{&theme(ThemeName::Day), 1} { hide(); }

void PaperQuestions::setLook(const Look& look) {
    look_ = look;
    update();
}

void PaperQuestions::ask(const QString& heading, const QStringList& questions) {
    heading_ = heading;
    questions_ = questions;
    setAccessibleName(heading + QLatin1Char(' ') + questions.join(QLatin1Char(' ')));
    setGeometry(parentWidget()->rect());
    show();
    raise();
    update();
}

void PaperQuestions::paintEvent(QPaintEvent*) {
    const Theme& theme = *look_.theme;
    QPainter painter(this);
    painter.fillRect(rect(), theme.card);
    sheet_.begin();
    const double high = height(), side = 3 * kLessonSideShare * high, breadth = width() - 2 * side;
    double top = kPaperTop * high;
    sheet_.draw(painter, {side, top, breadth, kPaperHead * high}, heading_,
                {uiFont(high / kAnswerLines), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
    top += kPaperHead * high;
    const QFont font = uiFont(high / kCaptionLines, QFont::DemiBold);
    for (int i = 0; i < questions_.size(); ++i) {
        const double number = kPaperNumber * high;
        sheet_.draw(painter, {side, top, number, kPaperRow * high}, QString::number(i + 1),
                    {font, theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
        sheet_.draw(painter, {side + number, top, breadth - number, kPaperRow * high}, questions_[i],
                    {font, theme.text, Qt::AlignLeft | Qt::AlignVCenter, true});
        top += kPaperRow * high;
    }
    sheet_.draw(painter, {side, high * (1 - 2 * kPaperFoot), breadth, kPaperFoot * high},
                QStringLiteral("Each for yourself, on paper. Then compare with your neighbours."),
                {uiFont(high / kAnswerLines), theme.dimText, Qt::AlignLeft | Qt::AlignVCenter});
}

}  // namespace tiepoint::ui
