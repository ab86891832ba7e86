#include "ui/scene/slip_items.h"

#include "ui/paint/live_layers.h"
#include "ui/paint/note_painter.h"

namespace tiepoint::ui {
namespace {

QPainterPath pathAlong(const QRectF& frame) {
    QPainterPath path;
    path.addRect(frame);
    return path;
}

}  // namespace

void NoteItem::follow(int index, bool) {
    frame_ = noteFrame(picture(), index);
    lie(noteBounds(picture(), index), Level::Notes, index);
}

QPainterPath NoteItem::shape() const { return pathAlong(frame_); }

bool NoteItem::meet(Point, Under& under) const {
    under.note = id();
    return true;
}

void TagItem::follow(int index, bool) {
    tag_ = (*picture().pinned)[static_cast<std::size_t>(index)];
    lie(tagBounds(tag_), Level::Tags, index);
}

QPainterPath TagItem::shape() const { return pathAlong(tag_.frame); }

bool TagItem::meet(Point, Under& under) const {
    under.pinned = id();
    return true;
}

}  // namespace tiepoint::ui
