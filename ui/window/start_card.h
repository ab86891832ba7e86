#pragma once
// The card on a new window: the way to a first LED, the harbour benches as pictures, a new bench, opening a file, and unsaved work that was left behind.
// An overlay that nothing waits for: the first gesture on the bench closes it.

#include "ui/document/recovery.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QAbstractButton>
#include <QPixmap>
#include <QTimer>
#include <QWidget>

#include <memory>
#include <vector>

namespace tiepoint::ui {

/// One bench on the card: its picture and its title.
class BenchKey : public QAbstractButton {
    Q_OBJECT
public:
    BenchKey(const QString& file, std::shared_ptr<const Bench> bench, QWidget* parent);

    const QString& file() const { return file_; }
    void setLook(const Look& look);
    bool isDrawn() const { return !picture_.isNull(); }
    void draw();  ///< makes the picture; costs some milliseconds

protected:
    void paintEvent(QPaintEvent* event) override;
    QRectF pictureBox() const;

private:
    QString title() const;

    QString file_;
    std::shared_ptr<const Bench> bench_;
    Look look_;
    WordSheet sheet_{this};
    QPixmap picture_;
};

class StartCard : public QWidget {
    Q_OBJECT
public:
    StartCard(const std::vector<Recovery>& recoveries, QWidget* parent);

    void setLook(const Look& look);
    /// Centres the card in a frame of the parent's.
    void placeIn(const QRect& frame);
    const std::vector<BenchKey*>& benches() const { return benches_; }
    /// What is said of the newest work that was left behind; there must be some.
    QString recoveryWords() const;
    QAbstractButton* firstKey() const { return first_; }
    QAbstractButton* newKey() const { return new_; }
    QAbstractButton* openKey() const { return open_; }
    QAbstractButton* recoverKey() const { return recover_; }
    QAbstractButton* forgetKey() const { return forget_; }

Q_SIGNALS:
    void benchChosen(const QString& embeddedName);
    void firstChosen();
    void newChosen();
    void openChosen();
    void recoveryChosen(const Recovery& recovery);
    void recoveryRefused(const Recovery& recovery);

public:
    void setVisible(bool visible) override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void addBenches();
    void drawNext();
    void arrange();

    Look look_;
    WordSheet sheet_{this};
    std::vector<Recovery> recoveries_;
    std::vector<BenchKey*> benches_;
    QAbstractButton* first_;
    QAbstractButton* new_;
    QAbstractButton* open_;
    QAbstractButton* recover_;
    QAbstractButton* forget_;
    QAbstractButton* close_;
    QTimer drawing_;  ///< pictures one by one, so that the window stands first
};

}  // namespace tiepoint::ui
