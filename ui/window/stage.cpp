#include "ui/window/stage.h"

#include "ui/theme/panels.h"

namespace tiepoint::ui {

QString windowStyle(const Look& look) {
    const Theme& theme = *look.theme;
    return QStringLiteral(
               "QMenu { color: %1; background: %2; border: 1px solid %3; padding: 4px; font-family: '%6'; font-size: "
               "%7px; }"
               "QMenu::item { padding: %8px %9px; border-radius: 4px; }"
               "QMenu::item:selected { background: %4; }"
               "QMenu::item:disabled { color: %5; }"
               "QMenu::separator { height: 1px; background: %3; margin: 4px 8px; }"
               "QToolTip { color: %1; background: %2; border: 1px solid %3; padding: 3px; font-family: '%6'; "
               "font-size: %7px; }")
        .arg(theme.text.name(), theme.card.name(), theme.cardEdge.name(), mix(theme.card, theme.accent, 0.2).name(),
             theme.dimText.name(), uiFont(1).family())
        .arg(look.ipx(text::kSmall))
        .arg(look.ipx(6))
        .arg(look.ipx(30));
}

}  // namespace tiepoint::ui
