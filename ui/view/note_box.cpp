#include "ui/view/note_box.h"

#include <QFontMetrics>
#include <QKeyEvent>

namespace tiepoint::ui {
namespace {

constexpr double kNoteBoxWidth = 510, kNoteBoxHeight = 51, kNoteText = 24;  ///< in the 1080-line layout
constexpr double kSmallestText = 16, kNotePadding = 39, kNoteEdge = 12;     ///< there too
constexpr int kMostLetters = 180;  ///< at most two bytes each of what a note holds

}  // namespace

NoteBox::NoteBox(BenchDocument& document, QWidget* parent) : QLineEdit(parent), document_(document) {
    setAccessibleName(tr("Note"));
    setPlaceholderText(tr("A note, then Enter"));
    setMaxLength(kMostLetters);
    hide();
    connect(this, &QLineEdit::textChanged, this, &NoteBox::fitText);
    // The window has what is typed taken over before a bench is saved or goes; on another bench it has no place.
    connect(this, &QLineEdit::editingFinished, this, &NoteBox::accept);
    connect(&document_, &BenchDocument::benchReplaced, this, [this] { leave({}); });
}

void NoteBox::setTheme(const Theme& theme) {
    look_.theme = &theme;
    followLook();
}

/// It is as large as the window's other words.
void NoteBox::followLook() {
    look_ = lookFor(*look_.theme, window()->size());
    setFont(look_.font(kNoteText));
    setFixedHeight(look_.ipx(kNoteBoxHeight));
    fitText();
    setStyleSheet(
        QStringLiteral(
            "QLineEdit { color: %1; background: %2; border: 2px solid %3; border-radius: 4px; padding: 2px 6px; }")
            .arg(look_.theme->text.name(), look_.theme->card.name(), look_.theme->accent.name()));
}

void NoteBox::beginNew(const Hole& at, QPoint place) {
    id_.clear();
    at_ = at;
    begin({}, place);
}

void NoteBox::beginEdit(const std::string& id, QPoint place) {
    const Note* note = document_.bench()->findNote(id);
    if (!note) return;
    id_ = id;
    begin(QString::fromStdString(note->text), place);
}

void NoteBox::begin(const QString& text, QPoint place) {
    place_ = place;
    followLook();
    setText(text);
    selectAll();
    fitText();
    show();
    raise();
    setFocus(Qt::OtherFocusReason);
}

void NoteBox::fitText() {
    const QRect room = parentWidget()->rect();
    const int least = qMin(look_.ipx(kNoteBoxWidth), room.width());
    const int most = qMax(least, room.width() - 2 * look_.ipx(kNoteEdge));
    double size = kNoteText;
    int needed = 0;
    for (;; size -= 1) {  // smaller where the window is too narrow
        needed = QFontMetrics(look_.font(size)).horizontalAdvance(text()) + look_.ipx(kNotePadding);
        if (needed <= most || size <= kSmallestText) break;
    }
    setFont(look_.font(size));
    setFixedWidth(qBound(least, needed, most));
    move(qBound(0, place_.x(), qMax(0, room.width() - width())),
         qBound(0, place_.y(), qMax(0, room.height() - height())));
}

void NoteBox::accept() {
    if (isHidden()) return;
    const std::string words = text().trimmed().toStdString();
    Edit edit;
    std::string id = id_;
    if (id_.empty() && !words.empty()) {
        id = freeId(*document_.bench(), "N");
        edit = {"Pin note " + id, {AddNote{{id, at_, words, {}}}}};
    } else if (const Note* note = document_.bench()->findNote(id_); note && words.empty()) {
        edit = removeEdit(*document_.bench(), {id_});
        id.clear();
    } else if (note && note->text != words) {
        Note changed = *note;
        changed.text = words;
        edit = {"Write note " + id_, {ReplaceNote{changed}}};
    }
    if (!edit.operations.empty()) {
        if (const auto why = document_.push(edit)) Q_EMIT document_.refused(*why);
    }
    leave(QString::fromStdString(id));
}

void NoteBox::leave(const QString& id) {
    if (isHidden()) return;
    hide();
    Q_EMIT done(id);
}

bool NoteBox::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();  // what is typed here is no shortcut of the window
        return true;
    }
    return QLineEdit::event(event);
}

void NoteBox::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return leave({});
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return accept();
    QLineEdit::keyPressEvent(event);
}

void NoteBox::focusOutEvent(QFocusEvent* event) {
    QLineEdit::focusOutEvent(event);
    if (isVisible() && event->reason() == Qt::MouseFocusReason) accept();
}

}  // namespace tiepoint::ui
