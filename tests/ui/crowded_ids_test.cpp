// Ids and other words on a crowded bench: in a room they give way to each other, values first; at a desk they are never too small to read.

#include "desk.h"
#include "panel_bench.h"
#include "ui/paint/label_places.h"
#include "ui/view/room_mode.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

class CrowdedIds : public Desk {
protected:
    std::vector<Label> ids() const {
        Clearance clearance(view.picture());
        return placeIds(view.picture(), clearance);
    }
    static double shared(const QRectF& a, const QRectF& b) {
        const QRectF both = a & b;
        return both.width() * both.height();
    }
};

TEST_F(CrowdedIds, DontCoverEachOtherInARoom) {
    open(harbourPanel());
    view.room().setProjecting(true);
    const std::vector<Label> all = ids();
    EXPECT_GT(all.size(), 20u) << "most things still have a name";
    for (const Label& one : all) {
        for (const Label& other : all)
            EXPECT_TRUE(&one == &other || shared(one.frame, other.frame) < 0.2)
                << one.text.toStdString() << " and " << other.text.toStdString();
        for (const UsedNumber& number : placeUsedNumbers(view.picture()))
            EXPECT_LT(shared(one.frame, number.frame), 0.16 * one.frame.width() * one.frame.height())
                << one.text.toStdString() << " on " << number.text.toStdString();
    }
    EXPECT_TRUE(std::ranges::any_of(all, [](const Label& id) {
        return id.text.startsWith(QLatin1Char('R')) && !id.text.contains(QLatin1Char(' '));
    })) << "a value goes before its id";
}

TEST_F(CrowdedIds, WhereThereIsRoomTheValuesStay) {
    open(beacon());
    view.room().setProjecting(true);
    EXPECT_TRUE(std::ranges::any_of(ids(), [](const Label& id) { return id.text.contains(QStringLiteral("330")); }));
}

TEST_F(CrowdedIds, AreReadAtADeskHoweverLargeTheBenchIs) {
    view.resize(900, 330);
    open(harbourPanel());
    const WordSizes& sizes = view.picture().sizes;
    ASSERT_LT(1.7 * view.pixelsPerMm(), 9) << "the test needs a small scale";
    for (const double em : {sizes.idMm, sizes.flagMm, sizes.readingMm}) EXPECT_GE(em * view.pixelsPerMm(), 9);
    view.resize(900, 600);
    view.fitBench();
    EXPECT_GE(view.picture().sizes.wordsMm * view.pixelsPerMm(), 9);
}

}  // namespace
}  // namespace tiepoint::ui
