#pragma once
// One thing that can be taken out of the tray: drawn as the real part with its word. A press and drag takes it at once; a click is
// reported. Its picture is drawn once for each look and kept.

#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/tray/tray_items.h"

#include <QAbstractButton>
#include <QPixmap>

namespace tiepoint::ui {

class TrayButton : public QAbstractButton {
    Q_OBJECT
public:
    enum class Shape { Compartment, DrawerItem };
    /// Where a compartment's word stands. Without one its name is said by the tooltip.
    enum class Word { Beside, Below, None };

    TrayButton(const TrayItem& item, const QString& word, Shape shape, QWidget* parent);

    const TrayItem& item() const { return item_; }
    void setItem(const TrayItem& item);
    /// Pale: it isn't at hand, and can be taken all the same. The tooltip says why.
    void setPale(const QString& why);
    bool isPale() const { return pale_; }
    void setLook(const Look& look);
    /// Whether the button's drawer is open, or its part waits for a hole.
    void setActive(bool active);
    bool isActive() const { return active_; }
    void setWordAt(Word place);
    Word wordAt() const { return word_; }
    /// The width that picture and word need at this look, with the word where it stands.
    double wantedWidth() const;

Q_SIGNALS:
    void dragged(const TrayItem& item, QPoint globalPos);  ///< the mouse is still down

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    QRectF pictureBox() const;
    QRectF compartmentPicture() const;
    const QPixmap& picture();
    void sayHow();

    TrayItem item_;
    Shape shape_;
    Word word_ = Word::Beside;
    Look look_;
    WordSheet sheet_{this};
    bool active_ = false, pale_ = false;
    QPoint pressedAt_;
    QPixmap picture_;
};

}  // namespace tiepoint::ui
