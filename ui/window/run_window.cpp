#include "ui/window/run_window.h"

#include "ui/window/main_window.h"

#include <QApplication>

namespace tiepoint::ui {

int runWindow(const std::optional<std::string>& file) {
    int argumentCount = 1;
    char programName[] = "tiepoint";
    char* arguments[] = {programName, nullptr};
    QApplication application(argumentCount, arguments);
    QApplication::setOrganizationName(QStringLiteral("tiepoint"));
    QApplication::setApplicationName(QStringLiteral("tiepoint"));
    QApplication::setApplicationDisplayName(QStringLiteral("Tiepoint"));
    QApplication::setApplicationVersion(QStringLiteral("0.1.0"));
    QApplication::setDesktopFileName(QStringLiteral("tiepoint"));

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
