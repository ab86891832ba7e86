#include "ui/paint/rest_patch.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/board_back.h"
#include "ui/paint/ghost_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/part_seen.h"
#include "ui/paint/wire_painter.h"

namespace tiepoint::ui {
namespace {

struct RestingPartMark {
    PartSeen part;
    void paint(QPainter& painter, const Theme& theme) const { part.painter().paint(painter, part.scene(theme)); }
    friend bool operator==(const RestingPartMark&, const RestingPartMark&) = default;
};

struct GhostPartMark {
    PartSeen part;
    std::vector<Rect> hidden;  ///< where turned boards are
    bool behind;               ///< it stands on one
    void paint(QPainter& painter, const Theme& theme) const {
        const PartScene scene = part.scene(theme);
        if (behind) return paintGhost(painter, scene, part.painter());
        painter.save();
        paintHiddenLeads(painter, hidden, scene, part.painter());
        part.painter().paint(painter, scene);
        painter.restore();
    }
    friend bool operator==(const GhostPartMark&, const GhostPartMark&) = default;
};

struct RestingJumperMark {
    CurveSeen line;
    int colour;
    bool flat;
    std::vector<Rect> hidden;  ///< where turned boards are
    void paint(QPainter& painter, const Theme& theme) const {
        const Cubic wire = line.cubic();
        painter.save();
        if (!hidden.empty()) {
            paintGhostWire(painter, theme, wire.path());
            clipToTable(painter, hidden);
        }
        paintWire(painter, theme, wire, jumperLook(theme, colour, wire.lengthMm(), flat));
        painter.restore();
    }
    friend bool operator==(const RestingJumperMark&, const RestingJumperMark&) = default;
};

}  // namespace

Patch restPatch(const Picture& picture, int part) {
    PartSeen seen = partSeen(picture, part);
    seen.held = false;
    if (picture.table->turned) {
        const QRectF mm = partBounds(seen.scene(*picture.theme));
        return fixedPatch(mm, GhostPartMark{std::move(seen), hiddenFrames(picture), picture.isBehind(part)});
    }
    const Point middle = seen.place.pose.centre;
    RestingPartMark mark{seen.aboutItself()};
    const QRectF room = partBounds(mark.part.scene(*picture.theme));
    return movablePatch(middle, room, std::move(mark));
}

Patch restPatchOfJumper(const Picture& picture, int jumper) {
    const Jumper& which = picture.bench().jumpers[static_cast<std::size_t>(jumper)];
    const CurveSeen line = jumperSeen(picture, jumper);
    if (picture.table->turned)
        return fixedPatch(wireBounds(line.cubic()),
                          RestingJumperMark{line, which.colour, which.flat, hiddenFrames(picture)});
    const Point first = line.points.front();
    const RestingJumperMark mark{line.from(first), which.colour, which.flat, {}};
    return movablePatch(first, wireBounds(mark.line.cubic()), mark);
}

}  // namespace tiepoint::ui
