#pragma once
// Random operations of every kind on a bench, for round trips. The same seed makes the same ones. They needn't suit the bench.

#include "core/edit/edit.h"

#include <array>
#include <random>
#include <string>

namespace tiepoint::test {

class RandomEdits {
public:
    RandomEdits(const Bench& bench, unsigned seed) : bench_(bench), random_(seed) {}

    Edit edit(int operations) {
        Edit edit{pick(4) == 0 ? std::string() : "Ferry \"bell\" é " + std::to_string(pick(100)), {}};
        for (int i = 0; i < operations; ++i) edit.operations.push_back(operation(pick(kKinds)));
        return edit;
    }
    static constexpr int kKinds = static_cast<int>(std::variant_size_v<Operation>);

    Operation operation(int kind) {
        switch (kind) {
            case 0:
                return AddBoard{board(), place()};
            case 1:
                return AddPart{part(), place()};
            case 2:
                return AddJumper{jumper(), place()};
            case 3:
                return AddNote{note(), place()};
            case 4:
                return AddPinned{{id("M"), measurand(), extras()}, place()};
            case 5:
                return Remove{id("R")};
            case 6:
                return ReplaceBoard{board()};
            case 7:
                return ReplacePart{part()};
            case 8:
                return ReplaceJumper{jumper()};
            case 9:
                return ReplaceNote{note()};
            case 10:
                return SetTitle{"Tide \\ gauge " + std::to_string(pick(1000))};
            case 11:
                return disclosure();
            default:
                return surroundings();
        }
    }

private:
    int pick(std::size_t count) { return static_cast<int>(random_() % count); }
    double number() { return std::ldexp(static_cast<double>(random_()), pick(60) - 60) * (pick(2) ? 1 : -1); }
    int place() { return pick(3) - 1; }
    std::string id(const char* prefix) { return prefix + std::to_string(pick(100)); }

    Extras extras() {
        if (pick(3)) return {};
        return {{"shelf", "[1, {\"a\": null}]"}, {"é", "\"x\""}};
    }
    Hole hole() { return {pick(4) ? "A" : "B", static_cast<Line>(pick(kRowCount)), 1 + pick(60)}; }

    Board board() {
        Board made{id("A"),
                   &boardKinds()[static_cast<std::size_t>(pick(boardKinds().size()))],
                   number(),
                   number(),
                   pick(2) ? Rails::Split : Rails::Through,
                   pick(2) ? Labels::ABottom : Labels::ATop,
                   extras()};
        return made;
    }

    void fill(const std::vector<ValueSpec>& specs, std::vector<Setting>& settings) {
        for (std::size_t i = 0; i < specs.size(); ++i) {
            if (pick(2)) continue;
            if (specs[i].type == ValueType::Number)
                settings[i] = number();
            else
                settings[i] = pick(static_cast<std::size_t>(specs[i].maximum) + 1);
        }
    }

    Part part() {
        const PartKind& kind = catalogue()[static_cast<std::size_t>(pick(catalogue().size()))];
        Part made = makePart(kind, id("P"));
        for (std::size_t i = 0; i < kind.leads.size(); ++i) {
            if (pick(3) && !kind.leads[i].socket) made.leads[i] = hole();
        }
        fill(kind.values, made.values);
        fill(kind.state, made.state);
        if (kind.hasCap && pick(2)) made.cap = "B";
        if (standsOnTable(made) && pick(2)) made.at = Point{number(), number()};
        made.extras = extras();
        return made;
    }

    JumperEnd end() {
        if (pick(3)) return hole();
        std::vector<Socket> sockets;
        for (const Part& each : bench_.parts) {
            for (std::size_t i = 0; i < each.kind->leads.size(); ++i) {
                if (each.kind->leads[i].socket) sockets.push_back({each.id, static_cast<int>(i)});
            }
        }
        if (sockets.empty()) return hole();
        return sockets[static_cast<std::size_t>(pick(sockets.size()))];
    }

    Jumper jumper() {
        Jumper made{id("W"), {end(), end()}, pick(jumperColours().size()), pick(2) != 0, extras()};
        return made;
    }
    Note note() { return {id("N"), hole(), "line\nline \"" + std::to_string(pick(9)), extras()}; }

    Measurand measurand() {
        switch (pick(4)) {
            case 0:
                return VoltsAt{hole()};
            case 1:
                return VoltsBetween{hole(), hole()};
            case 2:
                return AmperesIn{id("R"), pick(2) ? "1" : ""};
            default:
                return WattsOf{id("R")};
        }
    }
    Operation disclosure() {
        if (pick(3) == 0) return SetDisclosure{};
        return SetDisclosure{Disclosure{static_cast<Reveal>(pick(4)), pick(2) ? "digest" : "", extras()}};
    }

    Operation surroundings() {
        if (pick(3) == 0) return SetSurroundings{};
        SaidSurroundings said{{1.0 * pick(100'000), pick(120) - 38.5}, extras()};
        if (pick(3) == 0) said.torch = HeldOver{{pick(60) - 3.25, 1.0 * pick(20)}, 1.0 * pick(100'000)};
        if (pick(3) == 0) said.hand = HeldOver{{1.0 * pick(60), pick(20) + 0.5}, 1.0 * pick(80)};
        return SetSurroundings{std::move(said)};
    }

    const Bench& bench_;
    std::mt19937 random_;
};

}  // namespace tiepoint::test
