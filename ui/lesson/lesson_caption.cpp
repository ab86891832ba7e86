#include "ui/lesson/lesson_caption.h"

#include "ui/lesson/lesson_sizes.h"
#include "ui/theme/qs.h"

#include <QPainter>

namespace tiepoint::ui {

LessonCaption::LessonCaption(const LessonRun& run, QWidget* parent)
    : QWidget(parent),
      run_(run),
      look_{&theme(ThemeName::Day), 1} {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    connect(&run, &LessonRun::changed, this, [this] {
        if (run_.isRunning()) setAccessibleName(qs(run_.present().caption));
        update();
    });
    hide();
}

void LessonCaption::setLook(const Look& look) {
    look_ = look;
    update();
}

int LessonCaption::wantedHeight(int window) const {
    return qRound(window * (kCaptionBandShare + (run_.showsWrongIdea() ? kOverBoardShare : 0)));
}

void LessonCaption::setGhostLeft(int left) {
    ghostLeft_ = left;
    update();
}

void LessonCaption::paintEvent(QPaintEvent*) {
    if (!run_.isRunning()) return;
    QPainter painter(this);
    sheet_.begin();
    const Theme& theme = *look_.theme;
    const double high = window()->height(), side = kLessonSideShare * high;
    sheet_.draw(painter, QRectF(side, 0.008 * high, width() - 2 * side, (kCaptionBandShare - 0.008) * high),
                qs(run_.present().caption),
                {uiFont(high / kCaptionLines, QFont::Bold), theme.text, Qt::AlignLeft | Qt::AlignVCenter});
    if (!run_.showsWrongIdea() || ghostLeft_ <= 0) return;
    const QFont font = uiFont(high / kAnswerLines);
    const double top = kCaptionBandShare * high, row = kOverBoardShare * high;
    sheet_.draw(painter, QRectF(side, top, ghostLeft_ - 2 * side, row), QStringLiteral("What the board does"),
                {font, theme.dimTextOnBench, Qt::AlignLeft | Qt::AlignVCenter});
    sheet_.draw(painter, QRectF(ghostLeft_, top, width() - side - ghostLeft_, row), qs(run_.present().ask->wrong->idea),
                {font, theme.dimTextOnBench, Qt::AlignRight | Qt::AlignVCenter});
}

}  // namespace tiepoint::ui
