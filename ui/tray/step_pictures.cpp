#include "ui/tray/step_pictures.h"

#include "ui/document/edit_command.h"
#include "ui/paint/miniature.h"

#include <algorithm>
#include <map>
#include <utility>

namespace tiepoint::ui {

/// Some steps, and the way to them from the bench as it is.
struct StepPictures::Batch {
    struct Order {
        int step;
        quint64 stamp;
        StepNote note;
    };
    std::shared_ptr<const Bench> bench;  ///< as it is
    int index = 0;                       ///< so many steps are done
    std::vector<Edit> back, forth;       ///< from there, one after the other
    std::vector<Order> orders;
    Miniature look;

    /// The benches before and after the steps that are ordered, by index.
    std::map<int, std::shared_ptr<const Bench>> benches() const {
        std::set<int> needed;
        for (const Order& order : orders) needed.insert({order.step, order.step + 1});
        std::map<int, std::shared_ptr<const Bench>> found;
        const auto walk = [&](const std::vector<Edit>& way, int by) {
            std::shared_ptr<const Bench> at = bench;
            int place = index;
            if (needed.contains(place)) found[place] = at;
            for (const Edit& edit : way) {
                auto applied = apply(*at, edit);
                if (!applied) return;
                at = std::make_shared<const Bench>(std::move(applied).value().bench);
                place += by;
                if (needed.contains(place)) found[place] = at;
            }
        };
        walk(back, -1);
        walk(forth, 1);
        return found;
    }
};

StepPictures::StepPictures(BenchDocument& document, QObject* parent)
    : QObject(parent),
      document_(document),
      pictures_(kMostKept) {
    pool_.setMaxThreadCount(1);
    pool_.setThreadPriority(QThread::LowPriority);
    rest_.setSingleShot(true);
    rest_.setInterval(kRestMs);
    connect(&rest_, &QTimer::timeout, this, &StepPictures::start);
    connect(&document, &BenchDocument::benchReplaced, this, &StepPictures::forget);
}

StepPictures::~StepPictures() {
    ++look_;
    pool_.clear();
    pool_.waitForDone();
}

void StepPictures::setLook(const Theme& theme, QSize size, double ratio) {
    if (theme_ == &theme && size_ == size && ratio_ == ratio) return;
    theme_ = &theme;
    size_ = size;
    ratio_ = ratio;
    forget();
}

void StepPictures::forget() {
    ++look_;
    wanted_.clear();
    pictures_.clear();
}

QPixmap StepPictures::pictureOf(int step) {
    if (const QPixmap* picture = pictures_.object(document_.step(step).stamp())) return *picture;
    if (wanted_.insert(step).second && !busy_) rest_.start();
    return {};
}

void StepPictures::start() {
    if (busy_ || wanted_.empty() || !theme_ || size_.isEmpty()) return;
    Batch batch;
    batch.bench = document_.bench();
    batch.index = document_.undoStack().index();
    batch.look.theme = theme_;
    batch.look.size = size_;
    batch.look.ratio = ratio_;
    batch.look.live = false;
    const int count = document_.undoStack().count();
    int lowest = batch.index, highest = batch.index;
    for (const int step : std::exchange(wanted_, {})) {
        if (step >= count) continue;
        const EditCommand& command = document_.step(step);
        if (pictures_.contains(command.stamp())) continue;
        batch.orders.push_back({step, command.stamp(), command.note()});
        lowest = std::min(lowest, step);
        highest = std::max(highest, step + 1);
    }
    if (batch.orders.empty()) return;
    for (int step = batch.index; step > lowest; --step) batch.back.push_back(document_.step(step - 1).inverse());
    for (int step = batch.index; step < highest; ++step) batch.forth.push_back(document_.step(step).edit());
    busy_ = true;
    pool_.start([this, batch = std::move(batch), look = look_.load()] {
        const auto benches = batch.benches();
        for (const Batch::Order& order : batch.orders) {
            if (look_ != look) break;
            const auto after = benches.find(order.step + 1), before = benches.find(order.step);
            QImage image;  // of a step that can't be taken there is none
            if (after != benches.end()) {
                Miniature miniature = batch.look;
                miniature.bench = after->second;
                miniature.before = before == benches.end() ? nullptr : before->second;
                miniature.frameMm = boardsFrameMm(*miniature.bench);
                miniature.cornered = order.note.things;
                image = paintMiniature(miniature);
            }
            QMetaObject::invokeMethod(
                this, [this, stamp = order.stamp, image = std::move(image), look] { take(stamp, image, look); },
                Qt::QueuedConnection);
        }
        QMetaObject::invokeMethod(this, &StepPictures::finish, Qt::QueuedConnection);
    });
}

void StepPictures::take(quint64 stamp, const QImage& image, int look) {
    if (look != look_) return;
    pictures_.insert(stamp, new QPixmap(QPixmap::fromImage(image)));
    Q_EMIT drawn();
}

void StepPictures::finish() {
    busy_ = false;
    if (!wanted_.empty()) rest_.start();
}

}  // namespace tiepoint::ui
