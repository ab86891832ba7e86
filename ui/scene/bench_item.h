#pragma once
// A thing of the table in the scene: where it lies, what it looks like at rest, and what of it is meant at a place. Everything that
// moves or glows is drawn by the canvas over it. The document is the truth; an item keeps an index and what was worked out from it.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"
#include "ui/scene/under.h"

#include <QGraphicsItem>

#include <string>

namespace tiepoint::ui {

class BenchItem : public QGraphicsItem {
public:
    /// How things lie over each other, from the table up. Behind: under boards that are turned over.
    enum class Level { BehindParts, BehindJumpers, Boards, Parts, Jumpers, Tags, Notes };

    /// The picture belongs to the view and outlives the item.
    BenchItem(const Picture& picture, std::string id);

    const std::string& id() const { return id_; }

    /// Takes the thing's place in its list, and where it lies now. `restyled`: it looks otherwise, whether it changed or not.
    virtual void follow(int index, bool restyled) = 0;
    /// What it looks like at rest, in the order of painting. Nothing of what lies over the arrows: notes and tags are drawn with the words.
    virtual void addPatches(Patches&) const {}
    /// Says what of it is meant at a place within its shape, where nothing that lies higher has been found. True if it hides all beneath.
    virtual bool meet(Point at, Under& under) const = 0;
    /// Whether a rubber band takes it.
    virtual bool isTouched(const QRectF&) const { return false; }

    QRectF boundingRect() const final { return bounds_; }
    /// Whatever asks a graphics item to paint itself gets its patches.
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) final;

protected:
    const Picture& picture() const { return picture_; }
    /// Says where it is painted, and how it lies over others: the later in its list, the higher.
    void lie(const QRectF& bounds, Level level, int index);

private:
    const Picture& picture_;
    std::string id_;
    QRectF bounds_;
};

}  // namespace tiepoint::ui
