#pragma once
// The small pictures of the steps so far. They are drawn beside, by a thread of low priority, and only for steps that are looked at: a picture
// needs the bench as it was, which is walked to from the present one by the inverses of the steps between. So an edit costs nothing here but
// the drawing of one picture elsewhere, and hundreds of steps cost as much as those in sight. Belongs to the window's thread.

#include "ui/document/bench_document.h"
#include "ui/theme/theme.h"

#include <QCache>
#include <QPixmap>
#include <QSize>
#include <QThreadPool>
#include <QTimer>

#include <atomic>
#include <set>

namespace tiepoint::ui {

class StepPictures : public QObject {
    Q_OBJECT
public:
    static constexpr int kMostKept = 96;
    static constexpr int kRestMs =
        60;  ///< after a step was last looked at, so that an edit's frame has both processors

    explicit StepPictures(BenchDocument& document, QObject* parent = nullptr);
    ~StepPictures() override;

    /// What they look like; those drawn otherwise go.
    void setLook(const Theme& theme, QSize size, double ratio);
    /// The picture of the bench after a step; null while it is still to be drawn, which `drawn` tells.
    QPixmap pictureOf(int step);
    int kept() const { return static_cast<int>(pictures_.count()); }

Q_SIGNALS:
    void drawn();

private:
    struct Batch;
    void forget();
    void start();
    void take(quint64 stamp, const QImage& image, int look);
    void finish();

    BenchDocument& document_;
    const Theme* theme_ = nullptr;
    QSize size_;
    double ratio_ = 1;
    QCache<quint64, QPixmap> pictures_;  ///< by the stamp of the step
    std::set<int> wanted_;
    QTimer rest_;
    bool busy_ = false;
    std::atomic<int> look_{0};  ///< counts looks: what is drawn for an older one is given up
    QThreadPool pool_;          // last: its thread uses the above
};

}  // namespace tiepoint::ui
