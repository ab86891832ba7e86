#pragma once
// The hand that gestures see: passes on what they ask for to whoever has it. Its own are the buttons that are held down and the colour
// that was chosen in the tray.

#include "ui/gesture/hand.h"
#include "ui/scene/bench_scene.h"
#include "ui/view/bench_marks.h"
#include "ui/view/camera.h"
#include "ui/view/carried_icon.h"

namespace tiepoint::ui {

class BenchHand : public Hand {
public:
    /// All must outlive it.
    struct Needs {
        const Picture& picture;
        BenchDocument& document;
        LiveBench& live;
        BenchMarks& marks;
        BenchScene& scene;
        Camera& camera;
    };
    explicit BenchHand(const Needs& needs) : needs_(needs), icon_(needs.picture, needs.camera) {}

    const Picture& picture() const override { return needs_.picture; }
    Under under(Point at) const override { return needs_.scene.under(at); }
    QStringList touchedBy(const QRectF& band) const override;
    BenchDocument& document() override { return needs_.document; }
    LiveBench& live() override { return needs_.live; }
    Marks& marks() override { return needs_.marks.marks(); }
    void showMarks() override { needs_.marks.show(); }
    void lightNets(std::vector<int> nets) override { needs_.marks.lightNets(std::move(nets)); }
    void clearMarks() override { needs_.marks.clear(); }
    void flash(const std::string& words, Point at) override { needs_.marks.flash(words, at); }
    void tell(const std::string& words) override { needs_.marks.tell(words); }
    void setPale(const std::vector<std::string>& ids) override { needs_.scene.setPale(ids); }
    void setBand(const std::optional<QRectF>& band) override { needs_.marks.set(&Marks::band, band); }
    void setAtPointer(const std::optional<Part>& part, std::optional<int> jumperColour) override {
        icon_.show(part, jumperColour);
    }
    QStringList selection() const override { return needs_.marks.selection(); }
    void setSelection(const QStringList& ids) override { needs_.marks.setSelection(ids); }
    void panBy(QPointF pixels) override { needs_.camera.panBy(pixels); }
    std::optional<int> chosenJumperColour() const override { return chosenColour_; }
    void chooseJumperColour(int colour) override { chosenColour_ = colour; }
    std::set<std::string>& latched() override { return latched_; }

    /// Lets go of every button that it holds down.
    void releaseAll();

private:
    Needs needs_;
    CarriedIcon icon_;
    std::optional<int> chosenColour_;
    std::set<std::string> latched_;
};

}  // namespace tiepoint::ui
