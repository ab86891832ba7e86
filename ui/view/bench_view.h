#pragma once
// The bench on the screen: a graphics view whose scene holds one item for each part and jumper (an id and a cached look), with the
// board and the live marks drawn in its background and foreground. Draws; the gestures decide what the pointer does.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/paint/picture.h"

#include <QGraphicsView>

namespace tiepoint::ui {

class BenchView : public QGraphicsView {
    Q_OBJECT
public:
    BenchView(BenchDocument& document, LiveBench& live, QWidget* parent = nullptr);
    ~BenchView() override;

    const Picture& picture() const;
    void setThemeName(ThemeName name);
    void setViews(const Views& views);
    const Views& views() const;
    QStringList selection() const;
    void setSelection(const QStringList& ids);
    QString hoveredPart() const;

    void fitBench();                       ///< boards and supplies fill the view
    void zoomAt(QPointF viewPos, double factor);
    Point toMm(QPointF viewPos) const;
    QPointF fromMm(Point mm) const;

    /// Starts carrying a new part (or a jumper, kind "jumper") out of the tray; the mouse is down at a global position.
    void beginPlacing(const QString& kind, const QString& presetValue, QPoint globalPos);

Q_SIGNALS:
    void selectionChanged();
    void hoverChanged();
    void viewsChanged();
    void valueTyped(const QString& partId);

private:
    struct Body;
    std::unique_ptr<Body> body_;
};

}  // namespace tiepoint::ui
