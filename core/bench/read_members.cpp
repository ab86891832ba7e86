// What isn't plugged in: notes, pinned readings, and what a bench says of itself.

#include "core/bench/read_helpers.h"

#include <utility>

namespace tiepoint {

using namespace reading;

Failure reading::readHole(const JsonValue& value, const std::string& pointer, Hole& hole) {
    std::string address;
    if (auto failure = readText(value, pointer, address)) return failure;
    if (auto parsed = parseHole(address)) {
        hole = std::move(*parsed);
        return {};
    }
    return Trouble{ErrorKind::Placement,
                   fmt::format("{} is no hole; holes are written like A.e12 or A.top+7", inQuotes(address)), pointer,
                   value.begin};
}

Failure reading::readAt(const JsonValue& value, const std::string& pointer, Point& at) {
    if (value.type != JsonType::List) return wrongType(value, pointer, "a list of two numbers");
    if (value.items.size() != 2) {
        return Trouble{ErrorKind::Format, fmt::format("at has {} numbers; it takes two, x and y", value.items.size()),
                       pointer, value.begin};
    }
    for (std::size_t i = 0; i < 2; ++i) {
        const JsonValue& number = value.items[i];
        if (number.type != JsonType::Number) return wrongType(number, fmt::format("{}/{}", pointer, i), "a number");
        (i == 0 ? at.x : at.y) = number.number;
    }
    return {};
}

namespace {

/// What a person holds over one place: {"at": [x, y], figure: there}.
Failure readHeldOver(const JsonValue& value, const std::string& pointer, std::string_view figure,
                     std::optional<HeldOver>& over) {
    if (auto failure = requireObject(value, pointer)) return failure;
    if (auto failure = requireMembers(value, {"at", figure})) return failure;
    HeldOver& held = over.emplace();
    return forEachMember(value, pointer, [&](const JsonValue& member, const std::string& path) -> Failure {
        if (member.name == "at") return readAt(member, path, held.at);
        if (member.name != figure) {
            return Trouble{ErrorKind::Format, fmt::format("only at and {} stand here", figure), path, member.nameBegin};
        }
        if (member.type != JsonType::Number) return wrongType(member, path, "a number");
        held.there = member.number;
        return {};
    });
}

/// Volts at one hole or between two, amperes in "W1" or in the lead "R1.1", watts of "D1".
Failure readMeasurand(const JsonValue& value, const std::string& pointer, Measurand& of) {
    if (value.name == "volts" && value.type == JsonType::List) {
        if (value.items.size() != 2) {
            return Trouble{ErrorKind::Format,
                           fmt::format("volts are measured at one hole or between two, not {}", value.items.size()),
                           pointer, value.begin};
        }
        VoltsBetween& between = of.emplace<VoltsBetween>();
        if (auto failure = readHole(value.items[0], pointer + "/0", between.first)) return failure;
        return readHole(value.items[1], pointer + "/1", between.second);
    }
    if (value.name == "volts") return readHole(value, pointer, of.emplace<VoltsAt>().hole);
    if (value.name == "watts") return readText(value, pointer, of.emplace<WattsOf>().part);
    AmperesIn& in = of.emplace<AmperesIn>();
    if (auto failure = readText(value, pointer, in.id)) return failure;
    const std::size_t dot = in.id.find('.');
    if (dot == std::string::npos) return {};
    in.lead = in.id.substr(dot + 1);
    in.id.resize(dot);
    return {};
}

Failure readFullScale(const JsonValue& value, const std::string& pointer, Views& views) {
    if (value.type != JsonType::Number) return wrongType(value, pointer, "a number");
    if (!(value.number >= kSmallestFullScaleAmpere && value.number <= kLargestFullScaleAmpere)) {
        return Trouble{ErrorKind::Range,
                       fmt::format("fullScale is {}; it may be {} to {} A", jsonNumber(value.number),
                                   jsonNumber(kSmallestFullScaleAmpere), jsonNumber(kLargestFullScaleAmpere)),
                       pointer, value.begin};
    }
    views.lockedFullScaleAmpere = value.number;
    return {};
}

}  // namespace

std::optional<Trouble> readNote(const JsonValue& json, Note& note, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id", "at", "text"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "id") return readText(member, pointer, note.id);
        if (member.name == "text") return readText(member, pointer, note.text);
        if (member.name == "at") return readHole(member, pointer, note.at);
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readPinned(const JsonValue& json, PinnedReading& reading, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"id"})) return failure;
    bool measures = false;
    auto failure = forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "id") return readText(member, pointer, reading.id);
        if (member.name == "shown") {
            std::string shown;  // a figure that stays as it was read
            auto wrong = readText(member, pointer, shown);
            if (!wrong) reading.extras.emplace_back(member.name, jsonString(shown));
            return wrong;
        }
        if (member.name != "volts" && member.name != "amperes" && member.name != "watts") {
            unknown.push_back(&member);
            return {};
        }
        if (std::exchange(measures, true)) {
            return Trouble{ErrorKind::Format, "a pinned reading measures one thing; this one has a second", pointer,
                           member.nameBegin};
        }
        return readMeasurand(member, pointer, reading.of);
    });
    if (failure || measures) return failure;
    return Trouble{
        ErrorKind::Format, "a pinned reading measures volts, amperes or watts; none of them is here", {}, json.begin};
}

std::optional<Trouble> readViews(const JsonValue& json, SavedViews& views, UnknownMembers& unknown) {
    if (auto failure = requireObject(json, "/views")) return failure;
    Views& shown = views.shown;
    const std::pair<std::string_view, bool*> switches[] = {{"voltage", &shown.voltage},
                                                           {"strips", &shown.strips},
                                                           {"readings", &shown.readings},
                                                           {"turned", &shown.turned}};
    return forEachMember(json, "/views", [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "arrows") {
            std::size_t index = 0;
            auto failure = readNameOf(member, pointer, "way of the arrows", kArrowsNames, kItself, index);
            if (!failure) shown.arrows = static_cast<Arrows>(index);
            return failure;
        }
        if (member.name == "fullScale") return readFullScale(member, pointer, shown);
        for (const auto& [name, view] : switches) {
            if (member.name != name) continue;
            if (member.type != JsonType::Bool) return wrongType(member, pointer, "true or false");
            *view = member.number != 0;
            return {};
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readDisclosure(const JsonValue& json, Disclosure& disclosure, UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    if (auto failure = requireMembers(json, {"level"})) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "lock") return readText(member, pointer, disclosure.lock);
        if (member.name == "level") {
            if (member.type != JsonType::Number) return wrongType(member, pointer, "a number");
            for (const Reveal level : {Reveal::Nothing, Reveal::Place, Reveal::Proof, Reveal::Mend}) {
                if (member.number != static_cast<int>(level)) continue;
                disclosure.level = level;
                return {};
            }
            return Trouble{ErrorKind::Range,
                           fmt::format("there is no level {}; there are 0, 1, 2 and 3", jsonNumber(member.number)),
                           pointer, member.begin};
        }
        unknown.push_back(&member);
        return {};
    });
}

std::optional<Trouble> readSurroundings(const JsonValue& json, SaidSurroundings& surroundings,
                                        UnknownMembers& unknown) {
    if (auto failure = requireObject(json)) return failure;
    return forEachMember(json, {}, [&](const JsonValue& member, const std::string& pointer) -> Failure {
        if (member.name == "damage") {
            std::string damage;  // the choice that core/findings/damage.h reads
            auto wrong = readText(member, pointer, damage);
            if (!wrong && damage != "stays") {
                wrong = Trouble{ErrorKind::Range, "damage stays, or the member is left out", pointer, member.begin};
            }
            if (!wrong) surroundings.extras.emplace_back(member.name, jsonString(damage));
            return wrong;
        }
        if (member.name == "torch") return readHeldOver(member, pointer, "light", surroundings.torch);
        if (member.name == "hand") return readHeldOver(member, pointer, "temperature", surroundings.hand);
        double* figure = member.name == "light"         ? &surroundings.lightLux
                         : member.name == "temperature" ? &surroundings.temperatureCelsius
                                                        : nullptr;
        if (!figure) {
            unknown.push_back(&member);
            return {};
        }
        if (member.type != JsonType::Number) return wrongType(member, pointer, "a number");
        *figure = member.number;
        return {};
    });
}

}  // namespace tiepoint
