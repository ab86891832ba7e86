#include "ui/window/sheet_tools.h"

#include "core/compare/exercise_target.h"
#include "core/sheet/readings_table.h"
#include "core/sheet/symptoms.h"
#include "ui/document/file_dialogs.h"
#include "ui/sheet/symptom_sheet.h"
#include "ui/theme/plain_text.h"
#include "ui/window/picture_actions.h"

#include <QAction>
#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>
#include <QMenu>
#include <QMimeData>
#include <QPageSize>
#include <QPointer>
#include <QPrintDialog>
#include <QPrinter>

namespace tiepoint::ui {
namespace {

const QString kPdfEnding = QStringLiteral(".pdf");

void askForPath(QWidget* window, const QString& suggestion, const SheetTools::GivePath& give) {
    const bool opens = suggestion.isEmpty();
    auto* ask =
        new QFileDialog(window, opens ? QStringLiteral("Compare with") : QStringLiteral("Save the sheet"), QString(),
                        opens ? QStringLiteral("Benches, circuits and exercises (*.json *.png);;All files (*)")
                              : QStringLiteral("Sheets of paper (*.pdf)"));
    fitDialog(*ask, *window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(opens ? QFileDialog::AcceptOpen : QFileDialog::AcceptSave);
    if (opens) ask->setFileMode(QFileDialog::ExistingFile);
    if (!opens) {
        ask->setDefaultSuffix(QStringLiteral("pdf"));
        ask->selectFile(suggestion);
    }
    QObject::connect(ask, &QDialog::accepted, window, [ask, give] { give(ask->selectedFiles().value(0)); });
    ask->open();
}

void askForPrinter(QWidget* window, const std::function<void(QPrinter&)>& go) {
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setPageSize(QPageSize(usualPaper() == Paper::A4 ? QPageSize::A4 : QPageSize::Letter));
    auto* ask = new QPrintDialog(printer.get(), window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setOptions({});
    QObject::connect(ask, &QDialog::finished, window, [printer, go](int result) {
        if (result == QDialog::Accepted) go(*printer);
    });
    ask->open();
}

}  // namespace

SheetTools::SheetTools(const Parts& parts, QMenuBar& menus, QWidget* stage, QWidget* window)
    : QObject(window),
      parts_(parts),
      window_(window),
      panel_(new ComparePanel(stage)),
      askPath_([window](const QString& suggestion, const GivePath& give) { askForPath(window, suggestion, give); }),
      askPrinter_([window](const auto& go) { askForPrinter(window, go); }) {
    addActions(menus);
    connect(panel_, &ComparePanel::closed, this, &SheetTools::closed);
    connect(&parts.live, &LiveBench::answerReady, this, [this] {
        if (parts_.live.snapshot()) before_.follow(parts_.live.snapshot());
    });
    connect(&parts.document, &BenchDocument::benchReplaced, this, [this] { before_.forget(); });
}

void SheetTools::addActions(QMenuBar& menus) {
    const auto make = [this](QMenu* menu, const char* name, auto run) {
        QAction* action = menu->addAction(QString::fromUtf8(name));
        connect(action, &QAction::triggered, this, run);
        return action;
    };
    QMenu* sheets = new QMenu(QStringLiteral("S&heets on paper"), menus.parentWidget());
    save_[0] = make(sheets, "Build sheet for &learners…", [this] { saveSheet(SheetFor::Learner); });
    save_[1] = make(sheets, "&Key with expected values…", [this] { saveSheet(SheetFor::Teacher); });
    save_[2] = make(sheets, "Pl&anning sheet…", [this] { saveSheet(SheetFor::Planner); });
    sheets->addSeparator();
    print_ = make(sheets, "&Print the build sheet…", [this] { printSheet(); });
    sheets->addSeparator();
    symptoms_ = make(sheets, "&Symptom sheet…", [this] { saveSymptoms(); });
    QMenu* file = menus.actions().front()->menu();
    QAction* end = new QAction(this);
    end->setSeparator(true);
    QAction* const close = file->actions().at(file->actions().size() - 2);
    file->insertMenu(close, sheets);
    compare_ = new QAction(QStringLiteral("Compare &with…"), this);
    connect(compare_, &QAction::triggered, this, &SheetTools::openTarget);
    file->insertAction(close, compare_);
    file->insertAction(close, end);
    QMenu* edit = menus.actions().at(1)->menu();
    edit->addSeparator();
    copyText_ = make(edit, "Copy the pinned readin&gs", [this] { copyTable(false); });
    copyCsv_ = make(edit, "Copy the pinned readings as CS&V", [this] { copyTable(true); });
}

void SheetTools::say(const std::optional<QString>& failed, const QString& path) {
    if (failed)
        parts_.bar.say(MessageBar::Tone::Trouble, QStringLiteral("%1: %2").arg(path, *failed));
    else
        parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("%1 is saved.").arg(QFileInfo(path).fileName()));
}

BuildPlan SheetTools::planFor(const std::shared_ptr<const Bench>& bench) const {
    return kit_ ? planOf(bench, *kit_) : planOf(bench);
}

void SheetTools::saveSheet(SheetFor reader) {
    const auto bench = parts_.document.bench();
    const QString ending = reader == SheetFor::Teacher   ? QStringLiteral("-key.pdf")
                           : reader == SheetFor::Planner ? QStringLiteral("-planning.pdf")
                                                         : QStringLiteral("-build.pdf");
    askPath_(fileNameFor(bench->title, ending), [this, self = QPointer(this), bench, reader](const QString& path) {
        if (!self || path.isEmpty()) return;
        SheetWish wish;
        wish.paper = usualPaper();
        wish.reader = reader;
        say(saveBuildSheet(planFor(bench), wish, path), path);
    });
}

void SheetTools::printSheet() {
    const auto bench = parts_.document.bench();
    askPrinter_([this, self = QPointer(this), bench](QPrinter& printer) {
        if (!self) return;
        SheetWish wish;
        wish.paper = printer.pageLayout().pageSize().id() == QPageSize::Letter ? Paper::Letter : Paper::A4;
        printer.setFullPage(true);
        printer.setDocName(QString::fromStdString(bench->title));
        const BuildPlan plan = planFor(bench);
        if (paintPages(printer, buildSheetPages(plan, wish), buildSheetHead(plan, wish), wish.paper))
            parts_.bar.say(MessageBar::Tone::Notice,
                           QStringLiteral("The build sheet is on its way to the printer, at 100 %."));
        else
            parts_.bar.say(MessageBar::Tone::Trouble, QStringLiteral("The build sheet could not be printed."));
    });
}

std::vector<SlipSeen> SheetTools::slipsFor(const std::shared_ptr<const Bench>& bench) const {
    if (!kit_) return slipsAsSeen(bench);
    return slipsAsSeen(bench, [&](const Slip& slip) { return canHappenWith(*kit_, *bench, slip); });
}

void SheetTools::saveSymptoms() {
    const auto bench = parts_.document.bench();
    askPath_(fileNameFor(bench->title, QStringLiteral("-symptoms.pdf")),
             [this, self = QPointer(this), bench](const QString& path) {
                 if (!self || path.isEmpty()) return;
                 say(saveSymptomSheet(bench->title, bySymptom(slipsFor(bench)), usualPaper(), path), path);
             });
}

void SheetTools::openTarget() {
    askPath_({}, [this, self = QPointer(this)](const QString& path) {
        if (!self || path.isEmpty()) return;
        auto read = readTarget(path.toStdString());
        if (!read) return parts_.bar.say(MessageBar::Tone::Trouble, QString::fromStdString(read.error().oneLine()));
        panel_->compare(parts_.document.bench(), read->target);
    });
}

void SheetTools::copyTable(bool csv) {
    if (!before_.last() || before_.last()->layout->bench->pinned.empty())
        return parts_.bar.say(MessageBar::Tone::Notice,
                              QStringLiteral("No reading is pinned. Point at a hole or a part and press F5."));
    const auto rows = readingsTable(before_.base().get(), *before_.last());
    auto* content = new QMimeData;
    const QString words = QString::fromStdString(csv ? readingsAsCsv(rows) : readingsAsText(rows));
    content->setText(words);
    if (csv) content->setData(QStringLiteral("text/csv"), words.toUtf8());
    QGuiApplication::clipboard()->setMimeData(content);
    parts_.bar.say(MessageBar::Tone::Notice,
                   QStringLiteral("The pinned readings, before and now, are on the clipboard."));
}

}  // namespace tiepoint::ui
