#include "core/snapshot/element_present.h"

#include "core/circuit/compile.h"

namespace tiepoint {

bool isElementPresent(const Part& part, const ElementSpec& spec) { return isOf(part, spec); }

}  // namespace tiepoint
