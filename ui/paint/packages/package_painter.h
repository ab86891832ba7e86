#pragma once
// One painter for each package or family of packages, and the table that finds it by the package's name. Painters draw in
// millimetres of the bench from plain values; they know no cache and compute nothing electrical.

#include "core/bench/table.h"
#include "core/snapshot/snapshot.h"
#include "ui/paint/scope_screen.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::ui {

/// One part on the bench and how it is at the moment.
struct PartScene {
    const Theme& theme;
    const Part& part;
    const PartPlace& place;
    bool held = false;                          ///< pressed at the moment
    bool compact = false;                       ///< seen in the tray: no leads that end in the air
    double leastWordMm = 0, leastFigureMm = 0;  ///< em that a room can read; 0 at a desk
    QColor light = {};  ///< of a part that gives several colours: what they make together now; else not valid

    QRectF bodyRect() const;                                ///< in the body's own frame: centred at 0,0, unturned
    std::string_view choice(std::string_view value) const;  ///< name of a choice in force, or empty
    double value(std::string_view name) const;              ///< of a value; 0 if the kind has none
    double state(std::string_view name) const;
    /// The em of a word on the part: as a desk has it, larger where a room has to read it, no larger than there is room for.
    double wordMm(double deskMm, double mostMm) const { return std::clamp(leastWordMm, deskMm, mostMm); }
    /// The same for the figures of a display.
    double figureMm(double deskMm, double mostMm) const { return std::clamp(leastFigureMm, deskMm, mostMm); }
};

/// What stands on a display at the moment, as it is shown: rounded, in words.
struct DisplayFigures {
    std::string figure, unit = {};
    std::string quantity = {};                            ///< what is measured, in a word
    std::string why = {};                                 ///< in place of unit and quantity where there is no number
    int beat = -1;                                        ///< of a sound that lasts; -1: none
    std::shared_ptr<const ScopeScreen> screen = nullptr;  ///< of an oscilloscope
    friend bool operator==(const DisplayFigures& a, const DisplayFigures& b) {
        const bool sameScreen = a.screen == b.screen || (a.screen && b.screen && *a.screen == *b.screen);
        return sameScreen && a.figure == b.figure && a.unit == b.unit && a.quantity == b.quantity && a.why == b.why &&
               a.beat == b.beat;
    }
};

/// A knob on the face of an instrument: it turns one value of its part.
struct FaceKnob {
    QPointF at;
    double radiusMm;
    const char *word, *value;  ///< what stands under it, and the name of what it turns
};

/// How the arrows of one path look.
enum class PathLook { OverBody, OnLight, Ghost };

/// A way that current takes through a part: from one end of a line to the other. The current is that which
/// enters by the given leads together; from `fromLead`'s tip (or from inside, -1) to `toLead`'s.
struct PartPath {
    QPainterPath line;
    std::vector<int> leads;
    PathLook look = PathLook::OverBody;
    int fromNode = 0, toNode = 0;  ///< lead indices; from the kind's lead count on: places inside the part
};

class PackagePainter {
public:
    virtual ~PackagePainter() = default;

    /// Leads and body at rest: unlit, unpressed, without live figures.
    virtual void paint(QPainter& painter, const PartScene& scene) const = 0;
    /// The body as it is while pressed, without the letter on its cap. Called only while the part is held.
    virtual void paintPressed(QPainter&, const PartScene&) const {}
    /// The letter of a pressed cap, which stays over the arrows under it.
    virtual void paintCapLetter(QPainter&, const PartScene&) const {}
    /// What a part's display shows at an instant, solved or not; nothing where it shows nothing. `beat`: goes on while current flows, for what
    /// shows that it lasts, such as a sound.
    virtual std::optional<DisplayFigures> figuresAt(const Snapshot&, int, int) const { return std::nullopt; }
    /// Draws that. Called only where figures() isn't empty.
    virtual void paintFigures(QPainter&, const PartScene&, const DisplayFigures&) const {}
    /// Where on the bench a display's figures stand; empty where there is no display.
    virtual QRectF figures(const PartScene&) const { return {}; }
    /// The em of the figures that a display is there for, mm; 0 where a room needn't read them.
    virtual double figuresEmMm() const { return 0; }
    /// The lit body of a part that gives light, about 0,0 of its own frame.
    virtual void paintLit(QPainter&, const PartScene&, double) const {}
    /// The colour of its light; not valid for parts that give none.
    virtual QColor light(const PartScene&) const { return {}; }
    /// The metal inside, over a body made pale. Nothing for most parts.
    virtual void paintInside(QPainter&, const PartScene&) const {}
    virtual bool hasInside() const { return false; }
    /// "open" or "closed" where the part has a contact to show, else empty.
    virtual const char* contactWord(const PartScene&) const { return ""; }

    /// Ways of current. As it stands: one, straight through a part of two leads.
    virtual std::vector<PartPath> paths(const PartScene& scene) const;
    /// The outline of the body on the bench.
    virtual QPainterPath body(const PartScene& scene) const;
    /// What the pointer presses, switches or turns; empty if nothing.
    virtual QPainterPath control(const PartScene&) const { return {}; }
    /// Knobs of which each turns a value, on the bench; `control` is without them.
    virtual std::vector<FaceKnob> faceKnobs(const PartScene&) const { return {}; }
    /// Of a dial with several positions: the one that a point of it means, an index of the part's first state; nothing at its hub, and
    /// for parts without a dial.
    virtual std::optional<int> dialPosition(const PartScene&, QPointF) const { return std::nullopt; }
};

/// The painter of a package, or null.
const PackagePainter* findPackagePainter(std::string_view packageName);

/// A painter moved into the body's own frame, until the end of its life.
class BodyFrame {
public:
    BodyFrame(QPainter& painter, const PartScene& scene);
    ~BodyFrame();
    BodyFrame(const BodyFrame&) = delete;
    BodyFrame& operator=(const BodyFrame&) = delete;

private:
    QPainter& painter_;
};
/// From the body's own frame to the bench.
QTransform bodyTransform(const PartScene& scene);
/// An offset on the bench as it is in the body's own frame: shadows fall the same way however a body is turned.
QPointF fallInBody(const PartScene& scene, QPointF offset);
/// The pale case under metal that is seen inside; `steel`: how much steel its colour has. Leaves a thin pen of the metal's edge.
void paintPaleCase(QPainter& painter, const Theme& theme, const QRectF& box, double radiusMm, double steel = 0.55);
/// A pin of a contact seen inside, about a place of the body's middle line.
void paintPinInside(QPainter& painter, const Theme& theme, double x);
/// A blade of a contact, lying from 0,0 to one of `lengthMm` further right and reaching a little beyond both.
void paintBladeInside(QPainter& painter, const Theme& theme, double lengthMm);
/// Straight bare leads from the body's exits to the tips, in the colours of the theme.
void paintBareLeads(QPainter& painter, const PartScene& scene);
/// The name of the value that shows beside the id ("330 Ω"), or empty.
QString valueLabel(const Part& part);

// The painters, one file each.
const PackagePainter& resistorPainter();
const PackagePainter& diodePainter();
const PackagePainter& ledPainter();
const PackagePainter& pushButtonPainter();
const PackagePainter& slideSwitchPainter();
const PackagePainter& potentiometerPainter();
const PackagePainter& lampPainter();
const PackagePainter& togglePainter();
const PackagePainter& benchSupplyPainter();
const PackagePainter& usbSupplyPainter();
const PackagePainter& cellsPainter();
const PackagePainter& block9VPainter();
const PackagePainter& multimeterPainter();
const PackagePainter& dipPainter();
const PackagePainter& to92Painter();
const PackagePainter& radialCanPainter();
const PackagePainter& ceramicDiscPainter();
const PackagePainter& axialChokePainter();
const PackagePainter& buzzerPainter();
const PackagePainter& motorCanPainter();
const PackagePainter& relayChangeoverPainter();
const PackagePainter& signalSourcePainter();
const PackagePainter& logicProbePainter();
const PackagePainter& plasticDiodePainter();
const PackagePainter& photoresistorPainter();
const PackagePainter& thermistorPainter();
const PackagePainter& phototransistorPainter();
const PackagePainter& rgbLedPainter();
const PackagePainter& solarCellPainter();
const PackagePainter& oscilloscopePainter();

}  // namespace tiepoint::ui
