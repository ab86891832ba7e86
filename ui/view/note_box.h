#pragma once
// A field over the board in which a note is written, as broad as its text. Enter pins it, Escape leaves it as it was, an empty one is taken away.

#include "ui/document/bench_document.h"
#include "ui/theme/look.h"

#include <QLineEdit>

namespace tiepoint::ui {

class NoteBox : public QLineEdit {
    Q_OBJECT
public:
    NoteBox(BenchDocument& document, QWidget* parent);

    void setTheme(const Theme& theme);
    /// Opens at a place of the parent, for a new note at a hole or the one with that id.
    void beginNew(const Hole& at, QPoint place);
    void beginEdit(const std::string& id, QPoint place);

Q_SIGNALS:
    void done(const QString& id);  ///< of the note that was written, or empty

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void followLook();
    void begin(const QString& text, QPoint place);
    void fitText();  ///< is as broad as its text, so that all of a long note is seen
    void accept();
    void leave(const QString& id);

    BenchDocument& document_;
    Look look_{&theme(ThemeName::Day), 1};
    std::string id_;  ///< empty: a new one
    Hole at_;
    QPoint place_;
};

}  // namespace tiepoint::ui
