// The page of keys: made from the list that the actions and the board are made from; the README says the same.

#include "ui/view/key_list.h"
#include "window_bench.h"

#include <QFile>
#include <QRegularExpression>
#include <QSet>

#include <map>

namespace tiepoint::ui {
namespace {

/// Rows of the README's table under "Keys": keys and what they do, without marks.
QList<QPair<QString, QString>> rowsOfReadme() {
    QFile file(QStringLiteral(TIEPOINT_SOURCE_DIR "/README.md"));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(file.readAll());
    const qsizetype begin = text.indexOf(QStringLiteral("## Keys"));
    const QString section = text.mid(begin, text.indexOf(QStringLiteral("\n## "), begin + 4) - begin);
    QList<QPair<QString, QString>> rows;
    for (const QString& line : section.split(QLatin1Char('\n'))) {
        const QStringList cells = line.split(QStringLiteral(" | "));
        if (cells.size() != 2 || !line.startsWith(QStringLiteral("| ")) ||
            line.contains(QStringLiteral("| what it does |")))
            continue;
        rows << qMakePair(cells[0].mid(2).remove(QLatin1Char('`')).trimmed(),
                          QString(cells[1]).remove(QRegularExpression(QStringLiteral(" \\|$"))).trimmed());
    }
    return rows;
}

TEST(KeysPageTest, TheReadmeSaysWhatTheListSays) {
    const auto readme = rowsOfReadme();
    ASSERT_EQ(readme.size(), static_cast<qsizetype>(keyLines().size()));
    for (std::size_t i = 0; i < keyLines().size(); ++i) {
        EXPECT_EQ(readme[static_cast<qsizetype>(i)].first.toStdString(), keyLines()[i].keysInWords().toStdString());
        EXPECT_EQ(readme[static_cast<qsizetype>(i)].second.toStdString(), keyLines()[i].does);
    }
}

TEST(KeysPageTest, EveryShortcutOfTheWindowIsInTheList) {
    WindowBench bench;
    QSet<QKeySequence> listed;
    for (const KeyLine& line : keyLines()) {
        for (const KeyLine::Use& use : line.uses) {
            for (const QKeySequence& key : use.keys) listed << key;
        }
    }
    int checked = 0;
    for (const QAction* action : bench.window().findChildren<QAction*>()) {
        if (action->shortcuts().isEmpty()) continue;
        EXPECT_TRUE(listed.contains(action->shortcuts().front())) << action->text().toStdString();
        ++checked;
    }
    EXPECT_GT(checked, 35);
}

TEST(KeysPageTest, NoKeyIsForTwoThings) {
    std::map<QString, int> uses;
    for (const KeyLine& line : keyLines()) {
        for (const KeyLine::Use& use : line.uses) {
            // The board takes digits only while they type a value.
            if (use.what == KeyFor::Type) continue;
            for (const QKeySequence& key : use.keys) ++uses[key.toString()];
        }
    }
    for (const auto& [key, count] : uses) EXPECT_EQ(count, 1) << key.toStdString();
}

TEST(KeysPageTest, OpensByItsKeyAndIsSearched) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.activateWindow();
    window.view().setFocus();
    QTest::keyClick(&window.view(), Qt::Key_F1);
    KeysPage& page = window.tools().keys();
    ASSERT_TRUE(page.isVisible()) << "nothing is selected: all keys";
    const auto seen = [&page] {
        QStringList rows;
        for (int row = 0; row < page.table().rowCount(); ++row) {
            if (!page.table().isRowHidden(row) && page.table().columnSpan(row, 0) == 1)
                rows << page.table().item(row, 1)->text();
        }
        return rows;
    };
    EXPECT_EQ(seen().size(), static_cast<qsizetype>(keyLines().size()));
    QTest::keyClicks(&page.search(), "ink");
    EXPECT_EQ(seen(), QStringList{QStringLiteral("draw with ink, wipe it")});
    EXPECT_FALSE(window.actions().ink->isChecked()) << "what is typed there is no shortcut";
    page.search().setText(QStringLiteral("no such thing"));
    EXPECT_TRUE(seen().isEmpty());
    EXPECT_TRUE(page.none().isVisible()) << "nothing found is said";
    page.search().setText(QStringLiteral("b"));
    EXPECT_FALSE(page.none().isVisible());
    EXPECT_FALSE(seen().isEmpty());
    QTest::keyClick(&page.search(), Qt::Key_Escape);
    EXPECT_FALSE(page.isVisible());
    EXPECT_TRUE(window.view().hasFocus());
    window.actions().keys->trigger();
    EXPECT_TRUE(page.isVisible());
}

TEST(KeysPageTest, AltWithADigitAlwaysSwitchesAView) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.activateWindow();
    window.document().reset(makeNewBench(), {});
    window.view().setSelection({"PS1"});
    window.view().setFocus();
    const Views before = window.view().views();
    QTest::keyClick(&window.view(), Qt::Key_3);
    EXPECT_TRUE(window.view().isTyping()) << "a digit types the volts of the supply";
    EXPECT_EQ(window.view().views(), before);
    QTest::keyClick(window.focusWidget(), Qt::Key_Escape);
    QTest::keyClick(&window.view(), Qt::Key_3, Qt::AltModifier);
    EXPECT_NE(window.view().views().strips, before.strips);
    EXPECT_FALSE(window.view().isTyping());
}

TEST(KeysPageTest, APartWithoutAFigureLeavesDigitsToTheViews) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.activateWindow();
    Bench with = makeNewBench();
    Part light = makePart(*findKind("led"), "D1");
    light.leads = {Hole{"A", Line::C, 5}, Hole{"A", Line::C, 7}};
    with.parts.push_back(light);
    window.document().reset(std::move(with), {});
    window.view().setSelection({"D1"});
    window.view().setFocus();
    const bool strips = window.view().views().strips;
    QTest::keyClick(&window.view(), Qt::Key_3);
    EXPECT_NE(window.view().views().strips, strips);
    EXPECT_FALSE(window.view().isTyping());
}

}  // namespace
}  // namespace tiepoint::ui
