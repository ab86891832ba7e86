#pragma once
// Two close-ups of the metal side by side: as a slip has it, and as it is once the slip is mended. Drawn beside, from true benches. Shows
// nothing until it is given a mend with a leg that moves.

#include "core/lesson/first_mends.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"
#include "ui/window/pictures_beside.h"

#include <QPixmap>
#include <QWidget>

#include <array>
#include <memory>

namespace tiepoint::ui {

class MetalCloseups : public QWidget {
    Q_OBJECT
public:
    explicit MetalCloseups(QWidget* parent);

    void setLook(const Look& look);
    /// The bench with the slip, what mends it, and words for both pictures.
    void show(std::shared_ptr<const Bench> bench, const FirstMend& mend, const std::string& now,
              const std::string& then);
    /// Both are drawn.
    bool isReady() const { return !pictures_[0].isNull() && !pictures_[1].isNull(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QRectF box(int which) const;
    void draw();

    Look look_;
    WordSheet sheet_{this};
    std::array<std::shared_ptr<const Bench>, 2> benches_;
    std::array<QString, 2> words_;
    std::array<QPixmap, 2> pictures_;
    Hop hop_;
    int drawing_ = 0;        ///< counts what was asked for: a late picture is of no use
    PicturesBeside beside_;  // last: it draws for the above
};

}  // namespace tiepoint::ui
