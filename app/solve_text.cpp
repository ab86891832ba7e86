#include "app/finding_report.h"
#include "app/net_list.h"
#include "app/solve_report.h"
#include "app/walk_report.h"
#include "core/base/printable.h"
#include "core/bench/describe.h"
#include "core/findings/when_words.h"
#include "core/meter/meter.h"
#include "core/snapshot/pinned_value.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

std::string headline(const Snapshot& snapshot) {
    const std::string title = printable(snapshot.layout->bench->title);
    switch (snapshot.status()) {
        case Status::Solved:
            return fmt::format("{}: solved\n", title);
        case Status::Off:
            return fmt::format("{}: every supply is off\n", title);
        case Status::None:
            return fmt::format("{}: no solution: {}\n", title, snapshot.solution.reason);
    }
    return {};
}

std::string voltageText(const Figure& volt) { return volt.isKnown() ? volt.text() : "floating"; }

std::string netsText(const Snapshot& snapshot) {
    std::string text = "\nNets, in volts above the reference\n";
    int id = 0;
    for (const NetMembers& members : netMembers(*snapshot.layout)) {
        text += fmt::format("{:>4}   {:>10}   {}\n", id++, voltageText(snapshot.shown().volt(members.net)),
                            membersText(members));
    }
    return text;
}

std::string leadText(const Snapshot& snapshot, int lead, const std::string& name) {
    const Figure ampere = snapshot.shown().leadCurrent(lead);
    const std::string_view way = ampere.isZero() ? "" : ampere.steps() > 0 ? " in" : " out";
    return fmt::format("    {:<8} {:>10}   {}{}\n", name, voltageText(snapshot.shown().leadVolt(lead)),
                       ampere.magnitude().text(), way);
}

std::string partsText(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::string text = "\nParts\n";
    for (int part = 0; part < static_cast<int>(layout.bench->parts.size()); ++part) {
        const Part& content = layout.bench->parts[part];
        const Figure watt = snapshot.shown().power(part);
        text += fmt::format("  {}: {} {}", describePart(content), watt.steps() < 0 ? "gives" : "takes",
                            watt.magnitude().text());
        if (content.kind->emitsLight) text += fmt::format(", brightness {:.0f} %", 100 * snapshot.brightness(part));
        if (const auto reading = meterReading(snapshot, part)) text += fmt::format(", reads {}", reading->text());
        text += '\n';
        for (int lead = 0; lead < static_cast<int>(content.kind->leads.size()); ++lead) {
            text += leadText(snapshot, layout.leadIndex(part, lead), content.kind->leads[lead].name);
        }
    }
    return text;
}

std::string jumpersText(const Snapshot& snapshot) {
    const auto& jumpers = snapshot.layout->bench->jumpers;
    if (jumpers.empty()) return {};
    std::string text = "\nJumpers, from the first end to the second\n";
    for (int jumper = 0; jumper < static_cast<int>(jumpers.size()); ++jumper) {
        text += fmt::format("  {:<6} {:>10}\n", jumpers[jumper].id, snapshot.shown().jumperCurrent(jumper).text());
    }
    return text;
}

std::string pinnedReadingsText(const Snapshot& snapshot) {
    const Bench& bench = *snapshot.layout->bench;
    if (bench.pinned.empty()) return {};
    std::string text = "\nPinned\n";
    for (const PinnedReading& reading : bench.pinned) {
        text += fmt::format("  {:<28} {:>10}\n", measurandInWords(bench, reading.of), pinnedText(snapshot, reading));
    }
    return text;
}

}  // namespace

std::string solveText(const Snapshot& snapshot, const Report& report, std::optional<int> walked) {
    std::string text = headline(snapshot);
    if (const std::string lasting = lastingWords(snapshot); !lasting.empty()) text += lasting + '\n';
    if (snapshot.status() == Status::Solved)
        text += netsText(snapshot) + partsText(snapshot) + jumpersText(snapshot) + pinnedReadingsText(snapshot);
    if (walked) text += walkReport(snapshot, *walked);
    if (!report.findings.empty()) text += "\nFindings\n" + findingsText(report);
    return text;
}

}  // namespace tiepoint::app
