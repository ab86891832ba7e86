#pragma once
// The card of the selected jumper: its colour, whether it lies flat or arched, how much wire it takes, and its current. Every change is
// one undo step.

#include "ui/cards/card.h"
#include "ui/document/bench_document.h"
#include "ui/paint/picture.h"

#include <QAbstractButton>

#include <string>
#include <vector>

namespace tiepoint::ui {

class JumperCard : public Card {
    Q_OBJECT
public:
    explicit JumperCard(BenchDocument& document, QWidget* parent = nullptr);

    /// Shows the jumper of that id as the picture has it; empty if the bench has none.
    void showJumper(const Picture& picture, const std::string& id);
    bool isEmpty() const { return id_.empty(); }
    const QString& lengthWords() const { return length_; }
    const QString& currentWords() const { return current_; }
    /// The buttons of the colours, in the order of jumperColours().
    const std::vector<QAbstractButton*>& colourButtons() const { return colours_; }
    QAbstractButton* archedButton() const { return arched_; }
    QAbstractButton* flatButton() const { return flat_; }

Q_SIGNALS:
    void refused(const QString& why);

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    class Button;
    void colour(int colour);
    void lay(bool flat);
    void push(Jumper changed, const std::string& what);

    BenchDocument& document_;
    std::string id_;
    QStringList titles_;  ///< the whole first
    QString length_, current_;
    std::vector<QAbstractButton*> colours_;
    QAbstractButton *arched_, *flat_;
};

}  // namespace tiepoint::ui
