#pragma once
// The window: arranges the title line, the bench, the cards and the tray, and joins actions to those who carry them out. Computes
// nothing and holds no document of its own beyond owning it. Window's thread only.

#include "ui/cards/card_row.h"
#include "ui/document/autosave.h"
#include "ui/document/bench_document.h"
#include "ui/document/file_actions.h"
#include "ui/document/file_guard.h"
#include "ui/live/live_bench.h"
#include "ui/theme/look.h"
#include "ui/tray/tray.h"
#include "ui/view/bench_view.h"
#include "ui/window/actions.h"
#include "ui/window/arrow_scale.h"
#include "ui/window/damage_desk.h"
#include "ui/window/doctor_desk.h"
#include "ui/window/edit_actions.h"
#include "ui/window/exercise_desk.h"
#include "ui/window/findings_desk.h"
#include "ui/window/flash_desk.h"
#include "ui/window/hunt_desk.h"
#include "ui/window/hunt_menu.h"
#include "ui/window/inquiry.h"
#include "ui/window/kit_desk.h"
#include "ui/window/lesson_desk.h"
#include "ui/window/lesson_recorder.h"
#include "ui/window/message_bar.h"
#include "ui/window/projection.h"
#include "ui/window/resistor_help.h"
#include "ui/window/scope_desk.h"
#include "ui/window/sheet_desk.h"
#include "ui/window/spread_desk.h"
#include "ui/window/start_card.h"
#include "ui/window/sum_guide.h"
#include "ui/window/surroundings_desk.h"
#include "ui/window/time_desk.h"
#include "ui/window/title_line.h"
#include "ui/window/view_memory.h"
#include "ui/window/walk_guide.h"
#include "ui/window/window_tools.h"

#include <QMainWindow>

namespace tiepoint::ui {

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    /// `recoveryFolder` holds the copies of unsaved work.
    explicit MainWindow(const QString& recoveryFolder);
    ~MainWindow() override;

    /// Opens a file, or says in the bar why it can't be.
    void openFile(const QString& path);
    /// Shows the card with the harbour benches over the bench.
    void showStartCard();
    /// Offers unsaved work that was left behind in the bar, where no start card does.
    void offerRecovery();

    BenchDocument& document() { return *document_; }
    LiveBench& live() { return *live_; }
    BenchView& view() { return *view_; }
    CardRow& cards() { return *cards_; }
    Tray& tray() { return *tray_; }
    TitleLine& titleLine() { return *title_; }
    FileActions& files() { return *files_; }
    FileGuard& guard() { return *guard_; }
    Autosave& autosave() { return *autosave_; }
    MessageBar& bar() { return *bar_; }
    WindowTools& tools() { return *tools_; }
    Inquiry& inquiry() { return *inquiry_; }
    WalkGuide& walk() { return *walk_; }
    SumGuide& sum() { return *sum_; }
    ResistorHelp& resistorHelp() { return *resistorHelp_; }
    FindingsDesk& findings() { return *findings_; }
    SheetDesk& sheetDesk() { return *sheetDesk_; }
    DoctorDesk& doctor() { return *doctor_; }
    SpreadDesk& spread() { return *spread_; }
    HuntDesk& hunt() { return *hunt_; }
    HuntMenu& huntMenu() { return *huntMenu_; }
    KitDesk& kit() { return *kit_; }
    ExerciseDesk& exercises() { return *exercises_; }
    DamageDesk& damage() { return *damage_; }
    TimeDesk& time() { return *time_; }
    ScopeDesk& scope() { return *scope_; }
    FlashDesk& flashes() { return *flashes_; }
    SurroundingsDesk& surroundings() { return *surroundings_; }
    StartCard* startCard() { return start_; }
    Projection& projection() { return *projection_; }
    LessonDesk& lessons() { return *lessons_; }
    LessonRecorder& recorder() { return *recorder_; }
    ArrowScale& arrowScale() { return *arrowScale_; }
    const Actions& actions() const { return actions_; }

protected:
    void resizeEvent(QResizeEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    bool event(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void connectDocument();
    void connectActions();
    void connectViews();
    void connectThemes();
    void connectStartCard();
    void makeHunt();
    void makeTime();
    void changeViews(const std::function<void(Views&)>& change);
    void showHelpOfSelection();
    void closeStartCard();
    void recover(const Recovery& recovery);
    void settle();
    void followFile();
    void applyTheme();
    void arrangeStage();
    void placeArrowScale();

    QString recoveryFolder_;
    BenchDocument* document_;
    LiveBench* live_;
    Actions actions_;
    QWidget* stage_;
    TitleLine* title_;
    BenchView* view_;
    CardRow* cards_;
    Tray* tray_;
    MessageBar* bar_;
    StartCard* start_ = nullptr;
    FileGuard* guard_;
    FileActions* files_;
    Projection* projection_;
    EditActions* edits_;
    Autosave* autosave_;
    WindowTools* tools_;
    Inquiry* inquiry_;
    ViewMemory* memory_;
    WalkGuide* walk_;
    SumGuide* sum_;
    MyDrawer* drawer_;
    ResistorHelp* resistorHelp_;
    FindingsDesk* findings_;
    SheetDesk* sheetDesk_;
    DoctorDesk* doctor_ = nullptr;
    SpreadDesk* spread_;
    HuntDesk* hunt_ = nullptr;
    HuntMenu* huntMenu_ = nullptr;
    ExerciseDesk* exercises_;
    KitDesk* kit_;
    DamageDesk* damage_;
    TimeDesk* time_ = nullptr;
    ScopeDesk* scope_ = nullptr;
    FlashDesk* flashes_ = nullptr;
    SurroundingsDesk* surroundings_;
    bool closing_ = false;  ///< unsaved changes are settled, the window may go
    LessonDesk* lessons_ = nullptr;
    LessonRecorder* recorder_;
    ArrowScale* arrowScale_ = nullptr;
    bool roomTray_ = false;  ///< the tray stands below while a room looks on
};

}  // namespace tiepoint::ui
