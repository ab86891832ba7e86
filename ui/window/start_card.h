#pragma once
// The card on a new window: the way to a first LED in front, the harbour benches in the order of a course, each with what it shows, the exercises by
// name over them, and below, quieter, a new bench, a file, and the benches of one's own. Unsaved work that was left behind is offered on top. It lies over the lower
// part of the window, the bench above under a veil of its own colour. Nothing waits for it: the first gesture on the bench closes it.
// Pictures are drawn beside, one by one, so that the window stands first; files of one's own are read there too.

#include "core/bench/bench.h"
#include "ui/document/recovery.h"
#include "ui/theme/words.h"
#include "ui/window/bench_button.h"
#include "ui/window/first_panel.h"
#include "ui/window/pictures_beside.h"

#include <QStringList>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

class StartCard : public QWidget {
    Q_OBJECT
public:
    /// `recent` are paths of files, the latest first.
    StartCard(const std::vector<Recovery>& recoveries, const QStringList& recent, QWidget* parent);
    ~StartCard() override;

    void setLook(const Look& look);
    /// Takes a frame of the parent's, all of it below the title line; the card lies in its lower part.
    void placeIn(const QRect& frame);
    /// The surface of the card, in its own place.
    QRectF surface() const;
    const std::vector<BenchButton*>& benches() const { return benches_; }
    const std::vector<BenchButton*>& ownBenches() const { return own_; }
    /// The exercises that ship, by name.
    const std::vector<WordButton*>& exercises() const { return exercises_; }
    /// What is said of the newest work that was left behind; there must be some.
    QString recoveryWords() const;
    QAbstractButton* firstButton() const { return first_->beginButton(); }
    QAbstractButton* newButton() const { return new_; }
    QAbstractButton* openButton() const { return open_; }
    QAbstractButton* closeButton() const { return close_; }
    QAbstractButton* recoverButton() const { return recover_; }
    QAbstractButton* forgetButton() const { return forget_; }

Q_SIGNALS:
    void lessonChosen(const QString& embeddedName);
    void fileChosen(const QString& path);
    void firstChosen();
    void newChosen();
    void openChosen();
    void recoveryChosen(const Recovery& recovery);
    void recoveryRefused(const Recovery& recovery);
    void closed();  ///< someone put it away

public:
    void setVisible(bool visible) override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

private:
    void addBenches();
    void addExercises();
    void addOwn(const QStringList& recent);
    void connectButtons();
    void draw(BenchButton* button, const PicturesBeside::Fill& fill);
    void arrange();
    /// Beside the button at the right of the head.
    void arrangeExercises(const QRectF& head);
    void arrangeBenches(const QRectF& area);
    void arrangeOwn(const QRectF& row);
    void paintOwn(QPainter& painter);
    std::vector<WordButton*> wordButtons() const;

    Look look_;
    WordSheet sheet_{this};
    std::vector<Recovery> recoveries_;
    std::vector<BenchButton*> benches_, own_;
    std::vector<WordButton*> exercises_;
    FirstPanel* first_;
    WordButton *new_, *open_, *recover_, *forget_, *close_;
    QRectF ownRow_, exerciseWords_;
    PicturesBeside pictures_;  // last: it draws for the above
};

}  // namespace tiepoint::ui
