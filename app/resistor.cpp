// tiepoint resistor: the resistor that an LED needs, from supply, colour and wanted current.

#include "app/commands.h"
#include "app/drawer_option.h"
#include "app/json_writer.h"
#include "app/output.h"
#include "core/base/quantity.h"
#include "core/sizing/series_resistor.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace tiepoint::app {
namespace {

struct ResistorOptions {
    std::string supply = "5 V", colour = "red", current = "10 mA";
    int lights = 1;
    DrawerOption drawer;
    bool json = false;
};

Result<double> quantity(std::string_view option, const std::string& text, std::string_view unit) {
    if (const auto figure = parseQuantity(text, unit)) return *figure;
    return Error{ErrorKind::Range, fmt::format("{} {}: not a number in {}", option, text, unit)};
}

Result<Part> ledOf(const std::string& colour) {
    Part led = makePart(usualLight(), "D1");
    const int value = led.kind->valueIndex("colour");
    const std::vector<Choice>& choices = led.kind->values[value].choices;
    std::vector<std::string_view> names;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        names.push_back(choices[i].name);
        if (choices[i].name == colour) led.values[value] = static_cast<double>(i);
    }
    if (led.values[value]) return led;
    return Error{ErrorKind::Reference, fmt::format("--led {}: one of {}", colour, fmt::join(names, ", "))};
}

Result<ResistorQuestion> questionOf(const ResistorOptions& options) {
    const auto volt = quantity("--supply", options.supply, "V");
    if (!volt) return volt.error();
    constexpr double kMostVolt = 30;
    if (*volt < 0 || *volt > kMostVolt)
        return Error{ErrorKind::Range, fmt::format("--supply {}: 0 to 30 V", options.supply)};
    const auto ampere = quantity("--current", options.current, "A");
    if (!ampere) return ampere.error();
    auto light = ledOf(options.colour);
    if (!light) return light.error();
    auto drawer = options.drawer.read();
    if (!drawer) return drawer.error();
    ResistorQuestion question;
    question.supplyVolt = *volt;
    question.wantedAmpere = *ampere;
    question.lights = options.lights;
    question.light = std::move(light).value();
    question.drawer = std::move(drawer).value();
    return question;
}

std::vector<std::string_view> bandNames(const ResistorChoice& choice) {
    std::vector<std::string_view> names;
    for (const BandColour band : choice.bands.value_or(std::vector<BandColour>())) names.push_back(bandName(band));
    return names;
}

std::string resistorAsText(const ResistorQuestion& question, const ResistorChoice& choice) {
    return fmt::format(
        "{} over {} at {}\n"
        "Exactly        {}\n"
        "Take           {}{}\n"
        "Then           {} runs\n"
        "It gets        {}; a resistor of {} stays cool enough to touch\n",
        formatQuantity(choice.lightVolt, "V"),
        question.lights == 1 ? "the LED" : fmt::format("{} LEDs", question.lights),
        formatQuantity(question.wantedAmpere, "A"), formatQuantity(choice.exactOhm, "ohm"),
        formatSetting(choice.ohm, "ohm"),
        choice.bands ? fmt::format(": {}", fmt::join(bandNames(choice), " ")) : std::string(),
        formatQuantity(choice.ampere, "A"), formatQuantity(choice.watt, "W"), formatSetting(choice.ratingWatt, "W"));
}

std::string resistorAsJson(const ResistorQuestion& question, const ResistorChoice& choice) {
    JsonWriter json;
    json.beginObject()
        .field("supply", question.supplyVolt)
        .field("wantedCurrent", question.wantedAmpere)
        .field("lights", question.lights);
    json.field("lightVoltage", choice.lightVolt)
        .field("exactResistance", choice.exactOhm)
        .field("resistance", choice.ohm);
    json.field("current", choice.ampere)
        .field("power", choice.watt)
        .field("rating", choice.ratingWatt)
        .texts("bands", bandNames(choice));
    json.endObject();
    return json.take();
}

int runResistor(const ResistorOptions& options) {
    const auto question = questionOf(options);
    if (!question) return complain(question.error());
    const auto choice = chooseResistor(*question);
    if (!choice) return complain(choice.error());
    print(options.json ? resistorAsJson(*question, *choice) : resistorAsText(*question, *choice));
    return kExitGood;
}

}  // namespace

Action declareResistor(CLI::App& parser) {
    auto options = std::make_shared<ResistorOptions>();
    parser.add_option("--supply", options->supply, "The supply's voltage")->capture_default_str();
    parser.add_option("--led", options->colour, "The LED's colour")->capture_default_str();
    parser.add_option("--current", options->current, "The current that is wanted: 10mA")->capture_default_str();
    parser.add_option("--in-series", options->lights, "So many such LEDs, one behind the other")
        ->capture_default_str()
        ->check(CLI::Range(1, 20));
    options->drawer.declare(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runResistor(*options); };
}

}  // namespace tiepoint::app
