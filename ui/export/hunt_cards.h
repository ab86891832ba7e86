#pragma once
// Cards with secret slips on paper: eight on a sheet, to be cut out and folded, so that the one who searches doesn't read them; a last sheet
// is the instructor's key. Draws what it is given. Needs a QGuiApplication, but no display.

#include "ui/export/paper_plan.h"

#include <QString>

#include <optional>
#include <vector>

namespace tiepoint::ui {

struct HuntCard {
    QString order;  ///< what to do, as a sentence
    QString seen;   ///< what is seen then
    QString undo;   ///< how to put it right
};

/// Writes a PDF atomically. Returns why it failed, or nothing.
std::optional<QString> saveHuntCards(const QString& title, const std::vector<HuntCard>& cards, const QString& path,
                                     Paper paper = Paper::A4);

}  // namespace tiepoint::ui
