#include "ui/view/layer_keys.h"

#include "ui/paint/live_layers.h"

#include <QDataStream>
#include <QIODevice>

namespace tiepoint::ui {
namespace {

/// What a layer depends on, as bytes to compare. Addresses stand for contents: layouts and snapshots never change once shared,
/// and the canvas keeps those that it drew last, so that no other can come to lie at their address.
class Key {
public:
    Key() : stream_(&bytes_, QIODevice::WriteOnly) {}
    template <class T>
    Key& operator<<(const T& value) {
        stream_ << value;
        return *this;
    }
    Key& operator<<(const void* address) {
        stream_ << reinterpret_cast<quintptr>(address);
        return *this;
    }
    const QByteArray& bytes() const { return bytes_; }

private:
    QByteArray bytes_;
    QDataStream stream_;
};

void addLive(Key& key, const Picture& picture) {
    const Views& views = picture.views;
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get())
        << static_cast<const void*>(picture.snapshot.get()) << static_cast<int>(views.arrows) << views.voltage
        << views.strips << views.readings << views.lockedFullScaleAmpere.value_or(0) << picture.sizes.readingMm;
}

QByteArray liveKey(const Picture& picture) {
    Key key;
    addLive(key, picture);
    return key.bytes();
}

}  // namespace

QByteArray boardsKey(const Picture& picture) {
    Key key;
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get())
        << picture.views.strips;
    return key.bytes();
}

QByteArray underKey(const Picture& picture, const std::vector<int>& litNets) {
    Key key;
    addLive(key, picture);
    key << picture.marks.hoverNet;
    for (const int net : litNets) key << net;
    return key.bytes();
}

QByteArray arrowsKey(const Picture& picture, const Frame& frame) {
    return (Key() << liveKey(picture) << frame.pixelsPerMm << frame.origin << frame.viewport << picture.phaseMm)
        .bytes();
}

QByteArray partsKey(const Picture& picture) {
    Key key;
    addLive(key, picture);
    key << picture.marks.hoverNet << QByteArray::fromStdString(picture.marks.hoverPart) << soundingBeat(picture);
    return key.bytes();
}

/// The words beside a contact follow presses while insides are seen.
QByteArray idsKey(const Picture& picture) {
    Key key;
    const bool insides = picture.views.strips || !picture.marks.hoverPart.empty() || picture.marks.hoverNet >= 0;
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get())
        << picture.views.strips << picture.sizes.idMm << picture.sizes.numberMm;
    key << static_cast<const void*>(picture.pinned.get());
    if (insides)
        key << static_cast<const void*>(picture.snapshot.get()) << picture.marks.hoverNet
            << QByteArray::fromStdString(picture.marks.hoverPart);
    return key.bytes();
}

QByteArray wordsKey(const Picture& picture) {
    return liveKey(picture) + idsKey(picture) +
           (Key() << static_cast<const void*>(picture.changes.get()) << static_cast<const void*>(picture.findings.get())
                  << picture.marks.finding)
               .bytes();
}

QByteArray marksKey(const Picture& picture) {
    const Marks& marks = picture.marks;
    Key key;
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get())
        << static_cast<const void*>(picture.snapshot.get()) << static_cast<const void*>(picture.pinned.get());
    for (const std::string& id : marks.selected) key << QByteArray::fromStdString(id);
    key << static_cast<const void*>(marks.mended.get()) << static_cast<const void*>(marks.group.get());
    key << QByteArray::fromStdString(marks.lit) << marks.hoverNet << marks.hoverAt.x << marks.hoverAt.y << marks.refused
        << QByteArray::fromStdString(marks.say) << marks.sayAt.x << marks.sayAt.y << picture.sizes.wordsMm
        << marks.band.value_or(QRectF()) << static_cast<int>(marks.targets.size());
    const auto addHole = [&key](const Hole& hole) {
        key << QByteArray::fromStdString(hole.board) << static_cast<int>(hole.line) << hole.number;
    };
    for (const Hole& hole : marks.targets) addHole(hole);
    key << marks.cursor.has_value();
    if (marks.cursor) addHole(*marks.cursor);
    for (const Hole& hole : marks.guide) addHole(hole);
    return key.bytes();
}

}  // namespace tiepoint::ui
