// tiepoint render: pictures without a display, the same byte for byte each time.

#include "app/run_program.h"

#include <QImage>

#include <gtest/gtest.h>

#include <algorithm>

namespace tiepoint::test {
namespace {

struct Drawn {
    Ran ran;
    std::string bytes;
};

Drawn draw(const std::string& bench, const std::string& ending, std::vector<std::string> more = {}) {
    const auto path = scratchFolder() / ("picture" + ending);
    std::filesystem::remove(path);
    std::vector<std::string> arguments{"render", harbourBench(bench), "-o", path.string()};
    arguments.insert(arguments.end(), more.begin(), more.end());
    Drawn drawn{runProgram(arguments), {}};
    drawn.bytes = readFile(path);
    return drawn;
}

QImage imageOf(const Drawn& drawn) {
    return QImage::fromData(reinterpret_cast<const uchar*>(drawn.bytes.data()), static_cast<int>(drawn.bytes.size()),
                            "PNG");
}

/// How many pixels differ by more than a shade.
int differing(const QImage& a, const QImage& b) {
    EXPECT_EQ(a.size(), b.size());
    int count = 0;
    for (int y = 0; y < std::min(a.height(), b.height()); ++y) {
        for (int x = 0; x < std::min(a.width(), b.width()); ++x) {
            const QRgb p = a.pixel(x, y), q = b.pixel(x, y);
            const int apart =
                std::abs(qRed(p) - qRed(q)) + std::abs(qGreen(p) - qGreen(q)) + std::abs(qBlue(p) - qBlue(q));
            count += apart > 24 ? 1 : 0;
        }
    }
    return count;
}

TEST(Render, PngAndSvgAreTheSameEachTime) {
    for (const char* ending : {".png", ".svg"}) {
        SCOPED_TRACE(ending);
        const Drawn first = draw("beacon-lamp", ending, {"--hold", "S1"});
        const Drawn second = draw("beacon-lamp", ending, {"--hold", "S1"});
        ASSERT_EQ(first.ran.code, 0) << first.ran.error;
        EXPECT_EQ(first.ran.error, "");
        EXPECT_GT(first.bytes.size(), 1000u);
        EXPECT_TRUE(first.bytes == second.bytes);
    }
}

TEST(Render, FormatFollowsTheEnding) {
    EXPECT_EQ(draw("beacon-lamp", ".png").bytes.substr(1, 3), "PNG");
    EXPECT_EQ(draw("beacon-lamp", ".pdf").bytes.substr(0, 5), "%PDF-");
    const std::string svg = draw("beacon-lamp", ".svg").bytes;
    EXPECT_EQ(svg.substr(0, 5), "<?xml");
    EXPECT_NE(svg.find("<title>Beacon lamp</title>"), std::string::npos);
    EXPECT_NE(svg.find("</svg>"), std::string::npos);
}

/// What pdfinfo or pdftotext says of a drawn PDF.
std::string told(const std::string& tool, const Drawn& drawn, std::vector<std::string> more = {}) {
    EXPECT_EQ(drawn.ran.code, 0) << drawn.ran.error;
    more.insert(more.begin(), scratchFile("told.pdf", drawn.bytes));
    const Ran ran = runTool(tool, more);
    EXPECT_EQ(ran.code, 0) << ran.error;
    return ran.output;
}

TEST(Render, PaperIsA4UnlessLetterIsAskedFor) {
    for (const auto& [more, name] : std::vector<std::pair<std::vector<std::string>, std::string>>{
             {{}, "(A4)"}, {{"--paper", "a4"}, "(A4)"}, {{"--paper", "letter"}, "(letter)"}}) {
        const std::string facts = told("pdfinfo", draw("beacon-lamp", ".pdf", more));
        EXPECT_NE(facts.find(name), std::string::npos) << facts;
        EXPECT_NE(facts.find("Pages:           1"), std::string::npos) << facts;
    }
    const Drawn refused = draw("beacon-lamp", ".pdf", {"--paper", "foolscap"});
    EXPECT_EQ(refused.ran.code, 2);
    EXPECT_NE(refused.ran.error.find("foolscap"), std::string::npos) << refused.ran.error;
}

TEST(Render, WordsOfTheBenchAreWordsInTheFile) {
    const std::string printed = told("pdftotext", draw("beacon-lamp", ".pdf", {"--hold", "S1"}), {"-layout", "-"});
    const std::string drawn = draw("beacon-lamp", ".svg", {"--hold", "S1"}).bytes;
    for (const char* words : {"R1", "330 Ω", "S1", "D1", "5.00 V", "9.37 mA"}) {
        EXPECT_NE(printed.find(words), std::string::npos) << words << " isn't in\n" << printed;
        EXPECT_NE(drawn.find(words), std::string::npos) << words;
    }
    EXPECT_NE(drawn.find(">R1  330 Ω</text>"), std::string::npos);
}

TEST(Render, NeedsNoDisplayWhateverTheEnvironmentSays) {
    const std::string picture = (scratchFolder() / "anywhere.png").string();
    const std::vector<std::string> arguments{"render", harbourBench("beacon-lamp"), "-o", picture};
    EXPECT_EQ(runProgram(arguments, {"QT_QPA_PLATFORM=xcb", "DISPLAY=:987"}).code, 0);
    EXPECT_FALSE(readFile(picture).empty());
}

TEST(Render, WithoutASolutionThePictureComesAndTheCodeSaysSo) {
    const std::string picture = (scratchFolder() / "clash.png").string();
    const Ran ran = runProgram({"render", clashingBench(), "-o", picture});
    EXPECT_EQ(ran.code, 1);
    EXPECT_EQ(ran.error, "");
    EXPECT_FALSE(readFile(picture).empty());
}

TEST(Render, WidthIsKept) {
    for (const int width : {640, 1600}) {
        EXPECT_EQ(imageOf(draw("beacon-lamp", ".png", {"--width", std::to_string(width)})).width(), width);
    }
}

TEST(Render, APressedButtonShows) {
    const QImage open = imageOf(draw("beacon-lamp", ".png"));
    const QImage held = imageOf(draw("beacon-lamp", ".png", {"--hold", "S1"}));
    EXPECT_GT(differing(open, held), 1000);
}

TEST(Render, EveryViewAndThemeChangesThePicture) {
    const std::vector<std::vector<std::string>> choices{{"--show", "none"},
                                                        {"--show", "arrows"},
                                                        {"--show", "voltage"},
                                                        {"--show", "strips"},
                                                        {"--show", "readings"},
                                                        {"--show", "arrows,turned"},
                                                        {"--show", "arrows,voltage,strips,readings"},
                                                        {"--theme", "dark"},
                                                        {"--theme", "projector"}};
    std::vector<QImage> pictures;
    for (std::vector<std::string> choice : choices) {
        choice.insert(choice.end(), {"--hold", "S1", "--width", "800"});
        const Drawn drawn = draw("beacon-lamp", ".png", choice);
        ASSERT_EQ(drawn.ran.code, 0) << drawn.ran.error;
        const QImage picture = imageOf(drawn);
        for (std::size_t i = 0; i < pictures.size(); ++i) {
            if (picture.size() != pictures[i].size()) continue;  // leads that are drawn otherwise need another room
            EXPECT_GT(differing(picture, pictures[i]), 100) << choice[1] << " looks like " << choices[i][1];
        }
        pictures.push_back(picture);
    }
}

TEST(Render, ArrowsAndReadingsAreShownWhereNothingIsSaid) {
    EXPECT_TRUE(draw("beacon-lamp", ".png", {"--hold", "S1"}).bytes ==
                draw("beacon-lamp", ".png", {"--hold", "S1", "--show", "arrows,readings", "--theme", "day"}).bytes);
}

/// The beacon with one more member.
std::string beaconWith(const std::string& member) {
    std::string text = readFile(harbourBench("beacon-lamp"));
    text.insert(text.find("\"title\""), member + ", ");
    return scratchFile("beacon-with.bench.json", text);
}

QImage pictureOf(const std::string& bench, std::vector<std::string> more = {}) {
    const std::string path = (scratchFolder() / "left.png").string();
    std::vector<std::string> arguments{"render", bench, "-o", path, "--hold", "S1", "--width", "800"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Ran ran = runProgram(arguments);
    EXPECT_EQ(ran.code, 0) << ran.error;
    const QImage picture(QString::fromStdString(path));  // the file holds the bench, too
    EXPECT_FALSE(picture.isNull());
    return picture;
}

TEST(Render, ShowsABenchAsItWasLeftUnlessTold) {
    const std::string left =
        beaconWith(R"("views": {"arrows": "off", "voltage": true, "strips": true, "readings": false, "turned": true})");
    EXPECT_TRUE(pictureOf(left) == pictureOf(harbourBench("beacon-lamp"), {"--show", "voltage,strips,turned"}));
    EXPECT_TRUE(pictureOf(left, {"--show", "arrows"}) == pictureOf(harbourBench("beacon-lamp"), {"--show", "arrows"}));
    const std::string electrons = beaconWith(R"("views": {"arrows": "electrons"})");
    EXPECT_TRUE(pictureOf(electrons) == pictureOf(harbourBench("beacon-lamp"), {"--show", "electrons,readings"}));
}

TEST(Render, DrawsPinnedReadings) {
    const std::string pinned =
        beaconWith(R"("pinned": [{"id": "M1", "watts": "D1"}, {"id": "M2", "volts": ["A.a8", "A.a14"]}])");
    EXPECT_FALSE(pictureOf(pinned, {"--show", "none"}) == pictureOf(harbourBench("beacon-lamp"), {"--show", "none"}));
}

}  // namespace
}  // namespace tiepoint::test
