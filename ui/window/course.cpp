#include "ui/window/course.h"

namespace tiepoint::ui {

std::span<const CourseBench> course() {
    static const Views kStrips = [] {
        Views views;
        views.strips = true;
        return views;
    }();
    static const Views kVoltage = [] {
        Views views;
        views.voltage = true;
        return views;
    }();
    static const CourseBench kCourse[] = {
        {"benches/ferry-cabin.bench.json", "One loop", "Current needs both ends of the supply."},
        {"benches/gangway.bench.json", "Hidden metal", "Which five holes are one piece of metal?", kStrips},
        {"benches/three-buoys.bench.json", "The LED's resistor", "Three resistors: more ohms, less light."},
        {"benches/beacon-lamp.bench.json", "The button's four legs", "Two pairs of legs, and a bar that joins them.",
         kStrips},
        {"benches/lock-gate.bench.json", "In series", "Two buttons in one loop: both are needed."},
        {"benches/quay-bell-lamp.bench.json", "In parallel", "Two buttons side by side: either is enough."},
        {"benches/fairway-dimmer.bench.json", "Volts", "The shares add up to the volts of the supply.", kVoltage},
        {"benches/two-way-stair-lamp.bench.json", "Two switches, one lamp", "Each of them switches it on and off."},
        {"benches/dusk-light.bench.json", "Dusk light", "A transistor lights the lamp when it gets dark."},
        {"benches/flashing-beacon.bench.json", "Flashing beacon", "Two transistors switch each other, turn by turn."},
        {"benches/stair-lamp.bench.json", "The lamp that waits", "A capacitor holds a gate for a few seconds."},
        {"benches/solar-buoy.bench.json", "Solar buoy", "Four cells in a row light an LED in the sun."},
        {"benches/signal-lantern.bench.json", "Signal lantern", "Red, green and blue make every colour."},
        {"benches/frost-warning.bench.json", "Frost warning", "A thermistor and a transistor tell of the cold."},
        {"benches/harbour-entrance.bench.json", "Harbour entrance", "By day a phototransistor keeps the gate up."},
        {"benches/steady-five.bench.json", "Steady five volts", "A zener holds its voltage while the battery sags."},
        {"benches/ballast-tank.bench.json", "A capacitor that remembers", "One button fills it, one empties it."},
        {"benches/fog-signal.bench.json", "Fog signal", "A timer swings, and a buzzer follows it."},
        {"benches/harbour-fan.bench.json", "Harbour fan", "A button tells a transistor to run the fan."},
        {"benches/dark-beacon.bench.json", "Why does it stay dark?", "Find out why: nothing is told."},
    };
    return kCourse;
}

}  // namespace tiepoint::ui
