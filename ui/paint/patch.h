#pragma once
// A layer of the picture as a list of patches. On paper each is painted once. A screen keeps the pixels and paints only the patches
// that are new or look otherwise than before, and what they lie over.
//
// What a patch shows is a value, its mark: a struct with
//
//   void paint(QPainter&, const Theme&) const;                      in mm; leaves transform, clip and opacity as they were
//   friend bool operator==(const Mark&, const Mark&) = default;
//
// A mark is painted from its own members and the theme, so that nothing else can change what it shows. Members are compared exactly: places
// as Point and Rect, since Qt's own types compare with some play.

#include "ui/paint/qt_geometry.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QRectF>

#include <concepts>
#include <memory>
#include <typeinfo>
#include <utility>
#include <vector>

namespace tiepoint::ui {

template <class T>
concept MarkValue = std::equality_comparable<T> && requires(const T& mark, QPainter& painter, const Theme& theme) {
    mark.paint(painter, theme);
};

/// A mark of any type. Immutable, so that it may be shared between lists and threads.
class Drawing {
public:
    virtual ~Drawing() = default;
    virtual void paint(QPainter& painter, const Theme& theme) const = 0;
    virtual bool looksLike(const Drawing& other) const = 0;
};

template <MarkValue Mark>
class DrawingOf final : public Drawing {
public:
    explicit DrawingOf(Mark mark) : mark_(std::move(mark)) {}
    void paint(QPainter& painter, const Theme& theme) const override { mark_.paint(painter, theme); }
    bool looksLike(const Drawing& other) const override {
        return typeid(other) == typeid(*this) && static_cast<const DrawingOf&>(other).mark_ == mark_;
    }

private:
    Mark mark_;
};

struct Patch {
    std::shared_ptr<const Drawing> drawing;
    Point at;              ///< of the drawing's 0,0 on the bench, mm
    Rect room;             ///< nothing is drawn outside of it; from there
    Rect opaque = {};      ///< wholly covered; from there; empty where nothing surely is
    bool movable = false;  ///< draws the same wherever it lies, and may lie half a pixel beside its place
    double opacity = 1;    ///< of all that is drawn, together

    QRectF mm() const { return {at.x + room.left, at.y + room.top, room.width, room.height}; }
    friend bool operator==(const Patch& a, const Patch& b) {
        return a.at == b.at && a.room == b.room && a.opaque == b.opaque && a.movable == b.movable &&
               a.opacity == b.opacity && (a.drawing == b.drawing || a.drawing->looksLike(*b.drawing));
    }
};

using Patches = std::vector<Patch>;

/// A mark that says itself where it lies on the bench; `mm`: its room there.
template <MarkValue Mark>
Patch fixedPatch(const QRectF& mm, Mark mark) {
    return {std::make_shared<const DrawingOf<Mark>>(std::move(mark)), {}, fromQt(mm)};
}
/// A mark about its own 0,0, which lies at a place of the bench: the same mark may lie in many places.
template <MarkValue Mark>
Patch movablePatch(Point at, const QRectF& room, Mark mark) {
    return {std::make_shared<const DrawingOf<Mark>>(std::move(mark)), at, fromQt(room), {}, true};
}
/// A place as seen from another one, freed of what adding and subtracting leaves in the last digits: what stands alike is alike.
Point placeFrom(Point origin, Point at);

/// In mm of the bench, in its opacity.
void paintPatch(QPainter& painter, const Theme& theme, const Patch& patch);
void paintPatches(QPainter& painter, const Theme& theme, const Patches& patches);

}  // namespace tiepoint::ui
