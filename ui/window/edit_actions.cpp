#include "ui/window/edit_actions.h"

#include "core/bench/bench_file.h"
#include "core/edit/copies.h"

#include <QClipboard>
#include <QGuiApplication>

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
    addCopies(read->bench, allIds(read->bench));
}

void EditActions::duplicate() {
    if (const auto ids = selection(); !ids.empty()) addCopies(*document_.bench(), ids);
}

void EditActions::addCopies(const Bench& from, const std::vector<std::string>& ids) {
    const auto copies = copiesOnto(*document_.bench(), from, ids);
    if (!copies)
        return void(Q_EMIT refused(
            QStringLiteral("Nothing is copied: %1.").arg(QString::fromStdString(copies.error().message))));
    if (const auto why = document_.push(copies->edit)) return void(Q_EMIT refused(*why));
    view_.setSelection(toList(copies->ids));
}

void EditActions::removeSelection() {
    const auto ids = selection();
    if (ids.empty()) return;
    if (const auto why = document_.push(removeEdit(*document_.bench(), ids))) return void(Q_EMIT refused(*why));
    view_.setSelection({});
}

void EditActions::selectAll() { view_.setSelection(toList(allIds(*document_.bench()))); }

}  // namespace tiepoint::ui
