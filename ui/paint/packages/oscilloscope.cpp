// The oscilloscope, lying on the table: a box with a screen, three sockets towards the boards and four knobs. Its traces are read off the
// run of the bench by core/scope.

#include "core/scope/recorder.h"
#include "ui/paint/lettering.h"
#include "ui/paint/packages/face_parts.h"
#include "ui/paint/packages/supply_parts.h"
#include "ui/paint/shade.h"

#include <array>
#include <memory>

namespace tiepoint::ui {
namespace {

// Places on the face, from its top left corner.
constexpr QRectF kScopePanel(1.75, 1.75, 76.5, 54.5), kScreen(12.2, 4.4, 52, 42.4);
constexpr double kScopeSocketMm = 2.6, kSocketSignUpMm = 4.7, kChannelMm = 2.9;
constexpr double kScaleY = 51.6, kScaleMm = 2.35, kMostScaleMm = 3.4;
constexpr double kKnobX = 71.3, kScopeKnobMm = 3.6, kKnobWordMm = 1.95;
constexpr double kLettersShare = 2.3 / 52;
constexpr QPointF kScopeIdAt(71.3, 53.4);
constexpr Lettering kScopeId{1.7, QFont::Medium};

struct Turned {
    double y;
    const char *word, *value;
};
constexpr std::array kTurned{Turned{8.1, "1: volts", "volts1"}, Turned{19.7, "2: volts", "volts2"},
                             Turned{31.3, "time", "time"}, Turned{42.9, "trigger", "level"}};

QColor scopeLeadColour(const Theme& theme, int lead) {
    constexpr std::array kColours{3, 2, 1};  // of jumpers: yellow, blue, black
    return theme.jumpers[static_cast<std::size_t>(kColours[static_cast<std::size_t>(lead)])];
}

class OscilloscopePainter final : public PackagePainter {
public:
    void paint(QPainter& painter, const PartScene& scene) const override {
        painter.save();
        painter.translate(cornerMm(scene));
        paintFaceCase(painter, scene, kScopePanel);
        paintScopeScreen(painter, scene.theme, faced(scene, kScreen), darkScreen(scopeSettings(scene.part)),
                         letters(scene));
        paintSocketRow(painter, scene);
        for (const FaceKnob& knob : onFace(scene)) paintFaceKnob(painter, scene, knob, kKnobWordMm);
        paintScale(painter, scene);
        drawText(painter, QString::fromStdString(scene.part.id), faced(scene, kScopeIdAt), kScopeId,
                 scene.theme.furnishing.panelDim);
        painter.restore();
        if (scene.compact) return;
        for (const int lead : {2, 1, 0})
            paintTestLead(painter, scene, lead, {scopeLeadColour(scene.theme, lead), kScopeSocketMm, lead == 1});
    }

    QRectF figures(const PartScene& scene) const override {
        return faced(scene, kScreen).adjusted(-0.5, -0.5, 0.5, 0.5).translated(cornerMm(scene));
    }
    double figuresEmMm() const override { return kLettersShare * kScreen.width(); }

    std::optional<DisplayFigures> figuresAt(const Snapshot& instant, int part, int) const override {
        const Part& own = instant.layout->bench->parts[static_cast<std::size_t>(part)];
        const ScopeTrace* trace = instant.traces.scopeOf(own.id);
        if (!trace && instant.status() == Status::None) return std::nullopt;
        DisplayFigures figures;
        figures.screen = std::make_shared<const ScopeScreen>(
            trace ? screenOf(*trace, instant.timeSecond)
                  : screenOf(standingTrace(*instant.layout->bench, instant.solution, part, 0), 0));
        return figures;
    }

    void paintFigures(QPainter& painter, const PartScene& scene, const DisplayFigures& shown) const override {
        if (!shown.screen) return;
        painter.save();
        painter.translate(cornerMm(scene));
        paintScopeScreen(painter, scene.theme, faced(scene, kScreen), *shown.screen, letters(scene));
        painter.restore();
    }

    std::vector<PartPath> paths(const PartScene& scene) const override { return supplyPaths(scene); }

    QPainterPath body(const PartScene& scene) const override {
        return roundedBox(QRectF(cornerMm(scene), scene.bodyRect().size()), 2.1);
    }

    std::vector<FaceKnob> faceKnobs(const PartScene& scene) const override {
        std::vector<FaceKnob> knobs = onFace(scene);
        for (FaceKnob& knob : knobs) knob.at += cornerMm(scene);
        return knobs;
    }

private:
    static double letters(const PartScene& scene) {
        return scene.figureMm(kLettersShare * kScreen.width(), 4.2) / kScreen.width();
    }

    static std::vector<FaceKnob> onFace(const PartScene& scene) {
        std::vector<FaceKnob> knobs;
        for (const Turned& each : kTurned)
            knobs.push_back({faced(scene, QPointF(kKnobX, each.y)), kScopeKnobMm, each.word, each.value});
        return knobs;
    }

    static void paintSocketRow(QPainter& painter, const PartScene& scene) {
        const auto& places = scene.part.kind->package->footprint;
        for (std::size_t lead = 0; lead < places.size(); ++lead) {
            const QPointF at = faced(scene, toQt(places[lead]));
            const QPointF sign = at - QPointF(0, kSocketSignUpMm);
            paintSocket(painter, scene.theme, at, kScopeSocketMm);
            if (lead == 2)
                paintSupplySign(painter, scene.theme, sign, false, 1.15);
            else
                drawText(painter, QString::number(lead + 1), sign, {kChannelMm, QFont::DemiBold},
                         scene.theme.furnishing.panelInk);
        }
    }

    /// Under the screen: each channel's line with its volts a square, and the time.
    static void paintScale(QPainter& painter, const PartScene& scene) {
        const ScopeSettings settings = scopeSettings(scene.part);
        const Furnishing& f = scene.theme.furnishing;
        const double size = scene.wordMm(kScaleMm, kMostScaleMm);
        const QRectF screen = faced(scene, kScreen);
        double x = screen.left() + 0.6;
        for (const int channel : {0, 1}) {
            // On ivory the lines have the colours of the leads, which the numbers bear out.
            const QColor colour = blend(scopeLeadColour(scene.theme, channel), f.panelInk, 0.25);
            paintScopeSample(painter, colour, channel, {x, kScaleY}, 5.2, 0.62);
            const QString words = QStringLiteral("%1  %2").arg(channel + 1).arg(voltsOfSquare(settings, channel));
            drawText(painter, words, {x + 6.2, kScaleY}, {size, QFont::DemiBold}, f.panelInk, Qt::AlignLeft);
            x += 6.2 + textWidthMm(words, {size, QFont::DemiBold}) + 2.6;
        }
        drawText(painter, QStringLiteral("%1 a square").arg(secondsOfSquare(settings)), {screen.right() - 0.6, kScaleY},
                 {size, QFont::Normal}, f.panelDim, Qt::AlignRight);
    }
};

}  // namespace

const PackagePainter& oscilloscopePainter() {
    static const OscilloscopePainter kPainter;
    return kPainter;
}

}  // namespace tiepoint::ui
