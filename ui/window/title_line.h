#pragma once
// The slim line above the bench: its title (a double click renames it), the mark of unsaved changes, the name of its file, the
// menus, and the board.

#include "ui/document/bench_document.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QLineEdit>
#include <QMenuBar>
#include <QWidget>

namespace tiepoint::ui {

class TitleLine : public QWidget {
    Q_OBJECT
public:
    TitleLine(BenchDocument& document, QWidget* parent);

    void setLook(const Look& look);
    QMenuBar& menus() const { return *menus_; }
    QString shownTitle() const;
    /// Of the bench's file; empty where there is none.
    QString fileName() const;
    /// A sentence in place of the file's name; empty: the name.
    void setRemark(const QString& remark);
    /// Opens the title for typing.
    void beginRename();

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void rename();
    QString besideTitle() const { return remark_.isEmpty() ? fileName() : remark_; }
    QString fieldColours() const;
    void arrange();
    struct Places {
        QRectF title, file, boards;
        double menus = 0;  ///< their left edge
    };
    Places places() const;
    QSize menuSize() const;

    BenchDocument& document_;
    Look look_;
    WordSheet sheet_{this};
    QMenuBar* menus_;
    QLineEdit* edit_;
    QString remark_;
};

}  // namespace tiepoint::ui
