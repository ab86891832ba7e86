#include "ui/cards/value_editor.h"

#include "core/bench/describe.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <QHBoxLayout>
#include <QScrollBar>

namespace tiepoint::ui {
namespace {

constexpr int kRows = 3;
constexpr double kValueRowHeight = 42;

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
      capRow_(new QWidget(this)),
      capLabel_(new QLabel(QStringLiteral("Letter on the cap"), capRow_)),
      cap_(new QLineEdit(capRow_)),
      helpKey_(new QToolButton(this)),
      help_(new QScrollArea(this)),
      helpLabel_(new QLabel) {
    setAccessibleName(QStringLiteral("Values of the selected part"));
    auto* capLayout = new QHBoxLayout(capRow_);
    capLayout->setContentsMargins(0, 0, 0, 0);
    capLayout->addWidget(capLabel_);
    capLayout->addWidget(cap_, 1);
    cap_->setMaxLength(1);
    connect(cap_, &QLineEdit::editingFinished, this, [this] { setCap(cap_->text()); });
    connect(cap_, &QLineEdit::returnPressed, this, &ValueEditor::done);

    helpKey_->setText(QStringLiteral("?"));
    helpKey_->setCheckable(true);
    helpKey_->setToolTip(QStringLiteral("What it is, its leads and its ratings"));
    connect(helpKey_, &QToolButton::toggled, this, &ValueEditor::showHelp);
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
    helpKey_->setChecked(false);
    arrangeCard();
}

void ValueEditor::addField(const ValueSpec& spec, bool isState) {
    ValueField* field = makeValueField(spec, this);
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
    if (const auto refusal = document_.push({"Letter of " + partId_, {ReplacePart{changed}}}))
        cap_->setToolTip(plainTip(*refusal));
    refresh();
}

void ValueEditor::beginTyping(const QString& typed) {
    if (fields_.empty()) return;
    showHelp(false);
    fields_.front()->takeKeyboard();
    if (auto* edit = qobject_cast<QLineEdit*>(focusWidget()); edit && !typed.isEmpty()) edit->insert(typed);
}

void ValueEditor::showHelp(bool shown) {
    helpKey_->setChecked(shown);
    help_->setVisible(shown);
    for (ValueField* field : fields_) field->setVisible(!shown);
    capRow_->setVisible(!shown && kind_ && kind_->hasCap);
}

QString ValueEditor::helpText() const { return helpLabel_->text(); }

void ValueEditor::arrangeCard() {
    setStyleSheet(fieldStyle(look()));
    const QRectF box = body();
    const double side = look().px(34);
    helpKey_->setGeometry(QRectF(box.right() - side, box.top() - look().px(4), side, side).toRect());
    const QRectF inside(box.left(), box.top() + look().px(40), box.width(), box.height() - look().px(40));
    help_->setGeometry(inside.toRect());
    helpLabel_->setFont(look().font(text::kSmall));
    capLabel_->setFont(look().font(text::kSmall));
    capLabel_->setFixedWidth(look().ipx(150));

    std::vector<QWidget*> rows(fields_.begin(), fields_.end());
    if (kind_ && kind_->hasCap) rows.push_back(capRow_);
    const bool twoColumns = rows.size() > kRows;
    const double gap = look().px(20);
    const double width = twoColumns ? (inside.width() - gap) / 2 : std::min(inside.width(), look().px(430));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double left = inside.left() + (i / kRows ? width + gap : 0);
        rows[i]->setGeometry(QRectF(left, inside.top() + static_cast<double>(i % kRows) * look().px(kValueRowHeight),
                                    width, look().px(kValueRowHeight - 4))
                                 .toRect());
    }
    for (ValueField* field : fields_) field->setLook(look());
}

void ValueEditor::paintBody(QPainter& painter) {
    const QRectF box = body().adjusted(0, 0, -look().px(46), 0);
    drawLine(painter, box, title_, look().font(text::kBody), look().theme->dimText);
}

}  // namespace tiepoint::ui
