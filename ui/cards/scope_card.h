#pragma once
// An oscilloscope's screen, large, with what is read off its traces beside it: for reading at the desk, and for a room. Keys save what it
// shows as a picture and as a table. Shows what it is given.

#include "ui/cards/aside_card.h"
#include "ui/paint/scope_screen.h"

#include <QImage>

namespace tiepoint::ui {

class ScopeCard : public AsideCard {
    Q_OBJECT
public:
    explicit ScopeCard(QWidget* parent);

    void showTrace(const ScopeTrace& trace, double nowSecond);
    /// The bench has no oscilloscope.
    void showNone();
    bool hasTrace() const { return has_; }
    const ScopeTrace& trace() const { return trace_; }
    /// "1: mean 2.51 V, ..."; empty where the channel shows nothing.
    QString channelWords(int channel) const;
    /// The screen with its scale and what is read off it, as a picture.
    QImage picture() const;
    QToolButton* pictureButton() const { return picture_; }
    QToolButton* tableButton() const { return table_; }

    bool isForRoom() const override { return true; }
    double roomHeight(double most) const override;

Q_SIGNALS:
    void pictureAsked();
    void tableAsked();

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    QRectF screenPlace() const;
    double letterShare() const;

    ScopeTrace trace_;
    ScopeScreen screen_;
    bool has_ = false;
    QToolButton *picture_, *table_;
};

}  // namespace tiepoint::ui
