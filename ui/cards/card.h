#pragma once
// A card in the row below the bench: a surface with a dim title line. Kinds of card fill its body.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QWidget>

namespace tiepoint::ui {

class Card : public QWidget {
    Q_OBJECT
public:
    explicit Card(QWidget* parent = nullptr);

    void setLook(const Look& look);
    const Look& look() const { return look_; }

    /// Whether the card can be shown to a room while projecting.
    virtual bool isForRoom() const { return false; }
    /// How high it wants to stand there, in pixels of its present look; no more than `most`.
    virtual double roomHeight(double most) const;

protected:
    /// Called after the look or the size changed: children take their places.
    virtual void arrangeCard() {}
    /// What lies under the body: the card itself.
    virtual void paintSurface(QPainter& painter);
    virtual void paintBody(QPainter& painter) = 0;

    QRectF frame() const;  ///< the card's surface inside the widget
    QRectF body() const;   ///< the surface less its padding
    /// Draws one line, smaller where it doesn't fit; `box` says the line's left, top and width.
    void drawLine(QPainter& painter, const QRectF& box, const QString& words, const QFont& font, const QColor& colour,
                  Qt::Alignment side = Qt::AlignLeft) const;
    /// Draws one line in the longest of its forms that fits; the first is the whole.
    void drawHeading(QPainter& painter, const QRectF& box, const QStringList& forms) const;
    /// Draws words on as many lines as they need in a room, smaller where they don't fit. Returns what they take.
    QRectF drawBlock(QPainter& painter, const QRectF& room, const QString& words, const QFont& font,
                     const QColor& colour, Qt::Alignment side = Qt::AlignLeft | Qt::AlignTop) const;
    /// The same in the longest of several forms that fits; the first is the whole.
    QRectF drawBlock(QPainter& painter, const QRectF& room, const QStringList& forms, const QFont& font,
                     const QColor& colour) const;

    /// Draws a live figure, smaller where it doesn't fit: its digits stand in equal cells, so that it doesn't dance while it changes. Sizes in
    /// layout pixels.
    void drawFigure(QPainter& painter, const QRectF& box, const QString& figure, double at1080, const QColor& colour,
                    Qt::Alignment side = Qt::AlignLeft) const;
    double figureWidth(const QString& figure, double at1080) const;

    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    Look look_;
    mutable WordSheet sheet_{this};
};

}  // namespace tiepoint::ui
