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
          joined_(layout_.netCount + 2 * snapshot.solution.elementAmpere.size()) {
        for (const ElementState element : snapshot.solution.elements()) {
            if (!element.closed) continue;
            const ElementSpec& spec = specOf(element);
            joined_.join(nodeOf(element.part, spec.from()), nodeOf(element.part, spec.to()));
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
        const int next = layout_.netCount + static_cast<int>(inner_.size());
        return inner_.try_emplace({part, name}, next).first->second;
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
