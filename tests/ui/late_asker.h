#pragma once
// Someone who answers later, as a person before a real dialogue does: a question is kept, the window's events go on, and the answer comes
// when the test gives it, a turn of the event loop after that. Old answers can be given again, and to windows that are gone.

#include "ui/document/file_actions.h"
#include "ui/window/picture_actions.h"
#include "ui/window/reveal_menu.h"

#include <QTest>
#include <QTimer>

#include <gtest/gtest.h>

#include <any>
#include <vector>

namespace tiepoint::ui {

class LateAsker {
public:
    enum class Kind { OpenPath, SavePath, Unsaved, Changed, Replace, Phrase, PicturePath };
    struct Question {
        Kind kind;
        QString about;  ///< the title, the path or the words of the question
        std::any give;
    };

    /// Askers that live no longer than this one.
    FileActions::Asker files() {
        FileActions::Asker asker;
        asker.openPath = [this](const FileActions::GivePath& give) { keep(Kind::OpenPath, {}, give); };
        asker.savePath = [this](const QString& path, const FileActions::GivePath& give) {
            keep(Kind::SavePath, path, give);
        };
        asker.unsaved = [this](const QString& title, const FileActions::GiveAnswer& give) {
            keep(Kind::Unsaved, title, give);
        };
        asker.changed = [this](const QString& path, const FileActions::GiveConflict& give) {
            keep(Kind::Changed, path, give);
        };
        asker.replace = [this](const QString& path, const FileActions::GiveConsent& give) {
            keep(Kind::Replace, path, give);
        };
        return asker;
    }
    RevealMenu::Asker phrases() {
        return [this](const QString&, const QString& question, const RevealMenu::GivePhrase& give) {
            keep(Kind::Phrase, question, give);
        };
    }
    PictureActions::AskPath pictures() {
        return [this](const QString& path, const PictureActions::GivePath& give) {
            keep(Kind::PicturePath, path,
                 FileActions::GivePath([give](const QString& chosen) { give(chosen, Paper::A4); }));
        };
    }

    const std::vector<Question>& asked() const { return asked_; }
    int count(Kind kind) const { return static_cast<int>(std::ranges::count(asked_, kind, &Question::kind)); }
    /// Whether the last question, of that kind, waits for its answer.
    bool waits(Kind kind) const { return answered_ < asked_.size() && asked_.back().kind == kind; }

    // Each answers the last question and goes on until the answer has been heard.
    void path(const QString& path) { answer<QString, const QString&>(path); }
    void unsaved(FileActions::Answer given) { answer<FileActions::Answer>(given); }
    void changed(FileActions::Conflict given) { answer<FileActions::Conflict>(given); }
    void replace(bool given) { answer<bool>(given); }
    void phrase(const QString& phrase) { answer<QString, const QString&>(phrase); }

    /// Answers a question, old ones too, and goes on until the answer has been heard.
    template <class Given, class Passed = Given>
    static void answer(const Question& question, const Given& given) {
        const auto* give = std::any_cast<std::function<void(Passed)>>(&question.give);
        ASSERT_TRUE(give) << "another question waits: " << question.about.toStdString();
        bool heard = false;
        QTimer::singleShot(0, [give = *give, given, &heard] {
            give(given);
            heard = true;
        });
        ASSERT_TRUE(QTest::qWaitFor([&] { return heard; }));
    }

private:
    template <class Give>
    void keep(Kind kind, const QString& about, const Give& give) {
        asked_.push_back({kind, about, give});
    }
    template <class Given, class Passed = Given>
    void answer(const Given& given) {
        ASSERT_LT(answered_, asked_.size()) << "nothing was asked";
        answered_ = asked_.size();
        answer<Given, Passed>(Question(asked_.back()), given);
    }

    std::vector<Question> asked_;
    std::size_t answered_ = 0;
};

}  // namespace tiepoint::ui
