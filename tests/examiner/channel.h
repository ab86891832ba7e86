#pragma once
// One way from a supply's plus to its minus, drawn by chance into a netlist.

#include "examiner/chance.h"
#include "examiner/netlist.h"

#include <functional>

namespace tiepoint::examiner {

class Channel {
public:
    Channel(Chance& chance, Netlist& netlist, Source source) : chance_(chance), netlist_(netlist), source_(source) {}

    /// Draws it; what it may draw from the supply at most, in amperes.
    double draw();

private:
    using Section = std::function<void(int from, int to)>;

    void inRow(std::vector<Section> sections, int from, int to);
    void drawSwitches(int from, int to, int depth);
    void drawTwoWay(int from, int to);
    void drawOneSwitch(int from, int to);
    void drawDiode(int from, int to);
    void drawAmmeter(int from, int to);

    void drawLights(int from, int to);
    void drawString(int from, int to);
    void drawParallel(int from, int to);
    void drawLamp(int from, int to);
    void drawDimmer(int from, int to);
    void drawEither(int from, int to);
    void drawShunted(int from, int to);
    void drawDivider(int from, int to);
    void drawKnobDivider(int from, int to);

    /// A LED from anode to cathode; its forward voltage.
    double drawLed(int from, int to);
    void drawResistor(int from, int to, double ohm);
    void drawVoltmeter(int plus, int minus);
    double aimedAmpere() { return chance_.between(0.0075, 0.0165); }
    bool mayMeasure() const { return netlist_.countOf("multimeter") < 2; }

    Chance& chance_;
    Netlist& netlist_;
    Source source_;
    double volt_ = 0;  ///< for the lights
    double mostAmpere_ = 0;
    bool lamp_ = false;
};

}  // namespace tiepoint::examiner
