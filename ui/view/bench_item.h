#pragma once
// One part or jumper in the scene: an id and a look at rest. Everything that moves or glows is drawn by the canvas.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QGraphicsItem>

#include <variant>

namespace tiepoint::ui {

class BenchItem : public QGraphicsItem {
public:
    /// The picture belongs to the view and outlives the item.
    explicit BenchItem(const Picture& picture);

    /// Takes the thing's new place in the lists, and repaints only if its look changed.
    void followPart(int index, bool restyled);
    void followJumper(int index, bool restyled);

    void addPatch(Patches& patches) const;

    QRectF boundingRect() const override { return bounds_; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    using Shape =
        std::variant<std::monostate, std::pair<Part, std::vector<Point>>, std::pair<Jumper, std::array<Point, 2>>>;
    /// Whether anything changed.
    bool adopt(Shape shape, const QRectF& bounds, bool restyled);

    const Picture& picture_;
    int index_ = -1;
    Shape shape_;
    PatchLook look_;      ///< at rest and opaque
    bool alike_ = false;  ///< with all others of this look, wherever they lie
    QRectF bounds_;
};

}  // namespace tiepoint::ui
