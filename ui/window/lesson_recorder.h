#pragma once
// Recording a lesson by doing: what is built on the table becomes its steps, each called by a key and named in the bar. A step can be taken back or
// joined to the one before at once. Every step is written to the recovery folder as soon as it is called. Window's thread only.

#include "core/course/draft.h"
#include "ui/document/bench_document.h"
#include "ui/document/file_actions.h"
#include "ui/window/actions.h"
#include "ui/window/message_bar.h"

#include <QObject>

#include <functional>
#include <optional>

namespace tiepoint::ui {

class LessonRecorder : public QObject {
    Q_OBJECT
public:
    using AskPath = std::function<void(const QString& suggestion, const FileActions::GivePath& give)>;

    LessonRecorder(BenchDocument& document, MessageBar& bar, const Actions& actions, const QString& folder,
                   QWidget* window);

    /// How a path is asked for; tests answer in a person's place.
    void setAskPath(AskPath ask) { askPath_ = std::move(ask); }
    const LessonDraft* draft() const { return draft_ ? &*draft_ : nullptr; }
    /// Where the lesson in the making is kept until it is saved.
    QString keptPath() const { return folder_ + QStringLiteral("/recorded.lesson.json"); }

private:
    void setRecording(bool recording);
    void askStep();
    void addStep(const QString& caption);
    void tellLast();
    void keep();
    void save();
    QString suggestion() const;

    BenchDocument& document_;
    MessageBar& bar_;
    const Actions& actions_;
    QString folder_;
    AskPath askPath_;
    std::optional<LessonDraft> draft_;
};

}  // namespace tiepoint::ui
