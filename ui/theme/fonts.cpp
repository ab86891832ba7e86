// Finds the program's font: the one embedded at build time, or the system's sans serif.

#include "ui/theme/theme.h"

#include <QFontDatabase>

#include <algorithm>
#include <cmath>

// Resources of a static library are only linked when asked for by name, outside of any namespace.
static void loadEmbeddedFonts() {
#ifdef TIEPOINT_EMBEDDED_INTER
    Q_INIT_RESOURCE(fonts);
#endif
}

namespace tiepoint::ui {
namespace {

/// The family to use; empty leaves the choice to the system.
QString familyName() {
    static const QString kFamily = [] {
        loadEmbeddedFonts();
        QString family;
        for (const char* face : {"Regular", "Medium", "SemiBold", "Bold"}) {
            const int id =
                QFontDatabase::addApplicationFont(QStringLiteral(":/fonts/Inter-%1.otf").arg(QLatin1String(face)));
            if (id >= 0 && family.isEmpty()) family = QFontDatabase::applicationFontFamilies(id).value(0);
        }
        return family;
    }();
    return kFamily;
}

}  // namespace

QFont uiFont(double pixelSize, QFont::Weight weight) {
    QFont font;
    if (!familyName().isEmpty()) {
        font.setFamily(familyName());
    } else {
        font.setStyleHint(QFont::SansSerif);
    }
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(pixelSize))));
    font.setWeight(weight);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

}  // namespace tiepoint::ui
