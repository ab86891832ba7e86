#include "ui/export/picture_file.h"

#include "core/base/file_io.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/pixel_sheet.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kMarginMm = 6;
constexpr int kPdfDotsPerInch = 1200;
constexpr double kMmPerInch = 25.4;

QRectF pageArea(const Picture& picture) {
    const Rect& all = picture.table->allMm;
    return QRectF(all.left, all.top, all.width, all.height).adjusted(-kMarginMm, -kMarginMm, kMarginMm, kMarginMm);
}

/// Draws the area so that one millimetre is `pixelsPerMm` of the device.
void draw(QPainter& painter, const Picture& picture, const QRectF& area) {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing | QPainter::SmoothPixmapTransform);
    painter.scale(picture.pixelsPerMm, picture.pixelsPerMm);
    painter.translate(-area.topLeft());
    painter.setClipRect(area);
    paintTableTop(painter, *picture.theme, area);
    paintBench(painter, picture);
}

QImage drawImage(const Picture& picture, const QRectF& area, QSize size) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(picture.theme->benchBottom);
    {
        PixelSheet sheet(image);
        QPainter painter(&sheet);
        draw(painter, picture, area);
    }
    return image;
}

bool writePng(QIODevice& device, const Picture& picture, const QRectF& area, QSize size) {
    return drawImage(picture, area, size).save(&device, "PNG");
}

bool writeSvg(QIODevice& device, const Picture& picture, const QRectF& area, QSize size) {
    QSvgGenerator generator;
    generator.setOutputDevice(&device);
    generator.setSize(size);
    generator.setViewBox(QRect(QPoint(0, 0), size));
    generator.setTitle(QString::fromStdString(picture.bench().title));
    QPainter painter;
    if (!painter.begin(&generator)) return false;
    draw(painter, picture, area);
    return painter.end();
}

/// In true size, so that a printed layout can be laid over a real board; the size in pixels says nothing here.
bool writePdf(QIODevice& device, const Picture& picture, const QRectF& area, QSize) {
    QPdfWriter writer(&device);
    writer.setTitle(QString::fromStdString(picture.bench().title));
    writer.setCreator(QStringLiteral("Tiepoint"));
    writer.setResolution(kPdfDotsPerInch);
    writer.setPageSize(QPageSize(area.size(), QPageSize::Millimeter, {}, QPageSize::ExactMatch));
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    Picture trueSize = picture;
    trueSize.pixelsPerMm = kPdfDotsPerInch / kMmPerInch;
    QPainter painter;
    if (!painter.begin(&writer)) return false;
    draw(painter, trueSize, area);
    return painter.end();
}

/// What of the bench a picture of that breadth shows, in whole pixels, so that the last row is covered too. Sets its pixelsPerMm.
std::pair<QRectF, QSize> sheetFor(Picture& picture, int widthPixels) {
    QRectF area = pageArea(picture);
    picture.pixelsPerMm = widthPixels / area.width();
    const QSize size(widthPixels, static_cast<int>(std::ceil(area.height() * picture.pixelsPerMm)));
    area.setHeight(size.height() / picture.pixelsPerMm);
    return {area, size};
}

struct Format {
    const char* ending;
    bool (*write)(QIODevice& device, const Picture& picture, const QRectF& area, QSize size);
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

QImage pictureImage(Picture picture, int widthPixels) {
    const auto [area, size] = sheetFor(picture, widthPixels);
    return drawImage(picture, area, size);
}

std::optional<QString> savePicture(Picture picture, const QString& path, int widthPixels) {
    const Format* format = formatOf(path);
    if (format == nullptr) return QStringLiteral("a picture's name ends in .png, .svg or .pdf");
    const auto [area, size] = sheetFor(picture, widthPixels);
    QBuffer drawn;
    if (!drawn.open(QIODevice::WriteOnly) || !format->write(drawn, picture, area, size))
        return QStringLiteral("the picture could not be drawn");
    const QByteArray& bytes = drawn.data();
    const auto written =
        writeFileAtomically(path.toStdString(), {bytes.data(), static_cast<std::size_t>(bytes.size())});
    if (!written) return QString::fromStdString(written.error().message);
    return std::nullopt;
}

}  // namespace tiepoint::ui
