// Tests of the window's side need an application, but no display. Started with --monkey-child the program is the one that gets killed.

#include "kill_round.h"

#include <QApplication>

#include <gtest/gtest.h>

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc == 4 && QByteArray(argv[1]) == tiepoint::ui::kMonkeyChild) {
        QApplication application(argc, argv);
        return tiepoint::ui::runMonkeyChild(QString::fromLocal8Bit(argv[2]), QByteArray(argv[3]).toUInt());
    }
    testing::InitGoogleTest(&argc, argv);
    QApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
