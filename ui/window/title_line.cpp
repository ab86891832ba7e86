#include "ui/window/title_line.h"

#include "core/bench/describe.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QFileInfo>
#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kTitleSide = 30;
constexpr double kMenuGap = 34;
constexpr double kFileGap = 14;
constexpr double kLongestTitle = 820;                     ///< with the file's name
constexpr double kNamesShare = 0.72, kTitleShare = 0.55;  ///< of the room beside the menus; of that, the title
constexpr double kLeastRoom = 60;                         ///< in less nothing can be read

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

QString TitleLine::fileName() const {
    const QString path = document_.filePath();
    return path.isEmpty() ? QString() : plainText(QFileInfo(path).fileName());
}

void TitleLine::setRemark(const QString& remark) {
    remark_ = remark;
    arrange();
    update();
}

/// The title comes first, then the name of its file, then the boards; what has to give way is shortened in its middle.
TitleLine::Places TitleLine::places() const {
    const auto wide = [this](const QString& words, double size, QFont::Weight weight) {
        return words.isEmpty() ? 0 : QFontMetricsF(look_.font(size, weight)).horizontalAdvance(words) + look_.px(4);
    };
    const double side = look_.px(kTitleSide), gap = look_.px(kFileGap);
    const double title = wide(shownTitle(), text::kTitle, QFont::DemiBold);
    const double file = wide(besideTitle(), text::kBody - 3, QFont::Normal);
    const double boards = wide(boardWords(*document_.bench()), text::kBody, QFont::Normal);
    const double all = width() - 2 * side - look_.px(2 * kMenuGap) - menuSize().width();
    const double names = title + (file > 0 ? gap + file : 0);
    // The boards are told by the tool tip too, so they give way first.
    const double forNames = std::min({names, std::max(all - boards, kNamesShare * all), look_.px(kLongestTitle)});
    Places places;
    const double forTitle =
        file > 0 ? std::min(title, std::max(forNames - gap - file, kTitleShare * forNames)) : forNames;
    places.title = QRectF(side, 0, forTitle, height());
    if (file > 0) places.file = QRectF(side + forTitle + gap, 0, std::max(0.0, forNames - gap - forTitle), height());
    places.menus = side + forNames + look_.px(kMenuGap);
    const double left = places.menus + menuSize().width() + look_.px(kMenuGap);
    places.boards = QRectF(left, 0, std::max(0.0, width() - side - left), height());
    return places;
}

QSize TitleLine::menuSize() const { return menus_->sizeHint() + QSize(look_.ipx(4), 0); }

void TitleLine::arrange() {
    const Places now = places();
    menus_->setGeometry(static_cast<int>(now.menus), (height() - menuSize().height()) / 2 + look_.ipx(2),
                        menuSize().width(), menuSize().height());
    edit_->setGeometry(look_.ipx(kTitleSide - 6), look_.ipx(8),
                       static_cast<int>(std::max(now.title.width(), look_.px(420))), height() - look_.ipx(16));
    const QString path = plainText(document_.filePath());
    QStringList whole{shownTitle(), remark_, path, boardWords(*document_.bench())};
    whole.removeAll(QString());
    setAccessibleName(whole.join(QStringLiteral(", ")));
    setToolTip(plainTip(whole.join(QLatin1Char('\n'))));
}

void TitleLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    sheet_.begin();
    const Places now = places();
    const auto draw = [&](const QRectF& room, const QString& words, const QFont& font, const QColor& colour,
                          Qt::Alignment side) {
        if (room.width() >= look_.px(kLeastRoom))
            sheet_.draw(painter, room, words, {font, colour, side | Qt::AlignVCenter, false, Qt::ElideMiddle});
    };
    const QColor& dim = look_.theme->dimTextOnBench;
    draw(now.title, shownTitle(), look_.font(text::kTitle, QFont::DemiBold), look_.theme->text, Qt::AlignLeft);
    draw(now.file.translated(0, look_.px(2)), besideTitle(), look_.font(text::kBody - 3), dim, Qt::AlignLeft);
    draw(now.boards, boardWords(*document_.bench()), look_.font(text::kBody), dim, Qt::AlignRight);
}

void TitleLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void TitleLine::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->position().x() < places().title.right())
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
