#include "core/scope/recorder.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::string_view kTraceReading = "trace", kCurrentReading = "current", kVoltageReading = "voltage";

double traceNumberOf(const Part& part, std::string_view name, double otherwise) {
    const int index = part.kind->valueIndex(name);
    return index < 0 ? otherwise : part.value(index);
}

int choiceOf(const Part& part, std::string_view name) { return static_cast<int>(traceNumberOf(part, name, 0)); }

/// What a reading between holes, into a lead or of a part is at an instant; NaN where nothing is to be read.
struct ReadPinned {
    const Layout& layout;
    const Solution& solution;

    double volt(const Hole& hole) const { return solution.netVoltage[layout.netOfHole(layout.holeIndex(hole))]; }
    double operator()(const VoltsAt& at) const { return volt(at.hole); }
    double operator()(const VoltsBetween& between) const { return volt(between.first) - volt(between.second); }
    double operator()(const AmperesIn& in) const {
        const int part = layout.bench->partIndex(in.id);
        if (in.lead.empty() || part < 0) return std::numeric_limits<double>::quiet_NaN();
        return solution.leadInjection[layout.leadIndex(part, layout.bench->parts[part].kind->leadIndex(in.lead))];
    }
    double operator()(const WattsOf& of) const {
        const int part = layout.bench->partIndex(of.part);
        double sum = 0;
        for (int e = 0; e < solution.elementCount(); ++e)
            if ((*solution.places)[e].part == part) sum += solution.elementWatt[e];
        return sum;
    }
};

}  // namespace

bool isScope(const PartKind& kind) {
    return std::ranges::any_of(kind.model, [](const ElementSpec& spec) { return spec.reads == kTraceReading; });
}

ScopeSettings scopeSettings(const Part& part) {
    ScopeSettings settings;
    settings.secondsPerSquare = traceNumberOf(part, "time", settings.secondsPerSquare);
    settings.voltsPerSquare = {traceNumberOf(part, "volts1", 1), traceNumberOf(part, "volts2", 1)};
    settings.zeroInMiddle = choiceOf(part, "zero") == 1;
    settings.levelVolt = traceNumberOf(part, "level", settings.levelVolt);
    settings.rising = choiceOf(part, "edge") == 0;
    settings.source = std::clamp(choiceOf(part, "source"), 0, 1);
    settings.sweep = static_cast<ScopeSettings::Sweep>(std::clamp(choiceOf(part, "sweep"), 0, 2));
    int channel = 0;
    for (const ElementSpec& spec : part.kind->model) {
        if (spec.reads != kTraceReading || channel > 1) continue;
        settings.plugged[channel++] = part.leads[part.kind->leadIndex(spec.from())].has_value();
    }
    return settings;
}

ScopeTrace standingTrace(const Bench& bench, const Solution& solution, int part, double nowSecond) {
    ScopeTrace trace;
    trace.part = bench.parts[part].id;
    trace.settings = scopeSettings(bench.parts[part]);
    if (solution.status == Status::None) return trace;
    trace.leftSecond = trace.firstSecond = nowSecond - trace.settings.screenSecond();
    trace.nowSecond = nowSecond;
    trace.columnSecond = trace.settings.screenSecond() / Sweeper::kColumns;
    std::size_t channel = 0;
    for (const ElementState element : solution.elements()) {
        if (element.part != part || channel > 1) continue;
        if (bench.parts[part].kind->model[element.spec].reads != kTraceReading) continue;
        const double volt = element.currentAmpere == 0 ? 0 : element.powerWatt / element.currentAmpere;
        trace.channels[channel].least.assign(Sweeper::kColumns, static_cast<float>(volt));
        trace.channels[channel].greatest = trace.channels[channel].least;
        ScopeMeasures& measures = trace.channels[channel++].measures;
        measures.mean = measures.least = measures.greatest = volt;
        measures.effective = std::abs(volt);
    }
    return trace;
}

int Recorder::addElement(int part, int spec, bool volts) {
    Channel channel;
    channel.volts = volts;
    channels_.push_back(channel);
    specOf_.emplace_back(part, spec);
    return static_cast<int>(channels_.size()) - 1;
}

Recorder::Recorder(std::shared_ptr<const Layout> layout) : layout_(std::move(layout)) {
    const Bench& bench = *layout_->bench;
    for (int p = 0; p < static_cast<int>(bench.parts.size()); ++p) {
        const Part& part = bench.parts[p];
        const auto count = static_cast<int>(part.kind->model.size());
        std::vector<int> traced;
        for (int s = 0; s < count; ++s) {
            const std::string& reads = part.kind->model[s].reads;
            if (reads == kTraceReading) traced.push_back(addElement(p, s, true));
            if (reads == kVoltageReading || reads == kCurrentReading)
                meters_.push_back({addElement(p, s, reads == kVoltageReading), p, s, {}});
        }
        if (traced.size() == 2)
            scopes_.push_back({p, {traced[0], traced[1]}, Sweeper(scopeSettings(part)), false, false});
    }
    for (const PinnedReading& reading : bench.pinned) {
        Channel channel;
        channel.pinned = &reading;
        channels_.push_back(channel);
        specOf_.emplace_back(-1, -1);
        pinned_.push_back({static_cast<int>(channels_.size()) - 1, {}});
    }
}

void Recorder::takeOver(Recorder& before) {
    if (!before.layout_) return;
    const auto idOf = [](const Recorder& of, int part) -> const std::string& {
        return of.layout_->bench->parts[part].id;
    };
    for (Scope& scope : scopes_) {
        for (Scope& old : before.scopes_)
            if (idOf(before, old.part) == idOf(*this, scope.part) && old.sweeper.settings() == scope.sweeper.settings())
                scope.sweeper = std::move(old.sweeper);
    }
    for (Meter& meter : meters_) {
        for (const Meter& old : before.meters_)
            if (idOf(before, old.part) == idOf(*this, meter.part) && old.spec == meter.spec)
                meter.averager = old.averager;
    }
    for (Pinned& pinned : pinned_) {
        for (Pinned& old : before.pinned_)
            if (*before.channels_[old.channel].pinned == *channels_[pinned.channel].pinned)
                pinned.spark = std::move(old.spark);
    }
    before = Recorder();
}

void Recorder::begin(double second) {
    for (Scope& scope : scopes_) scope.sweeper = Sweeper(scope.sweeper.settings());
    for (Scope& scope : scopes_) scope.sweeper.begin(second);
    for (Meter& meter : meters_) meter.averager.begin();
    for (Pinned& pinned : pinned_) pinned.spark.begin();
}

void Recorder::setRate(double rate) {
    rate_ = rate;
    for (Pinned& pinned : pinned_) pinned.spark.follow(rate);
}

void Recorder::setHeld(const Inputs& inputs) {
    for (Scope& scope : scopes_) {
        const bool held = inputs.held.contains(layout_->bench->parts[scope.part].id);
        if (held && !scope.held) scope.sweeper.arm();
        scope.held = held;
    }
}

void Recorder::findElements(const Solution& solution) {
    places_ = solution.places;
    for (std::size_t c = 0; c < channels_.size(); ++c) {
        if (channels_[c].pinned || !places_) continue;
        const auto [part, spec] = specOf_[c];
        channels_[c].element = -1;
        for (std::size_t e = 0; e < places_->size(); ++e)
            if ((*places_)[e].part == part && (*places_)[e].spec == spec) channels_[c].element = static_cast<int>(e);
    }
}

double Recorder::readOne(const Channel& channel, const Solution& solution) const {
    if (solution.status == Status::None) return std::numeric_limits<double>::quiet_NaN();
    if (channel.pinned)
        return solution.status == Status::Solved ? std::visit(ReadPinned{*layout_, solution}, channel.pinned->of)
                                                 : std::numeric_limits<double>::quiet_NaN();
    if (channel.element < 0) return 0;
    const double ampere = solution.elementAmpere[channel.element];
    if (!channel.volts) return ampere;
    return ampere == 0 ? 0 : solution.elementWatt[channel.element] / ampere;
}

void Recorder::read(const Solution& solution, std::size_t at) {
    if (solution.places != places_) findElements(solution);
    for (Channel& channel : channels_) channel.at[at] = readOne(channel, solution);
}

void Recorder::take(double fromSecond, double untilSecond) {
    const auto pieceOf = [&](int channel) { return Piece3::through(fromSecond, untilSecond, channels_[channel].at); };
    const auto isKnown = [&](int channel) {
        return std::ranges::none_of(channels_[channel].at, [](double v) { return std::isnan(v); });
    };
    for (Scope& scope : scopes_) {
        if (!isKnown(scope.channels[0]) || !isKnown(scope.channels[1])) continue;
        if (goal_ - untilSecond > scope.sweeper.memorySecond()) {
            scope.skipped = true;
            continue;
        }
        if (scope.skipped) scope.sweeper.begin(fromSecond);
        scope.skipped = false;
        scope.sweeper.take({pieceOf(scope.channels[0]), pieceOf(scope.channels[1])});
    }
    for (Meter& meter : meters_)
        if (isKnown(meter.channel)) meter.averager.take(pieceOf(meter.channel));
    for (Pinned& pinned : pinned_) {
        pinned.spark.take(fromSecond, channels_[pinned.channel].at.front());
        pinned.spark.take(untilSecond, channels_[pinned.channel].at.back());
    }
}

void Recorder::publish(Traces& out) const {
    const Bench* bench = layout_ ? layout_->bench.get() : nullptr;
    out.scopes.resize(scopes_.size());
    for (std::size_t i = 0; i < scopes_.size(); ++i) {
        out.scopes[i].part = bench->parts[scopes_[i].part].id;
        scopes_[i].sweeper.publish(out.scopes[i], 1 / rate_);
    }
    out.meters.resize(meters_.size());
    for (std::size_t i = 0; i < meters_.size(); ++i) {
        out.meters[i].part = meters_[i].part;
        out.meters[i].spec = meters_[i].spec;
        meters_[i].averager.publish(out.meters[i]);
    }
    out.pinned.resize(pinned_.size());
    for (std::size_t i = 0; i < pinned_.size(); ++i) {
        const PinnedReading& reading = *channels_[pinned_[i].channel].pinned;
        constexpr double kNoVolt = 5e-4, kNoAmpere = 1e-6, kNoWatt = 1e-6;
        const bool isVolt =
            std::holds_alternative<VoltsAt>(reading.of) || std::holds_alternative<VoltsBetween>(reading.of);
        out.pinned[i].pinned = reading.id;
        pinned_[i].spark.publish(out.pinned[i], isVolt                                          ? kNoVolt
                                                : std::holds_alternative<AmperesIn>(reading.of) ? kNoAmpere
                                                                                                : kNoWatt);
    }
}

}  // namespace tiepoint
