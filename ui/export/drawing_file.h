#pragma once
// Drawings other than the bench in files: PNG, SVG and PDF by the ending, from the painters of the screen. PNG and SVG are the same byte for
// byte each time; PDF is one page, in true size where it fits and smaller where it doesn't. Needs a QGuiApplication, but no display.

#include "ui/export/paper_plan.h"

#include <QColor>
#include <QPainter>
#include <QSizeF>
#include <QString>

#include <functional>
#include <optional>
#include <string>

namespace tiepoint::ui {

struct DrawnFile {
    std::string title;
    QSizeF sizeMm;
    QColor ground;
    std::function<void(QPainter&)> paint;  ///< in millimetres from 0,0
};

/// Whether the ending of the path is one that saveDrawing writes.
bool isDrawingFile(const QString& path);
/// Writes atomically. Returns why it failed, or nothing.
std::optional<QString> saveDrawing(const DrawnFile& drawing, const QString& path, int widthPixels,
                                   Paper paper = Paper::A4);

}  // namespace tiepoint::ui
