#include "ui/view/bench_marks.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kFlashMs = 2600;  ///< how long words beside the pointer stay

bool hasThing(const Bench& bench, const std::string& id) {
    return bench.findPart(id) || bench.findJumper(id) || bench.findNote(id) || bench.findPinned(id);
}

}  // namespace

BenchMarks::BenchMarks(Marks& marks) : marks_(marks) {
    flashing_.setSingleShot(true);
    flashing_.setInterval(kFlashMs);
    connect(&flashing_, &QTimer::timeout, this, [this] {
        marks_.say.clear();
        show();
    });
}

void BenchMarks::lightNets(std::vector<int> nets) {
    std::sort(nets.begin(), nets.end());
    nets.erase(std::unique(nets.begin(), nets.end()), nets.end());
    litNets_ = std::move(nets);
    show();
}

void BenchMarks::tell(const std::string& words) {
    told_ = words;
    Q_EMIT toldAnew();
}

void BenchMarks::flash(const std::string& words, Point at) {
    const bool stands = flashing_.isActive() && marks_.say == words;  // said with every move of a drag
    if (!stands) tell(words);
    marks_.say = words;
    marks_.sayAt = at;
    flashing_.start();
    show();
}

void BenchMarks::clearCarried() {
    marks_.targets.clear();
    marks_.carried.reset();
    marks_.group.reset();
    marks_.groupBoard.clear();
    marks_.drawn.reset();
    marks_.drawnFree.reset();
    marks_.probe.reset();
    marks_.band.reset();
    marks_.refused = false;
    if (!flashing_.isActive()) marks_.say.clear();
    litNets_.clear();
    Q_EMIT carriedCleared();
    show();
}

void BenchMarks::clear() {
    flashing_.stop();
    clearCarried();
}

QStringList BenchMarks::selection() const {
    QStringList ids;
    for (const std::string& id : marks_.selected) ids << QString::fromStdString(id);
    return ids;
}

void BenchMarks::setSelection(const QStringList& ids) {
    if (ids == selection()) return;
    marks_.selected.clear();
    for (const QString& id : ids) marks_.selected.push_back(id.toStdString());
    show();
    Q_EMIT selectionChanged();
}

std::string BenchMarks::soleSelection() const {
    return marks_.selected.size() == 1 ? marks_.selected.front() : std::string();
}

void BenchMarks::setHover(int net, Point at, const std::string& part) {
    if (net == marks_.hoverNet && part == marks_.hoverPart && at == marks_.hoverAt) return;
    const bool otherThing = net != marks_.hoverNet || part != marks_.hoverPart;
    marks_.hoverNet = net;
    marks_.hoverAt = at;
    marks_.hoverPart = part;
    show();
    if (otherThing) Q_EMIT hoverChanged();
}

void BenchMarks::followBench(const Bench& bench) {
    litNets_.clear();
    told_.clear();  // it was about another bench
    clearHover();
    QStringList left = selection();
    left.removeIf([&](const QString& id) { return !hasThing(bench, id.toStdString()); });
    setSelection(left);
}

}  // namespace tiepoint::ui
