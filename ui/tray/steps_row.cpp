#include "ui/tray/steps_row.h"

#include "ui/document/edit_command.h"
#include "ui/paint/miniature.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QWheelEvent>

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kStepLines = 1080, kPictureShare = 13;  // pictures are a 13th of the height
constexpr double kStepTop = 10, kStepWords = 28, kStepGap = 46, kStepWordSize = 18;
constexpr double kBracketAway = 5, kBracketReach = 14, kBracketBreadth = 3;
constexpr double kLaterOpacity = 0.42;
constexpr double kNarrowest = 1.1, kBroadest = 3.2;  // of a picture, by its height

}  // namespace

// --- the list ---

StepsModel::StepsModel(BenchDocument& document, QObject* parent) : QAbstractListModel(parent), document_(document) {
    connect(&document.undoStack(), &QUndoStack::indexChanged, this, &StepsModel::follow);
    connect(&document, &BenchDocument::benchReplaced, this, &StepsModel::follow);
    follow();
}

int StepsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(stamps_.size());
}

QVariant StepsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= document_.undoStack().count()) return {};
    const EditCommand& step = document_.step(index.row());
    if (role == Qt::DisplayRole) return qs(step.note().words);
    if (role == Qt::ToolTipRole) return step.text();
    if (role != Qt::AccessibleTextRole) return {};
    const int present = document_.undoStack().index() - 1;
    const auto state = index.row() == present  ? QStringLiteral("where you are")
                       : index.row() > present ? QStringLiteral("undone")
                                               : QStringLiteral("done");
    return QStringLiteral("%1, %2").arg(step.text(), state);
}

void StepsModel::follow() {
    const int count = document_.undoStack().count();
    std::vector<quint64> now;
    for (int step = 0; step < count; ++step) now.push_back(document_.step(step).stamp());
    const auto same = std::ranges::mismatch(stamps_, now);
    const int kept = static_cast<int>(same.in1 - stamps_.begin());
    if (kept < static_cast<int>(stamps_.size())) {
        beginRemoveRows({}, kept, static_cast<int>(stamps_.size()) - 1);
        stamps_.resize(static_cast<std::size_t>(kept));
        endRemoveRows();
    }
    if (kept < count) {
        beginInsertRows({}, kept, count - 1);
        stamps_ = std::move(now);
        endInsertRows();
    }
    if (count > 0) Q_EMIT dataChanged(index(0), index(count - 1));
}

// --- the row ---

/// Paints one step.
class StepsRow::Painter : public QStyledItemDelegate {
public:
    explicit Painter(StepsRow& owner) : QStyledItemDelegate(&owner), owner_(owner) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        const Look& look = owner_.look_;
        return {owner_.pictureSize_.width() + look.ipx(kStepGap),
                look.ipx(kStepTop + kStepWords) + owner_.pictureSize_.height()};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const Theme& theme = *owner_.look_.theme;
        const int present = owner_.document_.undoStack().index() - 1;
        const bool later = index.row() > present;
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        const QRectF frame = frameIn(option.rect);
        paintJoin(*painter, option.rect, frame, index.row(), later);
        paintPicture(*painter, frame, owner_.pictures_.pictureOf(index.row()), later);
        if (index.row() == present) paintBrackets(*painter, frame);
        const QRectF words(option.rect.left() + 1, frame.bottom() + owner_.look_.px(6), option.rect.width() - 2,
                           owner_.look_.px(kStepWords));
        owner_.sheet_.draw(*painter, words, index.data().toString(),
                           {owner_.look_.font(kStepWordSize, index.row() == present ? QFont::DemiBold : QFont::Normal),
                            index.row() == present ? theme.accent
                            : later                ? theme.dimText
                                                   : theme.text,
                            Qt::AlignHCenter | Qt::AlignTop});
        painter->restore();
    }

    QRectF frameIn(const QRect& item) const {
        const QSize size = owner_.pictureSize_;
        return {item.left() + (item.width() - size.width()) / 2.0, item.top() + owner_.look_.px(kStepTop),
                static_cast<double>(size.width()), static_cast<double>(size.height())};
    }

private:
    /// The line to the step before: of dots where that is still to be done again.
    void paintJoin(QPainter& painter, const QRect& item, const QRectF& frame, int row, bool later) const {
        const Look& look = owner_.look_;
        QPen pen(mix(look.theme->card, look.theme->dimText, 0.7), look.px(2.4), Qt::SolidLine, Qt::RoundCap);
        if (later) pen.setDashPattern({0.01, 2.6});
        painter.setPen(pen);
        const double y = frame.center().y(), gap = look.px(8);
        if (row > 0) painter.drawLine(QPointF(item.left(), y), QPointF(frame.left() - gap, y));
        const bool last = row + 1 == owner_.steps_.rowCount();
        if (last) return;
        const bool nextLater = row + 1 > owner_.document_.undoStack().index() - 1;
        if (nextLater != later) {
            pen.setDashPattern({0.01, 2.6});
            painter.setPen(pen);
        }
        painter.drawLine(QPointF(frame.right() + gap, y), QPointF(item.right() + 1, y));
    }

    void paintPicture(QPainter& painter, const QRectF& frame, const QPixmap& picture, bool later) const {
        const Look& look = owner_.look_;
        painter.save();
        if (later) painter.setOpacity(kLaterOpacity);
        QPainterPath corner;
        corner.addRoundedRect(frame, look.px(4), look.px(4));
        painter.fillPath(corner, look.theme->boardTop);
        painter.setClipPath(corner);
        if (!picture.isNull()) painter.drawPixmap(frame.topLeft(), picture);
        painter.setClipping(false);
        painter.strokePath(corner, QPen(look.theme->boardEdge, std::max(1.0, look.px(1.2))));
        painter.restore();
    }

    void paintBrackets(QPainter& painter, const QRectF& frame) const {
        const Look& look = owner_.look_;
        const double away = look.px(kBracketAway), reach = look.px(kBracketReach);
        const QRectF around = frame.adjusted(-away, -away, away, away);
        QPainterPath brackets;
        for (const auto& [corner, dx, dy] :
             {std::tuple{around.topLeft(), 1, 1}, std::tuple{around.topRight(), -1, 1},
              std::tuple{around.bottomLeft(), 1, -1}, std::tuple{around.bottomRight(), -1, -1}}) {
            brackets.moveTo(corner + QPointF(dx * reach, 0));
            brackets.lineTo(corner);
            brackets.lineTo(corner + QPointF(0, dy * reach));
        }
        painter.strokePath(
            brackets, QPen(look.theme->accent, look.px(kBracketBreadth), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    }

    StepsRow& owner_;
};

StepsRow::StepsRow(BenchDocument& document, QWidget* parent)
    : QListView(parent),
      document_(document),
      look_{&theme(ThemeName::Day), 1},
      pictures_(document),
      steps_(document, this) {
    setModel(&steps_);
    setItemDelegate(new Painter(*this));
    setFlow(QListView::LeftToRight);
    setWrapping(false);
    setUniformItemSizes(true);
    setSelectionMode(QAbstractItemView::NoSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFrameShape(QFrame::NoFrame);
    viewport()->setAutoFillBackground(false);
    setAccessibleName(QStringLiteral("Steps so far"));
    connect(&pictures_, &StepPictures::drawn, viewport(), qOverload<>(&QWidget::update));
    connect(&document.undoStack(), &QUndoStack::indexChanged, this, &StepsRow::followIndex);
    connect(&document, &BenchDocument::benchChanged, this, &StepsRow::followBoards);
    hide();
}

void StepsRow::setLook(const Look& look) {
    look_ = look;
    setStyleSheet(QStringLiteral("QListView { background: transparent; outline: none; }") + scrollBarStyle(look));
    followBoards();
    viewport()->update();
}

/// Pictures have the shape of the boards.
void StepsRow::followBoards() {
    const Rect boards = boardsFrameMm(*document_.bench());
    const double height = look_.px(kStepLines / kPictureShare);
    const double breadth = std::clamp(boards.width / boards.height, kNarrowest, kBroadest);
    const QSize size(qRound(height * breadth), qRound(height));
    const bool changed = size != pictureSize_;
    pictureSize_ = size;
    pictures_.setLook(*look_.theme, size, devicePixelRatioF());
    if (changed) doItemsLayout();
}

QRect StepsRow::pictureFrame(int step) const {
    const QRect item = visualRect(steps_.index(step));
    if (!item.intersects(viewport()->rect())) return {};
    return static_cast<const Painter*>(itemDelegate())->frameIn(item).toRect();
}

void StepsRow::followIndex() {
    following_ = true;
    const QModelIndex present = steps_.index(document_.undoStack().index() - 1);
    setCurrentIndex(present);
    if (present.isValid()) scrollTo(present);
    following_ = false;
    viewport()->update();
}

void StepsRow::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QListView::currentChanged(current, previous);
    if (!following_ && current.isValid()) document_.undoStack().setIndex(current.row() + 1);
}

void StepsRow::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return Q_EMIT closed();
    // Before the first step lies the bench as it was opened.
    if (event->key() == Qt::Key_Left && document_.undoStack().index() == 1) return document_.undoStack().setIndex(0);
    QListView::keyPressEvent(event);
}

void StepsRow::wheelEvent(QWheelEvent* event) {
    const QPoint turn = event->angleDelta();
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() -
                                    (std::abs(turn.x()) > std::abs(turn.y()) ? turn.x() : turn.y()));
    event->accept();
}

void StepsRow::paintEvent(QPaintEvent* event) {
    sheet_.begin();
    QListView::paintEvent(event);
    if (steps_.rowCount() > 0) return;
    QPainter painter(viewport());
    sheet_.draw(painter, QRectF(viewport()->rect()),
                QStringLiteral("Each step that you take is kept here as a picture."),
                {look_.font(kStepWordSize + 1), look_.theme->dimText, Qt::AlignCenter, true});
}

}  // namespace tiepoint::ui
