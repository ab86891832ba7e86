#pragma once
// What a bench becomes for a class: build sheets saved and printed, the symptom sheet, a comparison with another bench, and pinned readings as a
// table on the clipboard. Adds its actions to the menus File and Edit.

#include "core/course/kit_slips.h"
#include "core/sheet/symptoms.h"
#include "ui/compare/compare_panel.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/sheet/build_sheet.h"
#include "ui/view/before.h"
#include "ui/window/message_bar.h"

#include <QMenuBar>
#include <QObject>

class QPrinter;

namespace tiepoint::ui {

class SheetTools : public QObject {
    Q_OBJECT
public:
    using GivePath = std::function<void(const QString& path)>;
    /// How a person is asked for a file; tests answer in their place. The suggestion is empty where a file is to be opened.
    using AskPath = std::function<void(const QString& suggestion, const GivePath&)>;
    /// Lets a person choose a printer and how it prints; goes on with it. Tests give one that prints into a file.
    using AskPrinter = std::function<void(const std::function<void(QPrinter&)>&)>;

    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        MessageBar& bar;
    };
    SheetTools(const Parts& parts, QMenuBar& menus, QWidget* stage, QWidget* window);

    void setLook(const Look& look) { panel_->setLook(look); }
    /// What the class has: sheets are made for it. Nothing: all parts are at hand.
    void setKit(const std::optional<Kit>& kit) { kit_ = kit; }
    void setAskPath(AskPath ask) { askPath_ = std::move(ask); }
    void setAskPrinter(AskPrinter ask) { askPrinter_ = std::move(ask); }

    ComparePanel& panel() const { return *panel_; }
    QAction* saveFor(SheetFor reader) const { return save_[static_cast<std::size_t>(reader)]; }
    QAction* print() const { return print_; }
    QAction* symptoms() const { return symptoms_; }
    QAction* compareWith() const { return compare_; }
    QAction* copyReadings() const { return copyText_; }
    QAction* copyReadingsAsCsv() const { return copyCsv_; }

Q_SIGNALS:
    void closed();  ///< the comparison was put away

private:
    void addActions(QMenuBar& menus);
    void saveSheet(SheetFor reader);
    void printSheet();
    void saveSymptoms();
    /// The plan of a bench with what the class has.
    BuildPlan planFor(const std::shared_ptr<const Bench>& bench) const;
    std::vector<SlipSeen> slipsFor(const std::shared_ptr<const Bench>& bench) const;
    void openTarget();
    void copyTable(bool csv);
    void say(const std::optional<QString>& failed, const QString& path);

    Parts parts_;
    QWidget* window_;
    ComparePanel* panel_;
    std::optional<Kit> kit_;
    Before before_;
    AskPath askPath_;
    AskPrinter askPrinter_;
    std::array<QAction*, 3> save_{};
    QAction *print_, *symptoms_, *compare_, *copyText_, *copyCsv_;
};

}  // namespace tiepoint::ui
