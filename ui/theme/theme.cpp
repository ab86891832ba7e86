// The three themes as data. Every colour of the screen stands here or, for things that have a colour of their
// own, in ui/paint/palette.

#include "ui/theme/theme.h"

namespace tiepoint::ui {
namespace {

QColor rgb(unsigned hex) { return QColor::fromRgb(hex); }

QColor translucent(unsigned hex, double alpha) {
    QColor colour = QColor::fromRgb(hex);
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

Theme dayTheme() {
    Theme t{};
    t.name = ThemeName::Day;
    t.flat = false;
    t.dark = false;
    t.outlineMm = 0.15;
    t.benchTop = rgb(0xd9d3c7), t.benchBottom = rgb(0xcbc4b6);
    t.boardTop = rgb(0xece7db), t.boardBottom = rgb(0xe3ddcf), t.boardEdge = rgb(0xa79f8e);
    t.hole = rgb(0x3b3731), t.bevelDark = rgb(0xc2baa9), t.bevelLight = rgb(0xfbf8f0);
    t.label = rgb(0x645d4f), t.plusLine = rgb(0xb8402f), t.minusLine = rgb(0x2f5f9e);
    t.arrow = rgb(0x14181f), t.arrowCasing = translucent(0xfffdf6, 0.92);
    t.overload = rgb(0xc4321c), t.accent = rgb(0x1f5fd0), t.hover = rgb(0x0a5fa8);
    t.metalLight = rgb(0xcfc9ba), t.metalDark = rgb(0xa8a294), t.metalEdge = rgb(0x6d675b);
    t.card = rgb(0xfbf9f4), t.cardEdge = rgb(0xd8d1c3), t.text = rgb(0x23262b);
    t.dimText = rgb(0x6a655b), t.dimTextOnBench = rgb(0x545046);
    t.jumpers = {rgb(0xb23a2e), rgb(0x2d2f33), rgb(0x2f6aa8), rgb(0xd39a1e),
                 rgb(0x4b7f52), rgb(0x7a5a96), rgb(0xc86f2e), rgb(0xe9e4d6)};
    t.haloOpacity = 0.78;
    t.arrowCasingMm = 0.68;
    Furnishing& f = t.furnishing;
    f.caseTop = rgb(0x68736c), f.caseBottom = rgb(0x48534a), f.caseEdge = rgb(0x252c28);
    f.panelTop = rgb(0xf1ede3), f.panelBottom = rgb(0xe8e0d2), f.panelInk = rgb(0x33312c), f.panelDim = rgb(0x615c52);
    f.display = rgb(0x161a18), f.displayLow = rgb(0x2b302d), f.digits = rgb(0xf7ecd2), f.digitsDim = rgb(0xb1aa95);
    f.steelLight = rgb(0xeeeff1), f.steelDark = rgb(0xa3a6ab), f.steelEdge = rgb(0x6b6e74);
    f.plasticLight = rgb(0x4a4e55), f.plasticDark = rgb(0x2b2e34);
    f.paper = rgb(0xf6efdb), f.paperEdge = rgb(0x8f8468), f.twine = rgb(0xb39a6b), f.twineEdge = rgb(0x6b5835);
    f.ink = rgb(0x2a2722);
    f.shadow = translucent(0x000000, 0.22);
    f.gapTop = rgb(0xc9c3b5), f.gapBottom = rgb(0xd8d2c5);
    return t;
}

Theme darkTheme() {
    Theme t{};
    t.name = ThemeName::Dark;
    t.flat = false;
    t.dark = true;
    t.outlineMm = 0.15;
    t.benchTop = rgb(0x16191e), t.benchBottom = rgb(0x0f1115);
    t.boardTop = rgb(0x2e333a), t.boardBottom = rgb(0x272b31), t.boardEdge = rgb(0x0b0d10);
    t.hole = rgb(0x08090b), t.bevelDark = rgb(0x1b1f24), t.bevelLight = rgb(0x969eaa);
    t.label = rgb(0x9aa2ae), t.plusLine = rgb(0xe07a66), t.minusLine = rgb(0x78a8e6);
    t.arrow = rgb(0xfff6df), t.arrowCasing = translucent(0x0b0d10, 0.88);
    t.overload = rgb(0xff7a5c), t.accent = rgb(0x7fb4ff), t.hover = rgb(0x8cc4ff);
    t.metalLight = rgb(0x6e7681), t.metalDark = rgb(0x4c535d), t.metalEdge = rgb(0x9aa3af);
    t.card = rgb(0x22272e), t.cardEdge = rgb(0x343b45), t.text = rgb(0xeceae4);
    t.dimText = rgb(0xa2a9b3), t.dimTextOnBench = rgb(0xa2a9b3);
    t.jumpers = {rgb(0xcf5040), rgb(0x8b929d), rgb(0x4a8ad0), rgb(0xdeab3e),
                 rgb(0x62a86c), rgb(0xa085c6), rgb(0xdc8746), rgb(0xe9e4d6)};
    t.haloOpacity = 0.85;
    t.arrowCasingMm = 0.68;
    Furnishing& f = t.furnishing;
    f.caseTop = rgb(0x4b535d), f.caseBottom = rgb(0x313740), f.caseEdge = rgb(0x0b0d10);
    f.panelTop = rgb(0x2c3138), f.panelBottom = rgb(0x262b32), f.panelInk = rgb(0xd6d9de), f.panelDim = rgb(0x9aa2ae);
    f.display = rgb(0x090b0c), f.displayLow = rgb(0x171a1d), f.digits = rgb(0xffe9bd), f.digitsDim = rgb(0xb5a888);
    f.steelLight = rgb(0xd3d6da), f.steelDark = rgb(0x878c94), f.steelEdge = rgb(0x4f545c);
    f.plasticLight = rgb(0x3c424b), f.plasticDark = rgb(0x15181c);
    f.paper = rgb(0x3a362c), f.paperEdge = rgb(0x8c8266), f.twine = rgb(0xb59f72), f.twineEdge = rgb(0x16130d);
    f.ink = rgb(0x0b0d10);
    f.shadow = translucent(0x000000, 0.55);
    f.gapTop = rgb(0x1d2126), f.gapBottom = rgb(0x22262c);
    return t;
}

Theme projectorTheme() {
    Theme t{};
    t.name = ThemeName::Projector;
    t.flat = true;
    t.dark = false;
    t.outlineMm = 0.26;
    t.benchTop = t.benchBottom = rgb(0xffffff);
    t.boardTop = t.boardBottom = rgb(0xf6f5f1), t.boardEdge = rgb(0x1d2733);
    t.hole = rgb(0x5a6673), t.bevelDark = t.bevelLight = Qt::transparent;
    t.label = rgb(0x3c4753), t.plusLine = rgb(0xb3261e), t.minusLine = rgb(0x1b4fa0);
    t.arrow = rgb(0x0b1016), t.arrowCasing = rgb(0xffffff);
    t.overload = rgb(0xb3261e), t.accent = rgb(0x0b57d0), t.hover = rgb(0x0b57d0);
    t.metalLight = t.metalDark = rgb(0xd5dde6), t.metalEdge = rgb(0x3c4753);
    t.card = rgb(0xffffff), t.cardEdge = rgb(0x1d2733), t.text = rgb(0x0b1016);
    t.dimText = rgb(0x3c4753), t.dimTextOnBench = rgb(0x3c4753);
    t.jumpers = {rgb(0xd9584a), rgb(0x4a4f57), rgb(0x4f8cd6), rgb(0xe2b43a),
                 rgb(0x5fa364), rgb(0x9678b8), rgb(0xe08a48), rgb(0xf4f1e6)};
    t.haloOpacity = 0.90;
    t.arrowCasingMm = 0.76;
    Furnishing& f = t.furnishing;
    f.caseTop = f.caseBottom = rgb(0xffffff), f.caseEdge = rgb(0x1d2733);
    f.panelTop = f.panelBottom = rgb(0xf1f3f5), f.panelInk = rgb(0x0b1016), f.panelDim = rgb(0x3c4753);
    f.display = f.displayLow = rgb(0x16202b), f.digits = rgb(0xffffff), f.digitsDim = rgb(0xd3d9e0);
    f.steelLight = f.steelDark = rgb(0xd5dde6), f.steelEdge = rgb(0x3c4753);
    f.plasticLight = f.plasticDark = rgb(0x4a525c);
    f.paper = rgb(0xfdf6e3), f.paperEdge = rgb(0x1d2733), f.twine = rgb(0xd9c08a), f.twineEdge = rgb(0x3f3418);
    f.ink = rgb(0x1d2733);
    f.shadow = Qt::transparent;
    f.gapTop = f.gapBottom = rgb(0xf6f5f1);
    return t;
}

}  // namespace

const Theme& theme(ThemeName name) {
    static const std::array<Theme, 3> kThemes = {dayTheme(), darkTheme(), projectorTheme()};
    return kThemes[static_cast<std::size_t>(name)];
}

}  // namespace tiepoint::ui
