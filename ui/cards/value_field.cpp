#include "ui/cards/value_field.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "core/parts/ladder.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QToolButton>

namespace tiepoint::ui {
namespace {

/// A number: typed with its unit or letter code, or stepped with the arrow keys and the two small keys.
class NumberField : public ValueField {
public:
    NumberField(const ValueSpec& spec, QWidget* parent)
        : ValueField(spec, parent),
          row_(new QWidget(this)),
          edit_(new QLineEdit(row_)) {
        auto* layout = new QHBoxLayout(row_);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->setSpacing(2);
        layout->addWidget(edit_, 1);
        addStep(QStringLiteral("\u2212"), -1);
        addStep(QStringLiteral("+"), 1);
        edit_->setAccessibleName(qs(spec.label));
        edit_->installEventFilter(this);
        connect(edit_, &QLineEdit::editingFinished, this, [this] { commit(); });
        setEditor(row_);
    }

    void showValue(double value) override {
        value_ = value;
        edit_->setText(qs(formatSetting(value, spec().unit)));
        edit_->setModified(false);
    }
    void takeKeyboard() override {
        edit_->setFocus(Qt::ShortcutFocusReason);
        edit_->selectAll();
    }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (event->type() != QEvent::KeyPress) return ValueField::eventFilter(watched, event);
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Up || key == Qt::Key_Down) {
            step(key == Qt::Key_Up ? 1 : -1);
            return true;
        }
        if (key == Qt::Key_Escape) {
            showValue(value_);
            Q_EMIT finished();
            return true;
        }
        if (key != Qt::Key_Return && key != Qt::Key_Enter) return ValueField::eventFilter(watched, event);
        if (commit()) Q_EMIT finished();
        return true;
    }

private:
    void addStep(const QString& sign, int steps) {
        auto* button = new QToolButton(row_);
        button->setText(sign);
        button->setFocusPolicy(Qt::NoFocus);
        connect(button, &QToolButton::clicked, this, [this, steps] { step(steps); });
        row_->layout()->addWidget(button);
    }
    void step(int steps) {
        showRefusal({});
        Q_EMIT chosen(ladderStep(spec(), value_, steps));
    }
    /// Takes what was typed; false if it is no number.
    bool commit() {
        if (!edit_->isModified()) return true;
        const auto typed = parseQuantity(edit_->text().trimmed().toStdString(), spec().unit);
        if (!typed) {
            const QString unit =
                spec().unit.empty() ? QString() : QStringLiteral(" in ") + qs(unitOf(spec().unit).symbol);
            showRefusal(QStringLiteral("That is no number%1.").arg(unit));
            return false;
        }
        edit_->setModified(false);
        showRefusal({});
        Q_EMIT chosen(*typed);
        return true;
    }

    QWidget* row_;
    QLineEdit* edit_;
    double value_ = 0;
};

/// A list with a small angle that says so; style sheets draw none.
class ListBox : public QComboBox {
public:
    using QComboBox::QComboBox;
    void setLook(const Look& look) {
        look_ = look;
        update();
    }

protected:
    void paintEvent(QPaintEvent* event) override {
        QComboBox::paintEvent(event);
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(look_.theme->dimText, look_.px(2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        const QPointF middle(width() - look_.px(18), height() / 2.0);
        const double reach = look_.px(5);
        painter.drawPolyline(QPolygonF({middle + QPointF(-reach, -reach / 2), middle + QPointF(0, reach / 2),
                                        middle + QPointF(reach, -reach / 2)}));
    }

private:
    Look look_{&theme(ThemeName::Day), 1};
};

/// A number as a person reads it; one without a unit that can't be a whole is a share of something, a tolerance for example.
QString numberInWords(const ValueSpec& spec, double number) {
    constexpr double kPercent = 100;
    const bool isShare = spec.unit.empty() && spec.maximum < 1;
    return isShare ? qs(formatSetting(number * kPercent, {})) + QStringLiteral(" %")
                   : qs(formatSetting(number, spec.unit));
}

/// One of several: choices by their label, or the allowed numbers.
class ListField : public ValueField {
public:
    ListField(const ValueSpec& spec, QWidget* parent) : ValueField(spec, parent), list_(new ListBox(this)) {
        list_->setAccessibleName(qs(spec.label));
        if (spec.type == ValueType::Choice)
            for (std::size_t i = 0; i < spec.choices.size(); ++i)
                list_->addItem(qs(spec.choices[i].label), static_cast<double>(i));
        else
            for (const double number : spec.allowed) list_->addItem(numberInWords(spec, number), number);
        connect(list_, &QComboBox::activated, this,
                [this](int index) { Q_EMIT chosen(list_->itemData(index).toDouble()); });
        setEditor(list_);
    }

    void showValue(double value) override {
        int index = list_->findData(value);
        if (index < 0) {  // a file may hold a number that the window doesn't offer
            list_->addItem(numberInWords(spec(), value), value);
            index = list_->count() - 1;
        }
        list_->setCurrentIndex(index);
    }
    void takeKeyboard() override { list_->setFocus(Qt::ShortcutFocusReason); }
    void setLook(const Look& look, double labelWidth) override {
        ValueField::setLook(look, labelWidth);
        list_->setLook(look);
    }

private:
    ListBox* list_;
};

class SwitchField : public ValueField {
public:
    SwitchField(const ValueSpec& spec, QWidget* parent) : ValueField(spec, parent), box_(new QCheckBox(this)) {
        box_->setAccessibleName(qs(spec.label));
        connect(box_, &QCheckBox::clicked, this, [this](bool on) { Q_EMIT chosen(on ? 1 : 0); });
        setEditor(box_);
    }
    void showValue(double value) override {
        box_->setChecked(value != 0);
        box_->setText(value != 0 ? QStringLiteral("on") : QStringLiteral("off"));
    }
    void takeKeyboard() override { box_->setFocus(Qt::ShortcutFocusReason); }

private:
    QCheckBox* box_;
};

}  // namespace

ValueField::ValueField(const ValueSpec& spec, QWidget* parent)
    : QWidget(parent),
      spec_(spec),
      label_(new QLabel(this)) {
    auto* layout = new QBoxLayout(QBoxLayout::LeftToRight, this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(label_, 0);
    label_->setTextFormat(Qt::PlainText);
    label_->setText(qs(spec.label));
}

void ValueField::setEditor(QWidget* editor) {
    editor_ = editor;
    layout()->addWidget(editor);
    static_cast<QBoxLayout*>(layout())->setStretchFactor(editor, 1);
    label_->setBuddy(editor);
}

void ValueField::setLook(const Look& look, double labelWidth) {
    label_->setFont(look.font(text::kSmall));
    const bool beside = labelWidth > 0;
    label_->setMinimumWidth(beside ? look.ipx(labelWidth) : 0);
    label_->setMaximumWidth(beside ? look.ipx(labelWidth) : QWIDGETSIZE_MAX);
    auto* row = static_cast<QBoxLayout*>(layout());
    row->setDirection(beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    row->setSpacing(look.ipx(beside ? 6 : 1));
}

void ValueField::showRefusal(const QString& why) {
    label_->setProperty("refused", !why.isEmpty());
    setToolTip(plainTip(why));
    editor_->setAccessibleDescription(why);
    style()->polish(label_);
    Q_EMIT refusalShown(why);
}

ValueField* makeValueField(const ValueSpec& spec, QWidget* parent) {
    if (spec.type == ValueType::Switch) return new SwitchField(spec, parent);
    if (spec.type == ValueType::Choice || !spec.allowed.empty()) return new ListField(spec, parent);
    return new NumberField(spec, parent);
}

QString fieldStyle(const Look& look) {
    const Theme& theme = *look.theme;
    const QColor face = theme.dark ? mix(theme.card, QColor(Qt::black), 0.25) : mix(theme.card, QColor(Qt::white), 0.6);
    const QColor edge = mix(theme.cardEdge, theme.dimText, 0.45);
    return QStringLiteral(
               "QLabel { color: %1; background: transparent; } QLabel[refused=\"true\"] { color: %2; }"
               "QLineEdit, QComboBox { color: %3; background: %4; border: 1px solid %5; border-radius: %6px; padding: "
               "0 %7px; font-family: '%11'; "
               "min-height: %8px; font-size: %9px; selection-background-color: %10; selection-color: %4; }"
               "QLineEdit:focus, QComboBox:focus { border: 2px solid %10; }"
               "QComboBox::drop-down { border: none; width: %8px; }"
               "QComboBox QAbstractItemView { color: %3; background: %4; selection-background-color: %10; "
               "selection-color: %4; }"
               "QToolButton { color: %3; background: transparent; border: 1px solid %5; border-radius: %6px; "
               "min-width: %8px; "
               "min-height: %8px; font-size: %9px; } QToolButton:hover { border-color: %10; }"
               "QCheckBox { color: %3; font-size: %9px; }"
               "QCheckBox::indicator { width: %12px; height: %12px; border: 2px solid %5; border-radius: 4px; "
               "background: %4; }"
               "QCheckBox::indicator:checked { background: %10; border-color: %10; } QCheckBox:focus { color: %10; }")
               .arg(theme.dimText.name(), theme.overload.name(), theme.text.name(), face.name(), edge.name())
               .arg(look.ipx(5))
               .arg(look.ipx(10))
               .arg(look.ipx(32))
               .arg(look.ipx(text::kSmall + 1))
               .arg(theme.accent.name(), uiFont(1).family())
               .arg(look.ipx(24)) +
           scrollBarStyle(look);
}

}  // namespace tiepoint::ui
