#pragma once
// What is said to the person and what is asked, above the bench. A notice is never in the way: nothing waits for it. A question stands until
// it is answered, and takes the keyboard: Enter gives the answer that loses nothing, which is shown as the first choice, Escape cancels, Tab
// goes from button to button. The bench can be worked on meanwhile. One question stands at a time, the next waits behind it; what is said
// meanwhile is shown afterwards.

#include "ui/theme/look.h"

#include <QLabel>
#include <QLineEdit>
#include <QPointer>
#include <QToolButton>
#include <QWidget>

#include <deque>
#include <functional>
#include <optional>
#include <vector>

namespace tiepoint::ui {

class MessageBar : public QWidget {
    Q_OBJECT
public:
    enum class Tone { Notice, Trouble };
    struct Offer {
        QString word;
        std::function<void()> run;  ///< the bar closes first
    };
    struct Question {
        Tone tone = Tone::Notice;
        QString line;  ///< the question itself
        QString more;  ///< what follows from the answers; may be empty
        std::vector<Offer> answers;
        std::size_t safe = 0;          ///< the answer that Enter gives
        std::function<void()> cancel;  ///< Escape, or the bench that it was about is gone
        bool phrase = false;           ///< a phrase is asked for, ...
        bool masked = true;            ///< ... which isn't shown while it is typed
    };

    explicit MessageBar(QWidget* parent);

    void setLook(const Look& look);
    void say(Tone tone, const QString& line, const std::vector<Offer>& offers = {});
    void ask(Question question);
    /// Cancels every question, as when the bench that they are about goes.
    void cancelQuestions();
    /// Gives the keyboard to the question that stands, which someone may have forgotten.
    void remind();
    /// Takes a notice away. A question stays.
    void dismiss();

    bool isAsking() const { return question_.has_value(); }
    QString line() const { return line_; }
    QString more() const { return more_; }
    const std::vector<QToolButton*>& buttons() const { return buttons_; }
    /// What was typed where a phrase is asked for.
    QLineEdit& phrase() const { return *phrase_; }
    /// Places the bar along the upper edge of a frame of the parent's.
    void placeIn(const QRect& frame);

Q_SIGNALS:
    void left();  ///< a question was answered, and nothing has taken the keyboard

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    struct Notice {
        Tone tone;
        QString line;
        std::vector<Offer> offers;
    };
    void show(Tone tone, const QString& line, const QString& more);
    void showNotice(const Notice& notice);
    void showQuestion();
    void showNext();
    void finish(const std::function<void()>& answer);
    void addButton(const QString& word, const std::function<void()>& run);
    QString buttonStyle() const;
    void arrange();
    QSize textSize(double breadth) const;

    Look look_;
    Tone tone_ = Tone::Notice;
    QString line_, more_;
    QLabel *label_, *moreLabel_;
    QLineEdit* phrase_;
    std::vector<QToolButton*> buttons_;
    std::optional<Question> question_;
    std::deque<Question> waiting_;
    std::optional<Notice> after_;  ///< said while a question stood
    QPointer<QWidget> before_;     ///< had the keyboard when the question came
    QRect frame_;
};

}  // namespace tiepoint::ui
