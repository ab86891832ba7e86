#pragma once
// The buttons of the legend: each is a view's name, its sample and its switch in one.

#include "ui/paint/picture.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QAbstractButton>

namespace tiepoint::ui {

/// A button with a tick and a word, and below them its key and a sample.
class ViewButton : public QAbstractButton {
    Q_OBJECT
public:
    using Sample = void (*)(QPainter&, const Look&, const QRectF&);
    ViewButton(const QString& word, double sampleWidth, Sample sample, QWidget* parent);

    void setLook(const Look& look);
    /// The key that always works it, in small.
    void setKeyWords(const QString& words);
    const QString& keyWords() const { return keyWords_; }
    /// What its tick, word and sample take.
    double neededWidth() const;
    /// Where the room is small the words come first: the sample is left out.
    void setBare(bool bare);
    /// Words beside the ends of the sample; may be empty. True: they were others.
    bool setRange(const QString& low, const QString& high);

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;
    const Look& look() const { return look_; }
    WordSheet& sheet() { return sheet_; }
    /// The face, and the tick in its column at a height.
    void paintFace(QPainter& painter, double tickY);
    void paintKeyWords(QPainter& painter, const QRectF& room, Qt::Alignment side);

private:
    bool showsSample() const { return sampleWidth_ > 0 && !bare_; }
    QFont smallFont() const;
    double rangeWidth() const;
    void paintScale(QPainter& painter, const QRectF& room);

    Look look_;
    WordSheet sheet_{this};
    double sampleWidth_;
    Sample sample_;
    bool bare_ = false;
    QString low_, high_, keyWords_;
};

/// The button of the arrows: three samples of the scale. Two small buttons lie on it: which way the arrows point, and the lock of
/// the full scale.
class ArrowsButton : public ViewButton {
    Q_OBJECT
public:
    explicit ArrowsButton(QWidget* parent);

    /// `mean`: the current goes to and fro, and the arrows show its mean.
    void showScale(const Views& views, double fullScaleAmpere, bool mean);
    QAbstractButton* directionButton() const { return direction_; }
    QAbstractButton* lockButton() const { return lock_; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QRectF sampleBox(int index) const;

    Views views_;
    double fullScaleAmpere_ = 1e-3;
    QAbstractButton* direction_;
    QAbstractButton* lock_;
};

}  // namespace tiepoint::ui
