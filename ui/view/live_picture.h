#pragma once
// Keeps a picture in line with its document, its snapshots and what of them is to be shown. Changes all of the picture but its marks.
// Belongs to the window's thread.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/paint/picture.h"
#include "ui/paint/tag_keeper.h"
#include "ui/view/before.h"

#include <QObject>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class LivePicture : public QObject {
    Q_OBJECT
public:
    /// All three must outlive it. The picture has a bench from `followBench` on.
    LivePicture(Picture& picture, BenchDocument& document, LiveBench& live);

    /// Takes the document's bench with its nets; what is known of an older one is shown no longer.
    void followBench(std::shared_ptr<const Layout> layout);
    /// Takes the snapshot, if it is of the document's revision.
    void followLive();
    void setTheme(const Theme& theme);
    void setViews(const Views& views);
    /// Of the device, and how large words are to stand.
    void setScale(double pixelsPerMm, const WordSizes& sizes, const QRectF& seenMm);
    void setFindings(std::shared_ptr<const std::vector<Finding>> findings) { picture_.findings = std::move(findings); }
    /// Another selection: what belongs to it keeps its tags.
    void followSelection();
    void setPhase(double mm) { picture_.phaseMm = mm; }

Q_SIGNALS:
    void benchChanged();  ///< the document has another bench; to be followed
    void answered();      ///< a snapshot of this bench was taken
    void changed();       ///< something of what moves with every answer
    void restyled();      ///< every look is another

private:
    Picture& picture_;
    BenchDocument& document_;
    LiveBench& live_;
    Before before_;
    TagKeeper tags_;
};

}  // namespace tiepoint::ui
