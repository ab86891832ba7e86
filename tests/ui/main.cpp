// Tests of the window's side need an application, but no display. Started with --monkey-child the program is the one that gets killed.

#include "kill_round.h"
#include "qt_order.h"

#include <gtest/gtest.h>

int main(int argc, char** argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc == 4 && QByteArray(argv[1]) == tiepoint::ui::kMonkeyChild) {
        tiepoint::test::Application application(argc, argv);
        return tiepoint::ui::runMonkeyChild(QString::fromLocal8Bit(argv[2]), QByteArray(argv[3]).toUInt());
    }
    testing::InitGoogleTest(&argc, argv);
    tiepoint::test::Application application(argc, argv);
    return RUN_ALL_TESTS();
}
