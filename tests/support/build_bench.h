#pragma once
// Builds benches for tests from addresses, as a person would name them:
//
//   const Bench bench = BenchBuilder()
//       .board("A", "half")
//       .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
//       .part("D1", "led", {{"anode", "A.g16"}, {"cathode", "A.g17"}}, {{"colour", "red"}})
//       .jumper("A.top+8", "A.a10")
//       .build();
//
// A name that doesn't exist throws std::invalid_argument, so that a slip in a test can't pass unseen. The
// bench is not validated: tests of validation need bad ones.

#include "core/bench/bench.h"
#include "core/parts/catalogue.h"

#include <initializer_list>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace tiepoint::test {

[[noreturn]] inline void slip(std::string_view what, std::string_view name) {
    throw std::invalid_argument(std::string(what) + " \"" + std::string(name) + "\" doesn't exist");
}

inline Hole holeAt(std::string_view address) {
    auto hole = parseHole(address);
    if (!hole) slip("the hole", address);
    return *hole;
}

class BenchBuilder {
public:
    using Leads = std::initializer_list<std::pair<std::string_view, std::string_view>>;
    using Figure = std::variant<double, int, const char*>;  ///< a number, or the name of a choice
    using Figures = std::initializer_list<std::pair<std::string_view, Figure>>;

    explicit BenchBuilder(Bench start = {}, const Catalogue& kinds = Catalogue::shipped())
        : bench_(std::move(start)),
          kinds_(&kinds) {}
    explicit BenchBuilder(const Catalogue& kinds) : kinds_(&kinds) {}

    BenchBuilder& title(std::string text) {
        bench_.title = std::move(text);
        return *this;
    }

    BenchBuilder& board(std::string id, std::string_view kind, double atX = 0, double atY = 0,
                        Rails rails = Rails::Through) {
        Board board;
        board.id = std::move(id);
        board.kind = findBoardKind(kind);
        if (!board.kind) slip("the board kind", kind);
        board.atX = atX;
        board.atY = atY;
        board.rails = rails;
        bench_.boards.push_back(std::move(board));
        return *this;
    }

    /// Leads that aren't named hang; values and states that aren't named stay at their defaults.
    BenchBuilder& part(std::string id, std::string_view kindName, Leads leads, Figures values = {},
                       Figures state = {}) {
        const PartKind* kind = kinds_->find(kindName);
        if (!kind) slip("the kind", kindName);
        Part part = makePart(*kind, std::move(id));
        for (const auto& [lead, address] : leads) {
            const int index = kind->leadIndex(lead);
            if (index < 0) slip("the lead", lead);
            part.leads[index] = holeAt(address);
        }
        fill(part.values, kind->values, values);
        fill(part.state, kind->state, state);
        bench_.parts.push_back(std::move(part));
        return *this;
    }

    /// The letter on the cap of the part built last.
    BenchBuilder& cap(std::string letter) {
        bench_.parts.back().cap = std::move(letter);
        return *this;
    }

    /// Ends are holes, or sockets of a part that was built before ("PS1.GND2").
    BenchBuilder& jumper(std::string id, std::string_view from, std::string_view to, std::string_view colour = "red") {
        Jumper jumper;
        jumper.id = std::move(id);
        jumper.ends = {endAt(from), endAt(to)};
        jumper.colour = findJumperColour(colour);
        if (jumper.colour < 0) slip("the colour", colour);
        bench_.jumpers.push_back(std::move(jumper));
        return *this;
    }
    BenchBuilder& jumper(std::string_view from, std::string_view to) { return jumper(freeId(bench_, "W"), from, to); }

    Bench build() const { return bench_; }
    std::shared_ptr<const Bench> share() const { return std::make_shared<const Bench>(bench_); }

private:
    static void fill(std::vector<Setting>& settings, const std::vector<ValueSpec>& specs, const Figures& figures) {
        for (const auto& [name, figure] : figures) {
            std::size_t index = 0;
            while (index < specs.size() && specs[index].name != name) ++index;
            if (index == specs.size()) slip("the value", name);
            settings[index] = number(specs[index], figure);
        }
    }

    static double number(const ValueSpec& spec, const Figure& figure) {
        if (const auto* real = std::get_if<double>(&figure)) return *real;
        if (const auto* whole = std::get_if<int>(&figure)) return *whole;
        const std::string_view name = std::get<const char*>(figure);
        for (std::size_t i = 0; i < spec.choices.size(); ++i) {
            if (spec.choices[i].name == name) return static_cast<double>(i);
        }
        slip("the choice", name);
    }

    JumperEnd endAt(std::string_view address) const {
        const std::string_view owner = address.substr(0, address.find('.'));
        const Part* part = bench_.findPart(owner);
        if (!part) return holeAt(address);
        const int lead = part->kind->leadIndex(address.substr(owner.size() + 1));
        if (lead < 0) slip("the socket", address);
        return Socket{part->id, lead};
    }

    Bench bench_;
    const Catalogue* kinds_;
};

}  // namespace tiepoint::test
