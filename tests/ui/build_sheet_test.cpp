// Build sheets as others read them: text and geometry of the PDF by poppler's tools, pages that hold together, and what learners don't see.

#include "ui/sheet/build_sheet.h"

#include "core/bench/bench_in_picture.h"
#include "printed.h"
#include "support/compact_bench.h"
#include "ui/export/picture_file.h"
#include "ui/sheet/feedback.h"
#include "ui/sheet/symptom_sheet.h"

#include <QFile>
#include <QRegularExpression>

#include <chrono>

namespace tiepoint::ui {
namespace {

constexpr double kFinePixelsPerMm = 40;

class Sheet : public testing::Test {
protected:
    QString save(const std::shared_ptr<const Bench>& bench, const SheetWish& wish, const char* name) {
        const QString path = folder_.filePath(QString::fromLatin1(name));
        const auto failed = saveBuildSheet(planOf(bench), wish, path);
        EXPECT_FALSE(failed) << failed->toStdString();
        return path;
    }
    /// A strip of a page, finely: millimetres of the paper.
    static QImage strip(const QString& pdf, int page, const QRectF& mm) {
        const auto px = [](double length) {
            return QString::number(static_cast<int>(std::lround(length * kFinePixelsPerMm)));
        };
        return QImage::fromData(
            toolOutput("pdftoppm", {"-png", "-gray", "-r", QString::number(kFinePixelsPerMm * 25.4, 'f', 3), "-f",
                                    QString::number(page), "-l", QString::number(page), "-x", px(mm.left()), "-y",
                                    px(mm.top()), "-W", px(mm.width()), "-H", px(mm.height()), pdf}),
            "PNG");
    }
    /// Middles of what is dark along a row of pixels for so many mm or more, mm from its left end.
    static std::vector<double> darkMiddles(const QImage& image, int y, int darkerThan, double leastMm = 0) {
        std::vector<double> middles;
        int from = -1;
        for (int x = 0; x <= image.width(); ++x) {
            const bool dark = x < image.width() && qGray(image.pixel(x, y)) < darkerThan;
            if (dark && from < 0) from = x;
            if (dark || from < 0) continue;
            if (x - from >= leastMm * kFinePixelsPerMm) middles.push_back((from + x) / 2.0 / kFinePixelsPerMm);
            from = -1;
        }
        return middles;
    }
    static int pagesIn(const QString& pdf) {
        const QString info = QString::fromUtf8(toolOutput("pdfinfo", {pdf}));
        return QRegularExpression(QStringLiteral("Pages:\\s+(\\d+)")).match(info).captured(1).toInt();
    }
    static std::shared_ptr<const Bench> harbour(std::string_view name) {
        for (const auto& [file, bench] : harbourBenches())
            if (file.find(name) != std::string::npos) return bench;
        ADD_FAILURE() << name;
        return nullptr;
    }

    QTemporaryDir folder_;
};

TEST_F(Sheet, HolesAndRuleAreInTrueSize) {
    SheetWish wish;
    wish.reader = SheetFor::Planner;  // nothing lies over the holes
    const QString pdf = save(harbour("lock-gate"), wish, "plan.pdf");
    // Down the board at the left margin: the row of pixels with the most holes is a row of the board.
    const QImage board = strip(pdf, 1, {14, 38, 90, 60});
    std::vector<double> best;
    for (int y = 0; y < board.height(); y += 8) {
        const auto middles = darkMiddles(board, y, 160, 0.7);  // strokes of letters and edges are thinner
        if (middles.size() == 30) best = middles;
    }
    ASSERT_EQ(best.size(), 30u) << "a half board has thirty columns";
    for (std::size_t hole = 1; hole < best.size(); ++hole) EXPECT_NEAR(best[hole] - best[hole - 1], 2.54, 0.02) << hole;
    EXPECT_NEAR(best.back() - best.front(), 29 * 2.54, 0.05);
    // The ruler: fifty-one ticks a millimetre apart, somewhere below the board.
    const QImage below = strip(pdf, 1, {13, 90, 60, 60});
    std::vector<double> ticks;
    for (int y = 0; y < below.height() && ticks.empty(); y += 4) {
        const auto middles = darkMiddles(below, y, 128);
        if (middles.size() == 51) ticks = middles;
    }
    ASSERT_EQ(ticks.size(), 51u);
    EXPECT_NEAR(ticks.back() - ticks.front(), 50, 0.05);
}

TEST_F(Sheet, LearnersReadEverythingButWhatIsExpected) {
    const QString text = printedText(save(harbour("lock-gate"), {}, "learner.pdf")).simplified();
    for (const char* words : {"Lock gate",
                              "Build sheet, page 1 of",
                              "My teacher has seen my board.",
                              "Never the mains",
                              "Eye protection",
                              "limit is set to 50 mA",
                              "orange, orange, brown, gold",
                              "c4 and c9, either way round",
                              "push button, cap A",
                              "minus rail below column",
                              "Jumpers W1, W2 and W3",
                              "Resistor R1, either way round",
                              "LED D1, short leg (cathode) in h20",
                              "50 mm.",
                              "I predict",
                              "I measure",
                              "Nothing pressed",
                              "S1 and S2 pressed",
                              "touch the leg",
                              "c9, leg 2 of R1",
                              "A hot part is a fault"})
        EXPECT_TRUE(text.contains(QString::fromLatin1(words))) << words << "\n" << text.toStdString();
    for (const char* words : {"Expected", "2.10 V", "Once round", "may drift"})
        EXPECT_FALSE(text.contains(QString::fromLatin1(words))) << words;
}

TEST_F(Sheet, TheKeyHasRangesAndFloatingMetalInWords) {
    SheetWish wish;
    wish.reader = SheetFor::Teacher;
    const QString text = printedText(save(harbour("lock-gate"), wish, "key.pdf")).simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("Build sheet, key")));
    EXPECT_TRUE(text.contains(QStringLiteral("joined to nothing: about 0 V, may drift"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Once round: "))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("I predict ")));
    // Each range holds its figure.
    const QRegularExpression range(
        QStringLiteral("(-?\\d+\\.\\d\\d) V \\((-?\\d+\\.\\d\\d) to (-?\\d+\\.\\d\\d) V\\)"));
    int ranges = 0, wide = 0;
    for (auto match = range.globalMatch(text); match.hasNext(); ++ranges) {
        const auto each = match.next();
        EXPECT_LE(each.captured(2).toDouble(), each.captured(1).toDouble());
        EXPECT_GE(each.captured(3).toDouble(), each.captured(1).toDouble());
        wide += each.captured(3).toDouble() - each.captured(2).toDouble() > 0.3 ? 1 : 0;
    }
    EXPECT_GE(ranges, 6);
    EXPECT_GE(wide, 1) << "an LED's 0.2 V either way shows";
}

TEST_F(Sheet, EverySupportAndPaperFitsAndSaysWhereThingsGo) {
    for (const auto& [name, bench] : harbourBenches()) {
        for (const Paper paper : {Paper::A4, Paper::Letter}) {
            for (const Support support : {Support::Pictures, Support::Holes}) {
                SCOPED_TRACE(name);
                SheetWish wish;
                wish.paper = paper;
                wish.support = support;
                wish.copies = 30;
                wish.sparePercent = 10;
                const QString pdf = save(bench, wish, "all.pdf");
                const QString text = printedText(pdf);
                EXPECT_TRUE(text.contains(QStringLiteral("page %1 of %1").arg(pagesIn(pdf))));
                EXPECT_TRUE(text.contains(QStringLiteral("To buy for 30 benches, 10 % in reserve")));
                for (const Part& part : bench->parts)
                    EXPECT_TRUE(text.contains(QString::fromStdString(part.id))) << part.id;
            }
        }
    }
}

TEST_F(Sheet, AFullBoardStandsInTrueSizeToo) {
    const auto bench = std::make_shared<const Bench>(
        test::CompactBench(
            "full; PS1 top+3 bottom-3 5; R1 c30 c36 330; S1 e36; D1 h38 h42 green; W1 top+24 a30 red; W2 j42 "
            "bottom-33 black")
            .take());
    const QString pdf = save(bench, {}, "full.pdf");
    EXPECT_FALSE(printedText(pdf).contains(QStringLiteral("drawn smaller")));
    EXPECT_GE(pagesIn(pdf), 3);
}

TEST_F(Sheet, IsMadeWithinASecond) {
    const auto bench = harbour("lock-gate");
    const auto begin = std::chrono::steady_clock::now();
    save(bench, {}, "quick.pdf");
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    RecordProperty("seconds", std::to_string(seconds));
    std::printf("a build sheet in %.0f ms\n", 1e3 * seconds);
}

TEST_F(Sheet, WhatCantBeWrittenLeavesNothingBehind) {
    const QString path = folder_.filePath(QStringLiteral("nowhere/plan.pdf"));
    const auto failed = saveBuildSheet(planOf(harbour("lock-gate")), {}, path);
    ASSERT_TRUE(failed);
    EXPECT_FALSE(QFile::exists(path));
}

TEST_F(Sheet, FeedbackSaysWhereToLookAndNotTheSolution) {
    const auto target = harbour("beacon-lamp");
    auto reversed = std::make_shared<Bench>(*target);
    for (Part& part : reversed->parts)
        if (part.kind->emitsLight) std::swap(part.leads[0], part.leads[1]);
    std::vector<LearnerRow> rows(3);
    rows[0].file = "ann.bench.json";
    rows[0].bench = reversed;
    rows[0].comparison = *compareBenches(reversed, ComparisonTarget(target));
    rows[1].file = "bea.bench.json";
    rows[1].bench = target;
    rows[1].comparison = *compareBenches(target, ComparisonTarget(target));
    rows[2].file = "cem.txt";
    rows[2].error = "not a bench";
    const QString pdf = folder_.filePath(QStringLiteral("feedback.pdf"));
    ASSERT_FALSE(saveFeedback(rows, "Beacon lamp", Paper::A4, pdf));
    EXPECT_EQ(pagesIn(pdf), 3);
    const QString text = printedText(pdf).simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("Look at D1."))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Your bench does what was asked for. Well built.")));
    EXPECT_TRUE(text.contains(QStringLiteral("This file could not be looked at: not a bench.")));
    EXPECT_FALSE(text.contains(QStringLiteral("is the wrong way round")));
    EXPECT_FALSE(text.contains(QStringLiteral("its anode is in")));
}

TEST_F(Sheet, SymptomsAreGroupedByWhatTheEyeSees) {
    const auto bench = harbour("beacon-lamp");
    const auto slips = slipsAsSeen(bench);
    ASSERT_GT(slips.size(), 20u);
    const auto symptoms = bySymptom(slips);
    ASSERT_GT(symptoms.size(), 2u);
    EXPECT_EQ(symptoms.front().seen, "D1 never lights.");
    std::size_t counted = 0;
    for (const EyeSymptom& each : symptoms) counted += each.slips.size();
    EXPECT_EQ(counted, slips.size());
    const QString pdf = folder_.filePath(QStringLiteral("symptoms.pdf"));
    ASSERT_FALSE(saveSymptomSheet(bench->title, symptoms, Paper::A4, pdf));
    const QString text = printedText(pdf).simplified();
    for (const char* words : {"D1 never lights.", "the 8 likeliest of", "First look", "Look whether", "where"})
        EXPECT_TRUE(text.contains(QString::fromLatin1(words))) << words;
}

TEST_F(Sheet, APictureOpensAsTheBenchInside) {
    for (const auto& [name, bench] : harbourBenches()) {
        const QString path = folder_.filePath(QStringLiteral("shared.png"));
        ASSERT_FALSE(savePicture(pressedPicture(bench, ThemeName::Day), path, 800));
        EXPECT_FALSE(QImage(path).isNull());  // libpng finds nothing wrong with it
        const auto read = readBenchFile(path.toStdString());
        ASSERT_TRUE(read.ok()) << read.error().oneLine();
        EXPECT_TRUE(read->bench == *bench) << name;
    }
}

}  // namespace
}  // namespace tiepoint::ui
