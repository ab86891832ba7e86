#include "ui/document/bench_document.h"

#include "ui/document/edit_command.h"

namespace tiepoint::ui {

BenchDocument::BenchDocument(QObject* parent)
    : QObject(parent),
      bench_(std::make_shared<const Bench>(makeNewBench())),
      revision_(1) {
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

int BenchDocument::newGesture() { return ++gestures_; }

void BenchDocument::reset(Bench bench, const QString& filePath) {
    undo_.clear();
    filePath_ = filePath;
    Q_EMIT benchReplaced();
    adopt(std::move(bench));
    Q_EMIT fileChanged();
}

void BenchDocument::setFilePath(const QString& filePath) {
    if (filePath == filePath_) return;
    filePath_ = filePath;
    Q_EMIT fileChanged();
}

void BenchDocument::markSaved() { undo_.setClean(); }

void BenchDocument::keepViews(const Views& views) {
    if (bench_->views && bench_->views->shown == views) return;
    Bench looked = *bench_;
    if (!looked.views) looked.views.emplace();
    looked.views->shown = views;
    bench_ = std::make_shared<const Bench>(std::move(looked));
}

void BenchDocument::adopt(Bench bench) {
    bench_ = std::make_shared<const Bench>(std::move(bench));
    ++revision_;
    Q_EMIT benchChanged();
}

}  // namespace tiepoint::ui
