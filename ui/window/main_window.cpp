#include "ui/window/main_window.h"

#include "core/bench/bench.h"
#include "ui/access/bench_access.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/theme_choice.h"
#include "ui/view/part_menu.h"
#include "ui/window/menus.h"
#include "ui/window/questions_in_bar.h"
#include "ui/window/stage.h"
#include "ui/window/window_place.h"

#include <QCloseEvent>
#include <QFileInfo>
#include <QLineEdit>
#include <QResizeEvent>

#include <utility>

namespace tiepoint::ui {
namespace {

// Heights of the 1080-line layout, and the space at the window's sides.
constexpr double kTitleHeight = 64;
constexpr double kCardHeight = 230;
constexpr double kTallCards = 410;  // of a hunt, and of help with a real board: tray and cards together
constexpr double kBetweenCards = 8;
constexpr double kBelow = 14;
constexpr double kCardSide = 24;
constexpr double kRoomCardShare = 0.4;  // of the screen, at most, for a card shown to a room
constexpr double kSheetShare = 0.44;    // of the height below the title, for the circuit diagram
constexpr double kBoardShare = 0.54;    // of the breadth, beside the circuit diagram
const QSize kSmallestWindow(800, 500);

BenchView* makeView(BenchDocument& document, LiveBench& live, QWidget* parent) {
    installBenchAccess();
    return new BenchView(document, live, parent);
}

}  // namespace

MainWindow::MainWindow(const QString& recoveryFolder)
    : recoveryFolder_(recoveryFolder),
      document_(new BenchDocument(this)),
      live_(new LiveBench(this)),
      actions_(this),
      stage_(new Stage(this)),
      title_(new TitleLine(*document_, stage_)),
      view_(makeView(*document_, *live_, stage_)),
      cards_(new CardRow(*document_, *live_, *view_, stage_)),
      tray_(new Tray(stage_, stage_)),
      bar_(new MessageBar(stage_)),
      guard_(new FileGuard(*document_, recoveryFolder + QStringLiteral("/open"), this)),
      files_(new FileActions(*document_, *guard_, this)),
      projection_(new Projection(*view_, actions_, *this)),
      edits_(new EditActions(*document_, *view_, this)),
      autosave_(new Autosave(*document_, recoveryFolder, this)),
      memory_(new ViewMemory(*document_, *view_, this)) {
    setCentralWidget(stage_);
    setMinimumSize(kSmallestWindow);
    fillMenus(title_->menus(), actions_);
    tools_ = new WindowTools({*document_, *view_, *live_, *files_, *guard_, *tray_, *bar_, actions_}, title_->menus(),
                             stage_, this);
    inquiry_ = new Inquiry(*document_, *live_, *view_, *cards_, title_->menus(), actions_.project, this);
    drawer_ = new MyDrawer(this);
    resistorHelp_ = new ResistorHelp(*document_, *live_, *view_, *cards_, *drawer_, *inquiry_, this);
    const auto followDrawer = [this] {
        inquiry_->questions().setDrawer(drawer_->drawer());
        tray_->setDrawer(drawer_->drawer());
        view_->setDrawer(drawer_->drawer());
        tools_->sheets().setKit(drawer_->kit());
    };
    connect(drawer_, &MyDrawer::changed, this, followDrawer);
    followDrawer();
    findings_ = new FindingsDesk({*document_, *live_, *view_, *cards_, inquiry_->questions()}, inquiry_->menu(), this);
    sheetDesk_ =
        new SheetDesk({*document_, *live_, *view_, *bar_, *drawer_}, title_->menus(), actions_.project, stage_, this);
    connect(sheetDesk_, &SheetDesk::arrangeWanted, this, &MainWindow::arrangeStage);
    files_->setAsker(questionsInBar(*bar_, this));
    findings_->reveal().setAsker(phraseInBar(*bar_));
    connect(bar_, &MessageBar::left, view_, [this] { view_->setFocus(Qt::OtherFocusReason); });
    connect(document_, &BenchDocument::benchReplaced, bar_, &MessageBar::cancelQuestions);
    connectDocument();
    connectActions();
    connectViews();
    connectThemes();
    arrowScale_ = new ArrowScale(*view_, stage_);
    lessons_ = new LessonDesk({*document_, *live_, *view_, *files_, *bar_, *projection_, *memory_, actions_,
                               sheetDesk_->diagramAction(), recoveryFolder + QStringLiteral("/lessons")},
                              stage_, this);
    recorder_ = new LessonRecorder(*document_, *bar_, actions_, recoveryFolder_, this);
    connect(lessons_, &LessonDesk::arrangeWanted, this, &MainWindow::arrangeStage);
    connect(view_, &BenchView::viewsChanged, this, &MainWindow::placeArrowScale);
    connect(live_, &LiveBench::answerReady, this, &MainWindow::placeArrowScale);
    walk_ = new WalkGuide(*document_, *live_, *view_, *cards_, inquiry_->menu(), this);
    sum_ = new SumGuide(*live_, *view_, *cards_, inquiry_->menu(), this);
    doctor_ = new DoctorDesk(*document_, *live_, *view_, *cards_, inquiry_->menu(), this);
    const auto tellDoctor = [this] { doctor_->setKit(drawer_->kit()); };
    connect(drawer_, &MyDrawer::changed, this, tellDoctor);
    tellDoctor();
    spread_ = new SpreadDesk({*document_, *live_, *view_, *cards_, inquiry_->questions()}, inquiry_->menu(), this);
    surroundings_ = new SurroundingsDesk(*document_, *view_, *cards_, inquiry_->menu(), this);
    damage_ = new DamageDesk(*document_, *live_, inquiry_->menu(), this);
    makeTime();
    const auto unfold = [this] {
        if (actions_.fold->isChecked()) actions_.fold->trigger();
    };
    connect(time_, &TimeDesk::cardWanted, this, unfold);
    connect(scope_, &ScopeDesk::cardWanted, this, unfold);
    connect(inquiry_, &Inquiry::cardWanted, this, unfold);
    connect(tools_, &WindowTools::arrangeWanted, this, &MainWindow::arrangeStage);
    connect(actions_.steps, &QAction::triggered, this, [unfold](bool shown) {
        if (shown) unfold();
    });
    makeHunt();
    kit_ = new KitDesk({*document_, *files_, *drawer_, *tray_, *bar_}, inquiry_->menu(), this);
    exercises_ = new ExerciseDesk(
        {*document_, *files_, tools_->sheets(), *title_, *bar_, sheetDesk_->diagramAction(), sheetDesk_->tidyAction()},
        *title_->menus().actions().front()->menu(), actions_.save, this);
    connect(damage_, &DamageDesk::said, this,
            [this](const QString& line) { bar_->say(MessageBar::Tone::Notice, line); });
    const auto followRoom = [this] {
        if (projection_->isProjecting()) arrangeStage();
    };
    connect(cards_, &CardRow::asideChanged, this, followRoom);
    connect(cards_, &CardRow::asideChanged, this, [this, helping = false](const Card*) mutable {
        const bool now = doctor_->isOpen();
        if (std::exchange(helping, now) != now) arrangeStage();
    });
    connect(&inquiry_->questions(), &Questions::tableReady, this, followRoom);
    connect(walk_, &WalkGuide::cardWanted, this, unfold);
    connect(sum_, &SumGuide::cardWanted, this, unfold);
    connect(doctor_, &DoctorDesk::cardWanted, this, unfold);
    // Both want the room below the board: the later one has it.
    QAction* const diagram = sheetDesk_->diagramAction();
    connect(doctor_, &DoctorDesk::cardWanted, diagram, [diagram] { diagram->setChecked(false); });
    connect(diagram, &QAction::toggled, this, [this](bool shown) {
        if (shown && doctor_->isOpen()) cards_->showAside(nullptr);
    });
    connect(spread_, &SpreadDesk::cardWanted, this, unfold);
    connect(surroundings_, &SurroundingsDesk::cardWanted, this, unfold);
    connect(surroundings_, &SurroundingsDesk::said, this,
            [this](const QString& line) { bar_->say(MessageBar::Tone::Notice, line); });
    connect(resistorHelp_, &ResistorHelp::cardWanted, this, unfold);
    connect(findings_, &FindingsDesk::cardWanted, this, unfold);
    connect(findings_, &FindingsDesk::cardWanted, inquiry_, &Inquiry::putAway);
    connect(findings_, &FindingsDesk::said, this,
            [this](const QString& line) { bar_->say(MessageBar::Tone::Notice, line); });
    view_->setThingActions({actions_.turn, actions_.duplicate, actions_.remove, actions_.layFlat, inquiry_->whyAction(),
                            actions_.partHelp});
    view_->viewport()->installEventFilter(this);
    bar_->installEventFilter(this);
    restorePlace(*this);
    document_->reset(drawer_->kit() ? newBenchWith(*drawer_->kit()) : makeNewBench(), {});
    memory_->recall();
    applyTheme();
    followFile();
    view_->setFocus();
}

void MainWindow::makeTime() {
    QMenu& view = *title_->menus().actions().at(2)->menu();
    time_ = new TimeDesk({*document_, *live_, *view_, *cards_}, view, this);
    scope_ = new ScopeDesk({*document_, *live_, *view_, *cards_}, inquiry_->menu(), this);
    connect(scope_, &ScopeDesk::failed, this,
            [this](const QString& line) { bar_->say(MessageBar::Tone::Trouble, line); });
    flashes_ = new FlashDesk(*document_, *live_, *bar_, view, this);
    connect(projection_, &Projection::changed, this, [this] {
        time_->setRoom(projection_->isProjecting());
        flashes_->setRoom(projection_->isProjecting());
    });
}

void MainWindow::makeHunt() {
    huntMenu_ = new HuntMenu({*document_, *files_, *bar_, inquiry_->questions()}, inquiry_->menu(), this);
    hunt_ = new HuntDesk(
        {*document_,
         *live_,
         *view_,
         inquiry_->questions(),
         {actions_.arrows, actions_.electrons, actions_.voltage, actions_.readings, actions_.pin, actions_.probe,
          inquiry_->tableAction(), walk_->action(), sum_->action(), spread_->action(), doctor_->action(),
          sheetDesk_->diagramAction(), sheetDesk_->tidyAction(), findings_->nextAction(), huntMenu_->action()}},
        stage_);
    connect(hunt_, &HuntDesk::activeChanged, this, [this] {
        title_->setRemark(hunt_->seen());
        if (hunt_->isActive()) sheetDesk_->diagramAction()->setChecked(false);
        arrangeStage();
    });
}

MainWindow::~MainWindow() {
    // The history is cleared as it goes, and tells so; by then this is no main window any more.
    disconnect(&document_->undoStack(), nullptr, this, nullptr);
}

// --- files ---

/// Takes over what is being typed in some field of the window, as if the field had been left.
void MainWindow::settle() {
    if (auto* field = qobject_cast<QLineEdit*>(focusWidget()); field && field->isVisible())
        Q_EMIT field->editingFinished();
}

void MainWindow::openFile(const QString& path) { files_->openFile(path); }

void MainWindow::followFile() {
    const QString path = document_->filePath();
    const QString name =
        path.isEmpty() ? QString::fromStdString(document_->bench()->title) : QFileInfo(path).fileName();
    setWindowTitle(titleWords(name) + QStringLiteral("[*] \u2013 Tiepoint"));
    setWindowFilePath(path);
    setWindowModified(document_->isModified());
}

void MainWindow::recover(const Recovery& recovery) {
    files_->openCopy(recovery, [this, recovery] {
        if (autosave_->finish()) removeCopy(recovery.copyPath);  // the work is never without a copy on disk
    });
}

void MainWindow::offerRecovery() {
    const auto found = findRecoveries(recoveryFolder_);
    if (found.empty() || bar_->isVisible())
        return;  // a failure to open is said first; the work waits for the next start
    const Recovery& newest = found.front();
    const QString what = newest.sourcePath.isEmpty() ? QStringLiteral("a bench without a file")
                                                     : QFileInfo(newest.sourcePath).fileName();
    bar_->say(MessageBar::Tone::Notice, QStringLiteral("Unsaved work was left behind: %1.").arg(what),
              {{QStringLiteral("Recover"), [this, newest] { recover(newest); }},
               {QStringLiteral("Throw away"), [newest] { removeCopy(newest.copyPath); }}});
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!closing_ && files_->isAsking()) {  // the answer comes first
        bar_->remind();
        return event->ignore();
    }
    if (!closing_) {
        files_->whenSafe([this] {
            closing_ = true;
            close();  // does nothing while this event is under way, and closes when the answer comes later
        });
        if (!closing_) return event->ignore();
    }
    autosave_->discard();
    rememberPlace(*this);
    event->accept();
}

// --- the start card ---

void MainWindow::showStartCard() {
    closeStartCard();
    start_ = new StartCard(findRecoveries(recoveryFolder_), tools_->recent().paths(), stage_);
    connectStartCard();
    start_->setLook(lookFor(theme(currentTheme()), size()));
    start_->show();
    arrangeStage();
    start_->firstButton()->setFocus(Qt::OtherFocusReason);
}

void MainWindow::connectStartCard() {
    connect(start_, &StartCard::lessonChosen, files_, [this](const QString& name) { files_->openEmbedded(name); });
    connect(start_, &StartCard::fileChosen, files_, &FileActions::openFile);
    connect(start_, &StartCard::closed, this, [this] { view_->setFocus(Qt::OtherFocusReason); });
    connect(start_, &StartCard::firstChosen, tools_, &WindowTools::beginFirstBuild);
    connect(start_, &StartCard::newChosen, files_, [this] { files_->newBench(); });
    connect(start_, &StartCard::openChosen, files_, &FileActions::open);
    connect(start_, &StartCard::recoveryChosen, this, &MainWindow::recover);
    connect(start_, &StartCard::recoveryRefused, this, [](const Recovery& recovery) { removeCopy(recovery.copyPath); });
}

void MainWindow::closeStartCard() {
    if (!start_) return;
    start_->hide();
    start_->deleteLater();  // it may be the sender
    start_ = nullptr;
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
    if (watched == bar_ && (event->type() == QEvent::Show || event->type() == QEvent::Hide ||
                            event->type() == QEvent::Move || event->type() == QEvent::Resize))
        view_->setCovered(event->type() == QEvent::Hide ? QRect() : bar_->geometry().translated(-view_->pos()));
    if (watched == view_->viewport() && (event->type() == QEvent::MouseButtonPress || event->type() == QEvent::Wheel)) {
        closeStartCard();
        tray_->closeDrawer();
    }
    return QMainWindow::eventFilter(watched, event);
}

// --- arranging ---

void MainWindow::applyTheme() {
    const Theme& current = theme(currentTheme());
    view_->setThemeName(current.name);
    arrangeStage();
}

void MainWindow::arrangeStage() {
    const Look look = lookFor(theme(currentTheme()), size());
    if (const QString style = windowStyle(look); style != styleSheet()) setStyleSheet(style);
    static_cast<Stage*>(stage_)->setLook(look);
    title_->setLook(look);
    cards_->setLook(look);
    tray_->setLook(look);
    bar_->setLook(look);
    tools_->setLook(look);
    lessons_->setLook(look);
    arrowScale_->setLook(look);
    if (hunt_) hunt_->setLook(look);
    const bool projecting = projection_->isProjecting();
    const bool sheet = sheetDesk_->isShown();
    const bool strip = projecting && roomTray_ && !lessons_->isGiving() && !sheet;  // of the tray, alone
    const bool folded = actions_.fold->isChecked() || projecting || sheet;
    title_->setVisible(!projecting);
    const bool doctoring = !projecting && doctor_ && doctor_->isOpen();
    cards_->setRoom(projecting);
    cards_->setAlone(doctoring);
    Card* const roomCard = cards_->roomCard();
    const bool hunting = hunt_ && hunt_->isActive();
    cards_->setVisible((!folded || roomCard) && !hunting);
    tray_->setVisible((!folded || strip) && !hunting && !doctoring);
    if (folded && !strip) tray_->closeDrawer();

    const LessonDesk::Room lesson = lessons_->roomWanted();
    const int titleHeight = lessons_->isGiving() ? lesson.above
                            : projecting         ? projection_->bandHeight(look)  // nothing lies over a tag
                                                 : look.ipx(kTitleHeight);
    const int side = look.ipx(kCardSide);
    int bottom = stage_->height() - lesson.below;
    const int width = stage_->width() - 2 * side;
    if (!folded || strip) {
        const int trayHeight = look.ipx(tray_->wantedHeight());
        bottom -= look.ipx(kBelow) + trayHeight;
        tray_->setGeometry(side, bottom, width, trayHeight);
    }
    if (!folded) {
        bottom -= look.ipx(kBetweenCards) + look.ipx(kCardHeight);
        cards_->setGeometry(side, bottom, width, look.ipx(kCardHeight));
    }
    if (hunting) {  // the cards of a hunt take the place of cards and tray
        bottom = stage_->height() - look.ipx(kBelow) - look.ipx(kTallCards);
        hunt_->panel().setGeometry(side, bottom, width, look.ipx(kTallCards));
        hunt_->arrange();
    }
    if (doctoring && !hunting) {
        bottom = stage_->height() - look.ipx(kBelow) - look.ipx(kTallCards);
        cards_->setGeometry(side, bottom, width, look.ipx(kTallCards));
    } else if (roomCard && !hunting) {
        // Below the circuit, never over it.
        const int height = static_cast<int>(roomCard->roomHeight(kRoomCardShare * bottom));
        cards_->setGeometry(side, bottom - height, width, height);
        bottom -= height;
    }
    title_->setGeometry(0, 0, stage_->width(), titleHeight);
    lessons_->placeIn(stage_->rect());
    QRect bench(0, titleHeight, stage_->width() - lesson.right, bottom - titleHeight);
    QRect paper;
    if (sheet && projecting) {
        // For a room: side by side, both as large as can be.
        const int boardWidth = static_cast<int>(kBoardShare * bench.width());
        paper = bench.adjusted(boardWidth, 0, 0, 0);
        bench.setWidth(boardWidth);
    } else if (sheet) {
        const int height = static_cast<int>(kSheetShare * bench.height());
        paper = QRect(side, bench.bottom() + 1 - height, width, height);
        bench.setHeight(bench.height() - height);
    }
    sheetDesk_->placeIn(paper, projecting, look);
    view_->setGeometry(bench);
    lessons_->settle();
    placeArrowScale();
    // For a room beside the button back to the desk, so that it lies over no tag.
    const int besideButton = projecting && !lessons_->isGiving() ? projection_->buttonBreadth() : 0;
    bar_->placeIn(besideButton > 0 ? QRect(besideButton, 0, stage_->width() - 2 * besideButton, titleHeight) : bench);
    const QRect card = cards_->middlePlace().translated(cards_->pos());
    tools_->placeIn(bench, card);
    projection_->placeIn(lessons_->isGiving() || !projecting ? bench : bench.adjusted(0, -titleHeight, 0, 0), look);
    if (start_) {
        start_->setLook(look);
        start_->placeIn({0, titleHeight, stage_->width(), stage_->height() - titleHeight});
    }
}

/// Prints the scale of the arrows while a room looks on.
void MainWindow::placeArrowScale() { arrowScale_->place(projection_->isProjecting() && !lessons_->run().isVeiled()); }

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    arrangeStage();
}

bool MainWindow::event(QEvent* event) {
    // The system may turn dark or bright at any time. Our own style sheet doesn't touch the application's palette.
    if (event->type() == QEvent::ApplicationPaletteChange && !chosenTheme()) applyTheme();
    return QMainWindow::event(event);
}

}  // namespace tiepoint::ui
