#include "core/bench/describe.h"
#include "core/diagram/diagram.h"
#include "core/snapshot/throws.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

/// Advance of a letter as a share of the em, on the safe side for the sans serifs that the program draws with.
double advanceOf(char32_t letter) {
    constexpr std::u32string_view kNarrow = U"iljftrI.,:;'|!()[] -·", kWide = U"mwMWΩ@%—";
    if (kNarrow.find(letter) != std::u32string_view::npos) return 0.42;
    if (kWide.find(letter) != std::u32string_view::npos) return 0.98;
    return letter < 0x2000 ? 0.72 : 1.1;
}

}  // namespace

double sheetTextWidth(std::string_view text, double emMm) {
    double width = 0;
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const std::size_t length = byte < 0x80 ? 1 : byte < 0xE0 ? 2 : byte < 0xF0 ? 3 : 4;
        char32_t letter = byte;
        if (length > 1) {
            letter = byte & (0x7Fu >> length);
            for (std::size_t k = 1; k < length && i + k < text.size(); ++k)
                letter = (letter << 6) | (static_cast<unsigned char>(text[i + k]) & 0x3Fu);
        }
        width += advanceOf(letter) * emMm;
        i += length;
    }
    return std::ceil(width * 2) / 2;
}

std::string sheetValue(const Part& part) {
    const PartKind& kind = *part.kind;
    if (isSwitch(kind) && !kind.isSupply && kind.family != "Meter") return {};
    if (const int beside = valueBesideId(kind); beside >= 0)
        return describeSetting(kind.values[beside], part.value(beside));
    if (kind.isSupply) {
        for (std::size_t i = 0; i < kind.values.size(); ++i) {
            if (kind.values[i].unit == "V") return describeSetting(kind.values[i], part.value(static_cast<int>(i)));
        }
    }
    return describeKind(part);
}

std::string switchWord(const Bench& bench, int part, const Inputs& inputs) {
    const PartKind& kind = *bench.parts[part].kind;
    if (!isSwitch(kind) || kind.isSupply || kind.family == "Meter") return {};
    const auto contacts = std::ranges::count(kind.model, std::string_view("contact"), &ElementSpec::element);
    if (contacts == 1) {
        for (std::size_t i = 0; i < kind.model.size(); ++i) {
            if (kind.model[i].element != "contact") continue;
            const SymbolWhen closed{SymbolWhen::Kind::Closed, static_cast<int>(i), 0};
            return isDrawn(closed, bench.parts[part], inputs) ? "closed" : "open";
        }
    }
    for (const Throw& each : throwsOf(bench)) {
        if (each.part == part) return positionInWords(each, bench, digitsOf({each}, bench, inputs).front());
    }
    return {};
}

DiagramHints stripOrder(const Bench& bench) {
    DiagramHints hints;
    constexpr double kFar = 1e7;
    for (std::size_t part = 0; part < bench.parts.size(); ++part) {
        double sum = 0, row = 0;
        int count = 0;
        for (const auto& lead : bench.parts[part].leads) {
            if (!lead) continue;
            const auto at = holeMm(bench, *lead);
            if (!at) continue;
            sum += at->x, row += at->y, ++count;
        }
        // Left to right; what stands in the same columns, from the top down.
        hints.order.push_back(bench.parts[part].kind->isSupply || count == 0
                                  ? (bench.parts[part].kind->isSupply ? -kFar : kFar)
                                  : sum / count + row / count * 1e-3);
    }
    return hints;
}

void keepOrder(DiagramHints& hints, const Netlist& netlist, const Diagram& before, const Netlist& beforeNetlist) {
    hints.flow = before.flow;
    hints.order.resize(netlist.parts.size());
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        const int old = beforeNetlist.partIndex(netlist.parts[part].id);
        if (old < 0 || old >= std::ssize(before.parts)) continue;
        const Point at = before.parts[old].pose.at;
        hints.order[part] = before.flow == SheetFlow::Rightward ? at.y + at.x * 1e-3 : at.x + at.y * 1e-3;
    }
}

}  // namespace tiepoint
