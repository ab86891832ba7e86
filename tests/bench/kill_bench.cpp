// The program killed a hundred times at random moments of random editing. Prints what was lost; fails if it was ever more than the last
// gesture, or if a file was unreadable.

#include "ui/kill_round.h"

#include <QTemporaryDir>

#include <map>

int main(int argc, char** argv) {
    using namespace tiepoint::ui;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    if (argc == 4 && QByteArray(argv[1]) == kMonkeyChild)
        return runMonkeyChild(QString::fromLocal8Bit(argv[2]), QByteArray(argv[3]).toUInt());
    const int rounds = argc > 1 ? QByteArray(argv[1]).toInt() : 100;
    std::mt19937 random(17);
    std::map<int, int> lost;
    int unreadable = 0, notRun = 0;
    long states = 0;
    for (int round = 1; round <= rounds; ++round) {
        QTemporaryDir folder;
        const KillReport report = killRound(QApplication::applicationFilePath(), folder.path(),
                                            static_cast<unsigned>(round), static_cast<int>(random() % 2500));
        if (!report.ran || !report.killed) ++notRun;
        if (!report.unreadable.empty()) {
            ++unreadable;
            std::printf("round %d: %s\n", round, report.unreadable.c_str());
        }
        ++lost[report.lost];
        states += report.states;
    }
    std::printf("%d rounds, %ld states told, %d not run, %d unreadable\n", rounds, states, notRun, unreadable);
    for (const auto& [gestures, count] : lost)
        std::printf("  %s: %d rounds\n",
                    gestures < 0 ? "the state on the disk was newer than the last told one"
                                 : (std::to_string(gestures) + " lost").c_str(),
                    count);
    const bool good = unreadable == 0 && notRun == 0 && (lost.empty() || lost.rbegin()->first <= 1);
    std::printf("%s\n", good ? "bar met" : "BAR MISSED");
    return good ? 0 : 1;
}
