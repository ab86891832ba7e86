#pragma once
// The list of laws: one line for each. The circuit keeps a list of branches for each, the solver's loops and the table of elements
// follow from it. Conductors and supplies are not in it: they are the linear special cases (see circuit.h).

#include "core/circuit/armature_law.h"
#include "core/circuit/capacitance_law.h"
#include "core/circuit/comparator_law.h"
#include "core/circuit/controlled_source_law.h"
#include "core/circuit/field_effect_law.h"
#include "core/circuit/filament_law.h"
#include "core/circuit/inductance_law.h"
#include "core/circuit/junction_law.h"
#include "core/circuit/latch_law.h"
#include "core/circuit/level_law.h"
#include "core/circuit/motor_law.h"
#include "core/circuit/photo_resistance_law.h"
#include "core/circuit/photocurrent_law.h"
#include "core/circuit/sounder_law.h"
#include "core/circuit/spark_law.h"
#include "core/circuit/thermal_resistance_law.h"
#include "core/circuit/transistor_law.h"
#include "core/circuit/wave_law.h"
#include "core/circuit/zener_law.h"

#include <tuple>

namespace tiepoint {

template <class... Each>
struct LawList {
    template <template <class> class Holder>
    using For = std::tuple<Holder<Each>...>;
};

using Laws = LawList<      //
    JunctionLaw,           //
    FilamentLaw,           //
    TransistorLaw,         //
    FieldEffectLaw,        //
    ZenerLaw,              //
    PhotoResistanceLaw,    //
    ThermalResistanceLaw,  //
    PhotocurrentLaw,       //
    ControlledSourceLaw,   //
    ComparatorLaw,         //
    CapacitanceLaw,        //
    InductanceLaw,         //
    LatchLaw,              //
    ArmatureLaw,           //
    MotorLaw,              //
    SounderLaw,            //
    WaveLaw,               //
    LevelLaw,              //
    SparkLaw>;

/// Visits what is held for each law, one after the other, always in the order of the list.
template <class Held, class Visit>
void eachLaw(Held& held, Visit&& visit) {
    std::apply([&](auto&... each) { (visit(each), ...); }, held);
}

}  // namespace tiepoint
