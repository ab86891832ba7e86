#include "ui/export/picture_file.h"

#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"
#include "ui/export/ink_extent.h"
#include "ui/export/paper_sheet.h"
#include "ui/export/save_bytes.h"
#include "ui/export/sheet_marks.h"
#include "ui/export/svg_sheet.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"
#include "ui/theme/plain_text.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kMarginMm = 6;     ///< around everything on the table ...
constexpr double kInkMarginMm = 2;  ///< ... and around whatever reaches further
constexpr int kPdfDotsPerInch = 1200;
constexpr double kMmPerInch = 25.4;

QRectF grownArea(const QRectF& rect, double by) { return rect.adjusted(-by, -by, by, by); }

QRectF pageArea(const Picture& picture) {
    return grownArea(toQt(picture.table->allMm), kMarginMm) | grownArea(inkExtent(picture), kInkMarginMm);
}

/// Draws the area so that one millimetre is `pixelsPerMm` of the device.
void draw(QPainter& painter, const Picture& picture, const QRectF& area) {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing | QPainter::SmoothPixmapTransform);
    painter.scale(picture.pixelsPerMm, picture.pixelsPerMm);
    painter.translate(-area.topLeft());
    paintTableTop(painter, *picture.theme, area);
    paintBench(painter, picture);
}

/// A picture, and what of the bench it shows.
struct PictureSheet {
    const Picture& picture;
    QRectF area;       ///< mm
    QSize size;        ///< pixels; says nothing of what is in true size
    Paper paper = {};  ///< says something only of that

    const std::string& title() const { return picture.bench().title; }
};

QImage drawImage(const PictureSheet& sheet) {
    QImage image(sheet.size, QImage::Format_RGB32);
    image.fill(sheet.picture.theme->benchBottom);
    {
        PixelSheet pixels(image);
        QPainter painter(&pixels);
        draw(painter, sheet.picture, sheet.area);
    }
    return image;
}

/// With the bench inside, so that the picture opens as what it shows.
QByteArray benchPng(const QImage& image, const Bench& bench) {
    QBuffer plain;
    plain.open(QIODevice::WriteOnly);
    if (!image.save(&plain, "PNG")) return {};
    const std::string_view bytes(plain.data().constData(), static_cast<std::size_t>(plain.data().size()));
    return QByteArray::fromStdString(withBenchInside(bytes, writeBench(bench)));
}

bool writePng(QIODevice& device, const PictureSheet& sheet) {
    const QByteArray file = benchPng(drawImage(sheet), sheet.picture.bench());
    return !file.isEmpty() && device.write(file) == file.size();
}

bool writeSvg(QIODevice& device, const PictureSheet& sheet) {
    SvgSheet drawing(sheet.size);
    {
        QPainter painter(&drawing);
        draw(painter, sheet.picture, sheet.area);
    }
    const QByteArray file = drawing.file(sheet.title());
    return device.write(file) == file.size();
}

void drawPage(QPainter& painter, const PictureSheet& sheet, const PaperPlan& plan, const PlannedSheet& page) {
    const double dotsPerMm = kPdfDotsPerInch / kMmPerInch;
    painter.save();
    painter.scale(dotsPerMm, dotsPerMm);
    paintSheetMarks(painter, plan, page, plainText(sheet.title()));
    painter.restore();
    painter.save();
    painter.setClipRect(QRectF(page.at * dotsPerMm, page.part.size() * dotsPerMm));
    painter.translate((page.at - page.part.topLeft()) * dotsPerMm);
    draw(painter, sheet.picture, sheet.area);
    painter.restore();
}

/// In true size, so that a printed layout can be laid over a real board; on as many sheets of paper as that takes.
bool writePdf(QIODevice& device, const PictureSheet& sheet) {
    const PaperPlan plan = planSheets(sheet.area.size(), sheet.paper);
    QPdfWriter writer(&device);
    writer.setTitle(plainText(sheet.title()));
    writer.setCreator(QStringLiteral("Tiepoint"));
    writer.setResolution(kPdfDotsPerInch);
    writer.setPageSize(QPageSize(sheet.paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter));
    writer.setPageOrientation(plan.isAcross ? QPageLayout::Landscape : QPageLayout::Portrait);
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    Picture trueSize = sheet.picture;
    trueSize.pixelsPerMm = kPdfDotsPerInch / kMmPerInch;
    const PictureSheet inTrueSize{trueSize, sheet.area, sheet.size, sheet.paper};
    PaperSheet paper(writer);
    QPainter painter;
    if (!painter.begin(&paper)) return false;
    for (const PlannedSheet& page : plan.sheets) {
        if (&page != &plan.sheets.front() && !writer.newPage()) return false;
        drawPage(painter, inTrueSize, plan, page);
    }
    return painter.end();
}

/// What of the bench a picture of that breadth shows, in whole pixels, so that the last row is covered too. Has it drawn for paper, and sets its
/// pixelsPerMm.
PictureSheet sheetFor(Picture& picture, int widthPixels, Paper paper) {
    picture.isOnPaper = true;
    QRectF area = pageArea(picture);
    picture.pixelsPerMm = widthPixels / area.width();
    const QSize size(widthPixels, static_cast<int>(std::ceil(area.height() * picture.pixelsPerMm)));
    area.setHeight(size.height() / picture.pixelsPerMm);
    return {picture, area, size, paper};
}

struct Format {
    const char* ending;
    bool (*write)(QIODevice& device, const PictureSheet& sheet);
};

constexpr Format kFormats[] = {{"png", writePng}, {"svg", writeSvg}, {"pdf", writePdf}};

const Format* formatOf(const QString& path) {
    const QString ending = QFileInfo(path).suffix().toLower();
    for (const Format& format : kFormats) {
        if (ending == QLatin1String(format.ending)) return &format;
    }
    return nullptr;
}

}  // namespace

bool isPictureFile(const QString& path) { return formatOf(path) != nullptr; }

QRectF pictureAreaMm(Picture picture) {
    picture.isOnPaper = true;
    return pageArea(picture);
}

QByteArray picturePng(const QImage& image, const Bench& bench) { return benchPng(image, bench); }

QImage pictureImage(Picture picture, int widthPixels) { return drawImage(sheetFor(picture, widthPixels, Paper::A4)); }

std::optional<QString> savePicture(Picture picture, const QString& path, int widthPixels, Paper paper) {
    const Format* format = formatOf(path);
    if (format == nullptr) return QStringLiteral("a picture's name ends in .png, .svg or .pdf");
    const PictureSheet sheet = sheetFor(picture, widthPixels, paper);
    QBuffer drawn;
    if (!drawn.open(QIODevice::WriteOnly) || !format->write(drawn, sheet))
        return QStringLiteral("the picture could not be drawn");
    return saveBytes(drawn.data(), path);
}

}  // namespace tiepoint::ui
