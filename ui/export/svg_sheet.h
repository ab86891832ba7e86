#pragma once
// A drawing in SVG 1.1. Shapes are paths in pixels; each line of letters is its outlines, which look the same everywhere, and over them
// the words themselves, unseen, to be searched for, selected and read aloud. The same painting gives the same bytes.
// Use from the thread that paints.

#include "ui/paint/letter_sheet.h"

#include <QByteArray>
#include <QPaintDevice>
#include <QSize>

#include <memory>

namespace tiepoint::ui {

class SvgSheet : public QPaintDevice, public LetterSheet {
public:
    explicit SvgSheet(QSize pixels);
    ~SvgSheet() override;

    /// The file, once no painter is on the sheet any more. The title may be any text.
    QByteArray file(const std::string& title) const;

    QPaintEngine* paintEngine() const override;
    void drawLetters(QPainter& painter, const LetterLine& line, QPointF baseline) override;

protected:
    int metric(PaintDeviceMetric metric) const override;

private:
    class Engine;
    QSize pixels_;
    std::unique_ptr<Engine> engine_;
};

}  // namespace tiepoint::ui
