#include "ui/window/edit_actions.h"

#include "core/bench/bench_file.h"
#include "core/edit/told.h"
#include "ui/view/bench_marks.h"

#include <QClipboard>
#include <QGuiApplication>

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint::ui {
namespace {

/// The bench with only the named parts and jumpers on it.
Bench extract(const Bench& bench, const std::vector<std::string>& ids) {
    Bench some = bench;
    some.notes.clear();
    some.views.reset();
    const auto unnamed = [&](const auto& object) { return std::ranges::find(ids, object.id) == ids.end(); };
    std::erase_if(some.parts, unnamed);
    std::erase_if(some.jumpers, [&](const Jumper& jumper) {
        const auto dangles = [&](const JumperEnd& end) {
            const auto* socket = std::get_if<Socket>(&end);
            return socket && !some.findPart(socket->part);
        };
        return unnamed(jumper) || std::ranges::any_of(jumper.ends, dangles);
    });
    std::erase_if(some.pinned, [&](const PinnedReading& reading) {
        const std::string thing(thingOf(reading.of));
        return !some.findPart(thing) && !some.findJumper(thing);
    });
    return some;
}

std::vector<std::string> allIds(const Bench& bench) {
    std::vector<std::string> ids;
    for (const Part& part : bench.parts) ids.push_back(part.id);
    for (const Jumper& jumper : bench.jumpers) ids.push_back(jumper.id);
    return ids;
}

QStringList toList(const std::vector<std::string>& ids) {
    QStringList list;
    for (const std::string& id : ids) list << QString::fromStdString(id);
    return list;
}

}  // namespace

EditActions::EditActions(BenchDocument& document, BenchView& view, QObject* parent)
    : QObject(parent),
      document_(document),
      view_(view) {}

std::vector<std::string> EditActions::selection() const {
    std::vector<std::string> ids;
    for (const QString& id : view_.selection()) ids.push_back(id.toStdString());
    return ids;
}

void EditActions::copy() {
    const auto ids = selection();
    if (ids.empty()) return;
    QGuiApplication::clipboard()->setText(QString::fromStdString(writeBench(extract(*document_.bench(), ids))));
}

void EditActions::cut() {
    copy();
    removeSelection();
}

void EditActions::paste() {
    const auto read = readBench(QGuiApplication::clipboard()->text().toStdString());
    if (!read) return void(Q_EMIT refused(QStringLiteral("The clipboard holds no parts.")));
    addCopies(copiesOnto(*document_.bench(), read->bench, allIds(read->bench), view_.holeAtHand()));
}

void EditActions::duplicate(int count) {
    if (const auto ids = selection(); !ids.empty()) addCopies(copiesInRow(*document_.bench(), ids, count));
}

void EditActions::addCopies(const Result<Copies>& copies) {
    if (!copies)
        return void(Q_EMIT refused(
            QStringLiteral("Nothing is copied: %1.").arg(QString::fromStdString(copies.error().message))));
    if (const auto why = document_.push(copies->edit)) return void(Q_EMIT refused(*why));
    view_.setSelection(toList(copies->ids));
    const std::string times = copies->count > 1 ? fmt::format("copied {} times, the last", copies->count) : "copied";
    view_.marks().tell(toldOf(*document_.bench(), copies->ids, times));
    if (copies->noMore.empty()) return;
    Q_EMIT refused(QStringLiteral("Copied %1 times, not more: %2.")
                       .arg(copies->count)
                       .arg(QString::fromStdString(copies->noMore)));
}

void EditActions::removeSelection() {
    const auto ids = selection();
    if (ids.empty()) return;
    if (const auto why = document_.push(removeEdit(*document_.bench(), ids))) return void(Q_EMIT refused(*why));
    view_.setSelection({});
    view_.marks().tell(toldOf(*document_.bench(), ids, "removed"));
}

void EditActions::selectAll() { view_.setSelection(toList(allIds(*document_.bench()))); }

}  // namespace tiepoint::ui
