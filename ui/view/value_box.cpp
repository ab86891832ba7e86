#include "ui/view/value_box.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "ui/theme/qs.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace tiepoint::ui {
namespace {

// In the 1080-line layout.
constexpr double kFieldWidth = 165, kBoxText = 24, kBoxAway = 18, kReasonWidth = 640;
constexpr double kBoxSide = 12, kBoxRise = 9;

}  // namespace

int typedValueOf(const Part& part) {
    const PartKind& kind = *part.kind;
    for (std::size_t i = 0; i < kind.values.size(); ++i) {
        const ValueSpec& spec = kind.values[i];
        const bool named = !spec.series.empty() || !spec.allowed.empty() || kind.isSupply;
        if (spec.type == ValueType::Number && named) return static_cast<int>(i);
    }
    return -1;
}

ValueBox::ValueBox(BenchDocument& document, QWidget* parent)
    : QFrame(parent),
      document_(document),
      look_{&theme(ThemeName::Day), 1},
      title_(new QLabel(this)),
      field_(new QLineEdit(this)),
      reason_(new QLabel(this)) {
    for (QLabel* label : {title_, reason_}) label->setTextFormat(Qt::PlainText);
    auto* row = new QHBoxLayout;
    row->addWidget(title_);
    row->addWidget(field_);
    auto* column = new QVBoxLayout(this);
    column->addLayout(row);
    column->addWidget(reason_);
    reason_->setWordWrap(true);
    field_->setAccessibleName(tr("Value"));
    field_->installEventFilter(this);
    connect(field_, &QLineEdit::returnPressed, this, &ValueBox::accept);
    // The window has what is typed taken over before a bench is saved or goes; on another bench it has no place.
    connect(field_, &QLineEdit::editingFinished, this, [this] {
        if (isVisible() && !trySet()) leave();
    });
    connect(&document_, &BenchDocument::benchReplaced, this, [this] {
        if (isVisible()) leave();
    });
    connect(field_, &QLineEdit::textEdited, this, [this] {
        reason_->clear();
        reason_->hide();
        fitWords();
    });
    hide();
}

void ValueBox::setLook(const Theme& theme) {
    look_.theme = &theme;
    followLook();
}

/// It is as large as the window's other words.
void ValueBox::followLook() {
    look_ = lookFor(*look_.theme, window()->size());
    const Theme& theme = *look_.theme;
    setFont(look_.font(kBoxText));
    for (QWidget* each : {static_cast<QWidget*>(title_), static_cast<QWidget*>(field_), static_cast<QWidget*>(reason_)})
        each->setFont(font());
    const int side = look_.ipx(kBoxSide), rise = look_.ipx(kBoxRise);
    layout()->setContentsMargins(side, rise, side, rise);
    field_->setFixedWidth(look_.ipx(kFieldWidth));
    setStyleSheet(
        QStringLiteral(
            "tiepoint--ui--ValueBox { background: %1; border: %5px solid %2; border-radius: %6px; }"
            "QLabel { color: %3; background: transparent; }"
            "QLineEdit { color: %3; background: %1; border: 1px solid %4; border-radius: 3px; padding: 2px 4px; }")
            .arg(theme.card.name(), theme.accent.name(), theme.text.name(), theme.dimText.name())
            .arg(std::max(1, look_.ipx(3)))
            .arg(look_.ipx(9)));
    reason_->setStyleSheet(QStringLiteral("color: %1;").arg(theme.overload.name()));
    reason_->setFixedWidth(std::min(look_.ipx(kReasonWidth), std::max(1, parentWidget()->width() - 4 * side)));
}

/// As large as what is in it now. Only activating makes the row of the layout forget the words that it held before.
void ValueBox::fitWords() {
    layout()->invalidate();
    layout()->activate();
    resize(layout()->totalSizeHint());
}

void ValueBox::begin(const std::string& partId, const QString& typed, QPoint beside) {
    const Part* part = document_.bench()->findPart(partId);
    value_ = part ? typedValueOf(*part) : -1;
    if (value_ < 0) return;
    partId_ = partId;
    followLook();
    const ValueSpec& spec = part->kind->values[static_cast<std::size_t>(value_)];
    title_->setText(
        QStringLiteral("%1 %2").arg(QString::fromStdString(partId), QString::fromStdString(spec.label).toLower()));
    reason_->hide();
    field_->setPlaceholderText(qs(unitOf(spec.unit).symbol));
    if (typed.isEmpty()) {
        field_->setText(QString::fromStdString(formatSetting(part->value(value_), spec.unit)));
        field_->selectAll();
    } else {
        field_->setText(typed);
    }
    fitWords();
    const QRect room = parentWidget()->rect();
    move(qBound(room.left(), beside.x() + look_.ipx(kBoxAway), qMax(room.left(), room.right() - width())),
         qBound(room.top(), beside.y() + look_.ipx(kBoxAway), qMax(room.top(), room.bottom() - height())));
    show();
    raise();
    field_->setFocus();
}

std::optional<QString> ValueBox::trySet() {
    const Part* part = document_.bench()->findPart(partId_);
    if (!part) return std::nullopt;
    const ValueSpec& spec = part->kind->values[static_cast<std::size_t>(value_)];
    const auto value = parseQuantity(field_->text().toStdString(), spec.unit);
    if (!value) {
        const Unit unit = unitOf(spec.unit);
        return tr("that isn't a value in %1; %2 are").arg(qs(unit.symbol), qs(unit.examples));
    }
    if (*value < spec.minimum || *value > spec.maximum) {
        return tr("from %1 to %2")
            .arg(QString::fromStdString(formatSetting(spec.minimum, spec.unit)),
                 QString::fromStdString(formatSetting(spec.maximum, spec.unit)));
    }
    return document_.push(setValueEdit(*document_.bench(), partId_, spec.name, *value));
}

void ValueBox::accept() {
    if (const auto why = trySet()) {
        reason_->setText(*why);
        reason_->show();
        fitWords();
        const QRect room = parentWidget()->rect();
        move(std::max(room.left(), std::min(x(), room.right() - width())),
             std::max(room.top(), std::min(y(), room.bottom() - height())));
        return;
    }
    leave();
}

void ValueBox::leave() {
    hide();
    Q_EMIT done();
}

bool ValueBox::eventFilter(QObject* watched, QEvent* event) {
    // Keys typed here are the field's: no shortcut of the window may take them.
    if (event->type() == QEvent::ShortcutOverride) {
        event->accept();
        return true;
    }
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        leave();
        return true;
    }
    if (event->type() == QEvent::FocusOut && isVisible() &&
        static_cast<QFocusEvent*>(event)->reason() == Qt::MouseFocusReason) {
        trySet();  // a click elsewhere accepts what can be accepted
        leave();
    }
    return QFrame::eventFilter(watched, event);
}

}  // namespace tiepoint::ui
