// The board is searched for the chain that is furthest on: any resistor with any LED.

#include "core/course/first_chain.h"

#include <algorithm>

namespace tiepoint {
namespace {

constexpr double kLit = 0.2;

class Judge {
public:
    explicit Judge(const Snapshot& snapshot)
        : s_(snapshot),
          layout_(*snapshot.layout),
          bench_(*snapshot.layout->bench) {}

    FirstChain best() const {
        FirstChain best;
        const int supply = find([](const PartKind& kind) { return kind.isSupply; }, 0);
        for (int d = nextLed(0); d >= 0; d = nextLed(d + 1)) keep(best, {-1, d, supply});
        for (int r = nextResistor(0); r >= 0; r = nextResistor(r + 1)) {
            keep(best, judged(r, -1, supply));
            for (int d = nextLed(0); d >= 0; d = nextLed(d + 1)) keep(best, judged(r, d, supply));
        }
        if (best.supply < 0) best.supply = supply;
        return best;
    }

private:
    static void keep(FirstChain& best, const FirstChain& other) {
        const auto parts = [](const FirstChain& chain) { return (chain.resistor >= 0) + (chain.led >= 0); };
        if (other.step > best.step || (other.step == best.step && parts(other) > parts(best))) best = other;
    }

    template <class Suits>
    int find(Suits suits, int from) const {
        for (int part = from; part < static_cast<int>(bench_.parts.size()); ++part)
            if (suits(*bench_.parts[part].kind)) return part;
        return -1;
    }
    int nextResistor(int from) const {
        return find([](const PartKind& kind) { return resistanceValue(kind) >= 0; }, from);
    }
    int nextLed(int from) const {
        return find([](const PartKind& kind) { return kind.needsResistor; }, from);
    }

    int net(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }
    bool isIn(int part) const {
        const auto& leads = bench_.parts[part].leads;
        return std::all_of(leads.begin(), leads.end(), [](const auto& lead) { return lead.has_value(); }) &&
               net(part, 0) != net(part, 1);
    }

    FirstChain judged(int resistor, int led, int supply) const {
        FirstChain chain{resistor, led, supply};
        if (!isIn(resistor)) return chain;
        chain.step = 1;
        if (led < 0 || !isIn(led)) return chain;
        // Where the two meet, and the outer ends of the chain. Where both ends meet they lie side by side, which is no chain.
        for (const int r : {0, 1}) {
            for (const int d : {0, 1}) {
                if (net(resistor, r) != net(led, d) || net(resistor, 1 - r) == net(led, 1 - d)) continue;
                chain.step = 2;
                chain.resistorLead = 1 - r;
                chain.ledLead = 1 - d;
                chain.anodeInside = d == 0;
                judgeEnds(chain);
                return chain;
            }
        }
        return chain;
    }

    void judgeEnds(FirstChain& chain) const {
        const int resistorEnd = net(chain.resistor, chain.resistorLead), ledEnd = net(chain.led, chain.ledLead);
        chain.plusEnd = chain.anodeInside ? resistorEnd : ledEnd;
        chain.minusEnd = chain.anodeInside ? ledEnd : resistorEnd;
        if (chain.supply < 0) return;
        const int plus = net(chain.supply, 0), minus = net(chain.supply, 1);
        chain.reversed = chain.plusEnd == minus && chain.minusEnd == plus;
        if (chain.plusEnd != plus && !chain.reversed) return;
        chain.step = 3;
        if (s_.status() == Status::Solved && s_.brightness(chain.led) > kLit) chain.step = 4;
    }

    const Snapshot& s_;
    const Layout& layout_;
    const Bench& bench_;
};

}  // namespace

FirstChain firstChain(const Snapshot& snapshot) { return Judge(snapshot).best(); }

}  // namespace tiepoint
