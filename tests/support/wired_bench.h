#pragma once
// Benches for tests of circuits, whatever their parts: each node is a rail, so that any part meets any other without a place to find for
// it. Bodies lie where no hand could put them; nets and solutions don't mind.

#include "support/build_bench.h"

#include <fmt/format.h>

#include <map>
#include <string>

namespace tiepoint::test {

class WiredBench {
public:
    using Leads = std::initializer_list<std::pair<std::string_view, std::string_view>>;  ///< lead, node

    WiredBench& part(const std::string& id, std::string_view kindName, Leads leads, BenchBuilder::Figures values = {},
                     BenchBuilder::Figures state = {}) {
        const PartKind* kind = findKind(kindName);
        if (!kind) slip("the kind", kindName);
        builder_.part(id, kindName, {}, values, state);
        for (const auto& [name, node] : leads) {
            const int lead = kind->leadIndex(name);
            if (lead < 0) slip("the lead", name);
            places_.push_back({id, lead, kind->leads[static_cast<std::size_t>(lead)].socket, nextHole(node)});
        }
        return *this;
    }

    std::shared_ptr<const Bench> share() const {
        Bench bench = builder_.build();
        const int boards = (static_cast<int>(railOf_.size()) + kRails - 1) / kRails;
        for (int b = 0; b < boards; ++b)
            bench.boards.push_back(
                {fmt::format("B{}", b), findBoardKind("full"), 0, 30.0 * b, Rails::Through, Labels::ATop, {}});
        for (const Place& place : places_) {
            if (place.socket) {
                Jumper jumper;
                jumper.id = freeId(bench, "W");
                jumper.ends = {Socket{place.part, place.lead}, place.hole};
                bench.jumpers.push_back(jumper);
            } else {
                bench.parts[static_cast<std::size_t>(bench.partIndex(place.part))]
                    .leads[static_cast<std::size_t>(place.lead)] = place.hole;
            }
        }
        return std::make_shared<const Bench>(bench);
    }

    /// A hole of a node, to read its voltage at.
    Hole holeOf(std::string_view node) const {
        const int rail = railOf_.at(std::string(node));
        return {fmt::format("B{}", rail / kRails), kLines[static_cast<std::size_t>(rail % kRails)], 50};
    }

private:
    static constexpr int kRails = 4;
    static constexpr std::array kLines{Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};
    struct Place {
        std::string part;
        int lead;
        bool socket;
        Hole hole;
    };

    Hole nextHole(std::string_view node) {
        const int rail = railOf_.emplace(node, static_cast<int>(railOf_.size())).first->second;
        return {fmt::format("B{}", rail / kRails), kLines[static_cast<std::size_t>(rail % kRails)], ++used_[rail]};
    }

    BenchBuilder builder_;
    std::map<std::string, int, std::less<>> railOf_;
    std::map<int, int> used_;
    std::vector<Place> places_;
};

}  // namespace tiepoint::test
