#pragma once
// What others make of the files that are exported: PDF and SVG as pixels and as text, by the distribution's tools (poppler-utils,
// librsvg2-bin), and how far two pictures lie apart.

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "ui/paint/picture.h"

#include <QImage>
#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace tiepoint::ui {

/// Runs a tool and returns what it writes to standard output.
inline QByteArray toolOutput(const char* tool, const QStringList& arguments) {
    QProcess process;
    process.start(QString::fromLatin1(tool), arguments);
    constexpr int kPatienceMs = 60'000;
    EXPECT_TRUE(process.waitForFinished(kPatienceMs)) << tool << " is in none of the folders of PATH, or hangs";
    EXPECT_EQ(process.exitCode(), 0) << tool << ": " << process.readAllStandardError().toStdString();
    return process.readAllStandardOutput();
}

/// A page of a PDF, counted from 1, at so many pixels for each millimetre.
inline QImage printedPage(const QString& pdf, int page, double pixelsPerMm) {
    constexpr double kMmPerInch = 25.4;
    const QString number = QString::number(page);
    return QImage::fromData(toolOutput("pdftoppm", {"-png", "-r", QString::number(pixelsPerMm * kMmPerInch, 'f', 3),
                                                    "-f", number, "-l", number, pdf}),
                            "PNG");
}

inline QString printedText(const QString& pdf) {
    return QString::fromUtf8(toolOutput("pdftotext", {"-layout", pdf, "-"}));
}

inline QImage drawnSvg(const QString& svg) { return QImage::fromData(toolOutput("rsvg-convert", {svg}), "PNG"); }

/// How far two pictures of the same size lie apart: the mean over all pixels, and the share of pixels that no pixel beside the same
/// place in the other picture comes near. In shades of 255, the worst channel counts.
struct Apart {
    double mean = 0;
    double share = 0;
};

inline int shadesApart(QRgb a, QRgb b) {
    return std::max({std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)), std::abs(qBlue(a) - qBlue(b))});
}

inline Apart apart(const QImage& a, const QImage& b) {
    EXPECT_EQ(a.size(), b.size());
    constexpr int kNear = 48;
    double sum = 0, lost = 0;
    const QRect inside = a.rect() & b.rect();
    for (int y = inside.top(); y <= inside.bottom(); ++y) {
        for (int x = inside.left(); x <= inside.right(); ++x) {
            sum += shadesApart(a.pixel(x, y), b.pixel(x, y));
            int nearest = 255;
            for (int dy = -1; dy <= 1 && nearest > kNear; ++dy)
                for (int dx = -1; dx <= 1; ++dx)
                    if (inside.contains(x + dx, y + dy))
                        nearest = std::min(nearest, shadesApart(a.pixel(x, y), b.pixel(x + dx, y + dy)));
            lost += nearest > kNear ? 1 : 0;
        }
    }
    const double count = inside.width() * inside.height();
    return {sum / count, lost / count};
}

/// The same seen from farther away, in squares of so many pixels. Two rasterisers never draw an edge alike, but over the breadth of a line and
/// its gap they add up to the same; what is missing, moved or black where it shouldn't be doesn't.
inline QImage fromAfar(const QImage& image, int pixels) {
    return image.scaled(image.size() / pixels, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

/// A picture of a bench with all of its buttons pressed, as the window would draw it.
inline Picture pressedPicture(std::shared_ptr<const Bench> bench, ThemeName name, const Views& views = {}) {
    Inputs inputs;
    for (const Part& part : bench->parts)
        if (part.kind->hasCap) inputs.held.insert(part.id);
    Picture picture;
    picture.snapshot = evaluate(bench, inputs);
    picture.layout = picture.snapshot->layout;
    picture.theme = &theme(name);
    picture.views = views;
    picture.arrangeTable();
    picture.arrangeTags();
    return picture;
}

/// The benches that come with the program, by name.
inline std::vector<std::pair<std::string, std::shared_ptr<const Bench>>> harbourBenches() {
    std::vector<std::pair<std::string, std::shared_ptr<const Bench>>> benches;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("benches/")) continue;
        auto read = readBench(file.text);
        EXPECT_TRUE(read.ok()) << file.name;
        if (read)
            benches.emplace_back(std::string(file.name), std::make_shared<const Bench>(std::move(read).value().bench));
    }
    return benches;
}

}  // namespace tiepoint::ui
