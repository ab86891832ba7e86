#include "ui/window/title_line.h"

#include "core/bench/describe.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kTitleSide = 30;
constexpr double kMenuGap = 34;
constexpr double kLongestTitle = 700;

QString boardWords(const Bench& bench) {
    if (bench.boards.size() == 1) return qs(describeBoard(bench.boards.front()));
    int tiePoints = 0;
    for (const Board& board : bench.boards) tiePoints += board.kind->tiePoints;
    return QStringLiteral("%1 boards, %2 tie points").arg(bench.boards.size()).arg(tiePoints);
}

}  // namespace

TitleLine::TitleLine(BenchDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      look_{&theme(ThemeName::Day), 1},
      menus_(new QMenuBar(this)),
      edit_(new QLineEdit(this)) {
    menus_->setNativeMenuBar(false);
    edit_->hide();
    edit_->setAccessibleName(QStringLiteral("Title of the bench"));
    edit_->installEventFilter(this);
    connect(edit_, &QLineEdit::editingFinished, this, &TitleLine::rename);
    connect(&document_, &BenchDocument::benchReplaced, edit_, &QWidget::hide);
    const auto follow = [this] {
        arrange();
        update();
    };
    connect(&document_, &BenchDocument::benchChanged, this, follow);
    connect(&document_, &BenchDocument::fileChanged, this, follow);
}

QString TitleLine::shownTitle() const {
    const QString title = plainText(document_.bench()->title);
    return document_.isModified() ? title + QStringLiteral(" \u2022") : title;
}

void TitleLine::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    menus_->setStyleSheet(
        QStringLiteral("QMenuBar { background: transparent; spacing: 0; } "
                       "QMenuBar::item { color: %1; background: transparent; padding: %2px %3px; border-radius: %4px; }"
                       "QMenuBar::item:selected, QMenuBar::item:pressed { color: %5; background: %6; }")
            .arg(theme.dimTextOnBench.name())
            .arg(look.ipx(6))
            .arg(look.ipx(12))
            .arg(look.ipx(5))
            .arg(theme.text.name(), mix(theme.benchTop, theme.accent, 0.16).name()));
    menus_->setFont(look.font(text::kBody - 3));
    edit_->setStyleSheet(fieldColours());
    edit_->setFont(look.font(text::kTitle, QFont::DemiBold));
    arrange();
    update();
}

QString TitleLine::fieldColours() const {
    const Theme& theme = *look_.theme;
    return QStringLiteral("QLineEdit { color: %1; background: %2; border: 2px solid %3; border-radius: 4px; }")
        .arg(theme.text.name(), theme.card.name(), theme.accent.name());
}

double TitleLine::titleWidth() const {
    const double words = QFontMetricsF(look_.font(text::kTitle, QFont::DemiBold)).horizontalAdvance(shownTitle());
    return std::min(words + look_.px(4), look_.px(kLongestTitle));
}

void TitleLine::arrange() {
    const double left = look_.px(kTitleSide) + titleWidth() + look_.px(kMenuGap);
    const QSize wanted = menus_->sizeHint();
    menus_->setGeometry(static_cast<int>(left), (height() - wanted.height()) / 2 + look_.ipx(2),
                        wanted.width() + look_.ipx(30), wanted.height());
    edit_->setGeometry(look_.ipx(kTitleSide - 6), look_.ipx(8), static_cast<int>(std::max(titleWidth(), look_.px(420))),
                       height() - look_.ipx(16));
}

void TitleLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setFont(look_.font(text::kTitle, QFont::DemiBold));
    painter.setPen(look_.theme->text);
    const QRectF left(look_.px(kTitleSide), 0, titleWidth(), height());
    const QString title = QFontMetricsF(painter.font()).elidedText(shownTitle(), Qt::ElideRight, left.width());
    painter.drawText(left, Qt::AlignLeft | Qt::AlignVCenter, title);
    painter.setFont(look_.font(text::kBody));
    painter.setPen(look_.theme->dimTextOnBench);
    const double menusEnd = menus_->geometry().right() + look_.px(20);
    const QRectF right(menusEnd, 0, width() - look_.px(kTitleSide) - menusEnd, height());
    painter.drawText(
        right, Qt::AlignRight | Qt::AlignVCenter,
        QFontMetricsF(painter.font()).elidedText(boardWords(*document_.bench()), Qt::ElideRight, right.width()));
}

void TitleLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void TitleLine::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->position().x() < look_.px(kTitleSide) + titleWidth())
        beginRename();
    else
        QWidget::mouseDoubleClickEvent(event);
}

void TitleLine::beginRename() {
    edit_->setText(qs(document_.bench()->title));
    edit_->selectAll();
    edit_->show();
    edit_->raise();
    edit_->setFocus(Qt::OtherFocusReason);
}

void TitleLine::rename() {
    if (edit_->isHidden()) return;
    edit_->hide();
    if (edit_->text() == qs(document_.bench()->title)) return;  // untouched, blanks at its ends and all
    const std::string title = edit_->text().trimmed().toStdString();
    if (title.empty() || title == document_.bench()->title) return;
    if (const auto refusal = document_.push({"Rename", {SetTitle{title}}})) Q_EMIT document_.refused(*refusal);
}

bool TitleLine::eventFilter(QObject* watched, QEvent* event) {
    const bool escape = event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape;
    if (watched != edit_ || !escape) return QWidget::eventFilter(watched, event);
    edit_->setText(qs(document_.bench()->title));
    edit_->hide();
    return true;
}

}  // namespace tiepoint::ui
