#include "ui/paint/word_ground.h"

#include "ui/paint/net_marks.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/projecting.h"

namespace tiepoint::ui {
namespace {

void addParts(WordGround& ground, const Picture& picture) {
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        PartSeen seen = partSeen(picture, part);
        seen.held = false;
        ground.bodies.push_back(fromQt(seen.painter().body(seen.scene(*picture.theme)).boundingRect()));
        ground.parts.push_back(std::move(seen));
    }
}

void addMetalBetweenHoles(WordGround& ground, const Picture& picture) {
    const Layout& layout = *picture.layout;
    const auto at = [&](int joint) {
        return picture.seenAt(layout.holeAt(layout.joints[static_cast<std::size_t>(joint)].hole));
    };
    for (const Piece& piece : layout.pieces) {
        if (piece.kind == PieceKind::Strip) ground.metal.push_back({at(piece.from), at(piece.to)});
    }
}

}  // namespace

std::shared_ptr<const WordGround> wordGround(const Picture& whole) {
    Picture picture;  // what is pointed at, flows or is found moves no word
    picture.layout = whole.layout;
    picture.table = whole.table;
    picture.theme = whole.theme;
    picture.sizes = whole.sizes;
    picture.isOnPaper = whole.isOnPaper;
    const auto ground = std::make_shared<WordGround>();
    addParts(*ground, picture);
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        ground->jumpers.push_back(jumperSeen(picture, jumper));
    for (const StripSpan& span : stripSpans(picture))
        ground->strips.push_back({fromQt(span.first), fromQt(span.last), span.rail});
    addMetalBetweenHoles(*ground, picture);
    for (int note = 0; note < static_cast<int>(picture.bench().notes.size()); ++note)
        ground->notes.push_back(fromQt(noteFrame(picture, note)));
    ground->boardsMm = picture.table->boardsMm;
    ground->allMm = picture.table->allMm;
    ground->sizes = picture.sizes;
    if (ground->isProjected()) {
        ground->stage = fromQt(circuitArea(picture));
        ground->numbers = placeUsedNumbers(picture);
    }
    return ground;
}

}  // namespace tiepoint::ui
