#include "core/snapshot/sounds.h"

#include "core/bench/resolve.h"
#include "core/circuit/element.h"

namespace tiepoint {
namespace {

/// At its own pitch while there is enough voltage between its first two leads.
double ownPitch(const Snapshot& snapshot, int part, const SoundSpec& sound) {
    const Part& which = snapshot.layout->bench->parts[static_cast<std::size_t>(part)];
    const int first = snapshot.layout->leadIndex(part, 0);
    const double volt = snapshot.leadVoltage(first) - snapshot.leadVoltage(first + 1);
    return volt >= resolve(sound.fromVoltage, which) ? resolve(sound.pitch, which) : 0;
}

double followedPitch(const Snapshot& snapshot, int part) {
    const PartKind& kind = *snapshot.layout->bench->parts[static_cast<std::size_t>(part)].kind;
    for (const ElementState element : snapshot.solution.elements()) {
        if (element.part != part) continue;
        const std::string& name = kind.model[static_cast<std::size_t>(element.spec)].element;
        if (findElement(name) == &kElementOf<SounderLaw>) return element.told;
    }
    return 0;
}

}  // namespace

double pitchOf(const Snapshot& snapshot, int part) {
    const Part& which = snapshot.layout->bench->parts[static_cast<std::size_t>(part)];
    if (snapshot.status() != Status::Solved || !which.kind->sound || which.condition != Condition::Sound) return 0;
    const double hertz =
        which.kind->sound->follows ? followedPitch(snapshot, part) : ownPitch(snapshot, part, *which.kind->sound);
    return hertz >= kLowestHertz && hertz <= kHighestHertz ? hertz : 0;
}

std::vector<Sound> soundsOf(const Snapshot& snapshot) {
    std::vector<Sound> sounds;
    for (int part = 0; part < static_cast<int>(snapshot.layout->bench->parts.size()); ++part)
        if (const double hertz = pitchOf(snapshot, part); hertz > 0) sounds.push_back({part, hertz});
    return sounds;
}

}  // namespace tiepoint
