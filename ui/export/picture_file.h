#pragma once
// Pictures on paper and in files: PNG, SVG and PDF, drawn by the painters of the screen. Needs a QGuiApplication, but no display.
// PNG and SVG are the same byte for byte each time.

#include "ui/export/paper_plan.h"
#include "ui/paint/picture.h"

#include <QImage>
#include <QString>

#include <optional>

namespace tiepoint::ui {

/// Whether the ending of the path is one that savePicture writes.
bool isPictureFile(const QString& path);

/// Draws everything on the table, with a margin, and writes it in the format that the path's ending names. PNG and SVG are
/// `widthPixels` wide; PNG has the bench inside; PDF is in true size, on as many sheets of paper as that takes. Writes atomically.
/// Returns why it failed, or nothing.
std::optional<QString> savePicture(Picture picture, const QString& path, int widthPixels, Paper paper = Paper::A4);

/// What a picture shows, mm of the table: all that lies there and all ink, with a margin.
QRectF pictureAreaMm(Picture picture);

/// Pixels as a PNG file with the bench inside that they show (core/bench/bench_in_picture.h).
QByteArray picturePng(const QImage& image, const Bench& bench);

/// The same picture as pixels.
QImage pictureImage(Picture picture, int widthPixels);

}  // namespace tiepoint::ui
