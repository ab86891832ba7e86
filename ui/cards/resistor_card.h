#pragma once
// The resistor helper: from supply, LED and wanted current the exact resistance and the one to take from the drawer, with its picture, the
// current that then runs, its heat, and a button that puts it in. Reckons nothing itself; says what is wanted.

#include "core/sizing/series_resistor.h"
#include "ui/cards/aside_card.h"
#include "ui/cards/value_field.h"

#include <optional>

namespace tiepoint::ui {

class ResistorCard : public AsideCard {
    Q_OBJECT
public:
    explicit ResistorCard(QWidget* parent);

    /// Starts from a supply, an LED and what stands in series with them, as the bench has them.
    void begin(const ResistorQuestion& question);
    void setDrawer(const ResistorDrawer& drawer);
    /// What the button would do: "Take 330 Ω for R1", or why it can't: "R1 has it"; empty where there is no place for the resistor.
    void setPlace(const QString& words, bool possible);

    const ResistorQuestion& question() const { return question_; }
    /// What to take, or nothing where there is no such resistor.
    const ResistorChoice* choice() const { return answer_ && answer_->ok() ? &answer_->value() : nullptr; }
    QString refusal() const;
    QToolButton* putButton() const { return put_; }
    ValueField* supplyField() const { return supply_; }
    ValueField* lightField() const { return light_; }
    ValueField* currentField() const { return current_; }

    bool isForRoom() const override { return true; }

Q_SIGNALS:
    void reckoned();  ///< another choice
    void putWanted();
    void drawerWanted();

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    void reckon();
    QString drawerWords() const;
    /// The resistor with its bands and its value, centred on a line that begins there.
    void paintResistor(QPainter& painter, QPointF at) const;

    ResistorQuestion question_;
    std::optional<Result<ResistorChoice>> answer_;
    QString place_, typo_;  ///< typo_: what was typed that is no number
    ValueField *supply_, *light_, *current_;
    QToolButton *put_, *drawer_;
};

}  // namespace tiepoint::ui
