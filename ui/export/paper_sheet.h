#pragma once
// A sheet of paper to draw on: passes everything on to a device of pages, a PDF writer or a printer, in the way that prints right. Letters stay letters, with their font
// embedded; gradients that fade become shapes of one colour (flat_gradient.h). Use from the thread that paints.

#include "ui/paint/letter_sheet.h"
#include "ui/paint/relay_device.h"

#include <QPagedPaintDevice>

namespace tiepoint::ui {

class PaperSheet : public RelayDevice, public LetterSheet {
public:
    /// The writer must outlive the sheet. A painter on the sheet stays open over all pages; its newPage() begins the next.
    explicit PaperSheet(QPagedPaintDevice& writer);
    void drawLetters(QPainter& painter, const LetterLine& line, QPointF baseline) override;

private:
    class Engine;
};

}  // namespace tiepoint::ui
