#pragma once
// What the tray holds, made by walking the catalogue: a compartment for each family, in it each kind and the choices or usual
// values of that kind. Plain values; a new kind needs nothing here.

#include "core/bench/bench.h"
#include "core/course/kit.h"
#include "core/parts/drawer.h"

#include <QString>

#include <optional>
#include <vector>

namespace tiepoint::ui {

/// The kind under which the view knows a jumper.
inline constexpr const char* kJumperKind = "jumper";

struct TrayItem {
    QString kind;              ///< as BenchView::beginPlacing wants it
    QString preset;            ///< "" (defaults), "colour=red", "voltage=6;current=0.1"; for a jumper the colour's name
    QString label;             ///< "red", "330 Ω"
    std::optional<Part> part;  ///< as it would lie on the bench; nothing for a jumper
    int jumperColour = 0;
};

struct TrayFamily {
    QString name;                 ///< "LED"
    std::vector<TrayItem> items;  ///< the first is what a drag out of the closed compartment takes
};

/// Whether it is a resistor, of which a person's drawer holds some.
bool isResistor(const TrayItem& item);
/// Whether a resistor lies in the person's drawer; everything else does.
bool isHeld(const TrayItem& item, const ResistorDrawer& drawer);
/// The family with the resistors of a drawer in place of the usual ones, nearest to the usual one first. The same if the drawer holds
/// everything, or the family has no resistors.
TrayFamily withDrawer(const TrayFamily& family, const ResistorDrawer& drawer);

/// The family as a kit has it: its own values and its own supply; without items where it has none of them. Jumpers are in every kit.
TrayFamily withKit(const TrayFamily& family, const Kit& kit);
/// Whether it lies in a kit.
bool isInKit(const TrayItem& item, const Kit& kit);

/// All compartments, in the order of the catalogue; jumpers follow the supplies.
std::vector<TrayFamily> trayFamilies();

}  // namespace tiepoint::ui
