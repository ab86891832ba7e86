#pragma once
// The card of a selected part: its values and states as fields, its letter, and its help. Walks the kind's tables; knows no kind.
// Changes go into the document as edits; a refusal is said beside the field.

#include "ui/cards/card.h"
#include "ui/cards/value_field.h"
#include "ui/document/bench_document.h"

#include <QLineEdit>
#include <QScrollArea>
#include <QToolButton>

#include <string>
#include <vector>

namespace tiepoint::ui {

class ValueEditor : public Card {
    Q_OBJECT
public:
    ValueEditor(BenchDocument& document, QWidget* parent);

    /// Shows the part with that id and follows it through edits; an id of anything else empties the card.
    void showPart(const std::string& id);
    const std::string& partId() const { return partId_; }
    bool isEmpty() const { return partId_.empty(); }
    const std::vector<ValueField*>& fields() const { return fields_; }
    /// Puts the keyboard into the first field, with `typed` in place of what stood there.
    void beginTyping(const QString& typed);
    void showHelp(bool shown);
    QString helpText() const;
    const QString& refusal() const { return refusal_; }  ///< why the last choice wasn't taken

Q_SIGNALS:
    void done();  ///< the keyboard may go back to the bench

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    void arrangeFields(double room);
    void rebuild(const Part& part);
    void addField(const ValueSpec& spec, bool isState);
    void refresh();
    void setSetting(ValueField& field, bool isState, double value);
    void setCap(const QString& letter);
    void sayRefusal(const QString& why);
    const Part* part() const;

    BenchDocument& document_;
    std::string partId_;
    const PartKind* kind_ = nullptr;
    std::vector<ValueField*> fields_;
    std::size_t firstState_ = 0;  ///< index of the first field that holds a state
    QScrollArea* form_;           ///< holds the fields: what has many scrolls
    QWidget* capRow_;
    QLabel* capLabel_;
    QLineEdit* cap_;
    QToolButton* helpButton_;
    QScrollArea* help_;
    QLabel* helpLabel_;
    QString title_, refusal_;
};

}  // namespace tiepoint::ui
