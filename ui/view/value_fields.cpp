#include "ui/view/value_fields.h"

#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <algorithm>

namespace tiepoint::ui {

ValueFields::ValueFields(BenchDocument& document, const Picture& picture, const GestureRun& gestures,
                         const Camera& camera, QWidget* parent)
    : picture_(picture),
      gestures_(gestures),
      camera_(camera),
      box_(document, parent),
      ladder_(document, parent) {
    connect(&box_, &ValueBox::done, this, &ValueFields::done);
    connect(&ladder_, &ValueLadder::done, this, &ValueFields::done);
}

void ValueFields::setTheme(const Theme& theme) {
    box_.setLook(theme);
    ladder_.setTheme(theme);
}

void ValueFields::setCovered(const QRect& inView) {
    ladder_.setCovered(inView);
    follow();
}

void ValueFields::setLadderAllowed(bool allowed) {
    ladderAllowed_ = allowed;
    follow();
}

void ValueFields::follow() {
    const auto& selected = picture_.marks.selected;
    const int part = ladderAllowed_ && selected.size() == 1 && !gestures_.isUnderWay() && picture_.layout
                         ? picture_.bench().partIndex(selected.front())
                         : -1;
    if (part < 0) return ladder_.follow({}, {});
    const PartScene scene = sceneOf(picture_, part);
    const QRectF body = findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
    // Below the boards, or above them: nothing that it changes may be hidden by it.
    const Rect& boards = picture_.table->boardsMm;
    const QRectF around(camera_.fromMm({body.left(), std::min(body.top(), boards.top)}),
                        camera_.fromMm({body.right(), std::max(body.bottom(), boards.bottom())}));
    ladder_.follow(selected.front(), around.toAlignedRect());
}

void ValueFields::beginTyping(const std::string& partId, const QString& typed) {
    const int part = picture_.bench().partIndex(partId);
    if (part < 0) return;
    if (typedValueOf(picture_.bench().parts[static_cast<std::size_t>(part)]) < 0) {
        Q_EMIT cardWanted(QString::fromStdString(partId));
        return;
    }
    const Outline& body = picture_.table->parts[static_cast<std::size_t>(part)].pose.body;
    box_.begin(partId, typed, camera_.fromMm({body.centre.x, body.centre.y + body.halfWidth}).toPoint());
}

}  // namespace tiepoint::ui
