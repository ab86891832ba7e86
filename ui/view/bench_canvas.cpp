#include "ui/view/bench_canvas.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/live_layers.h"

#include <QDataStream>
#include <QIODevice>

namespace tiepoint::ui {
namespace {

/// What a kept layer depends on, as bytes to compare. Addresses stand for contents: layouts and snapshots never change once shared,
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
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get()) << static_cast<const void*>(picture.snapshot.get())
        << static_cast<const void*>(picture.theme) << static_cast<int>(views.arrows) << views.voltage << views.strips << views.readings
        << views.lockedFullScaleAmpere.value_or(0);
}

QByteArray boardsKey(const Picture& picture) {
    Key key;
    key << static_cast<const void*>(picture.layout.get()) << static_cast<const void*>(picture.table.get()) << static_cast<const void*>(picture.theme) << picture.views.strips;
    return key.bytes();
}

QByteArray liveKey(const Picture& picture) {
    Key key;
    addLive(key, picture);
    return key.bytes();
}

QByteArray underKey(const Picture& picture, const std::vector<int>& litNets) {
    Key key;
    addLive(key, picture);
    key << picture.marks.hoverNet;
    for (const int net : litNets) key << net;
    return key.bytes();
}

QByteArray overKey(const Picture& picture) {
    Key key;
    addLive(key, picture);
    key << picture.marks.hoverNet << QByteArray::fromStdString(picture.marks.hoverPart);
    return key.bytes();
}

/// The frame of what a layer's painter covers: more than the viewport, by the layer's margin.
Frame grownTo(const QPainter& layer, const Frame& frame) {
    Frame grown = frame;
    grown.viewport = (QSizeF(layer.device()->width(), layer.device()->height()) / frame.devicePixelRatio).toSize();
    grown.origin = QPointF(layer.worldTransform().dx(), layer.worldTransform().dy()).toPoint();
    return grown;
}

void paintNets(QPainter& painter, const Picture& picture, const std::vector<int>& nets) {
    paintHoveredNet(painter, picture);
    if (nets.empty()) return;
    Picture each = picture;
    for (const int net : nets) {
        each.marks.hoverNet = net;
        paintHoveredNet(painter, each);
    }
}

}  // namespace

void BenchCanvas::prepare(const Picture& picture, const Frame& frame) {
    if (layout_ != picture.layout || table_ != picture.table) {
        layout_ = picture.layout;
        table_ = picture.table;
        paths_.emplace(picture);
    }
    snapshot_ = picture.snapshot;
    const SpriteScale scale{frame.pixelsPerMm, frame.devicePixelRatio};
    const bool sameLook = theme_ == picture.theme && scale_ == scale;
    if (!sameLook) lightSprites_ = std::make_unique<LightSprites>(*picture.theme, scale);
    if (!sameLook || arrows_ != picture.views.arrows) {
        arrowSprites_ = std::make_unique<ArrowSprites>(*picture.theme, scale, picture.views.arrows == Arrows::Electrons);
    }
    theme_ = picture.theme;
    scale_ = scale;
    arrows_ = picture.views.arrows;
}

void BenchCanvas::stampArrows(QPainter& painter, const Picture& picture, const Frame& frame, Layer layer) {
    const Snapshot* live = picture.live();
    if (!live || picture.views.arrows == Arrows::Off) return;
    marks_.clear();
    paths_->marks(*live, picture.views.arrows, fullScaleAmpere(picture), picture.phaseMm, layer, marks_);
    arrowSprites_->draw(painter, frame.toPixels(), marks_);
}

void BenchCanvas::drawMetal(QPainter& layer, const Picture& picture, const Frame& frame) {
    // Boards and metal are kept by themselves, so that a hover doesn't paint the metal again, nor a press a thousand holes.
    metal_.draw(layer, frame, liveKey(picture), [&](QPainter& metal) {
        const Frame grown = grownTo(metal, frame);
        metal.save();
        metal.resetTransform();
        boards_.draw(metal, grown, boardsKey(picture), [&](QPainter& boards) {
            for (int board = 0; board < static_cast<int>(picture.bench().boards.size()); ++board) paintBoard(boards, picture, board);
        });
        metal.restore();
        paintMetalUnder(metal, picture);
    });
}

void BenchCanvas::drawUnder(QPainter& painter, const Picture& picture, const Frame& frame, const std::vector<int>& litNets) {
    prepare(picture, frame);
    under_.draw(painter, frame, underKey(picture, litNets), [&](QPainter& layer) {
        const QTransform toPixels = layer.worldTransform();
        const auto inPixels = [&](auto draw) {
            layer.save();
            layer.resetTransform();
            draw();
            layer.restore();
        };
        const Frame grown = grownTo(layer, frame);
        inPixels([&] { drawMetal(layer, picture, grown); });
        paintNets(layer, picture, litNets);
        paintBeds(layer, picture, *paths_);
        inPixels([&] { lightSprites_->drawHalos(layer, toPixels, picture); });
    });
    stampArrows(painter, picture, frame, Layer::UnderParts);
}

void BenchCanvas::drawOver(QPainter& painter, const Picture& picture, const Frame& frame) {
    prepare(picture, frame);
    over_.draw(painter, frame, overKey(picture), [&](QPainter& layer) {
        const QTransform toPixels = layer.worldTransform();
        layer.save();
        layer.resetTransform();
        lightSprites_->drawDomes(layer, toPixels, picture);
        layer.restore();
        paintInsides(layer, picture);
        paintPressed(layer, picture);
        paintDisplays(layer, picture);
        paintInnerBeds(layer, picture, *paths_);
        paintVoltCores(layer, picture);
    });
    stampArrows(painter, picture, frame, Layer::OverParts);
    ids_.draw(painter, frame, boardsKey(picture), [&](QPainter& layer) { paintIds(layer, picture); });
    words_.draw(painter, frame, liveKey(picture), [&](QPainter& layer) {
        paintOverloads(layer, picture);
        paintReadings(layer, picture);
    });
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setTransform(frame.toPixels(), true);
    paintCapLetters(painter, picture);
    paintHandMarks(painter, picture);
    painter.restore();
}

bool BenchCanvas::prewarm(const Picture& picture, const Frame& frame) {
    constexpr int kAtOnce = 8;
    prepare(picture, frame);
    return arrowSprites_->prewarm(kAtOnce) > 0;
}

}  // namespace tiepoint::ui
