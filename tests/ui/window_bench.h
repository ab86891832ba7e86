#pragma once
// A real window for tests: with a state folder and settings of its own, shown, and with the answers to its questions given by the test.

#include "ui/window/main_window.h"

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <functional>
#include <memory>

namespace tiepoint::ui {

class WindowBench {
public:
    explicit WindowBench(QSize size = {1280, 720}) {
        QApplication::setOrganizationName(QStringLiteral("tiepoint-tests"));
        QApplication::setApplicationName(QStringLiteral("tiepoint-tests"));
        QSettings::setDefaultFormat(QSettings::IniFormat);
        QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, folder_.path());
        restart(size);
    }

    MainWindow& window() { return *window_; }
    /// The window goes without being asked, as with its program.
    void drop() { window_.reset(); }
    QString recoveryFolder() const { return folder_.filePath(QStringLiteral("recovery")); }
    QString file(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    /// Another window on the same folders. The old one is closed without being asked.
    void restart(QSize size = {1280, 720}) {
        window_.reset();
        window_ = std::make_unique<MainWindow>(recoveryFolder());
        window_->resize(size);
        window_->files().setAsker(answers());
        window_->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        QApplication::processEvents();
    }

    /// Runs the window's events until the condition holds; false where that hangs. How soon something must come is asked elsewhere: a loaded
    /// machine may be ten times as slow.
    static bool waitFor(const std::function<bool()>& condition) { return QTest::qWaitFor(condition, kHangMs); }
    /// Waits for the solver's answer to the present bench and the present hands.
    bool waitForAnswer() {
        return waitFor([this] {
            const auto snapshot = window_->live().snapshot();
            return snapshot && snapshot->revision == window_->document().revision() &&
                   snapshot->inputSequence == window_->live().inputs().sequence && window_->view().picture().snapshot &&
                   (snapshot->timeSecond > 0 ||
                    !window_->view().picture().wordsToCome);  // where it moves, words come at each tick
        });
    }

    /// What waitForAnswer() still waits for.
    std::string whyNoAnswer() {
        const auto snapshot = window_->live().snapshot();
        if (!snapshot) return "there is no snapshot";
        return fmt::format(
            "{}: revision {} of {}, input {} of {}, {} s, {}words to come, picture {}",
            window_->document().bench()->parts.empty() ? "-" : window_->document().bench()->parts.back().kind->name,
            snapshot->revision, window_->document().revision(), snapshot->inputSequence,
            window_->live().inputs().sequence, snapshot->timeSecond, window_->view().picture().wordsToCome ? "" : "no ",
            window_->view().picture().snapshot ? "there" : "missing");
    }

    static void click(QWidget* widget) { QTest::mouseClick(widget, Qt::LeftButton); }

    static constexpr int kHangMs = 20'000;
    QString openAnswer, saveAnswer;  ///< paths given to the file dialogues; empty: the dialogue is cancelled
    FileActions::Answer unsavedAnswer = FileActions::Answer::Cancel;
    FileActions::Conflict conflictAnswer = FileActions::Conflict::Cancel;
    int unsavedAsked = 0, conflictAsked = 0;

private:
    FileActions::Asker answers() {
        FileActions::Asker asker;
        asker.openPath = [this](const FileActions::GivePath& give) { give(openAnswer); };
        asker.savePath = [this](const QString&, const FileActions::GivePath& give) { give(saveAnswer); };
        asker.replace = [](const QString&, const FileActions::GiveConsent& give) { give(false); };
        asker.unsaved = [this](const QString&, const FileActions::GiveAnswer& give) {
            ++unsavedAsked;
            give(unsavedAnswer);
        };
        asker.changed = [this](const QString&, const FileActions::GiveConflict& give) {
            ++conflictAsked;
            give(conflictAnswer);
        };
        return asker;
    }

    QTemporaryDir folder_;
    std::unique_ptr<MainWindow> window_;
};

}  // namespace tiepoint::ui
