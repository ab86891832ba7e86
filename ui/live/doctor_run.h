#pragma once
// The doctor beside the window: a thread of its own, of low priority, that keeps a doctor for the plan and answers what fits and what to ask
// next. Of several questions only the newest is answered; what is worked out for an older one stops. Answers come back in the window's thread
// as plain values.

#include "core/course/kit_slips.h"
#include "core/doctor/doctor.h"

#include <QObject>

#include <memory>
#include <string>
#include <vector>

namespace tiepoint::ui {

struct DoctorAnswer {
    struct Choice {
        std::string words, means;
        std::vector<Observation> seen;
    };
    struct Cause {
        std::string text, mend;
        std::shared_ptr<const Bench> built;  ///< the plan as it would have been built; of what is found
        std::vector<std::string> ids;
        std::vector<Hole> holes;
    };
    /// A part or jumper, and how many of the slips that still fit are about it; none: what was seen as `out` has ruled out the last.
    struct Thing {
        std::string id;
        std::size_t fits = 0, out = 0;
    };

    quint64 number = 0;  ///< of the question that it answers
    std::string next;    ///< what to do, without what the answers mean; or how it ends
    std::optional<Question> question;
    std::vector<Choice> choices;
    std::vector<Cause> fits;    ///< the likeliest first, at most kMostTold
    std::vector<Thing> things;  ///< all that any slip is about: the likeliest first, those ruled out last
    std::size_t fitCount = 0, allCount = 0;
    bool pairs = false, contradiction = false, switchOff = false;

    static constexpr std::size_t kMostTold = 12, kMostChoices = 7;
    bool isFound() const { return !question && !contradiction && !switchOff && !fits.empty(); }
};

class DoctorRun : public QObject {
    Q_OBJECT
public:
    explicit DoctorRun(QObject* parent = nullptr);
    ~DoctorRun() override;

    /// Returns the number of the question.
    quint64 ask(std::shared_ptr<const Bench> plan, std::vector<Observation> seen, Instrument instrument);
    /// What the class has: what can't happen with it is never suspected. Null: anything can. For questions from now on.
    void setKit(std::shared_ptr<const Kit> kit) { kit_ = std::move(kit); }

Q_SIGNALS:
    void ready(std::shared_ptr<const tiepoint::ui::DoctorAnswer> answer);

private:
    class Worker;
    std::unique_ptr<Worker> worker_;  ///< from the first question on
    std::shared_ptr<const Kit> kit_;
    quint64 number_ = 0;
};

}  // namespace tiepoint::ui
