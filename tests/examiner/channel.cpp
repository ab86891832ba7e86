#include "examiner/channel.h"

#include "core/bench/resolve.h"
#include "core/parts/preferred.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::examiner {
namespace {

constexpr double kDiodeVolt = 0.7;
constexpr double kHeadroomVolt = 0.7;  // at least so much for the resistor of a string
constexpr std::array<const char*, 6> kColours{"red", "deep-red", "amber", "green", "blue", "white"};

double forwardVolt(const Part& led) { return resolve(Parameter{std::string("forwardVoltage")}, led); }

int choiceIndex(const PartKind& kind, const char* value, std::string_view choice) {
    const auto& choices = kind.values[kind.valueIndex(value)].choices;
    const auto found = std::ranges::find(choices, choice, &Choice::name);
    return static_cast<int>(found - choices.begin());
}

}  // namespace

double Channel::draw() {
    volt_ = source_.volt;
    lamp_ = source_.mostAmpere - source_.drawnAmpere > 0.1 && chance_.happens(0.1);
    std::vector<Section> sections;
    const auto section = [this](void (Channel::*drawn)(int, int)) {
        return [this, drawn](int from, int to) { (this->*drawn)(from, to); };
    };
    if (chance_.happens(0.8)) sections.push_back([this](int from, int to) { drawSwitches(from, to, 0); });
    if (volt_ > 4 && chance_.happens(0.1)) {
        volt_ -= kDiodeVolt;
        sections.push_back(section(&Channel::drawDiode));
    }
    if (mayMeasure() && chance_.happens(0.08)) sections.push_back(section(&Channel::drawAmmeter));
    sections.push_back(section(lamp_ ? &Channel::drawLamp : &Channel::drawLights));
    chance_.shuffle(sections);
    inRow(std::move(sections), source_.plus, source_.minus);
    return mostAmpere_;
}

void Channel::inRow(std::vector<Section> sections, int from, int to) {
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const int end = i + 1 < sections.size() ? netlist_.addNode() : to;
        sections[i](from, end);
        from = end;
    }
}

void Channel::drawSwitches(int from, int to, int depth) {
    const int way = chance_.weighted(std::array{6.0, depth < 2 ? 1.0 : 0, depth < 2 ? 1.0 : 0, depth < 1 ? 0.8 : 0});
    const auto deeper = [this, depth](int a, int b) { drawSwitches(a, b, depth + 1); };
    if (way == 0) drawOneSwitch(from, to);
    if (way == 1) inRow({deeper, deeper}, from, to);
    if (way == 2) {
        deeper(from, to);
        deeper(from, to);
    }
    if (way == 3) drawTwoWay(from, to);
}

void Channel::drawTwoWay(int from, int to) {
    const int upper = netlist_.addNode(), lower = netlist_.addNode();
    netlist_.add("slide-switch", {upper, from, lower});
    netlist_.add("slide-switch", {upper, to, lower});
}

void Channel::drawOneSwitch(int from, int to) {
    if (chance_.happens(0.5)) std::swap(from, to);
    const int way = chance_.weighted(std::array{lamp_ ? 0.3 : 5.0, 2.0, 2.5});
    if (way == 0) netlist_.add("push-button", {from, from, to, to});
    if (way == 1) {
        const int open = netlist_.addNode();
        netlist_.add("slide-switch", chance_.happens(0.5) ? std::vector{from, to, open} : std::vector{open, from, to});
    }
    if (way == 2) setState(netlist_.add("toggle", {from, to}).part, "closed", chance_.below(2));
}

void Channel::drawDiode(int from, int to) { netlist_.add("diode", {from, to}); }

void Channel::drawAmmeter(int from, int to) { setState(netlist_.add("multimeter", {from, to}).part, "dial", 2); }

void Channel::drawVoltmeter(int plus, int minus) { netlist_.add("multimeter", {plus, minus}); }

void Channel::drawResistor(int from, int to, double ohm) {
    if (chance_.happens(0.5)) std::swap(from, to);
    setValue(netlist_.add("resistor", {from, to}).part, "resistance", nearestPreferred("E12", ohm));
}

double Channel::drawLed(int from, int to) {
    Part& part = netlist_.add("led", {from, to}).part;
    const int colours = volt_ > 4.2 ? static_cast<int>(kColours.size()) : volt_ > 2.9 ? 4 : 1;
    const char* colour = volt_ > 2.9 ? kColours[chance_.below(colours)] : "deep-red";
    setValue(part, "colour", choiceIndex(*part.kind, "colour", colour));
    return forwardVolt(part);
}

void Channel::drawLights(int from, int to) {
    using Way = void (Channel::*)(int, int);
    struct Choice {
        double weight;
        Way way;
    };
    const bool roomy = volt_ > 4;
    const std::array choices{
        Choice{5, &Channel::drawString},
        Choice{1.5, &Channel::drawParallel},
        Choice{roomy ? 1.0 : 0, &Channel::drawDimmer},
        Choice{1, &Channel::drawEither},
        Choice{roomy ? 0.4 : 0, &Channel::drawShunted},
        Choice{mayMeasure() ? 0.5 : 0, &Channel::drawDivider},
        Choice{mayMeasure() ? 0.4 : 0, &Channel::drawKnobDivider},
    };
    std::vector<double> weights;
    for (const Choice& choice : choices) weights.push_back(choice.weight);
    (this->*choices[chance_.weighted(weights)].way)(from, to);
}

void Channel::drawString(int from, int to) {
    // The resistor stands at the head or at the foot; its node in between is made once the lights have said what they take.
    const bool first = chance_.happens(0.5);
    const int joint = netlist_.addNode();
    double left = volt_;
    int at = first ? joint : from;
    const int end = first ? to : joint;
    for (int lights = 1;; ++lights) {
        const bool more = left > 2 * 3.3 + kHeadroomVolt && lights < 3 && chance_.happens(0.35);
        const int next = more ? netlist_.addNode() : end;
        left -= drawLed(at, next);
        if (mayMeasure() && chance_.happens(0.05)) drawVoltmeter(at, next);
        at = next;
        if (!more) break;
    }
    const double ampere = aimedAmpere();
    drawResistor(first ? from : joint, first ? joint : to, std::max(left, 0.1) / ampere);
    mostAmpere_ += ampere;
}

void Channel::drawParallel(int from, int to) {
    for (int strings = chance_.within(2, 3); strings > 0; --strings) drawString(from, to);
}

void Channel::drawLamp(int from, int to) {
    Part& part = netlist_.add("lamp", {from, to}).part;
    const double ampere = chance_.oneOf(std::array{0.04, 0.04, 0.06});
    setValue(part, "voltage", std::max(0.5, std::round(2 * volt_) / 2));
    setValue(part, "current", ampere);
    mostAmpere_ += ampere;
    // A diode the other way round across it, as people lay them beside coils: it blocks on purpose.
    if (chance_.happens(0.1)) netlist_.add("diode", {to, from});
}

void Channel::drawDimmer(int from, int to) {
    const int head = netlist_.addNode(), foot = netlist_.addNode();
    const double ohm = (volt_ - drawLed(foot, to)) / aimedAmpere();
    drawResistor(head, foot, ohm);
    const int spare = chance_.happens(0.4) ? head : netlist_.addNode();
    const bool start = chance_.happens(0.5);
    Part& knob =
        netlist_.add("potentiometer", start ? std::vector{from, head, spare} : std::vector{spare, head, from}).part;
    setValue(knob, "resistance", chance_.oneOf(std::array{1e3, 2e3, 5e3}));
    setState(knob, "turn", std::round(10 * chance_.between(0.2, 0.8)) / 10);
    mostAmpere_ += 0.015;
}

void Channel::drawEither(int from, int to) {
    // One resistor serves both lights, since the slide lights only one of them.
    const int common = netlist_.addNode(), a = netlist_.addNode(), b = netlist_.addNode();
    const bool above = chance_.happens(0.5);
    const int joint = above ? from : netlist_.addNode();
    const double least =
        above ? std::min(drawLed(a, to), drawLed(b, to)) : std::min(drawLed(joint, a), drawLed(joint, b));
    netlist_.add("slide-switch", {a, above ? common : to, b});
    drawResistor(from, above ? common : joint, std::max(volt_ - least, 0.1) / chance_.between(0.013, 0.018));
    mostAmpere_ += 0.015;
}

void Channel::drawShunted(int from, int to) {
    const int joint = netlist_.addNode();
    drawResistor(from, joint, (volt_ - drawLed(joint, to)) / aimedAmpere());
    netlist_.add("push-button", {joint, joint, to, to});
    mostAmpere_ += 0.03;
}

void Channel::drawDivider(int from, int to) {
    const int middle = netlist_.addNode();
    const double ohm = chance_.oneOf(std::array{1e3, 2.2e3, 4.7e3, 1e4});
    drawResistor(from, middle, ohm);
    drawResistor(middle, to, ohm * chance_.between(0.3, 2.0));
    drawVoltmeter(middle, to);
}

void Channel::drawKnobDivider(int from, int to) {
    const int middle = netlist_.addNode();
    Part& knob = netlist_.add("potentiometer", {from, middle, to}).part;
    setValue(knob, "resistance", chance_.oneOf(std::array{5e3, 1e4}));
    drawVoltmeter(middle, to);
}

}  // namespace tiepoint::examiner
