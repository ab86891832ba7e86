#include "ui/window/run_window.h"

#include "ui/window/main_window.h"

#include <QApplication>
#include <QIcon>

// Resources of a static library are only linked when asked for by name, outside of any namespace.
static void loadEmbeddedIcon() { Q_INIT_RESOURCE(icon); }

namespace tiepoint::ui {

int runWindow(const std::optional<std::string>& file) {
    int argumentCount = 1;
    char programName[] = "tiepoint";
    char* arguments[] = {programName, nullptr};
    QApplication application(argumentCount, arguments);
    QApplication::setOrganizationName(QStringLiteral("tiepoint"));
    QApplication::setApplicationName(QStringLiteral("tiepoint"));
    QApplication::setApplicationDisplayName(QStringLiteral("Tiepoint"));
    QApplication::setApplicationVersion(QStringLiteral(TIEPOINT_VERSION));
    QApplication::setDesktopFileName(QStringLiteral("local.tiepoint.Tiepoint"));

    loadEmbeddedIcon();
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/tiepoint.svg")));

    MainWindow window(stateFolder() + QStringLiteral("/recovery"));
    window.show();
    if (file) {
        window.openFile(QString::fromStdString(*file));
        window.offerRecovery();
    } else {
        window.showStartCard();
    }
    return QApplication::exec();
}

}  // namespace tiepoint::ui
