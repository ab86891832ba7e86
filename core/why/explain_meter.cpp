// What a meter shows, and what it does to the circuit while it looks.

#include "core/findings/examination.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "core/why/explainer.h"
#include "core/words/words.h"

#include <cmath>

namespace tiepoint {

void Explainer::explainReading() {
    const MeterReading reading = *meterReading(snapshot_, index_);
    const std::string& id = self().id;
    answer_.question = reading.on ? say("why.question.reads", {{"part", id}, {"reading", reading.text()}})
                                  : say("why.question.readsNothing", {{"part", id}});
    answer_.figures = {{"reading", reading.value}, {"current", currentThrough(snapshot_, index_).inAmpere}};
    if (!reading.on) return add(say("why.meter.off", {{"meter", id}}), {id});
    if (!reading.why.empty()) return add(reading.why, {id}, holesOf(self()));
    const std::string ampere = currentWords(snapshot_, index_), volt = voltageAcross().text();
    if (reading.quantity == "voltage" || reading.quantity == "trace") {
        const bool none = snapshot_.shown().through(index_).in.isZero();
        add(none ? say("why.meter.voltsNothing", {{"reading", reading.text()}})
                 : say("why.meter.volts", {{"reading", reading.text()}, {"current", ampere}}),
            {id});
    } else if (reading.quantity == "current") {
        add(say("why.meter.amperes", {{"reading", reading.text()}, {"voltage", volt}}), {id});
    } else if (reading.digits == "OL") {
        add(say("why.meter.open", {{"meter", id}}), {id});
    } else {
        add(say("why.meter.ohms", {{"current", ampere}, {"voltage", volt}, {"reading", reading.text()}}), {id});
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
