#pragma once
// The steps so far: a row of small pictures of the boards, one for each step of the history, with two or three words below. Small corners
// hold what each step changed; the present one wears brackets; later ones, which were undone, are faint and joined by dots. A click or an
// arrow key goes to any of them.

#include "ui/document/bench_document.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/tray/step_pictures.h"

#include <QAbstractListModel>
#include <QListView>

#include <vector>

namespace tiepoint::ui {

/// The history as a list. A row is a step; its words are its text.
class StepsModel : public QAbstractListModel {
    Q_OBJECT
public:
    StepsModel(BenchDocument& document, QObject* parent);

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    /// Rows that are no more go, and new ones come; the others stay what they were.
    void follow();

    BenchDocument& document_;
    std::vector<quint64> stamps_;  ///< by row
};

class StepsRow : public QListView {
    Q_OBJECT
public:
    static constexpr double kHeight = 136;  ///< in the layout of 1080 lines; a picture is a thirteenth of them

    StepsRow(BenchDocument& document, QWidget* parent);

    void setLook(const Look& look);
    StepPictures& pictures() { return pictures_; }
    /// Where the picture of a step is drawn, in the viewport; empty if it is out of sight.
    QRect pictureFrame(int step) const;

Q_SIGNALS:
    void closed();

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    class Painter;
    void followIndex();
    void followBoards();

    BenchDocument& document_;
    Look look_;
    WordSheet sheet_{viewport()};
    QSize pictureSize_;
    StepPictures pictures_;
    StepsModel steps_;
    bool following_ = false;  ///< the history has moved by other hands
};

}  // namespace tiepoint::ui
