#pragma once
// Benches in one line of text, so that hundreds fit into a table and can be read beside each other:
//
//   "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; S1 e14; D1 e18 f18 red; W1 top+7 a8 red"
//
// The first item is the board: full, half or mini, with "split" for broken rails; a second board begins with "board" and its place.
// Holes without a board's id lie on A; "-" is a lead that hangs. The prefix of an id says the kind:
//
//   PS plus minus volt [ampere] [off]   bench supply      CE plus minus count           cells in a holder
//   KB plus minus                       9 V block         US                            USB supply (jumpers: US1.5V, US1.GND1)
//   R  hole hole ohm [watt]             resistor          D  anode cathode colour       LED
//   V  anode cathode                    diode             RV first-hole [turns] ohm turn  potentiometer, quarter turns first
//   S  first-hole [quarter turns]       push button       SW first-hole [quarter turns] [a|b]  slide switch
//   M  plus com [dial]                  multimeter        W  end end colour             jumper
//
// A slip in the text throws std::invalid_argument.

#include "core/edit/placement.h"
#include "support/build_bench.h"

#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::test {

class CompactBench {
public:
    explicit CompactBench(std::string_view text) {
        std::stringstream items{std::string(text)};
        for (std::string item; std::getline(items, item, ';');) add(wordsOf(item));
        bench_.title = "Compact";
    }
    Bench take() { return std::move(bench_); }

private:
    using Words = std::vector<std::string>;

    static Words wordsOf(const std::string& item) {
        std::stringstream stream(item);
        Words words;
        for (std::string word; stream >> word;) words.push_back(word);
        return words;
    }

    static std::string kindOf(const std::string& id) {
        static const std::map<std::string, std::string> kKinds{
            {"PS", "bench-supply"}, {"CE", "cells"},        {"KB", "block-9v"}, {"US", "usb-supply"},
            {"R", "resistor"},      {"D", "led"},           {"V", "diode"},     {"RV", "potentiometer"},
            {"S", "push-button"},   {"SW", "slide-switch"}, {"M", "multimeter"}};
        const auto found = kKinds.find(id.substr(0, id.find_first_of("0123456789")));
        if (found == kKinds.end()) slip("the prefix of", id);
        return found->second;
    }

    static std::optional<Hole> hole(const std::string& word) {
        if (word == "-") return std::nullopt;
        return holeAt(word.find('.') == std::string::npos ? "A." + word : word);
    }

    void add(const Words& words) {
        if (words.empty()) return;
        if (findBoardKind(words[0]) != nullptr) return addBoard("A", words, 0);
        if (words[0] == "board") return addBoard(words[1], words, 2);
        if (words[0][0] == 'W') return addJumper(words);
        addPart(words);
    }

    void addBoard(const std::string& id, const Words& words, std::size_t at) {
        Board board;
        board.id = id;
        board.kind = findBoardKind(words.at(at));
        if (board.kind == nullptr) slip("the board", words[at]);
        for (std::size_t i = at + 1; i < words.size(); ++i) {
            if (words[i] == "split")
                board.rails = Rails::Split;
            else
                board.atX = std::stod(words[i]);
        }
        bench_.boards.push_back(board);
    }

    JumperEnd end(const std::string& word) const {
        const auto dot = word.find('.');
        const Part* part = dot == std::string::npos ? nullptr : bench_.findPart(word.substr(0, dot));
        if (part != nullptr) return Socket{part->id, part->kind->leadIndex(word.substr(dot + 1))};
        return *hole(word);
    }

    void addJumper(const Words& words) {
        Jumper jumper;
        jumper.id = words.at(0);
        jumper.ends = {end(words.at(1)), end(words.at(2))};
        jumper.colour = findJumperColour(words.size() > 3 ? words[3] : "yellow");
        if (jumper.colour < 0) slip("the colour", words[3]);
        bench_.jumpers.push_back(jumper);
    }

    void set(Part& part, std::string_view name, double to) {
        if (const int value = part.kind->valueIndex(name); value >= 0)
            part.values[value] = to;
        else
            part.state[part.kind->stateIndex(name)] = to;
    }

    void addPart(const Words& words) {
        Part part = makePart(*findKind(kindOf(words.at(0))), words[0]);
        std::size_t next = 1;
        if (part.kind->package->reach == Reach::Rigid) {
            const bool turns = words.size() > 2 && words[2].size() == 1 && words[2][0] >= '0' && words[2][0] <= '3';
            part = placedAt(bench_, part, *hole(words.at(1)), turns ? std::stoi(words[2]) : 0);
            next = turns ? 3 : 2;
        } else if (!part.kind->leads[0].socket) {
            part.leads = {hole(words.at(1)), hole(words.at(2))};
            next = 3;
        }
        std::size_t number = 0;
        for (; next < words.size(); ++next) setByWord(part, words[next], number);
        bench_.parts.push_back(std::move(part));
    }

    void setByWord(Part& part, const std::string& word, std::size_t& number) {
        static const std::map<std::string, std::vector<std::string>, std::less<>> kNumbers{
            {"bench-supply", {"voltage", "currentLimit"}},
            {"cells", {"count"}},
            {"resistor", {"resistance", "rating"}},
            {"potentiometer", {"resistance", "turn"}}};
        if (word == "off" && part.kind->stateIndex("on") >= 0) return set(part, "on", 0);
        for (const auto* specs : {&part.kind->values, &part.kind->state}) {
            for (const ValueSpec& spec : *specs) {
                for (std::size_t i = 0; i < spec.choices.size(); ++i) {
                    if (spec.choices[i].name == word) return set(part, spec.name, static_cast<double>(i));
                }
            }
        }
        set(part, kNumbers.at(part.kind->name).at(number++), std::stod(word));
    }

    Bench bench_;
};

inline Bench compactBench(std::string_view text) { return CompactBench(text).take(); }

}  // namespace tiepoint::test
