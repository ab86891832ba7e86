#include "ui/scene/under.h"

namespace tiepoint::ui {

std::string Under::thing() const {
    if (!note.empty()) return note;
    if (!pinned.empty()) return pinned;
    if (!wire.empty()) return wire;
    if (!body.empty()) return body;
    if (lead) return lead->id;
    if (grip) return grip->id;
    return {};
}

}  // namespace tiepoint::ui
