#pragma once
// A bench with words, marks, pins and a warning on it, drawn as the window draws it, for tests of contrast and colour. With TIEPOINT_PICTURES set
// to a folder the pictures that were measured are written there, to be looked at.

#include "ui/paint/bench_painter.h"

#include <QImage>

#include <string>
#include <vector>

namespace tiepoint::ui {

inline constexpr double kContrastPixelsPerMm = 14;
inline constexpr double kTextContrast = 4.5, kMarkContrast = 3;
inline constexpr double kTextShare = 0.01;     ///< of a label's box that is surely the core of its strokes
inline constexpr double kMarkShare = 1.0 / 5;  ///< of a mark's pixels; the rest are rims, beds, washes and soft edges
inline constexpr ThemeName kContrastThemes[] = {ThemeName::Day, ThemeName::Dark, ThemeName::Projector};
inline constexpr const char* kThemeWords[] = {"day", "dark", "projector"};

struct ViewCase {
    const char* name;
    Views views;
};
inline const ViewCase kViews[] = {{"arrows", {}},
                                  {"electrons", {Arrows::Electrons, false, false, true, false, {}}},
                                  {"voltage", {Arrows::Conventional, true, false, true, false, {}}},
                                  {"strips", {Arrows::Conventional, false, true, true, false, {}}},
                                  {"all", {Arrows::Conventional, true, true, true, false, {}}},
                                  {"turned", {Arrows::Conventional, false, false, true, true, {}}}};

Picture contrastPicture(ThemeName name, const Views& views);
QImage drawnPicture(const Picture& picture);
/// The pixels of a drawn picture that show a place of the table, mm.
QRect contrastPixels(const Picture& picture, const QRectF& mm);
void keep(const QImage& image, const QString& name);

struct Words {
    std::string what;
    QRectF frame;
};

/// Everything with words in it that is placed by what else lies there, in the order in which it is placed.
std::vector<Words> placedWords(const Picture& picture);
/// Those, and the figures on displays.
std::vector<Words> allWords(const Picture& picture);

}  // namespace tiepoint::ui
