#include "core/meter/drivers.h"

#include "core/base/disjoint_sets.h"
#include "core/circuit/element.h"

#include <map>

namespace tiepoint {
namespace {

/// Joins nets that closed elements connect; places inside parts have numbers after those of the nets.
class Together {
public:
    explicit Together(const Snapshot& snapshot)
        : layout_(*snapshot.layout),
          joined_(static_cast<std::size_t>(layout_.netCount)) {
        for (const ElementState element : snapshot.solution.elements()) {
            if (!element.closed) continue;
            const ElementSpec& spec = specOf(element);
            for (const JoinedTerminals& each : joinedBy(spec, layout_.bench->parts[element.part], element.told))
                joined_.join(nodeOf(element.part, spec.between[each.from]),
                             nodeOf(element.part, spec.between[each.to]));
        }
    }

    const ElementSpec& specOf(const ElementState& element) const {
        return layout_.bench->parts[element.part].kind->model[element.spec];
    }
    int rootOf(int part, const std::string& name) { return joined_.root(nodeOf(part, name)); }

private:
    int nodeOf(int part, const std::string& name) {
        const int lead = layout_.bench->parts[part].kind->leadIndex(name);
        if (lead >= 0) return layout_.netOfLead[layout_.leadIndex(part, lead)];
        const auto [place, added] = inner_.try_emplace({part, name}, -1);
        if (added) place->second = joined_.add();
        return place->second;
    }

    const Layout& layout_;
    DisjointSets joined_;
    std::map<std::pair<int, std::string>, int> inner_;
};

}  // namespace

int otherSourceAt(const Snapshot& snapshot, int part) {
    Together together(snapshot);
    const auto elements = snapshot.solution.elements();
    for (const ElementState source : elements) {
        const ElementSpec& spec = together.specOf(source);
        if (source.part == part || !source.closed || !drives(*snapshot.layout->bench->parts[source.part].kind, spec))
            continue;
        for (const ElementState own : elements) {
            if (own.part != part || !own.closed) continue;
            const int at = together.rootOf(source.part, spec.from());
            if (together.rootOf(part, together.specOf(own).from()) == at) return source.part;
        }
    }
    return -1;
}

}  // namespace tiepoint
