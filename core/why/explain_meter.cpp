// What a meter shows, and what it does to the circuit while it looks.

#include "core/findings/examination.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "core/why/explainer.h"

#include <fmt/format.h>

#include <cmath>

namespace tiepoint {

void Explainer::explainReading() {
    const MeterReading reading = *meterReading(snapshot_, index_);
    const std::string& id = self().id;
    answer_.question = fmt::format("Why does {} show {}?", id, reading.on ? reading.text() : "nothing");
    answer_.figures = {{"reading", reading.value}, {"current", currentThrough(snapshot_, index_).inAmpere}};
    if (!reading.on)
        return add(fmt::format("The dial of {} is at off: its two leads are not joined inside.", id), {id});
    if (!reading.why.empty()) return add(reading.why, {id}, holesOf(self()));
    const std::string ampere = currentWords(snapshot_, index_), volt = voltageAcross().text();
    if (reading.quantity == "voltage") {
        const bool none = snapshot_.shown().through(index_).in.isZero();
        add(fmt::format("Between its leads lies {}. They are not joined inside: it lets {} through.", reading.text(),
                        none ? "next to nothing" : "only " + ampere),
            {id});
    } else if (reading.quantity == "current") {
        add(fmt::format("All of {} flows through it, from the red lead to the black one. Measuring takes {} away from "
                        "the circuit.",
                        reading.text(), volt),
            {id});
    } else if (reading.digits == "OL") {
        add(fmt::format("{} sends no current through what lies between its leads: open circuit, or more ohms "
                        "than it can show.",
                        id),
            {id});
    } else {
        add(fmt::format("It sends {} through everything between its leads together, which takes {}: {}.", ampere, volt,
                        reading.text()),
            {id});
    }
}

/// Of a part with two leads; also where nothing ties them to the reference.
Figure Explainer::voltageAcross() const {
    const int first = snapshot_.layout->firstLead[index_];
    const Figure between = snapshot_.shown().leadVolt(first) - snapshot_.shown().leadVolt(first + 1);
    if (between.isKnown()) return between.magnitude();
    const double ampere = currentThrough(snapshot_, index_).inAmpere;
    const double volt = ampere == 0 ? 0 : std::abs(snapshot_.partPower[index_]) / ampere;
    return Figure::nearest(scaleFor("V", volt), volt);
}

}  // namespace tiepoint
