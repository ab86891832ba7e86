#pragma once
// Reads one file of resources/parts. Strict: a member that is missing, misspelt or of another type is an
// error, and so is a name that leads nowhere, so that the rest of the program may trust the catalogue.
//
// The schema (all members are required unless marked optional; numbers are SI):
//
//   kind, label      "push-button", "push button"
//   family, order    compartment of the tray and the place in it
//   prefix           of new ids: "S"
//   package          name of a package, or {family: name, and its numbers} (core/parts/package_family.h)
//   leads            [{name, description, socket: true (optional), insulated: true (optional: a gate, whose voltage something
//                      outside must hold)}]
//   joined           optional: [["1a", "1b"], ...], leads that are one piece of metal inside
//   values           [{name, label, type: "number" | "choice" | "switch", default, ...}]
//                      number: unit, minimum, maximum; optional integer, allowed [numbers], series "E24",
//                      sought: true where people ask for the part by it
//                      remembered: true of a state that a part begins with in time, such as a capacitor's voltage
//                      lookAlike: true of a choice whose parts all look the same
//                      choice: choices [{name, label, constants: {name: number} (optional)}], default a
//                      choice's name switch: default true or false
//   state            optional: the same; what a hand left (a latched switch), saved with the bench
//   model            [{element, from, to, closedWhen, reads (both optional), and the parameters of the element}]
//                      from, to: a lead, or an inner node (any other name, used at least twice)
//                      between: [names], in place of from and to: one for each terminal of the element, in its order
//                      closedWhen: "held", {"state": a switch}, or {"state": a choice, "is": its name}
//                      onlyWith (optional): {"value": a choice, "is": its name}; a part with another choice hasn't got the element
//                      wavelength (optional): metres, of its light, where a part gives several colours
//                      reads: of an instrument, what it shows while this element is there: "voltage", "current",
//                      "resistance", "continuity", "trace" (see core/meter/meter.h)
//                      a parameter: a number, the name of a value, state or constant of a choice, or
//                      {"derivation": name, "arguments": {name: parameter}}
//                      elements, from their first node to their second, and their parameters:
//                        resistance  resistance
//                        junction    saturationCurrent, ideality, seriesResistance; from the anode to the cathode
//                        supply      voltage, seriesResistance, currentLimit (optional); from plus to minus
//                        contact     contactResistance; optional bounceTime
//                        filament    voltage, current, temperature (rated; kelvin)
//                        capacitance  capacitance; optional seriesResistance, startVoltage
//                        inductance   inductance; optional seriesResistance, startCurrent
//                        spark        optional breakVoltage (the air between contacts)
//                      with more terminals, of moving parts and instruments (core/circuit/*_law.h):
//                        motor [from, to, shaft], armature [from, to, common, open, closed], sounder [from, to, rest],
//                        latch [high, out, low, open, upper, threshold, lower, trigger, reset], wave [out, back, phase],
//                        level [tip, high, low]
//                        zener        as junction; breakdownVoltage at testCurrent, dynamicResistance there
//                        photo-resistance    resistanceAt10Lux, gamma, darkResistance
//                        thermal-resistance  resistanceAt25, beta
//                        photocurrent        current, light (lux): so much at so much, driven out of `from`
//                      and, between [collector, base, emitter] / [out, back, plus, minus] / [out, common, plus, minus]:
//                        transistor         gain, saturationCurrent; optional reverseGain, ideality, transitTime,
//                                           reverseTransitTime, emitterCapacitance, collectorCapacitance, polarity (-1: PNP)
//                        field-effect       between [drain, gate, source]: thresholdVoltage, transconductance; optional
//                                           channelLength, ideality, polarity (-1: P-channel)
//                        controlled-source  transconductance: from plus to minus drives from out to back
//                        comparator         highVoltage, outputResistance; optional lowVoltage, hysteresis, delay
//   ratings          [{name, quantity, label, limit: a parameter, maximum: false (optional; a usual figure, no limit),
//                      leads: [names] (optional)}]
//                      quantity: "current" (of the part; with one lead: of that lead), "power", "voltage" (the widest; with two leads:
//                      between them), "reverseVoltage" (the second of two leads above the first; of all leads without names)
//   emitsLight, cap, supply   optional: true
//   sound            optional: {pitch: a parameter, hertz, fromVoltage: a parameter}, or {follows: true} of what sounds as its sounder
//                      is moved
//   ratedCurrent     with emitsLight: the current at which its brightness is 1, a parameter
//   lightExponent    with emitsLight, optional: its light rises as this power of the current (1)
//   search           [words]
//   help             {what, leads, ratings, caution}
//   sources          [{figure, source, status: "published" | "common practice" | "from memory"}]

#include "core/base/result.h"
#include "core/parts/part_kind.h"

#include <string_view>

namespace tiepoint {

/// The kind in a file's text; `name` is the file's name, for the error.
Result<PartKind> readPartKind(std::string_view name, std::string_view text);

/// The compartments of the tray that hold part kinds, in order.
std::span<const std::string_view> trayFamilies();

}  // namespace tiepoint
