#include "ui/theme/theme_choice.h"

#include <QGuiApplication>
#include <QPalette>
#include <QSettings>

#include <algorithm>
#include <array>

namespace tiepoint::ui {
namespace {

const QString kThemeSetting = QStringLiteral("theme");

struct Word {
    ThemeName name;
    const char* word;
};
constexpr std::array kWords{Word{ThemeName::Day, "day"}, Word{ThemeName::Dark, "dark"},
                            Word{ThemeName::Projector, "projector"}};

}  // namespace

std::optional<ThemeName> chosenTheme() {
    const QString word = QSettings().value(kThemeSetting).toString();
    const auto found = std::ranges::find_if(kWords, [&](const Word& w) { return word == QLatin1String(w.word); });
    return found == kWords.end() ? std::nullopt : std::optional(found->name);
}

void chooseTheme(std::optional<ThemeName> name) {
    QSettings settings;
    if (!name) return settings.remove(kThemeSetting);
    settings.setValue(kThemeSetting, QString::fromLatin1(std::ranges::find(kWords, *name, &Word::name)->word));
}

ThemeName systemTheme() {
    const QPalette palette = QGuiApplication::palette();
    const bool dark = palette.color(QPalette::WindowText).lightness() > palette.color(QPalette::Window).lightness();
    return dark ? ThemeName::Dark : ThemeName::Day;
}

ThemeName currentTheme() { return chosenTheme().value_or(systemTheme()); }

}  // namespace tiepoint::ui
