#pragma once
// One line said to the person, with at most a few keys, above the bench. Never in the way: nothing waits for it.

#include "ui/theme/look.h"

#include <QLabel>
#include <QToolButton>
#include <QWidget>

#include <functional>
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

    explicit MessageBar(QWidget* parent);

    void setLook(const Look& look);
    void say(Tone tone, const QString& line, const std::vector<Offer>& offers = {});
    QString line() const { return line_; }
    const std::vector<QToolButton*>& keys() const { return keys_; }
    /// Places the bar along the upper edge of a frame of the parent's.
    void placeIn(const QRect& frame);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void addKey(const QString& word, const std::function<void()>& run);
    void arrange();

    Look look_;
    Tone tone_ = Tone::Notice;
    QString line_;
    QLabel* label_;
    std::vector<QToolButton*> keys_;
    QRect frame_;
};

}  // namespace tiepoint::ui
