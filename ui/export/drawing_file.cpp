#include "ui/export/drawing_file.h"

#include "ui/export/paper_sheet.h"
#include "ui/export/picture_file.h"
#include "ui/export/save_bytes.h"
#include "ui/export/svg_sheet.h"
#include "ui/paint/lettering.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/theme/plain_text.h"

#include <QBuffer>
#include <QFileInfo>
#include <QImage>
#include <QPageSize>
#include <QPdfWriter>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kDrawingDotsPerInch = 1200;
constexpr double kDrawingDotsPerMm = kDrawingDotsPerInch / 25.4;
constexpr double kPageMarginMm = 14, kTitleMm = 5;

void drawScaled(QPainter& painter, const DrawnFile& drawing, double unitsPerMm) {
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(unitsPerMm, unitsPerMm);
    drawing.paint(painter);
}

QSize pixelsFor(const DrawnFile& drawing, int widthPixels) {
    const double height = drawing.sizeMm.height() * widthPixels / drawing.sizeMm.width();
    return {widthPixels, std::max(1, static_cast<int>(std::ceil(height)))};
}

bool writeDrawnPng(QIODevice& device, const DrawnFile& drawing, int widthPixels) {
    QImage image(pixelsFor(drawing, widthPixels), QImage::Format_RGB32);
    image.fill(drawing.ground);
    {
        PixelSheet pixels(image);
        QPainter painter(&pixels);
        drawScaled(painter, drawing, widthPixels / drawing.sizeMm.width());
    }
    return image.save(&device, "PNG");
}

bool writeDrawnSvg(QIODevice& device, const DrawnFile& drawing, int widthPixels) {
    const QSize size = pixelsFor(drawing, widthPixels);
    SvgSheet sheet(size);
    {
        QPainter painter(&sheet);
        painter.fillRect(QRectF(QPointF(), size), drawing.ground);
        drawScaled(painter, drawing, widthPixels / drawing.sizeMm.width());
    }
    const QByteArray file = sheet.file(drawing.title);
    return device.write(file) == file.size();
}

bool writeDrawnPdf(QIODevice& device, const DrawnFile& drawing, Paper paper) {
    const bool across = drawing.sizeMm.width() > drawing.sizeMm.height();
    const QPageSize pageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter);
    QPdfWriter writer(&device);
    writer.setTitle(plainText(drawing.title));
    writer.setCreator(QStringLiteral("Tiepoint"));
    writer.setResolution(kDrawingDotsPerInch);
    writer.setPageSize(pageSize);
    writer.setPageOrientation(across ? QPageLayout::Landscape : QPageLayout::Portrait);
    writer.setPageMargins(QMarginsF(0, 0, 0, 0));
    QSizeF page = pageSize.size(QPageSize::Millimeter);
    if (across) page.transpose();
    const double above = kPageMarginMm + 2 * kTitleMm;
    const double scale = std::min({1.0, (page.width() - 2 * kPageMarginMm) / drawing.sizeMm.width(),
                                   (page.height() - above - kPageMarginMm) / drawing.sizeMm.height()});
    PaperSheet sheet(writer);
    QPainter painter;
    if (!painter.begin(&sheet)) return false;
    painter.save();
    painter.scale(kDrawingDotsPerMm, kDrawingDotsPerMm);
    drawText(painter, plainText(drawing.title), {kPageMarginMm, kPageMarginMm + kTitleMm / 2},
             {kTitleMm, QFont::DemiBold}, Qt::black, Qt::AlignLeft);
    painter.restore();
    painter.translate(QPointF(kPageMarginMm, above) * kDrawingDotsPerMm);
    drawScaled(painter, drawing, scale * kDrawingDotsPerMm);
    return painter.end();
}

}  // namespace

bool isDrawingFile(const QString& path) { return isPictureFile(path); }

std::optional<QString> saveDrawing(const DrawnFile& drawing, const QString& path, int widthPixels, Paper paper) {
    const QString ending = QFileInfo(path).suffix().toLower();
    QBuffer buffer;
    const bool drawn = buffer.open(QIODevice::WriteOnly) &&
                       (ending == QLatin1String("png")   ? writeDrawnPng(buffer, drawing, widthPixels)
                        : ending == QLatin1String("svg") ? writeDrawnSvg(buffer, drawing, widthPixels)
                                                         : writeDrawnPdf(buffer, drawing, paper));
    if (!drawn) return QStringLiteral("the picture could not be drawn");
    return saveBytes(buffer.data(), path);
}

}  // namespace tiepoint::ui
