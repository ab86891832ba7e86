#pragma once
// A branch whose current is a curve of the voltage across it, whatever its law. Only laws of two terminals that rise, have no
// bits and follow neither light nor warmth are curves; a circuit with others isn't reduced. Points to the law; constant data. Pure.

#include "core/circuit/surrounded.h"

namespace tiepoint {

struct Curve {
    struct Tangent {
        double ampere = 0, siemens = 0, lineVolt = 0;
        double at(double volt) const { return ampere + siemens * (volt - lineVolt); }
    };

    int element = -1, from = -1, to = -1,
        touch = -1;  ///< touch: where the circuit keeps it
    const void* law = nullptr;
    Tangent (*tangentOf)(const void* law, double touch) = nullptr;
    double (*touchedOf)(const void* law, double touch, const Tangent& tangent, double volt) = nullptr;
    double (*limitedOf)(const void* law, double fromVolt, double toVolt) = nullptr;
    double perUnitVolt = 0, startVolt = 0;

    Tangent tangent(double at) const { return tangentOf(law, at); }
    double touched(double at, const Tangent& tangent, double volt) const { return touchedOf(law, at, tangent, volt); }
    double limited(double fromVolt, double toVolt) const { return limitedOf(law, fromVolt, toVolt); }
};

template <class Law>
constexpr bool kIsCurve = Law::kTerminals == 2 && Law::kPorts == 1 && Law::kPaths == 1 && Law::kBits == 0 &&
                          Law::kRising && !Law::kFeeds && !IsSurrounded<Law>;

template <class Law>
Curve curveOf(const LawBranch<Law>& branch) {
    Curve curve;
    curve.element = branch.element;
    curve.from = branch.nodes[0];
    curve.to = branch.nodes[1];
    curve.touch = branch.touch;
    curve.law = &branch.law;
    curve.tangentOf = [](const void* law, double touch) {
        const auto t = static_cast<const Law*>(law)->tangentAt({touch}, 0, kJunctionLeakSiemens);
        return Curve::Tangent{t.ampere[0], t.siemens[0][0], t.lineVolt[0]};
    };
    curve.touchedOf = [](const void* law, double touch, const Curve::Tangent& tangent, double volt) {
        return static_cast<const Law*>(law)->touched(
            {touch}, {{tangent.ampere}, {{{tangent.siemens}}}, {tangent.lineVolt}}, {volt})[0];
    };
    curve.limitedOf = [](const void* law, double fromVolt, double toVolt) {
        return static_cast<const Law*>(law)->limited(0, fromVolt, toVolt);
    };
    curve.perUnitVolt = branch.law.perUnitVolt(0);
    curve.startVolt = branch.law.startVolts()[0];
    return curve;
}

/// All curves of a circuit, in the order of the list of laws; false if it has branches that are none and are there.
template <class Present>
bool collectCurves(const Circuit& circuit, Present isPresent, std::vector<Curve>& curves) {
    bool all = true;
    eachLaw(circuit.laws, [&]<class Law>(const LawBranches<Law>& branches) {
        for (const LawBranch<Law>& b : branches) {
            if (!isPresent(b.element)) continue;
            if constexpr (kIsCurve<Law>)
                curves.push_back(curveOf(b));
            else
                all = false;
        }
    });
    return all;
}

}  // namespace tiepoint
