#pragma once
// A small field over the board in which a part's value is typed. It keeps the keys until Enter accepts the value or Escape leaves it as it was;
// a refused value stays there to be mended, with the reason under it.

#include "ui/document/bench_document.h"
#include "ui/theme/look.h"

#include <QFrame>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

namespace tiepoint::ui {

/// Index of the value that people name a part by and type: a figure of a series, or what a supply is set to. -1: none.
int typedValueOf(const Part& part);

class ValueBox : public QFrame {
    Q_OBJECT
public:
    ValueBox(BenchDocument& document, QWidget* parent);

    void setLook(const Theme& theme);
    /// Opens beside a place of the parent, with what was typed so far (or the present value, selected).
    void begin(const std::string& partId, const QString& typed, QPoint beside);
    bool isTyping() const { return isVisible(); }
    QString reason() const { return reason_->text(); }
    QLineEdit& field() const { return *field_; }

Q_SIGNALS:
    void done();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override {
        event->accept();
    }  ///< what the field leaves, Enter, is not the board's
    void keyReleaseEvent(QKeyEvent* event) override { event->accept(); }

private:
    void followLook();
    void fitWords();
    void accept();
    void leave();
    std::optional<QString> trySet();

    BenchDocument& document_;
    Look look_;
    QLabel* title_;
    QLineEdit* field_;
    QLabel* reason_;
    std::string partId_;
    int value_ = -1;
};

}  // namespace tiepoint::ui
