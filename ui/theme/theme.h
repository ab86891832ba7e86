#pragma once
// Themes: every colour of the screen by its role. Values are data; no painter holds a colour of its own.

#include <QColor>
#include <QFont>

#include <array>

namespace tiepoint::ui {

enum class ThemeName { Day, Dark, Projector };

/// The colours of the things on the bench that follow the light of the theme: boxes, plastics, steel.
struct Furnishing {
    QColor caseTop, caseBottom, caseEdge;              ///< a supply's box
    QColor panelTop, panelBottom, panelInk, panelDim;  ///< its face and what is printed on it
    QColor display, displayLow, digits, digitsDim;     ///< its window
    QColor steelLight, steelDark, steelEdge;           ///< bright metal: leads, screws, levers
    QColor plasticLight, plasticDark;                  ///< black mouldings
    QColor paper, paperEdge, twine, twineEdge;         ///< notes and their threads
    QColor ink;                                        ///< outlines of bodies
    QColor shadow;             ///< with its full strength as alpha; transparent where the theme has none
    QColor gapTop, gapBottom;  ///< the trough along the middle of a board
};

struct Theme {
    ThemeName name = ThemeName::Day;
    bool flat = false;  ///< projector: flat wash and ink line, no shadows, no gradients
    bool dark = false;
    double outlineMm = 0.15;  ///< outlines: 0.15, projector 0.26
    QColor benchTop, benchBottom;
    QColor boardTop, boardBottom, boardEdge;
    QColor hole, bevelDark, bevelLight;
    QColor label, plusLine, minusLine;
    QColor arrow, arrowCasing;
    QColor overload, accent, hover;
    QColor metalLight, metalDark, metalEdge;
    QColor card, cardEdge, text, dimText, dimTextOnBench;
    std::array<QColor, 8> jumpers;  ///< in the order of jumperColours()
    double haloOpacity = 0.78;      ///< 0.78, dark 0.85, projector 0.90
    double arrowCasingMm = 0.68;    ///< breadth of the stroke behind an arrow: 0.68, projector 0.76
    Furnishing furnishing;
};

const Theme& theme(ThemeName name);

/// The font of the program: Inter where it was embedded at build time, else the system's sans serif.
QFont uiFont(double pixelSize, QFont::Weight weight = QFont::Normal);
}  // namespace tiepoint::ui
