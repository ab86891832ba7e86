#include "ui/document/bench_document.h"

#include "ui/document/edit_command.h"

#include <utility>

namespace tiepoint::ui {

BenchDocument::BenchDocument(QObject* parent)
    : QObject(parent),
      bench_(std::make_shared<const Bench>(makeNewBench())),
      revision_(1) {
    // First of all, so that nobody else meets a stack that is ahead of the bench.
    connect(&undo_, &QUndoStack::indexChanged, this, &BenchDocument::freeHistory);
    connect(&undo_, &QUndoStack::cleanChanged, this, &BenchDocument::fileChanged);
}

BenchDocument::~BenchDocument() {
    // The history is cleared as it goes, and tells so; by then this is no document any more.
    disconnect(&undo_, nullptr, this, nullptr);
}

std::optional<QString> BenchDocument::push(const Edit& edit, int gesture) {
    auto done = apply(*bench_, edit);
    if (!done.ok()) return QString::fromStdString(done.error().message);
    undo_.push(new EditCommand(*this, edit, std::move(done).value(), gesture));
    return std::nullopt;
}

const EditCommand& BenchDocument::step(int index) const {
    return static_cast<const EditCommand&>(*undo_.command(index));
}

int BenchDocument::newGesture() { return ++gestures_; }

void BenchDocument::reset(Bench bench, const QString& filePath) {
    undo_.clear();
    ++opening_;
    filePath_ = filePath;
    fileDigest_.clear();
    Q_EMIT benchReplaced();
    adopt(std::move(bench));
    Q_EMIT fileChanged();
}

void BenchDocument::setFilePath(const QString& filePath) {
    if (filePath == filePath_) return;
    filePath_ = filePath;
    fileDigest_.clear();
    Q_EMIT fileChanged();
}

void BenchDocument::markSaved() { undo_.setClean(); }

void BenchDocument::markUnsaved() { undo_.resetClean(); }

std::optional<QString> BenchDocument::setDisclosure(const Disclosure& disclosure) {
    auto done = apply(*bench_, {"", {SetDisclosure{disclosure}}});
    if (!done.ok()) return QString::fromStdString(done.error().message);
    markUnsaved();
    adopt(std::move(done.value().bench));
    return std::nullopt;
}

void BenchDocument::keepViews(const Views& views) {
    if (bench_->views && bench_->views->shown == views) return;
    Bench looked = *bench_;
    if (!looked.views) looked.views.emplace();
    looked.views->shown = views;
    bench_ = std::make_shared<const Bench>(std::move(looked));
}

void BenchDocument::stickHistory(const QUndoCommand& step, bool isDone, const QString& why) {
    int place = 0;
    while (place < undo_.count() && undo_.command(place) != &step) ++place;
    const auto words =
        isDone ? QStringLiteral("“%1” can't be undone: %2") : QStringLiteral("“%1” can't be done again: %2");
    stuck_ = Stuck{isDone ? place + 1 : place, words.arg(step.text(), why)};
}

void BenchDocument::freeHistory() {
    if (!stuck_) return;
    undo_.setIndex(stuck_->index);  // no step does anything on the way
    if (!stuck_) return;            // that changed the index, and so led here
    Q_EMIT refused(std::exchange(stuck_, std::nullopt)->line);
}

void BenchDocument::adopt(Bench bench) {
    bench_ = std::make_shared<const Bench>(std::move(bench));
    ++revision_;
    Q_EMIT benchChanged();
}

}  // namespace tiepoint::ui
