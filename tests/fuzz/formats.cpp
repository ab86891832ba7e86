#include "fuzz/formats.h"

#include "core/base/json_scan.h"
#include "core/base/quantity.h"
#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/board/hole.h"
#include "core/edit/edit_file.h"
#include "core/netlist/circuit_file.h"
#include "core/netlist/equality.h"
#include "core/parts/drawer.h"
#include "core/parts/kind_file.h"
#include "core/snapshot/snapshot.h"
#include "fuzz/promises.h"
#include "fuzz/teaching_formats.h"
#include "support/test_catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>

namespace tiepoint::fuzz {
namespace {

/// Digits of a double that survive being shifted by a prefix.
constexpr double kRounding = 1e-12;
/// Benches beyond this are read and written, but not solved.
constexpr std::size_t kSolvedParts = 200;

bool takeBench(std::string_view bytes) {
    const auto read = readBench(bytes);
    if (!read) {
        promiseItsPlace(read.error());
        return false;
    }
    for (const Error& warning : read->warnings) promise(isOneLine(warning.oneLine()), "a warning is one line");
    promise(validate(read->bench).ok(), "what is read is valid");
    const std::string written = writeBench(read->bench);
    const auto again = readBench(written);
    promise(again.ok(), "what is written can be read");
    promise(again->bench == read->bench, "what is written is what was read");
    if (read->bench.parts.size() <= kSolvedParts) {
        const auto snapshot = evaluate(std::make_shared<const Bench>(read->bench));
        promise(snapshot != nullptr, "every bench has a snapshot");
    }
    return true;
}

std::vector<std::string> benchSamples() {
    std::vector<std::string> texts = embedded("benches/");
    texts.emplace_back(
        R"({"format":"tiepoint-bench","version":1,"title":"Tide é","boards":[{"id":"A","kind":"mini","at":[-1.5,2e1]}],
        "parts":[{"id":"PS1","kind":"usb-supply","note":[{"a":[[]]},null,"\u00e9"]}],"jumpers":[{"id":"W1","ends":["PS1.GND1","A.a1"]}],"x":{}})");
    return texts;
}

/// The bench that edits are read for: it has a part with sockets.
Bench editedBench() {
    Bench bench = makeNewBench();
    bench.parts.push_back(makePart(*findKind("usb-supply"), "PS2"));
    return bench;
}

bool takeEdit(std::string_view bytes) {
    static const Bench kBench = editedBench();
    const auto read = readEdit(bytes, kBench);
    if (!read) {
        promiseItsPlace(read.error());
        return false;
    }
    for (const Error& warning : read->warnings) promise(isOneLine(warning.oneLine()), "a warning is one line");
    const std::vector<std::string> lines = operationLines(read->edit, kBench);
    const std::string written = fmt::format("{{\"edits\": [{}]}}", fmt::join(lines, ", "));
    const auto again = readEdit(written, kBench);
    promise(again.ok(), "what is written can be read");
    promise(operationLines(again->edit, kBench) == lines, "what is written is what was read");
    const auto applied = apply(kBench, read->edit);
    if (!applied) {
        promiseGoodMessage(applied.error());
        return true;
    }
    promise(validate(applied->bench).ok(), "what is applied is valid");
    const auto back = apply(applied->bench, applied->inverse);
    promise(back.ok() && back->bench == kBench, "an edit is taken back exactly");
    return true;
}

std::vector<std::string> editSamples() {
    return {
        R"({"text":"Set up","edits":[{"operation":"add","board":{"id":"B","kind":"mini","at":[60,0]}},
        {"operation":"add","part":{"id":"R1","kind":"resistor","leads":{"1":"A.c3","2":"A.c8"},"shelf":[1]},"place":0},
        {"operation":"add","jumper":{"id":"W1","ends":["PS2.5V","A.a3"],"colour":"red"}}]})",
        R"({"edits":[{"operation":"add","part":{"id":"PS3","kind":"usb-supply"}},{"operation":"replace","part":{"id":"PS1","kind":"bench-supply"}},
        {"operation":"add","jumper":{"id":"W2","ends":["PS3.GND2","PS2.GND1"]}},{"operation":"remove","id":"W2"}]})",
        R"({"edits":[{"operation":"title","title":"Tide gauge"},{"operation":"reveal","reveal":{"level":1}},{"operation":"reveal","reveal":null},
        {"operation":"add","note":{"id":"N1","at":"A.a1","text":"here"}},{"operation":"replace","note":{"id":"N1","at":"A.a2","text":"é"}},
        {"operation":"add","pinned":{"id":"M1","volts":["A.a1","A.j1"]}},{"operation":"replace","board":{"id":"A","kind":"half","rails":"split"}}]})"};
}

bool takeCircuit(std::string_view bytes) {
    const auto read = readCircuitText(bytes);
    if (!read) {
        promiseItsPlace(read.error());
        return false;
    }
    for (const Error& warning : read->warnings) promise(isOneLine(warning.oneLine()), "a warning is one line");
    promise(validate(read->netlist).ok(), "what is read is valid");
    const std::string written = writeNetlist(read->netlist);
    const auto again = readNetlist(written);
    promise(again.ok(), "what is written can be read");
    promise(again->netlist == read->netlist, "what is written is what was read");
    if (read->netlist.parts.size() <= kSolvedParts) {
        promise(compareCircuits(read->netlist, again->netlist).verdict == Verdict::Equal, "a circuit equals itself");
        promise(canonicalHash(read->netlist) == canonicalHash(again->netlist), "a circuit has one digest");
    }
    return true;
}

std::vector<std::string> circuitSamples() {
    std::vector<std::string> texts = {
        R"({"format": "tiepoint-circuit", "version": 1, "title": "Tide é", "parts": [
        {"id": "PS1", "kind": "cells", "values": {"count": 3, "condition": "used"}, "leads": {"+": "plus", "-": "minus"}},
        {"id": "S1", "kind": "push-button", "cap": "B", "leads": {"1a": "plus", "1b": null, "2b": "fed"}},
        {"id": "RV1", "kind": "potentiometer", "state": {"turn": 0.25}, "leads": {"1": "fed", "wiper": "lit", "2": "lit"}},
        {"id": "D1", "kind": "led", "leads": {"anode": "lit", "cathode": "minus"}, "x": [{}]}], "quay": null})"};
    for (std::string& bench : embedded("benches/")) texts.push_back(std::move(bench));
    return texts;
}

/// A kind that was accepted can be put on a bench and solved.
void promiseUsable(const PartKind& kind) {
    Bench bench = makeNewBench();
    bench.parts.push_back(makePart(kind, "X1"));
    promise(evaluate(std::make_shared<const Bench>(std::move(bench))) != nullptr, "every bench has a snapshot");
}

bool takePartKind(std::string_view bytes) {
    const auto kind = readPartKind("any.json", bytes);
    if (!kind) {
        promiseGoodMessage(kind.error());
        return false;
    }
    promiseUsable(*kind);
    return true;
}

std::vector<std::string> partKindSamples() {
    std::vector<std::string> texts = embedded("parts/");
    texts.push_back(test::chipText(8, 3).text());
    texts.push_back(test::starText().text());
    texts.push_back(test::canText().text());
    return texts;
}

bool takeJson(std::string_view bytes) {
    const auto value = parseJson(bytes);
    if (!value) promiseItsPlace(value.error());
    return value.ok();
}

std::vector<std::string> jsonSamples() {
    return {R"({"a": [1, -2.5e-3, true, null, "\u00e9\ud83d\ude00"], "b": {"c": []}})", "[[[]]]", "0", "\"text\"",
            " 1 "};
}

/// Where a value stands in words, the words give it back.
void promiseRead(double value, const std::string& words, std::string_view unit) {
    const auto back = parseQuantity(words, unit);
    promise(back.has_value(), fmt::format("\"{}\" can be typed", words));
    promise(std::abs(*back - value) <= kRounding * std::abs(value), fmt::format("\"{}\" means {}", words, value));
}

bool takeQuantity(std::string_view bytes) {
    bool any = false;
    for (const Unit& each : units()) {
        const std::string_view unit = each.name;
        const auto value = parseQuantity(bytes, unit);
        if (!value) continue;
        any = true;
        promise(std::isfinite(*value), "a quantity is a number");
        promiseRead(*value, formatSetting(*value, unit), unit);
        constexpr int kMostDigits = 6;
        for (int digits = 1; digits <= kMostDigits; ++digits)
            promise(!formatQuantity(*value, unit, digits).empty(), "a quantity has words");
        if ((unit == "ohm" || unit == "F") && *value > 0) promiseRead(*value, formatLetterCode(*value, unit), unit);
    }
    return any;
}

std::vector<std::string> quantitySamples() {
    return {"220",
            "4k7",
            "4R7",
            "1M",
            "0.5",
            "2,2k",
            "500m",
            "20mA",
            "5 V",
            "1e-3",
            "\u22121.5 \u00b5A",
            "10 \u03a9",
            "5%",
            "3V3",
            "2.2 G\u2126",
            "1.5e\u22126 W",
            "n33",
            "4\u00b57 F",
            "50 Hz",
            "300 lx",
            "25 \u00b0C",
            "298.15 K"};
}

bool takeDrawer(std::string_view bytes) {
    const auto drawer = readDrawer(bytes);
    if (!drawer) {
        promiseGoodMessage(drawer.error());
        return false;
    }
    const auto again = readDrawer(writeDrawer(*drawer));
    promise(again.ok(), "what is written can be read");
    promise(*again == *drawer, "what is written is what was read");
    promise(std::is_sorted(drawer->ohms().begin(), drawer->ohms().end()), "resistances ascend");
    for (const double ohm : drawer->ohms()) promise(drawer->holds(ohm), "a drawer holds what is in it");
    constexpr int kMost = 5;
    promise(drawer->from(1, kMost).size() <= kMost, "no more than asked for");
    return true;
}

std::vector<std::string> drawerSamples() { return {"220, 330 1k 4k7", "all", "", "0R1;10R\n1M", "100 100 100.0"}; }

bool takeHole(std::string_view bytes) {
    const auto hole = parseHole(bytes);
    if (!hole) return false;
    promise(toString(*hole) == bytes, "an address has one spelling");
    return true;
}

std::vector<std::string> holeSamples() { return {"A.e12", "A.top+7", "B2.bottom-25", "A.j9999"}; }

constexpr std::array kFormats{
    Format{"bench", takeBench, benchSamples},       Format{"edit", takeEdit, editSamples},
    Format{"circuit", takeCircuit, circuitSamples}, Format{"part-kind", takePartKind, partKindSamples},
    Format{"json", takeJson, jsonSamples},          Format{"quantity", takeQuantity, quantitySamples},
    Format{"drawer", takeDrawer, drawerSamples},    Format{"hole", takeHole, holeSamples},
    Format{"lesson", takeLesson, lessonSamples},    Format{"kit", takeKit, kitSamples},
    Format{"picture", takePicture, pictureSamples}, Format{"observation", takeObservation, observationSamples},
};

}  // namespace

std::span<const Format> formats() { return kFormats; }

const Format& findFormat(std::string_view name) {
    const auto found = std::ranges::find(kFormats, name, &Format::name);
    if (found == kFormats.end()) throw std::invalid_argument("no format is called " + std::string(name));
    return *found;
}

}  // namespace tiepoint::fuzz
