#pragma once
// Keeps a picture in line with its document, its snapshots and what of them is to be shown. Changes all of the picture but its marks.
// Belongs to the window's thread.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/paint/picture.h"
#include "ui/paint/tag_keeper.h"
#include "ui/view/before.h"

#include <QObject>
#include <QTimer>

#include <memory>
#include <optional>
#include <vector>

namespace tiepoint::ui {

class LivePicture : public QObject {
    Q_OBJECT
public:
    /// All three must outlive it. The picture has a bench from `followBench` on.
    LivePicture(Picture& picture, BenchDocument& document, LiveBench& live);

    /// Takes the document's bench with its nets; what is known of an older one is shown no longer. One that was opened shows its
    /// first live frame without ids and tags, which take a while to place; they come right after it.
    void followBench(std::shared_ptr<const Layout> layout);
    /// Takes the snapshot, if it is of the document's revision.
    void followLive();
    void setTheme(const Theme& theme);
    void setViews(const Views& views);
    /// Of the device, and how large words are to stand.
    void setScale(double pixelsPerMm, const WordSizes& sizes, const QRectF& seenMm);
    void setFindings(std::shared_ptr<const std::vector<Finding>> findings);
    /// Shows nothing of what flows, and nothing that is found, until it is lifted: a room guesses first.
    void setVeiled(bool veiled);
    /// What comes next is compared with nothing.
    void forgetBefore();
    /// The bench is the plan of a real board: nothing of what flows is shown either, and only these tags. Nothing: it is a bench again.
    void setPlan(std::optional<std::vector<HungTag>> tags);
    /// Another selection: what belongs to it keeps its tags.
    void followSelection();
    /// The bench as it stands, with all of its words where they are seen as a whole: for paper and files.
    Picture whole() const;
    void setPhase(double mm) { picture_.phaseMm = mm; }

Q_SIGNALS:
    void benchChanged();  ///< the document has another bench; to be followed
    void answered();      ///< a snapshot of this bench was taken
    void changed();       ///< something of what moves with every answer
    void restyled();      ///< every look is another

private:
    void arrangeTags();
    Views allowed(Views views) const;
    void addWords();
    bool isStill() const { return veiled_ || plan_; }
    void followStill(bool before);
    void followHands();

    Picture& picture_;
    BenchDocument& document_;
    LiveBench& live_;
    Before before_;
    TagKeeper tags_;
    bool veiled_ = false, plan_ = false;
    std::shared_ptr<const std::vector<Finding>> findings_;
    QTimer sighting_;  ///< runs while what is seen goes on changing
    QTimer wording_;   ///< when there is nothing else to do
};

}  // namespace tiepoint::ui
