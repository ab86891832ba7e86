#include "fuzz/teaching_formats.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"
#include "core/bench/validate.h"
#include "core/course/kit.h"
#include "core/course/lesson_file.h"
#include "core/doctor/observation.h"
#include "fuzz/promises.h"

namespace tiepoint::fuzz {
namespace {

/// An image of one pixel, as the format's standard spells it: ISO/IEC 15948, signature, IHDR, IDAT and IEND.
constexpr std::string_view kOnePixel{
    "\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\1\0\0\0\1\x08\0\0\0\0\x3a\x7e\x9b\x55\0\0\0\x0aIDAT\x78\x9c\x63\x60\0\0\0\2\0"
    "\1"
    "\x48\xaf\xa4\x71\0\0\0\0IEND\xae\x42\x60\x82",
    67};

Bench shippedBench(std::string_view name) {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name.find(name) != std::string_view::npos) return readBench(file.text)->bench;
    }
    throw std::invalid_argument("no bench of that name ships");
}

}  // namespace

bool takeLesson(std::string_view bytes) {
    const auto read = readLesson(bytes);
    if (!read) {
        promiseItsPlace(read.error());
        return false;
    }
    for (const Error& warning : read->warnings) promise(isOneLine(warning.oneLine()), "a warning is one line");
    for (int step = -1; step < read->lesson.stepCount(); ++step)
        promise(validate(*read->lesson.benchAt(step)).ok(), "each step's bench is valid");
    const std::string written = writeLesson(read->lesson);
    const auto again = readLesson(written);
    promise(again.ok(), "what is written can be read");
    promise(writeLesson(again->lesson) == written, "what is written is what was read");
    promise(again->lesson.stepCount() == read->lesson.stepCount(), "no step is lost");
    for (int step = -1; step < read->lesson.stepCount(); ++step)
        promise(*again->lesson.benchAt(step) == *read->lesson.benchAt(step), "each step's bench stays");
    return true;
}

std::vector<std::string> lessonSamples() {
    std::vector<std::string> texts = embedded("lessons/");
    // Short, so that what is made up of it reaches every member.
    texts.emplace_back(
        R"({"format":"tiepoint-lesson","version":1,"title":"Quay","minutes":5,"teaches":["a"],"start":{"format":"tiepoint-bench","version":1,
        "boards":[{"id":"A","kind":"mini"}],"parts":[{"id":"PS1","kind":"usb-supply","state":{"on":true}}]},
        "steps":[{"caption":"Wire","edits":[{"operation":"add","jumper":{"id":"W1","ends":["PS1.5V","A.a1"]}}],"show":{"voltage":true,"places":["A.a1","W1"]},
        "then":[{"volts":"A.a1","from":4.5,"to":5.5}],"opposite":{"set":{"PS1.on":0}}},
        {"kind":"predict","caption":"é","ask":{"question":"How many volts?","answers":["0","5"],"right":2,"seen":"5 V","wrong":{"idea":"used up",
        "amperes":{"PS1.5V":0.01},"tags":{"A.a1":"2 V"},"brokenAt":"W1","breaks":"no loop"}},"then":[{"volts":"A.b1","from":4.5,"to":5.5}]},
        {"kind":"stop","caption":"Look","try":{"set":{"PS1.on":0}}}],"limits":{"parts":3,"locks":["mends"]},"quay":[null]})");
    return texts;
}

bool takeKit(std::string_view bytes) {
    const auto read = readKit(bytes);
    if (!read) {
        promiseItsPlace(read.error());
        return false;
    }
    for (const Error& warning : read->warnings) promise(isOneLine(warning.oneLine()), "a warning is one line");
    const std::string written = writeKit(read->kit);
    const auto again = readKit(written);
    promise(again.ok(), "what is written can be read");
    promise(writeKit(again->kit) == written, "what is written is what was read");
    promise(again->kit.parts.size() == read->kit.parts.size(), "no part is lost");
    return true;
}

std::vector<std::string> kitSamples() { return embedded("kits/"); }

bool takePicture(std::string_view bytes) {
    promise(isPng(bytes) || !benchInside(bytes).ok(), "only a picture has a bench inside");
    const auto text = textOrInside(std::string(bytes));
    if (!text) {
        promiseGoodMessage(text.error());
        return false;
    }
    if (isPng(bytes)) {
        const auto again = benchInside(withBenchInside(bytes, *text));
        promise(again.ok() && *again == *text, "a bench that is put inside comes out");
    }
    return true;
}

std::vector<std::string> pictureSamples() {
    std::vector<std::string> pictures;
    for (const std::string& bench : embedded("benches/")) pictures.push_back(withBenchInside(kOnePixel, bench));
    return pictures;
}

bool takeObservation(std::string_view bytes) {
    static const Bench kPlan = shippedBench("lock-gate");
    const auto seen = readObservation(kPlan, bytes, restOf(kPlan));
    if (!seen) {
        promiseGoodMessage(seen.error());
        return false;
    }
    const std::string written = writeObservation(kPlan, *seen);
    const auto again = readObservation(kPlan, written, restOf(kPlan));
    promise(again.ok() && writeObservation(kPlan, *again) == written, "what is written is what was read: " + written);
    return true;
}

std::vector<std::string> observationSamples() {
    return {"A.c14=5.0", "A.c14=glows", "A.c14~A.c20=beeps", "A.c14~A.c20=no jumper", "A=as planned", "A.c14=dark"};
}

}  // namespace tiepoint::fuzz
