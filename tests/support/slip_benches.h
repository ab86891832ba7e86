#pragma once
// Benches of any size at random, and small changes to them as a hand or a worn part makes them. They know nothing of how a bench is
// solved: rows of resistors, LEDs and switches from plus to minus, bridges between them, boards that share a supply, supplies that share
// a minus or don't, jumpers too many and too few.

#include "core/variants/variant.h"
#include "support/build_bench.h"

#include <fmt/format.h>

#include <array>
#include <random>
#include <set>

namespace tiepoint::test {

class SlipBench {
public:
    SlipBench(int parts, int supplies, std::mt19937& random) : random_(random) {
        constexpr int kPartsOfBoard = 40;
        const int boards = std::max(supplies, 1 + parts / kPartsOfBoard);
        for (int b = 0; b < boards; ++b) {
            Board board;
            board.id = fmt::format("B{}", b + 1);
            board.kind = findBoardKind("full");
            board.atY = 30 * b;
            bench_.boards.push_back(board);
        }
        for (int s = 0; s < supplies; ++s) addSupply(s, supplies, boards);
        for (int b = supplies; b < boards; ++b) {
            wire(rail(b, true), rail(b % supplies, true));
            wire(rail(b, false), rail(b % supplies, false));
        }
        for (int b = 0; b < boards; ++b) {
            // The lower rails follow the upper ones, mostly.
            if (pick(4) != 0)
                wire(hole(b, Line::TopPlus, next(b, Line::TopPlus)),
                     hole(b, Line::BottomPlus, next(b, Line::BottomPlus)));
            wire(hole(b, Line::TopMinus, next(b, Line::TopMinus)),
                 hole(b, Line::BottomMinus, next(b, Line::BottomMinus)));
        }
        for (int s = 1; s < supplies; ++s)
            if (pick(3) != 0) wire(rail(s, false), rail(0, false));
        std::vector<int> column(boards * 2, 1);
        while (static_cast<int>(bench_.parts.size()) < parts) {
            const int side = pick(boards * 2);
            if (column[side] < 58) addRow(side / 2, side % 2 == 0, column[side]);
        }
        // Some things are broken already.
        constexpr Condition kBroken[] = {Condition::OpenInside, Condition::DryContact};
        for (Part& part : bench_.parts)
            if (pick(40) == 0 && !part.kind->isSupply) part.condition = kBroken[pick(2)];
        for (Jumper& jumper : bench_.jumpers)
            if (pick(60) == 0) jumper.condition = kBroken[pick(2)];
    }

    const Bench& bench() const { return bench_; }
    std::shared_ptr<const Bench> share() const { return std::make_shared<const Bench>(bench_); }

    /// One to three slips, each of a kind of its own.
    Variant slip(int most = 3) {
        Variant v;
        taken_.clear();
        for (int count = 1 + pick(most); count > 0; --count) addSlip(v);
        return v;
    }
    /// What the last slip was, in a word.
    const std::string& said() const { return said_; }

    int pick(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }

private:
    static Hole holeOf(int board, Line line, int number) { return {fmt::format("B{}", board + 1), line, number}; }
    Hole hole(int board, Line line, int number) {
        const Hole h = holeOf(board, line, number);
        used_.insert(h);
        return h;
    }
    int next(int board, Line line) { return 1 + next_[{board, line}]++; }
    bool isRailFull(int board, Line line) { return next_[{board, line}] >= 48; }
    Hole rail(int board, bool plus) {
        const Line top = plus ? Line::TopPlus : Line::TopMinus, bottom = plus ? Line::BottomPlus : Line::BottomMinus;
        const Line line = (pick(2) && !isRailFull(board, top)) || isRailFull(board, bottom) ? top : bottom;
        return hole(board, line, std::min(next(board, line), 50));
    }
    /// A free hole in a column's strip, or nothing.
    std::optional<Hole> free(int board, bool upper, int column) {
        for (int row = 0; row < 5; ++row) {
            const Hole h = holeOf(board, static_cast<Line>(static_cast<int>(upper ? Line::A : Line::F) + row), column);
            if (!used_.contains(h)) return h;
        }
        return std::nullopt;
    }
    Hole take(int board, bool upper, int column) {
        const Hole h = free(board, upper, column).value();
        used_.insert(h);
        return h;
    }

    void wire(const Hole& a, const Hole& b) {
        Jumper jumper;
        jumper.id = fmt::format("W{}", ++jumpers_);
        jumper.ends = {a, b};
        bench_.jumpers.push_back(jumper);
    }
    Part& addPart(const char* kind, const char* prefix) {
        bench_.parts.push_back(makePart(*findKind(kind), fmt::format("{}{}", prefix, ++numbers_[prefix])));
        return bench_.parts.back();
    }
    static void set(Part& part, const char* value, double to) { part.values[part.kind->valueIndex(value)] = to; }

    void addSupply(int s, int supplies, int boards) {
        const Hole plus = hole(s, Line::TopPlus, next(s, Line::TopPlus)),
                   minus = hole(s, Line::TopMinus, next(s, Line::TopMinus));
        const bool cells = supplies > 1 && pick(3) == 0;
        Part& part = addPart(cells ? "cells" : "bench-supply", "PS");
        part.leads = {plus, minus};
        if (cells) {
            set(part, "count", 4);
        } else {
            set(part, "voltage", 3 + pick(10));
            set(part, "currentLimit", pick(6) == 0 && boards < 4 ? 0.05 : 30);
        }
    }

    /// Parts one after the other from plus to minus.
    void addRow(int board, bool upper, int& column) {
        const int length = 1 + pick(4);
        wire(rail(board, true), take(board, upper, column));
        for (int k = 0; k < length; ++k) {
            const Hole from = take(board, upper, column), to = take(board, upper, column + 1);
            const int kind = pick(10);
            if (kind < 3) {
                Part& led = addPart("led", "D");
                led.leads = pick(12) == 0 ? std::vector<std::optional<Hole>>{to, from}
                                          : std::vector<std::optional<Hole>>{from, to};
                led.values[0] = pick(8);
            } else if (kind < 4) {
                Part& toggle = addPart("toggle", "S");
                toggle.leads = {from, to};
                toggle.state[0] = pick(4) != 0;
            } else {
                Part& resistor = addPart("resistor", "R");
                resistor.leads = {from, to};
                set(resistor, "resistance", std::pow(10.0, std::uniform_real_distribution<double>(1.8, 4.5)(random_)));
            }
            // Sometimes beside another, or a bridge back.
            if (pick(8) == 0 && free(board, upper, column - k) && free(board, upper, column + 1)) {
                Part& bridge = addPart("resistor", "R");
                bridge.leads = {take(board, upper, column - k), take(board, upper, column + 1)};
                set(bridge, "resistance", std::pow(10.0, std::uniform_real_distribution<double>(2, 4)(random_)));
            }
            ++column;
        }
        wire(take(board, upper, column), rail(board, false));
        column += 1 + pick(2);
    }

    std::optional<Hole> anyFree(std::optional<Hole> near) {
        for (int attempt = 0; attempt < 20; ++attempt) {
            int board = pick(static_cast<int>(bench_.boards.size())), column = 1 + pick(63);
            bool upper = pick(2);
            if (near && pick(5) != 0 && near->line <= Line::J) {
                board = std::stoi(near->board.substr(1)) - 1;
                upper = near->line <= Line::E;
                column = std::clamp(near->number + (pick(2) ? 1 : -1), 1, 63);
            } else if (pick(6) == 0) {
                const Line lines[] = {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};
                const Hole h = holeOf(board, lines[pick(4)], 49 + pick(2));
                if (!used_.contains(h) && !taken_.contains(h)) return taken_.insert(h), h;
            }
            const auto found = free(board, upper, column);
            if (found && !taken_.contains(*found)) return taken_.insert(*found), found;
        }
        return std::nullopt;
    }

    void addSlip(Variant& v) {
        const auto touched = [&](int part) {
            return std::ranges::find(v.parts, part, &Variant::PartAs::part) != v.parts.end() ||
                   std::ranges::find(v.open, part) != v.open.end() ||
                   std::ranges::find(v.dry, part, &Variant::Dry::part) != v.dry.end();
        };
        const int part = pick(static_cast<int>(bench_.parts.size()));
        const int jumper = pick(static_cast<int>(bench_.jumpers.size()));
        const bool jumperTouched = std::ranges::find(v.jumpers, jumper, &Variant::JumperAs::jumper) != v.jumpers.end();
        Part as = bench_.parts[part];
        switch (const int kind = pick(11); kind) {
            case 0:
            case 1:
            case 2: {
                if (touched(part)) return;
                said_ = "lead moved";
                auto& lead = as.leads[pick(static_cast<int>(as.leads.size()))];
                if (const auto to = anyFree(lead)) lead = *to;
                if (kind == 2 && pick(3) == 0) lead.reset();
                v.parts.push_back({part, as});
                return;
            }
            case 3: {
                if (jumperTouched) return;
                said_ = "jumper's end moved";
                Jumper moved = bench_.jumpers[jumper];
                auto& end = moved.ends[pick(2)];
                if (const auto to = anyFree(std::get<Hole>(end))) end = *to;
                v.jumpers.push_back({jumper, moved});
                return;
            }
            case 4:
                if (jumperTouched) return;
                said_ = "jumper missing";
                v.jumpers.push_back({jumper, std::nullopt});
                return;
            case 5: {
                said_ = "jumper too many";
                const auto a = anyFree(std::nullopt), b = anyFree(std::nullopt);
                if (!a || !b) return;
                Jumper added;
                added.id = fmt::format("X{}", v.added.size() + 1);
                added.ends = {*a, *b};
                v.added.push_back(added);
                return;
            }
            case 6:
                if (touched(part)) return;
                said_ = "turned round";
                std::swap(as.leads[0], as.leads[1]);
                v.parts.push_back({part, as});
                return;
            case 7:
                if (touched(part)) return;
                said_ = "another value";
                if (as.kind->name == "resistor") as.values[0] = as.value(0) * (pick(2) ? 10 : 0.1);
                if (as.kind->name == "led") as.values[0] = pick(8);
                if (as.kind->name == "toggle") as.state[0] = 1 - as.stateValue(0);
                if (as.kind->name == "bench-supply") set(as, "voltage", 1 + pick(12));
                v.parts.push_back({part, as});
                return;
            case 8:
                if (touched(part)) return;
                said_ = "open inside";
                if (pick(2)) {
                    v.open.push_back(part);
                } else {
                    as.condition = pick(2) ? Condition::OpenInside : Condition::DryContact;
                    v.parts.push_back({part, as});
                }
                return;
            case 9:
                if (touched(part)) return;
                said_ = "dry contact";
                v.dry.push_back({part, std::pow(10.0, pick(6))});
                return;
            default:
                if (touched(part)) return;
                said_ = "part missing";
                v.parts.push_back({part, std::nullopt});
                return;
        }
    }

    std::mt19937& random_;
    Bench bench_;
    std::set<Hole> used_, taken_;
    std::map<std::pair<int, Line>, int> next_;
    std::map<std::string, int> numbers_;
    int jumpers_ = 0;
    std::string said_;
};

}  // namespace tiepoint::test
