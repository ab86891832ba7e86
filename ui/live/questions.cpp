#include "ui/live/questions.h"

#include "core/base/stopping.h"
#include "core/findings/put_resistor.h"
#include "core/hunt/hints.h"
#include "core/hunt/hunt.h"
#include "core/why/light_drive.h"
#include "ui/live/low_priority.h"

#include <algorithm>
#include <condition_variable>
#include <functional>
#include <iterator>
#include <mutex>
#include <stop_token>
#include <thread>
#include <utility>

namespace tiepoint::ui {

/// One slot for each kind of question; a newer one takes the place of one that waits, and stops one that is being worked out,
/// as does a question that goes first. The lock
/// guards nothing but the slots and what is being worked out.
class Questions::Worker {
public:
    using Job = std::function<void()>;
    enum Slot {
        Table,
        Why,
        Drive,
        Place,
        Verdict,
        Hints,
        Hunt,
        Spread,
        Findings,
        SlotCount
    };  // what was asked by hand goes first

    Worker() : thread_([this] { run(); }) {}

    ~Worker() {
        {
            const std::lock_guard guard(mutex_);
            stopping_ = true;
            present_.request_stop();
        }
        wake_.notify_one();
        thread_.join();
    }

    void ask(Slot slot, Job job) {
        {
            const std::lock_guard guard(mutex_);
            slots_[slot] = std::move(job);
            if (slot == presentSlot_) present_.request_stop();
            if (slot < presentSlot_ && presentSlot_ != SlotCount) {  // the other begins anew after it
                if (!slots_[presentSlot_]) slots_[presentSlot_] = presentJob_;
                present_.request_stop();
            }
        }
        wake_.notify_one();
    }

    void giveUp() {
        const std::lock_guard guard(mutex_);
        for (Job& slot : slots_) slot = nullptr;
        present_.request_stop();
    }

private:
    int waiting() const {
        const auto slot = std::ranges::find_if(slots_, [](const Job& job) { return job != nullptr; });
        return static_cast<int>(slot - std::begin(slots_));
    }

    Job nextJob(std::stop_token& stop) {
        std::unique_lock lock(mutex_);
        presentSlot_ = SlotCount;
        wake_.wait(lock, [this] { return stopping_ || waiting() < SlotCount; });
        if (stopping_) return {};
        presentSlot_ = waiting();
        present_ = std::stop_source();
        stop = present_.get_token();
        presentJob_ = std::exchange(slots_[presentSlot_], Job());
        return presentJob_;
    }

    void run() {
        lowerPriority();
        std::stop_token stop;
        while (const Job job = nextJob(stop)) {
            const StopScope scope(stop);
            try {
                job();
            } catch (const Stopped&) {  // nobody waits for it any more
            }
        }
    }

    std::mutex mutex_;
    std::condition_variable wake_;
    Job slots_[SlotCount];
    int presentSlot_ = SlotCount;  ///< whose question is being worked out; SlotCount: none
    Job presentJob_;
    std::stop_source present_;
    bool stopping_ = false;
    std::thread thread_;  // last: it uses all of the above
};

Questions::Questions(QObject* parent) : QObject(parent), worker_(std::make_unique<Worker>()) {}

Questions::~Questions() = default;

void Questions::giveUp() { worker_->giveUp(); }

void Questions::setDrawer(const ResistorDrawer& drawer) {
    drawer_ = drawer;
    Q_EMIT drawerChanged();
}

void Questions::askTable(std::shared_ptr<const Snapshot> snapshot) {
    worker_->ask(Worker::Table, [this, snapshot = std::move(snapshot)] {
        auto answer = std::make_shared<const TableAnswer>(
            TableAnswer{snapshot->revision, snapshot->layout->bench, makeTruthTable(snapshot->layout)});
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT tableReady(answer); }, Qt::QueuedConnection);
    });
}

void Questions::askWhy(std::shared_ptr<const Snapshot> snapshot, const std::string& part) {
    worker_->ask(Worker::Why, [this, snapshot = std::move(snapshot), part, drawer = drawer_] {
        const int index = snapshot->layout->bench->partIndex(part);
        if (index < 0) return;
        auto answer = std::make_shared<const WhyAnswer>(
            WhyAnswer{snapshot->revision, snapshot->inputSequence, explain(*snapshot, index, drawer)});
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT whyReady(answer); }, Qt::QueuedConnection);
    });
}

void Questions::askDrive(std::shared_ptr<const Snapshot> snapshot, int part, const ResistorQuestion& usual) {
    worker_->ask(Worker::Drive, [this, snapshot = std::move(snapshot), part, usual] {
        auto answer =
            std::make_shared<const DriveAnswer>(DriveAnswer{snapshot->revision, questionAbout(*snapshot, part, usual)});
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT driveReady(answer); }, Qt::QueuedConnection);
    });
}

void Questions::askPlace(std::shared_ptr<const Snapshot> snapshot, int part, double ohm) {
    worker_->ask(Worker::Place, [this, snapshot = std::move(snapshot), part, ohm] {
        auto answer = std::make_shared<const PlaceAnswer>(
            PlaceAnswer{snapshot->revision, part, ohm, putResistor(*snapshot, part, ohm)});
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT placeReady(answer); }, Qt::QueuedConnection);
    });
}

void Questions::askReport(std::shared_ptr<const Snapshot> snapshot) {
    worker_->ask(Worker::Findings, [this, snapshot = std::move(snapshot), drawer = drawer_] {
        const auto resting = snapshot->inputs->held.empty() ? snapshot : evaluate(snapshot->layout->bench);
        auto report = std::make_shared<const Report>(Report{snapshot->revision, inspect(*resting, drawer).findings});
        QMetaObject::invokeMethod(
            this, [this, report] { Q_EMIT reportReady(report); }, Qt::QueuedConnection);
    });
}

void Questions::askSpread(std::shared_ptr<const Snapshot> snapshot, const BatteryChoice& battery) {
    worker_->ask(Worker::Spread, [this, snapshot = std::move(snapshot), battery] {
        auto answer = std::make_shared<const SpreadAnswer>(SpreadAnswer{
            snapshot->revision, snapshot->inputSequence, spreadOf(snapshot), batteryLife(snapshot, battery)});
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT spreadReady(answer); }, Qt::QueuedConnection);
    });
}

void Questions::askVerdict(std::shared_ptr<const Bench> bench, const HuntGuess& guess) {
    worker_->ask(Worker::Verdict, [this, bench = std::move(bench), guess] {
        const auto slip = hiddenSlipOf(*bench);
        if (!slip) return;
        auto verdict = std::make_shared<const HuntVerdict>(judge(*bench, *slip, guess));
        QMetaObject::invokeMethod(
            this, [this, verdict] { Q_EMIT verdictReady(verdict); }, Qt::QueuedConnection);
    });
}

void Questions::askHints(std::shared_ptr<const Bench> bench) {
    worker_->ask(Worker::Hints, [this, bench = std::move(bench)] {
        const auto slip = hiddenSlipOf(*bench);
        if (!slip) return;
        auto hints = std::make_shared<const std::vector<std::string>>(hintsFor(*bench, *slip));
        QMetaObject::invokeMethod(
            this, [this, hints] { Q_EMIT hintsReady(hints); }, Qt::QueuedConnection);
    });
}

void Questions::askHunt(std::shared_ptr<const Bench> target, quint64 number) {
    worker_->ask(Worker::Hunt, [this, target = std::move(target), number] {
        auto answer = std::make_shared<HuntAnswer>();
        answer->target = target;
        answer->number = number;
        const auto set = makeHunts(target, 1, number);
        if (set)
            answer->bench = std::make_shared<const Bench>(huntBench(HuntGround(target), set->hunts.front()));
        else
            answer->why = set.error().message;
        QMetaObject::invokeMethod(
            this, [this, answer] { Q_EMIT huntReady(answer); }, Qt::QueuedConnection);
    });
}

}  // namespace tiepoint::ui
