// What joins the window to the things in it: the document's signals, the actions, the views and the themes.

#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"
#include "ui/theme/theme_choice.h"
#include "ui/window/course.h"
#include "ui/window/main_window.h"

#include <QMenu>

namespace tiepoint::ui {
namespace {

constexpr double kZoomStep = 1.25;

const char* const kCautions =
    "Extra-low voltage only. Check polarity before power. Never short a battery. A part too hot to touch is a fault. "
    "Give every LED its resistor and don't stare into it. Local rules and the person who supervises you come first.";

}  // namespace

void MainWindow::connectDocument() {
    // The view has followed by then: the nets of its scene go on to the solver.
    connect(document_, &BenchDocument::benchChanged, this,
            [this] { live_->setLayout(document_->revision(), view_->picture().layout); });
    connect(document_, &BenchDocument::benchChanged, this, &MainWindow::followFile);
    connect(document_, &BenchDocument::fileChanged, this, &MainWindow::followFile);
    const auto trouble = [this](const QString& line) { bar_->say(MessageBar::Tone::Trouble, line); };
    const auto notice = [this](const QString& line) { bar_->say(MessageBar::Tone::Notice, line); };
    connect(document_, &BenchDocument::refused, this, notice);
    connect(files_, &FileActions::failed, this, trouble);
    connect(files_, &FileActions::warned, this, notice);
    connect(files_, &FileActions::settling, this, &MainWindow::settle);
    connect(files_, &FileActions::saving, memory_, &ViewMemory::keep);
    connect(edits_, &EditActions::refused, this, notice);
    connect(autosave_, &Autosave::failed, this, trouble);
    connect(files_, &FileActions::opened, this, [this] {
        bar_->dismiss();
        closeStartCard();
        view_->setSelection({});
        memory_->recall();
        view_->fitBench();
        view_->setFocus();
    });
}

void MainWindow::connectActions() {
    const auto on = [this](QAction* action, auto what) { connect(action, &QAction::triggered, this, what); };
    on(actions_.newBench, [this] { files_->newBench(); });
    on(actions_.open, [this] { files_->open(); });
    on(actions_.save, [this] { files_->save(); });
    on(actions_.saveAs, [this] { files_->saveAs(); });
    on(actions_.close, [this] { close(); });
    on(actions_.quit, [this] { close(); });
    on(actions_.start, [this] { showStartCard(); });
    auto* benches = new QMenu(QStringLiteral("&Harbour benches"), this);
    for (const CourseBench& each : course()) {
        QAction* open = benches->addAction(menuWords(qs(each.topic)));
        open->setData(qs(each.file));
        on(open, [this, &each] { files_->openEmbedded(qs(each.file), each.views); });
    }
    title_->menus().actions().front()->menu()->insertMenu(actions_.save, benches);
    QUndoStack& history = document_->undoStack();
    on(actions_.undo, [&history] { history.undo(); });
    on(actions_.redo, [&history] { history.redo(); });
    connect(&history, &QUndoStack::canUndoChanged, actions_.undo, &QAction::setEnabled);
    connect(&history, &QUndoStack::canRedoChanged, actions_.redo, &QAction::setEnabled);
    connect(&history, &QUndoStack::undoTextChanged, this,
            [this](const QString& what) { actions_.undo->setText(QStringLiteral("&Undo ") + menuWords(what)); });
    connect(&history, &QUndoStack::redoTextChanged, this,
            [this](const QString& what) { actions_.redo->setText(QStringLiteral("&Redo ") + menuWords(what)); });
    actions_.undo->setEnabled(false);
    actions_.redo->setEnabled(false);
    on(actions_.cut, [this] { edits_->cut(); });
    on(actions_.copy, [this] { edits_->copy(); });
    on(actions_.paste, [this] { edits_->paste(); });
    on(actions_.duplicate, [this] { edits_->duplicate(); });
    for (QAction* row : actions_.rowOfCopies) on(row, [this, row] { edits_->duplicate(row->data().toInt()); });
    on(actions_.turn, [this] { view_->turnSelection(1); });
    on(actions_.remove, [this] { edits_->removeSelection(); });
    on(actions_.selectAll, [this] { edits_->selectAll(); });
    on(actions_.rename, [this] { title_->beginRename(); });
    on(actions_.partHelp, [this] { showHelpOfSelection(); });
    on(actions_.cautions, [this] { bar_->say(MessageBar::Tone::Notice, QString::fromLatin1(kCautions)); });
}

void MainWindow::connectViews() {
    const auto on = [this](QAction* action, auto what) { connect(action, &QAction::triggered, this, what); };
    const auto middle = [this] { return QRectF(view_->viewport()->rect()).center(); };
    on(actions_.zoomIn, [this, middle] { view_->zoomAt(middle(), kZoomStep); });
    on(actions_.zoomOut, [this, middle] { view_->zoomAt(middle(), 1 / kZoomStep); });
    on(actions_.fit, [this] { view_->fitBench(); });
    on(actions_.fold, [this](bool) {
        if (projection_->isProjecting()) {  // a strip of the tray comes and goes; the desk stays as it was
            roomTray_ = !roomTray_;
            actions_.fold->setChecked(!actions_.fold->isChecked());
        }
        arrangeStage();
    });
    on(actions_.legend, [this] { cards_->callLegend(); });
    on(actions_.fullScreen, [this](bool full) { setWindowState(windowState().setFlag(Qt::WindowFullScreen, full)); });
    connect(actions_.project, &QAction::toggled, projection_, &Projection::setProjecting);
    connect(projection_, &Projection::changed, this, &MainWindow::arrangeStage);
    // A bench that first has current while it is shown gets its scale then.
    connect(live_, &LiveBench::answerReady, projection_, [this] {
        if (projection_->isProjecting() && !lessons_->isGiving()) projection_->lockScale();
    });
    connect(projection_, &Projection::themeOffered, this, [this] {
        bar_->say(MessageBar::Tone::Notice, QStringLiteral("The back row sees more in the projector theme."),
                  {{QStringLiteral("Take it"), [this] { actions_.themeProjector->trigger(); }},
                   {QStringLiteral("Keep this one"), [] {}}});
    });
    on(actions_.arrows, [this](bool shown) {
        changeViews([shown](Views& v) { v.arrows = shown ? Arrows::Conventional : Arrows::Off; });
    });
    on(actions_.electrons, [this](bool shown) {
        changeViews([shown](Views& v) { v.arrows = shown ? Arrows::Electrons : Arrows::Conventional; });
    });
    on(actions_.voltage, [this](bool shown) { changeViews([shown](Views& v) { v.voltage = shown; }); });
    on(actions_.strips, [this](bool shown) { changeViews([shown](Views& v) { v.strips = shown; }); });
    on(actions_.readings, [this](bool shown) { changeViews([shown](Views& v) { v.readings = shown; }); });
    on(actions_.turned, [this](bool shown) { changeViews([shown](Views& v) { v.turned = shown; }); });
    const auto follow = [this] {
        const Views& views = view_->views();
        actions_.arrows->setChecked(views.arrows != Arrows::Off);
        actions_.electrons->setChecked(views.arrows == Arrows::Electrons);
        actions_.voltage->setChecked(views.voltage);
        actions_.strips->setChecked(views.strips);
        actions_.readings->setChecked(views.readings);
        actions_.turned->setChecked(views.turned);
    };
    connect(view_, &BenchView::viewsChanged, this, follow);
    follow();
    connect(view_, &BenchView::valueTyped, this, [this](const QString& id) {
        cards_->values().showPart(id.toStdString());
        cards_->values().beginTyping({});
    });
    connect(view_, &BenchView::gestureEnded, tray_, &Tray::letGo);
    connect(tray_, &Tray::taken, this, [this](const QString& kind, const QString& preset, QPoint globalPos) {
        closeStartCard();
        view_->beginPlacing(kind, preset, globalPos);
    });
}

void MainWindow::connectThemes() {
    const auto on = [this](QAction* action, std::optional<ThemeName> name) {
        action->setChecked(chosenTheme() == name);
        connect(action, &QAction::triggered, this, [this, name] {
            chooseTheme(name);
            applyTheme();
        });
    };
    on(actions_.themeSystem, std::nullopt);
    on(actions_.themeDay, ThemeName::Day);
    on(actions_.themeDark, ThemeName::Dark);
    on(actions_.themeProjector, ThemeName::Projector);
}

void MainWindow::changeViews(const std::function<void(Views&)>& change) {
    Views views = view_->views();
    change(views);
    view_->setViews(views);
}

void MainWindow::showHelpOfSelection() {
    if (cards_->values().isEmpty()) return tools_->keys().open();  // nothing to tell about: all keys
    cards_->values().showHelp(true);
}

}  // namespace tiepoint::ui
