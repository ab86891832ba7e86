// An hour of random editing (or as many minutes as are given): no crash, every bench valid, and undo back to the first byte.

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "ui/monkey.h"

#include <QElapsedTimer>
#include <QSettings>
#include <QTemporaryDir>

#include <cstdio>

int main(int argc, char** argv) {
    using namespace tiepoint;
    using namespace tiepoint::ui;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const double minutes = argc > 1 ? QByteArray(argv[1]).toDouble() : 60;
    const unsigned seed = argc > 2 ? QByteArray(argv[2]).toUInt() : 1;
    QTemporaryDir folder;
    QApplication::setOrganizationName(QStringLiteral("tiepoint-tests"));
    QApplication::setApplicationName(QStringLiteral("tiepoint-tests"));
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder.path());
    MainWindow window(folder.filePath(QStringLiteral("recovery")));
    window.resize(1280, 720);
    window.show();
    window.files().openEmbedded(QStringLiteral("benches/beacon-lamp.bench.json"));
    const std::string first = writeBench(*window.document().bench());
    Monkey monkey(window, seed);
    QElapsedTimer clock;
    clock.start();
    long acts = 0;
    for (; static_cast<double>(clock.elapsed()) < minutes * 60e3; ++acts) {
        monkey.act();
        const auto valid = validate(*window.document().bench());
        if (valid.ok()) continue;
        std::printf("act %ld: %s\n", acts, valid.error().oneLine().c_str());
        return 1;
    }
    QUndoStack& stack = window.document().undoStack();
    const int edits = stack.count();
    while (stack.canUndo()) stack.undo();
    const bool back = writeBench(*window.document().bench()) == first;
    std::printf("%.1f minutes, %ld acts, %d edits on the stack; undo %s\n", minutes, acts, edits,
                back ? "went back to the first byte" : "DID NOT GO BACK");
    return back ? 0 : 1;
}
