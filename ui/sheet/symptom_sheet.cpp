#include "ui/sheet/symptom_sheet.h"

#include "ui/sheet/build_sheet.h"
#include "ui/theme/plain_text.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr std::size_t kMostSlipsShown = 8;

void addSymptom(std::vector<Block>& blocks, const EyeSymptom& symptom, double width) {
    const std::size_t shown = std::min(symptom.slips.size(), kMostSlipsShown);
    const QString beside = symptom.slips.size() > shown
                               ? QStringLiteral("the %1 likeliest of %2").arg(shown).arg(symptom.slips.size())
                               : QString();
    Block title = paragraph(plainText(symptom.seen), paper::kHeading, width, 1);
    title.keepsWithNext = true;
    blocks.push_back(gap(4));
    blocks.push_back(std::move(title));
    if (!beside.isEmpty()) {
        Block note = paragraph(beside, paper::kSmall, width, 1);
        note.keepsWithNext = true;
        blocks.push_back(std::move(note));
    }
    const std::vector<PaperColumn> columns{{QStringLiteral("Slip"), width * 0.34},
                                           {QStringLiteral("First look"), width * 0.33},
                                           {QStringLiteral("Proof"), width * 0.33}};
    std::vector<std::vector<PaperCell>> rows;
    for (std::size_t i = 0; i < shown; ++i) {
        const SlipSeen& each = symptom.slips[i];
        rows.push_back({{plainText(each.text), true, {}, 0},
                        {plainText(each.look), false, {}, 0},
                        {plainText(each.proof.empty() ? std::string("the look alone") : each.proof), false, {}, 0}});
    }
    for (Block& block : tableOf(columns, rows)) blocks.push_back(std::move(block));
}

}  // namespace

std::optional<QString> saveSymptomSheet(const std::string& title, const std::vector<EyeSymptom>& symptoms, Paper paper,
                                        const QString& path) {
    const double width = paper::contentWidthMm(paper);
    std::vector<Block> blocks;
    blocks.push_back(paragraph(
        QStringLiteral("One slip at a time, on a board that is right otherwise. The supply is off for every look; "
                       "for every proof the black tip touches minus."),
        paper::kBody, width));
    for (const EyeSymptom& symptom : symptoms) addSymptom(blocks, symptom, width);
    return savePages(
        pagesAsPdf(pagesOf(std::move(blocks), paper), {plainText(title), QStringLiteral("Symptom sheet")}, paper),
        path);
}

}  // namespace tiepoint::ui
