#include "ui/window/scope_desk.h"

#include "core/base/file_io.h"
#include "core/scope/recorder.h"
#include "core/scope/trace_csv.h"
#include "ui/document/file_dialogs.h"
#include "ui/theme/qs.h"
#include "ui/view/key_list.h"

#include <QBuffer>
#include <QFileDialog>

namespace tiepoint::ui {
namespace {

const QString kPictureEnding = QStringLiteral("png"), kTableEnding = QStringLiteral("csv");

void askForTracePath(QWidget* window, const QString& ending, const std::function<void(const QString&)>& give) {
    const bool isTable = ending == kTableEnding;
    auto* ask = new QFileDialog(
        window, isTable ? QStringLiteral("Save the trace as a table") : QStringLiteral("Save the trace as a picture"),
        QString(), isTable ? QStringLiteral("Tables (*.csv)") : QStringLiteral("Pictures (*.png)"));
    fitDialog(*ask, *window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    ask->setDefaultSuffix(ending);
    ask->selectFile(QStringLiteral("trace.") + ending);
    QObject::connect(ask, &QDialog::accepted, window, [ask, give] { give(ask->selectedFiles().value(0)); });
    ask->open();
}

std::string pngOf(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes.toStdString();
}

}  // namespace

ScopeDesk::ScopeDesk(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      card_(new ScopeCard(&parts.cards)),
      action_(new QAction(QStringLiteral("&Oscilloscope, large"), this)),
      ask_([window](const QString& ending, const std::function<void(const QString&)>& give) {
          askForTracePath(window, ending, give);
      }) {
    card_->hide();
    action_->setCheckable(true);
    action_->setShortcut(keysFor(KeyFor::ScopeCard).front());
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &ScopeDesk::show);
    connect(card_, &AsideCard::closed, this, [this] {
        parts_.cards.showAside(nullptr);
        parts_.view.setFocus(Qt::OtherFocusReason);
    });
    connect(card_, &ScopeCard::pictureAsked, this, [this] { save(kPictureEnding); });
    connect(card_, &ScopeCard::tableAsked, this, [this] { save(kTableEnding); });
    connect(&parts_.cards, &CardRow::asideChanged, this,
            [this](const Card* aside) { action_->setChecked(aside == card_); });
    connect(&parts_.live, &LiveBench::snapshotReady, this, &ScopeDesk::follow);
    connect(&parts_.view, &BenchView::selectionChanged, this, &ScopeDesk::follow);
}

void ScopeDesk::show(bool wanted) {
    if (!wanted) return parts_.cards.showAside(nullptr);
    Q_EMIT cardWanted();
    parts_.cards.showAside(card_);
    follow();
}

/// The selected oscilloscope, else the first; -1 without one.
int ScopeDesk::scopeShown(const Bench& bench) const {
    const QStringList selected = parts_.view.selection();
    int found = -1;
    for (int i = static_cast<int>(bench.parts.size()) - 1; i >= 0; --i) {
        const Part& part = bench.parts[static_cast<std::size_t>(i)];
        if (!isScope(*part.kind)) continue;
        found = i;
        if (selected.size() == 1 && selected.front().toStdString() == part.id) return i;
    }
    return found;
}

void ScopeDesk::follow() {
    if (!card_->isVisibleTo(&parts_.cards)) return;
    const auto& shown = parts_.view.picture().snapshot;  // what is veiled from the picture is veiled here
    const int part = shown ? scopeShown(*shown->layout->bench) : -1;
    if (part < 0) return card_->showNone();
    const Bench& bench = *shown->layout->bench;
    const ScopeTrace* trace = shown->traces.scopeOf(bench.parts[static_cast<std::size_t>(part)].id);
    if (trace) return card_->showTrace(*trace, shown->timeSecond);
    card_->showTrace(standingTrace(bench, shown->solution, part, 0), 0);
}

void ScopeDesk::save(const QString& ending) {
    if (!card_->hasTrace()) return;
    // What stands there now, however long the question takes.
    const std::string bytes = ending == kTableEnding ? traceCsv(card_->trace()) : pngOf(card_->picture());
    ask_(ending, [this, bytes](const QString& path) {
        if (path.isEmpty()) return;
        if (const auto done = writeFileAtomically(path.toStdString(), bytes); !done)
            Q_EMIT failed(qs(done.error().oneLine()));
    });
}

}  // namespace tiepoint::ui
