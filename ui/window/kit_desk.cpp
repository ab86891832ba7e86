#include "ui/window/kit_desk.h"

#include "core/base/stopping.h"
#include "core/course/fit.h"
#include "ui/document/file_dialogs.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QFileDialog>
#include <QPointer>

namespace tiepoint::ui {
namespace {

constexpr std::size_t kMostTold = 4;

void askForKit(QWidget* window, const KitDesk::GivePath& give) {
    auto* ask = new QFileDialog(window, QStringLiteral("Our kit"), QString(),
                                QStringLiteral("Kits (*.kit.json);;All files (*)"));
    fitDialog(*ask, *window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setFileMode(QFileDialog::ExistingFile);
    QObject::connect(ask, &QDialog::accepted, window, [ask, give] { give(ask->selectedFiles().value(0)); });
    ask->open();
}

/// The first few, and how many more.
QString listed(const QStringList& all) {
    QStringList some = all.mid(0, kMostTold);
    if (const qsizetype more = all.size() - some.size(); more > 0) some << QStringLiteral("%1 more").arg(more);
    return some.join(QStringLiteral(", "));
}

}  // namespace

/// A lesson fitted in a thread of its own.
struct KitDesk::Fit {
    std::shared_ptr<const Lesson> lesson;
    Kit kit;
    std::optional<KitFit> fit;
};

KitDesk::KitDesk(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      askPath_([window](const GivePath& give) { askForKit(window, give); }) {
    QMenu* kit = menu.addMenu(QStringLiteral("Our &kit"));
    choose_ = kit->addAction(QStringLiteral("&Choose a kit…"));
    usual_ = kit->addAction(QStringLiteral("The &usual kit"));
    without_ = kit->addAction(QStringLiteral("&All parts there are"));
    kit->addSeparator();
    lacking_ = kit->addAction(QStringLiteral("What does this bench need that we &lack?"));
    fit_ = kit->addAction(QStringLiteral("&Fit the lesson to our kit"));
    connect(choose_, &QAction::triggered, this, [this] {
        askPath_([self = QPointer(this)](const QString& path) {
            if (self && !path.isEmpty()) self->choose(path);
        });
    });
    connect(usual_, &QAction::triggered, this, [this] { parts_.drawer.useKit(usualKit()); });
    connect(without_, &QAction::triggered, this, [this] { parts_.drawer.useKit(std::nullopt); });
    connect(lacking_, &QAction::triggered, this, &KitDesk::sayLacking);
    connect(fit_, &QAction::triggered, this, &KitDesk::fitTheLesson);
    connect(&parts_.drawer, &MyDrawer::changed, this, &KitDesk::follow);
    connect(&parts_.files, &FileActions::opened, this, &KitDesk::follow);
    parts_.files.setNewBench([this] {
        const auto& ours = parts_.drawer.kit();
        return ours ? newBenchWith(*ours) : makeNewBench();
    });
    follow();
}

KitDesk::~KitDesk() { endThread(); }

void KitDesk::choose(const QString& path) {
    auto read = readKitFile(path.toStdString());
    if (!read) return parts_.bar.say(MessageBar::Tone::Trouble, plainText(read.error().oneLine()));
    parts_.drawer.useKit(std::move(read.value().kit));
    parts_.bar.say(
        MessageBar::Tone::Notice,
        QStringLiteral("%1: tray, mends and new benches keep to it.").arg(plainText(parts_.drawer.kit()->title)));
}

void KitDesk::follow() {
    const auto& kit = parts_.drawer.kit();
    parts_.tray.setKit(kit);
    without_->setEnabled(kit.has_value());
    lacking_->setEnabled(kit.has_value());
    fit_->setEnabled(kit.has_value() && parts_.files.lesson());
}

void KitDesk::sayLacking() {
    const auto& kit = parts_.drawer.kit();
    if (!kit) return;
    QStringList lacking;
    for (const std::string& each : lackingIn(*kit, *parts_.document.bench())) lacking << qs(each);
    parts_.bar.say(MessageBar::Tone::Notice,
                   lacking.isEmpty() ? QStringLiteral("%1 has all that this bench needs.").arg(plainText(kit->title))
                                     : QStringLiteral("%1 lacks: %2.").arg(plainText(kit->title), listed(lacking)));
}

void KitDesk::fitTheLesson() {
    if (!parts_.drawer.kit() || !parts_.files.lesson()) return;
    endThread();
    auto work = std::make_shared<Fit>(Fit{parts_.files.lesson(), *parts_.drawer.kit(), {}});
    parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Solving the lesson with our kit…"));
    stop_ = {};
    thread_ = QThread::create([work, token = stop_.get_token()] {
        try {
            const StopScope scope(token);
            work->fit = fitLesson(*work->lesson, work->kit);
        } catch (const Stopped&) {
        }
    });
    connect(thread_, &QThread::finished, this, [this, work] {
        endThread();
        offer(work);
    });
    thread_->start(QThread::LowPriority);
}

void KitDesk::offer(const std::shared_ptr<Fit>& work) {
    if (!work->fit || parts_.files.lesson() != work->lesson) return;
    QStringList instead, missing;
    for (const KitGap& gap : work->fit->gaps) {
        if (gap.instead.empty())
            missing << qs(gap.wanted);
        else
            instead << QStringLiteral("%1 for %2").arg(qs(gap.instead), qs(gap.wanted));
    }
    if (!work->fit->fits())
        return parts_.bar.say(
            MessageBar::Tone::Notice,
            QStringLiteral("Our kit can't give this lesson. Nothing serves for: %1.").arg(listed(missing)));
    if (instead.isEmpty())
        return parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Our kit has all that this lesson needs."));
    parts_.bar.say(MessageBar::Tone::Notice,
                   QStringLiteral("The lesson's claims all hold with %1.").arg(listed(instead)),
                   {{QStringLiteral("Take it so"), [this, work] {
                         if (parts_.files.lesson() == work->lesson)
                             parts_.files.putLesson(std::make_shared<const Lesson>(*work->fit->fitted));
                     }}});
}

void KitDesk::endThread() {
    if (!thread_) return;
    stop_.request_stop();
    thread_->wait();
    thread_->deleteLater();
    thread_ = nullptr;
}

}  // namespace tiepoint::ui
