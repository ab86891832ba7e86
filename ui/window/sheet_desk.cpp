#include "ui/window/sheet_desk.h"

#include "core/base/stopping.h"
#include "core/netlist/bench_netlist.h"
#include "core/planner/planner.h"
#include "ui/view/bench_marks.h"
#include "ui/view/key_list.h"

#include <QMenu>

namespace tiepoint::ui {

/// What a thread plans, and for which bench.
struct SheetDesk::Work {
    std::shared_ptr<const Bench> bench;
    PlanWish wish;
    Plan plan;
    bool done = false;
};

namespace {

/// The bench as the plan wants it: parts in their new places, and other jumpers.
Edit tidyEdit(const Bench& bench, const Plan& plan) {
    Edit edit{"Tidy the board", {}};
    const std::string board = bench.boards.front().id;
    const auto onBoard = [&](Hole hole) {
        hole.board = board;
        return hole;
    };
    for (const Jumper& jumper : bench.jumpers) edit.operations.push_back(Remove{jumper.id});
    for (const Part& planned : plan.bench.parts) {
        const Part* now = bench.findPart(planned.id);
        if (!now) continue;
        Part part = *now;
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            part.leads[lead] = planned.leads[lead];
            if (part.leads[lead]) part.leads[lead] = onBoard(*part.leads[lead]);
        }
        if (part.leads != now->leads) edit.operations.push_back(ReplacePart{std::move(part)});
    }
    Bench named = bench;
    named.jumpers.clear();
    for (Jumper jumper : plan.bench.jumpers) {
        jumper.id = freeId(named, "W");
        for (JumperEnd& end : jumper.ends) {
            if (auto* hole = std::get_if<Hole>(&end)) *hole = onBoard(*hole);
        }
        named.jumpers.push_back(jumper);
        edit.operations.push_back(AddJumper{std::move(jumper)});
    }
    return edit;
}

/// "; our kit has 6", where the plan takes more jumpers than that.
QString beyondKitWords(const std::optional<Kit>& kit, int jumpers) {
    if (!kit || kit->jumpers < 0 || jumpers <= kit->jumpers) return {};
    return QStringLiteral(" Our kit has %1 jumpers.").arg(kit->jumpers);
}

QString billWords(const JumperBill& bill) {
    return QStringLiteral("%1 jumpers, %2 cm of wire").arg(bill.count).arg(qRound(bill.lengthMm / 10));
}

}  // namespace

SheetDesk::SheetDesk(const Parts& parts, QMenuBar& menus, QAction* nextInBar, QWidget* stage, QWidget* window)
    : QObject(window),
      parts_(parts),
      sheet_(new SheetView(parts.document, parts.live, parts.view, stage)),
      glide_(new Glide(parts.view, stage)),
      diagram_(new QAction(QStringLiteral("&Circuit diagram"), window)),
      ieee_(new QAction(QStringLiteral("Symbols after &IEEE 315"), window)),
      tidy_(new QAction(QStringLiteral("&Tidy the board…"), window)) {
    sheet_->hide();
    diagram_->setCheckable(true);
    diagram_->setShortcuts(QList<QKeySequence>(keysFor(KeyFor::Diagram).begin(), keysFor(KeyFor::Diagram).end()));
    ieee_->setCheckable(true);
    auto* menu = new QMenu(QStringLiteral("&Circuit"), window);
    for (QAction* action : {diagram_, ieee_, tidy_}) {
        window->addAction(action);
        menu->addAction(action);
    }
    menus.insertMenu(nextInBar, menu);
    connect(diagram_, &QAction::toggled, this, &SheetDesk::arrangeWanted);
    connect(ieee_, &QAction::toggled, sheet_,
            [this](bool on) { sheet_->setStyle(on ? SymbolStyle::Ieee : SymbolStyle::Iec); });
    connect(sheet_, &SheetView::foldWanted, diagram_, [this] { diagram_->setChecked(false); });
    connect(tidy_, &QAction::triggered, this, &SheetDesk::tidy);
    connect(&parts_.document, &BenchDocument::benchChanged, this, [this] {
        stop_.request_stop();
        parts_.view.marks().set(&Marks::mended, std::shared_ptr<const Bench>());
    });
}

SheetDesk::~SheetDesk() { endThread(); }

void SheetDesk::endThread() {
    if (!thread_) return;
    stop_.request_stop();
    thread_->wait();
    delete thread_;
    thread_ = nullptr;
}

void SheetDesk::placeIn(const QRect& frame, bool beside, const Look& look) {
    sheet_->setBeside(beside);
    sheet_->setLook(look);
    if (!frame.isEmpty()) sheet_->setGeometry(frame);
    sheet_->setVisible(!frame.isEmpty());
}

void SheetDesk::tidy() {
    const auto bench = parts_.document.bench();
    if (bench->boards.size() != 1)
        return parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Tidying works on a bench with one board."));
    endThread();
    auto work = std::make_shared<Work>();
    work->bench = bench;
    const Board& board = bench->boards.front();
    work->wish.board = board.kind;
    work->wish.rails = board.rails;
    work->wish.labels = board.labels;
    for (const QString& id : parts_.view.selection()) {
        const Part* part = bench->findPart(id.toStdString());
        if (!part) continue;
        work->wish.kept.push_back(*part);
        for (auto& lead : work->wish.kept.back().leads) {
            if (lead) lead->board.assign(1, 'A');
        }
    }
    stop_ = {};
    parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Looking for a tidier board…"));
    thread_ = QThread::create([work, token = stop_.get_token()] {
        try {
            const StopScope scope(token);
            work->plan = planBench(netlistOf(*buildLayout(work->bench)), work->wish);
            work->done = true;
        } catch (const Stopped&) {
        }
    });
    connect(thread_, &QThread::finished, this, [this, work] {
        endThread();
        offer(work);
    });
    thread_->start(QThread::LowPriority);
}

void SheetDesk::offer(std::shared_ptr<Work> work) {
    if (!work->done || parts_.document.bench() != work->bench) return;
    if (!work->plan.isWhole()) {
        const Unplaced& first = work->plan.unplaced.front();
        return parts_.bar.say(MessageBar::Tone::Notice,
                              QStringLiteral("The board stays as it is. %1: %2.")
                                  .arg(QString::fromStdString(first.part), QString::fromStdString(first.why)));
    }
    const Edit edit = tidyEdit(*work->bench, work->plan);
    auto applied = apply(*work->bench, edit);
    if (!applied) return parts_.bar.say(MessageBar::Tone::Notice, QString::fromStdString(applied.error().message));
    const auto ghost = std::make_shared<const Bench>(std::move(applied).value().bench);
    const JumperBill bill = jumperBill(*ghost);
    const QString line =
        QStringLiteral("Tidied: %1; now %2.").arg(billWords(bill), billWords(jumperBill(*work->bench))) +
        beyondKitWords(parts_.drawer.kit(), bill.count);
    parts_.view.marks().set(&Marks::mended, ghost);
    const auto hideGhosts = [this] { parts_.view.marks().set(&Marks::mended, std::shared_ptr<const Bench>()); };
    parts_.bar.ask({MessageBar::Tone::Notice,
                    line,
                    QStringLiteral("One undo brings everything back. Parts that are selected stay where they are."),
                    {{QStringLiteral("Leave it"), hideGhosts},
                     {QStringLiteral("Move everything"),
                      [this, edit, hideGhosts] {
                          hideGhosts();
                          moveEverything(edit);
                      }}},
                    0,
                    hideGhosts});
}

/// The document has it at once; what is seen glides there.
void SheetDesk::moveEverything(const Edit& edit) {
    glide_->keepBefore();
    parts_.document.push(edit);
    glide_->begin();
}

}  // namespace tiepoint::ui
