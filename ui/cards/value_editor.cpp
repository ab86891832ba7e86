#include "ui/cards/value_editor.h"

#include "core/bench/describe.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QScrollBar>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kRows = 3;                                ///< that stand whole with their names beside them
constexpr double kValueRowHeight = 42, kHeadRoom = 40;  ///< of a row; of the title
constexpr double kTallRowHeight = 66, kFieldsGap = 20;  ///< with the name above
constexpr double kBarRoom = 14;                         ///< of a scroll bar
constexpr double kHelpButton = 34;

QString paragraph(const char* heading, const std::string& words) {
    if (words.empty()) return {};
    return QStringLiteral("<p style='margin:0 0 6px 0'><b>%1</b> %2</p>")
        .arg(QString::fromLatin1(heading), qs(words).toHtmlEscaped());
}

QString leadLines(const PartKind& kind) {
    QStringList lines;
    for (const LeadSpec& lead : kind.leads)
        if (!lead.description.empty())
            lines << QStringLiteral("%1: %2").arg(qs(lead.name), qs(lead.description)).toHtmlEscaped();
    return lines.isEmpty()
               ? QString()
               : QStringLiteral("<p style='margin:0 0 6px 0'>%1.</p>").arg(lines.join(QStringLiteral("; ")));
}

}  // namespace

ValueEditor::ValueEditor(BenchDocument& document, QWidget* parent)
    : Card(parent),
      document_(document),
      form_(new QScrollArea(this)),
      capRow_(new QWidget),
      capLabel_(new QLabel(QStringLiteral("Letter on the cap"), capRow_)),
      cap_(new QLineEdit(capRow_)),
      helpButton_(new QToolButton(this)),
      help_(new QScrollArea(this)),
      helpLabel_(new QLabel) {
    setAccessibleName(QStringLiteral("Values of the selected part"));
    auto* fields = new QWidget;
    fields->setAutoFillBackground(false);
    capRow_->setParent(fields);
    form_->setWidget(fields);
    form_->setFrameShape(QFrame::NoFrame);
    form_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    form_->viewport()->setAutoFillBackground(false);
    form_->setFocusPolicy(Qt::NoFocus);
    auto* capLayout = new QHBoxLayout(capRow_);
    capLayout->setContentsMargins(0, 0, 0, 0);
    capLayout->addWidget(capLabel_);
    capLayout->addWidget(cap_, 1);
    cap_->setMaxLength(1);
    connect(cap_, &QLineEdit::editingFinished, this, [this] { setCap(cap_->text()); });
    connect(cap_, &QLineEdit::returnPressed, this, &ValueEditor::done);

    helpButton_->setText(QStringLiteral("?"));
    helpButton_->setCheckable(true);
    helpButton_->setToolTip(QStringLiteral("What it is, its leads and its ratings"));
    connect(helpButton_, &QToolButton::toggled, this, &ValueEditor::showHelp);
    helpLabel_->setWordWrap(true);
    helpLabel_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    helpLabel_->setTextFormat(Qt::RichText);
    help_->setWidget(helpLabel_);
    help_->setWidgetResizable(true);
    help_->setFrameShape(QFrame::NoFrame);
    help_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    help_->viewport()->setAutoFillBackground(false);
    help_->hide();
    // Another bench may have a part of another kind under the same id, so the fields are judged anew.
    connect(&document_, &BenchDocument::benchChanged, this, [this] { showPart(std::string(partId_)); });
}

const Part* ValueEditor::part() const { return partId_.empty() ? nullptr : document_.bench()->findPart(partId_); }

void ValueEditor::showPart(const std::string& id) {
    const Part* found = document_.bench()->findPart(id);
    const bool rebuilt = found && (found->kind != kind_ || partId_ != id);
    if (partId_ != id) sayRefusal({});
    partId_ = found ? id : std::string();
    if (rebuilt) rebuild(*found);
    refresh();
}

void ValueEditor::rebuild(const Part& part) {
    for (ValueField* field : fields_) field->deleteLater();  // one of them may be the sender
    fields_.clear();
    kind_ = part.kind;
    for (const ValueSpec& spec : kind_->values) addField(spec, false);
    firstState_ = fields_.size();
    for (const ValueSpec& spec : kind_->state) addField(spec, true);
    capRow_->setVisible(kind_->hasCap);
    helpLabel_->setText(paragraph("What it is.", kind_->help.what) + paragraph("Leads.", kind_->help.leads) +
                        leadLines(*kind_) + paragraph("Ratings.", kind_->help.ratings) +
                        paragraph("Beware.", kind_->help.caution));
    help_->verticalScrollBar()->setValue(0);
    helpButton_->setChecked(false);
    arrangeCard();
}

void ValueEditor::addField(const ValueSpec& spec, bool isState) {
    ValueField* field = makeValueField(spec, form_->widget());
    connect(field, &ValueField::refusalShown, this, &ValueEditor::sayRefusal);
    connect(field, &ValueField::chosen, this,
            [this, field, isState](double value) { setSetting(*field, isState, value); });
    connect(field, &ValueField::finished, this, &ValueEditor::done);
    field->show();
    fields_.push_back(field);
}

void ValueEditor::refresh() {
    const Part* shown = part();
    if (!shown) {
        partId_.clear();
        return;
    }
    title_ = qs(describePart(*shown));
    for (std::size_t i = 0; i < fields_.size(); ++i)
        fields_[i]->showValue(i < firstState_ ? shown->value(static_cast<int>(i))
                                              : shown->stateValue(static_cast<int>(i - firstState_)));
    if (!cap_->hasFocus()) cap_->setText(qs(shown->cap));
    update();
}

void ValueEditor::setSetting(ValueField& field, bool isState, double value) {
    if (!part()) return;
    const Edit edit = isState ? setStateEdit(*document_.bench(), partId_, field.spec().name, value)
                              : setValueEdit(*document_.bench(), partId_, field.spec().name, value);
    const auto refusal = document_.push(edit);
    field.showRefusal(refusal.value_or(QString()));
    if (refusal) refresh();
}

void ValueEditor::setCap(const QString& letter) {
    const Part* shown = part();
    const std::string cap = letter.trimmed().toUpper().toStdString();
    if (!shown || shown->cap == cap) return;
    Part changed = *shown;
    changed.cap = cap;
    const auto refusal = document_.push({"Letter of " + partId_, {ReplacePart{changed}}});
    cap_->setToolTip(plainTip(refusal.value_or(QString())));
    sayRefusal(refusal.value_or(QString()));
    refresh();
}

void ValueEditor::sayRefusal(const QString& why) {
    if (refusal_ == why) return;
    refusal_ = why;
    setAccessibleDescription(why);
    if (!why.isEmpty()) {
        QAccessibleEvent heard(this, QAccessible::Alert);
        QAccessible::updateAccessibility(&heard);
    }
    update();
}

void ValueEditor::beginTyping(const QString& typed) {
    if (fields_.empty()) return;
    showHelp(false);
    fields_.front()->takeKeyboard();
    if (auto* edit = qobject_cast<QLineEdit*>(focusWidget()); edit && !typed.isEmpty()) edit->insert(typed);
}

void ValueEditor::showHelp(bool shown) {
    helpButton_->setChecked(shown);
    help_->setVisible(shown);
    form_->setVisible(!shown);
    capRow_->setVisible(kind_ && kind_->hasCap);
}

QString ValueEditor::helpText() const { return helpLabel_->text(); }

void ValueEditor::arrangeCard() {
    setStyleSheet(fieldStyle(look()) +
                  QStringLiteral("QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; }"));
    const QRectF box = body();
    const double side = look().px(kHelpButton);
    helpButton_->setGeometry(QRectF(box.right() - side, box.top() - look().px(4), side, side).toRect());
    const QRectF inside(box.left(), box.top() + look().px(kHeadRoom), box.width() + look().px(kBarRoom),
                        box.height() - look().px(kHeadRoom));
    help_->setGeometry(inside.toRect());
    form_->setGeometry(inside.toRect());
    helpLabel_->setFont(look().font(text::kSmall));
    capLabel_->setFont(look().font(text::kSmall));
    capLabel_->setFixedWidth(look().ipx(ValueField::kLabelWidth));
    arrangeFields(box.width());
}

/// A few rows have their names beside them; more stand in two columns with the names above.
void ValueEditor::arrangeFields(double room) {
    std::vector<QWidget*> rows(fields_.begin(), fields_.end());
    if (kind_ && kind_->hasCap) rows.push_back(capRow_);
    const bool tall = rows.size() > kRows;
    const double high = look().px(tall ? kTallRowHeight : kValueRowHeight);
    const double width = tall ? (room - look().px(kFieldsGap)) / 2 : room;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double left = tall && i % 2 == 1 ? width + look().px(kFieldsGap) : 0;
        const double top = static_cast<double>(tall ? i / 2 : i) * high;
        rows[i]->setGeometry(QRectF(left, top, width, high - look().px(4)).toRect());
    }
    for (ValueField* field : fields_) field->setLook(look(), tall ? 0 : ValueField::kLabelWidth);
    const double lines = std::ceil(tall ? static_cast<double>(rows.size()) / 2 : static_cast<double>(rows.size()));
    form_->widget()->resize(qRound(room), qRound(lines * high));
    form_->verticalScrollBar()->setSingleStep(qRound(high / 2));
}

void ValueEditor::paintBody(QPainter& painter) {
    const QRectF box = body().adjusted(0, 0, -look().px(kHelpButton + 12), 0);
    if (refusal_.isEmpty()) return drawLine(painter, box, title_, look().font(text::kBody), look().theme->dimText);
    drawBlock(painter, QRectF(box.left(), box.top() - look().px(8), box.width(), look().px(kHeadRoom + 4)), refusal_,
              look().font(text::kSmall), look().theme->overload, Qt::AlignLeft | Qt::AlignVCenter);
}

}  // namespace tiepoint::ui
