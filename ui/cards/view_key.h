#pragma once
// The keys of the legend: each is a view's name, its sample and its switch in one.

#include "ui/paint/picture.h"
#include "ui/theme/look.h"

#include <QAbstractButton>

namespace tiepoint::ui {

/// A key with a tick, a word and a sample at the right.
class ViewKey : public QAbstractButton {
    Q_OBJECT
public:
    using Sample = void (*)(QPainter&, const Look&, const QRectF&);
    ViewKey(const QString& word, double sampleWidth, Sample sample, QWidget* parent);

    void setLook(const Look& look);
    /// What its tick, word and sample take.
    double neededWidth() const;
    /// Words under the ends of the sample, shown while the key is down; may be empty.
    void setRange(const QString& low, const QString& high);

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;
    const Look& look() const { return look_; }
    void paintFace(QPainter& painter) const;

private:
    Look look_;
    double sampleWidth_;
    Sample sample_;
    QString low_, high_;
};

/// The key of the arrows: three samples of the scale. Two small keys lie on it: which way the arrows point, and the lock of
/// the full scale.
class ArrowsKey : public ViewKey {
    Q_OBJECT
public:
    explicit ArrowsKey(QWidget* parent);

    void showScale(const Views& views, double fullScaleAmpere);
    QAbstractButton* directionKey() const { return direction_; }
    QAbstractButton* lockKey() const { return lock_; }

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
