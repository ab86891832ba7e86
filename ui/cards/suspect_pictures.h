#pragma once
// Small pictures for the cards that look for what is wrong: a thing as it lies on its board, and what the eye may see of a light.

#include "core/bench/bench.h"
#include "ui/theme/theme.h"

#include <QImage>

#include <memory>
#include <string>

namespace tiepoint::ui {

/// A part or jumper with what lies about it, at rest; null where it stands in no hole.
QImage pictureOfThing(const std::shared_ptr<const Bench>& bench, const std::string& id, const Theme& theme, QSize size,
                      double ratio);

enum class LookOfLight { Dark, Dim, Lit, AlwaysLit };

/// How a light looks beside a button that is pressed or not, solved on a small bench of its own with the light of the plan if it has two
/// legs and a red one else; without a button where the plan has none.
QImage pictureOfLook(LookOfLight look, const Bench& plan, const std::string& light, bool pressed, const Theme& theme,
                     QSize size, double ratio);

}  // namespace tiepoint::ui
