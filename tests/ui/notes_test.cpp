// Notes as paper tags beside the boards: off everything that is read or pressed, three lines at most, all of it under the pointer.

#include "desk.h"
#include "panel_bench.h"
#include "ui/export/picture_file.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/projecting.h"
#include "ui/view/room_mode.h"

#include <QFile>
#include <QTemporaryDir>

namespace tiepoint::ui {
namespace {

const char* const kShortNote = "Mind the fog";
const char* const kLong =
    "The gate opens only while both keys are down. Try one alone, then the other, then both, and write down what the "
    "lamp "
    "on the mole does each time before you go on.";

class NotesDesk : public Desk {
protected:
    static Bench noted(Bench bench) {
        bench.notes = {{"N1", test::holeAt("A.c25"), kShortNote, {}},
                       {"N2", test::holeAt("A.j28"), kLong, {}},
                       {"N3", test::holeAt("A.top+20"), "High water at ten", {}}};
        return bench;
    }
    /// Papers lie in sight, on the table, off everything else and each other.
    void expectLaws() const {
        const Picture& picture = view.picture();
        const QRectF sight = view.viewportTransform().inverted().mapRect(QRectF(view.viewport()->rect()));
        const auto notes = placeNotes(picture);
        for (const NotePlace& note : notes) {
            EXPECT_TRUE(sight.contains(note.paper)) << note.lines.join(' ').toStdString();
            EXPECT_LE(note.lines.size(), 3);
            EXPECT_FALSE(note.paper.intersects(toQt(picture.table->boardsMm)));
            for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
                const PartScene scene = sceneOf(picture, part);
                const auto body = findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
                EXPECT_FALSE(note.paper.intersects(body)) << scene.part.id;
            }
            for (const NetTag& tag : picture.netTags ? *picture.netTags : std::vector<NetTag>())
                EXPECT_FALSE(note.paper.intersects(toQt(tag.frame)));
            for (const NotePlace& other : notes) EXPECT_TRUE(&other == &note || !other.paper.intersects(note.paper));
        }
    }
    QPoint middleOf(const QRectF& mm) const { return at({mm.center().x(), mm.center().y()}); }
};

TEST_F(NotesDesk, LieOffEverythingAtADeskInARoomAndTurnedOver) {
    for (const Bench& bench : {noted(beacon()), noted(harbourPanel())}) {
        open(bench);
        expectLaws();
        view.room().setProjecting(true);
        expectLaws();
        view.room().setProjecting(false);
        Views views;
        views.turned = true;
        view.setViews(views);
        expectLaws();
        view.setViews({});
    }
}

TEST_F(NotesDesk, ALongOneShrinksIsCutOffAndOpensUnderThePointer) {
    open(noted(beacon()));
    const auto notes = placeNotes(view.picture());
    EXPECT_FALSE(notes[0].isCutOff);
    ASSERT_TRUE(notes[1].isCutOff);
    EXPECT_LT(notes[1].sizeMm, notes[0].sizeMm);
    EXPECT_TRUE(notes[1].lines.back().endsWith(QStringLiteral("\u2026")));
    moveTo(at("A.a1"));
    const QImage before = view.viewport()->grab().toImage();
    moveTo(middleOf(notes[1].paper));
    EXPECT_EQ(marks().hoverPart, "N2");
    const NotePlace whole = unfolded(view.picture(), 1);
    EXPECT_EQ(whole.lines.join(' '), QString::fromLatin1(kLong));
    EXPECT_GT(whole.paper.height(), notes[1].paper.height());
    const QImage after = view.viewport()->grab().toImage();
    const QPoint above =
        (QPointF(at({whole.paper.center().x(), whole.paper.top() + 1})) * view.devicePixelRatioF()).toPoint();
    EXPECT_NE(before.pixel(above), after.pixel(above)) << "it opens upwards";
}

TEST_F(NotesDesk, OnPaperAllOfItIsRead) {
    open(noted(beacon()));
    Picture paper = view.wholePicture();
    ASSERT_TRUE(placeNotes(paper)[1].isCutOff) << "as in the window";
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("noted.svg"));
    ASSERT_FALSE(savePicture(paper, path, 1600));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QString drawn = QString::fromUtf8(file.readAll());
    for (const QString& word : QString::fromLatin1(kLong).split(QLatin1Char(' ')))
        EXPECT_TRUE(drawn.contains(word)) << word.toStdString();
    EXPECT_FALSE(drawn.contains(QStringLiteral("\u2026")));
    paper.isOnPaper = true;
    const auto notes = placeNotes(paper);
    EXPECT_EQ(notes[1].lines.join(' '), QString::fromLatin1(kLong));
    for (const NotePlace& note : notes) {
        EXPECT_TRUE(pictureAreaMm(paper).contains(note.paper));
        EXPECT_FALSE(note.isCutOff);
        for (const NotePlace& other : notes) EXPECT_TRUE(&other == &note || !other.paper.intersects(note.paper));
    }
}

TEST_F(NotesDesk, GrowsForARoom) {
    open(noted(beacon()));
    view.room().setProjecting(true);
    for (const NotePlace& note : placeNotes(view.picture()))
        EXPECT_FALSE(note.isCutOff) << note.lines.join(' ').toStdString();
    const double capital = placeNotes(view.picture())[0].sizeMm * kCapHeight * view.pixelsPerMm();
    EXPECT_GE(capital, view.viewport()->height() * kWordCapShare - 1e-6);
}

TEST_F(NotesDesk, OneInAFreeHoleTakesNoHoleAway) {
    open(noted(beacon()));
    drag(at("A.c25"), at("A.c28"));
    ASSERT_EQ(bench().jumpers.size(), 3u) << "the knot lies about the hole, and a jumper begins there all the same";
}

}  // namespace
}  // namespace tiepoint::ui
