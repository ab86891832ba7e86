#pragma once
// One field of the value editor, made from a value's description alone: a number with its unit, one of several choices, or a
// switch. Knows no kind of part. Says what a person chose; the editor turns it into an edit.

#include "core/parts/part_kind.h"
#include "ui/theme/look.h"

#include <QLabel>
#include <QWidget>

#include <functional>

namespace tiepoint::ui {

class ValueField : public QWidget {
    Q_OBJECT
public:
    /// `spec` outlives the field (it belongs to the catalogue).
    ValueField(const ValueSpec& spec, QWidget* parent);

    const ValueSpec& spec() const { return spec_; }
    static constexpr double kLabelWidth = 184;
    /// `labelWidth` of the label beside the editor; 0: it stands above it.
    virtual void setLook(const Look& look, double labelWidth = kLabelWidth);
    virtual void showValue(double value) = 0;
    /// Puts the keyboard into the field with its content marked, so that typing replaces it.
    virtual void takeKeyboard() = 0;
    /// Marks the field where the last choice wasn't taken; its card says why. Empty clears it.
    void showRefusal(const QString& why);

Q_SIGNALS:
    void chosen(double value);
    void refusalShown(const QString& why);  ///< or empty, when there is none any more
    void finished();                        ///< Return or Escape: the keyboard may go back to the bench

protected:
    void setEditor(QWidget* editor);

private:
    const ValueSpec& spec_;
    QLabel* label_;
    QWidget* editor_ = nullptr;
};

/// The field that suits a value's type.
ValueField* makeValueField(const ValueSpec& spec, QWidget* parent);

/// Style sheet for line edits, lists and boxes on a card.
QString fieldStyle(const Look& look);

}  // namespace tiepoint::ui
