#include "ui/live/doctor_run.h"

#include "core/base/stopping.h"
#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"
#include "ui/live/low_priority.h"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <stop_token>
#include <thread>
#include <utility>

namespace tiepoint::ui {
namespace {

struct DoctorJob {
    quint64 number = 0;
    std::shared_ptr<const Bench> plan;
    std::vector<Observation> seen;
    Instrument instrument = Instrument::Meter;
    std::shared_ptr<const Kit> kit = nullptr;
};

std::vector<std::string> idsOnPlan(const Bench& plan, const Suspect& suspect) {
    std::vector<std::string> ids;
    for (const std::string& id : suspect.touched) {
        if (plan.findPart(id) || plan.findJumper(id)) ids.push_back(id);
    }
    return ids;
}

/// Which things are to blame still, the likeliest first; then those that what was seen has cleared, in the order of seeing.
std::vector<DoctorAnswer::Thing> thingsOf(const Bench& plan, const Diagnosis& diagnosis) {
    std::vector<DoctorAnswer::Thing> things;
    const auto find = [&](const std::string& id) { return std::ranges::find(things, id, &DoctorAnswer::Thing::id); };
    const auto exists = [&](const std::string& id) { return plan.findPart(id) || plan.findJumper(id); };
    for (const Weighed& each : diagnosis.fits) {
        for (const std::string& id : each.suspect->concerned) {
            if (!exists(id)) continue;
            const auto thing = find(id);
            if (thing == things.end())
                things.push_back({id, 1, 0});
            else
                ++thing->fits;
        }
    }
    const auto fitting = static_cast<std::ptrdiff_t>(things.size());
    for (const RuledOut& each : diagnosis.ruledOut) {
        for (const std::string& id : each.suspect->concerned) {
            if (!exists(id)) continue;
            const auto thing = find(id);
            if (thing == things.end())
                things.push_back({id, 0, each.by});
            else if (thing->fits == 0)
                thing->out = std::max(thing->out, each.by);
        }
    }
    std::stable_sort(things.begin() + fitting, things.end(),
                     [](const DoctorAnswer::Thing& a, const DoctorAnswer::Thing& b) { return a.out < b.out; });
    return things;
}

std::shared_ptr<const DoctorAnswer> answerOf(Doctor& doctor, const DoctorJob& job) {
    const Diagnosis diagnosis = doctor.diagnose(job.seen, job.instrument);
    auto answer = std::make_shared<DoctorAnswer>();
    answer->number = job.number;
    answer->fitCount = diagnosis.fits.size();
    answer->allCount = doctor.suspects().all().size();
    answer->pairs = diagnosis.pairs;
    answer->contradiction = diagnosis.contradiction;
    answer->switchOff = diagnosis.switchOff;
    answer->next = diagnosis.next ? questionInWords(doctor.plan(), diagnosis.next->question)
                                  : doctor.nextInWords(diagnosis, job.seen);
    if (diagnosis.next) {
        answer->question = diagnosis.next->question;
        for (const Reply& each : diagnosis.next->answers)
            answer->choices.push_back({each.words, leavesInWords(each, diagnosis.fits), each.seen});
        const Question& asked = diagnosis.next->question;
        if (answer->choices.size() > DoctorAnswer::kMostChoices) {
            const bool look = asked.asking == Asking::Look;  // anything else may be typed
            answer->choices.resize(DoctorAnswer::kMostChoices - (look ? 1 : 0));
            if (look) answer->choices.push_back({"otherwise", "", {{asked.digits, SawBuilt{asked.id, false}, {}}}});
        }
    }
    for (std::size_t i = 0; i < std::min(diagnosis.fits.size(), DoctorAnswer::kMostTold); ++i) {
        const Suspect& suspect = *diagnosis.fits[i].suspect;
        answer->fits.push_back({doctor.slipsInWords(suspect),
                                doctor.mendInWords(suspect),
                                {},
                                idsOnPlan(doctor.plan(), suspect),
                                doctor.holesOf(suspect)});
    }
    if (answer->isFound())
        answer->fits.front().built =
            std::make_shared<const Bench>(doctor.suspects().built(*diagnosis.fits.front().suspect));
    answer->things = thingsOf(doctor.plan(), diagnosis);
    return answer;
}

PossibleSlip possibleWith(const std::shared_ptr<const Kit>& kit, const std::shared_ptr<const Bench>& plan) {
    if (!kit) return {};
    return [kit, plan](const Slip& slip) { return canHappenWith(*kit, *plan, slip); };
}

}  // namespace

/// One slot; the lock guards it and what is being worked out.
class DoctorRun::Worker {
public:
    explicit Worker(DoctorRun& run) : run_(run), thread_([this] { work(); }) {}

    ~Worker() {
        {
            const std::lock_guard guard(mutex_);
            stopping_ = true;
            present_.request_stop();
        }
        wake_.notify_one();
        thread_.join();
    }

    void ask(DoctorJob job) {
        {
            const std::lock_guard guard(mutex_);
            waiting_ = std::move(job);
            present_.request_stop();
        }
        wake_.notify_one();
    }

private:
    std::optional<DoctorJob> nextJob(std::stop_token& stop) {
        std::unique_lock lock(mutex_);
        wake_.wait(lock, [this] { return stopping_ || waiting_; });
        if (stopping_) return std::nullopt;
        present_ = std::stop_source();
        stop = present_.get_token();
        return std::exchange(waiting_, std::nullopt);
    }

    void work() {
        lowerPriority();
        std::stop_token stop;
        std::shared_ptr<const Bench> plan;
        std::shared_ptr<const Kit> kit;
        std::unique_ptr<Doctor> doctor;
        while (const std::optional<DoctorJob> job = nextJob(stop)) {
            const StopScope scope(stop);
            try {
                if (!doctor || plan != job->plan || kit != job->kit) {
                    doctor.reset();
                    doctor = std::make_unique<Doctor>(buildLayout(job->plan), possibleWith(job->kit, job->plan));
                    plan = job->plan;
                    kit = job->kit;
                }
                auto answer = answerOf(*doctor, *job);
                DoctorRun* run = &run_;
                QMetaObject::invokeMethod(
                    run, [run, answer] { Q_EMIT run->ready(answer); }, Qt::QueuedConnection);
            } catch (const Stopped&) {  // a newer question has come
            }
        }
    }

    DoctorRun& run_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::optional<DoctorJob> waiting_;
    std::stop_source present_;
    bool stopping_ = false;
    std::thread thread_;  // last: it uses all of the above
};

DoctorRun::DoctorRun(QObject* parent) : QObject(parent) {}
DoctorRun::~DoctorRun() = default;

quint64 DoctorRun::ask(std::shared_ptr<const Bench> plan, std::vector<Observation> seen, Instrument instrument) {
    if (!worker_) worker_ = std::make_unique<Worker>(*this);
    worker_->ask({++number_, std::move(plan), std::move(seen), instrument, kit_});
    return number_;
}

}  // namespace tiepoint::ui
