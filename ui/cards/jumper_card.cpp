#include "ui/cards/jumper_card.h"

#include "core/bench/describe.h"
#include "core/edit/placement.h"
#include "ui/cards/reading_text.h"
#include "ui/paint/bench_painter.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QButtonGroup>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kColoursTop = 44, kShapesTop = 98, kButtonRowHeight = 46, kJumperButtonGap = 6, kLengthTop = 158;
constexpr double kJumperSampleMm = 9, kFlatCoatMm = 8, kFlatBreadthMm = 1.62, kSamplePixelsPerMm = 3.4;
constexpr double kShapeWord = 22, kShapeSample = 46;

std::string_view colourName(int colour) { return jumperColours()[static_cast<std::size_t>(colour)].name; }
QString wordOf(std::string_view text) { return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())); }

}  // namespace

/// A button with a jumper on it as it lies in the tray, and perhaps a word.
class JumperCard::Button : public QAbstractButton {
public:
    Button(const QString& name, bool showsWord, QWidget* parent) : QAbstractButton(parent), showsWord_(showsWord) {
        setText(name);
        setAccessibleName(name);
        setToolTip(name);
        setCheckable(true);
        setFocusPolicy(Qt::TabFocus);
        setAttribute(Qt::WA_Hover);
    }
    void show(const Look& look, int colour, bool flat) {
        look_ = look;
        colour_ = colour;
        flat_ = flat;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF face = QRectF(rect()).adjusted(1, 1, -1, -1);
        paintButton(painter, look_, face, {isChecked(), underMouse(), isDown(), hasFocus()});
        const double sample = showsWord_ ? look_.px(kShapeSample) : 0;
        if (showsWord_) {
            sheet_.begin();
            const double half = look_.px(kJumperSampleMm * kSamplePixelsPerMm / 2);
            sheet_.draw(painter, face.adjusted(look_.px(14), 0, -sample - half, 0), text(),
                        {look_.font(kShapeWord), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
        }
        const QPointF middle(showsWord_ ? face.right() - sample : face.center().x(), face.center().y());
        painter.translate(middle);
        painter.scale(look_.px(kSamplePixelsPerMm), look_.px(kSamplePixelsPerMm));
        if (flat_) return paintFlat(painter);
        painter.translate(0, 0.6);
        paintJumperSample(painter, *look_.theme, colour_, kJumperSampleMm);
    }

private:
    void paintFlat(QPainter& painter) const {
        const Theme& theme = *look_.theme;
        const auto line = [&](double half, const QColor& colour, double breadth) {
            painter.setPen(QPen(colour, breadth, Qt::SolidLine, Qt::FlatCap));
            painter.drawLine(QPointF(-half, 0), QPointF(half, 0));
        };
        line(kFlatCoatMm / 2 + 1.2, theme.metalEdge, 0.6);
        line(kFlatCoatMm / 2 + 0.2, theme.text, kFlatBreadthMm + 0.4);
        line(kFlatCoatMm / 2, theme.jumpers[static_cast<std::size_t>(colour_)], kFlatBreadthMm);
    }

    Look look_{&theme(ThemeName::Day), 1};
    WordSheet sheet_{this};
    bool showsWord_;
    int colour_ = 0;
    bool flat_ = false;
};

JumperCard::JumperCard(BenchDocument& document, QWidget* parent)
    : Card(parent),
      document_(document),
      arched_(new Button(QStringLiteral("Arched"), true, this)),
      flat_(new Button(QStringLiteral("Flat"), true, this)) {
    setAccessibleName(QStringLiteral("The selected jumper"));
    auto* colourGroup = new QButtonGroup(this);
    for (int i = 0; i < static_cast<int>(jumperColours().size()); ++i) {
        auto* button = new Button(wordOf(colourName(i)), false, this);
        colourGroup->addButton(button);
        connect(button, &QAbstractButton::clicked, this, [this, i] { colour(i); });
        colours_.push_back(button);
    }
    auto* shapeGroup = new QButtonGroup(this);
    for (QAbstractButton* button : {arched_, flat_}) {
        shapeGroup->addButton(button);
        connect(button, &QAbstractButton::clicked, this, [this, button] { lay(button == flat_); });
    }
}

void JumperCard::showJumper(const Picture& picture, const std::string& id) {
    const Jumper* jumper = picture.bench().findJumper(id);
    id_ = jumper ? id : std::string();
    if (!jumper) return;
    const ReadingText reading = readingText(picture, id);
    titles_ = reading.titles();
    current_ = reading.big;
    length_ = qs(wireInWords(picture.bench(), *picture.table, *jumper));
    for (std::size_t i = 0; i < colours_.size(); ++i) {
        colours_[i]->setChecked(static_cast<int>(i) == jumper->colour);
        static_cast<Button*>(colours_[i])->show(look(), static_cast<int>(i), jumper->flat);
    }
    (jumper->flat ? flat_ : arched_)->setChecked(true);
    static_cast<Button*>(arched_)->show(look(), jumper->colour, false);
    static_cast<Button*>(flat_)->show(look(), jumper->colour, true);
    setAccessibleDescription(QStringLiteral("%1. %2 Current %3.").arg(reading.title, length_, current_));
    update();
}

void JumperCard::push(Jumper changed, const std::string& what) {
    const auto bench = document_.bench();
    const Edit edit{what, {ReplaceJumper{std::move(changed)}}};
    const auto after = apply(*bench, edit);
    if (const auto why = after ? refusalOfChange(*bench, after->bench) : std::optional(after.error().message))
        Q_EMIT refused(qs(*why));
    else if (const auto refusal = document_.push(edit))
        Q_EMIT refused(*refusal);
    else
        return;
    // What was chosen isn't so: the buttons say again what is.
    const Jumper* jumper = bench->findJumper(id_);
    if (jumper) (jumper->flat ? flat_ : arched_)->setChecked(true);
}

void JumperCard::colour(int colour) {
    const Jumper* jumper = document_.bench()->findJumper(id_);
    if (!jumper || jumper->colour == colour) return;
    Jumper changed = *jumper;
    changed.colour = colour;
    push(std::move(changed), "Make " + id_ + " " + std::string(colourName(colour)));
}

void JumperCard::lay(bool flat) {
    const Jumper* jumper = document_.bench()->findJumper(id_);
    if (!jumper || jumper->flat == flat) return;
    Jumper changed = *jumper;
    changed.flat = flat;
    push(std::move(changed), flat ? "Lay " + id_ + " flat" : "Arch " + id_);
}

void JumperCard::arrangeCard() {
    const QRectF box = body();
    const auto row = [&](const std::vector<QAbstractButton*>& buttons, double top) {
        const double gap = look().px(kJumperButtonGap), count = static_cast<double>(buttons.size());
        const double width = (box.width() - (count - 1) * gap) / count;
        double left = box.left();
        for (QAbstractButton* button : buttons) {
            button->setGeometry(QRectF(left, box.top() + look().px(top), width, look().px(kButtonRowHeight)).toRect());
            left += width + gap;
        }
    };
    row(colours_, kColoursTop);
    row({arched_, flat_}, kShapesTop);
}

void JumperCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    const QRectF box = body();
    const double figure = figureWidth(current_, text::kBody);
    drawHeading(painter, QRectF(box.left(), box.top(), box.width() - figure - look().px(12), 0), titles_);
    drawFigure(painter, QRectF(box.right() - figure, box.top(), figure, 0), current_, text::kBody, theme.text);
    drawLine(painter, QRectF(box.left(), box.top() + look().px(kLengthTop), box.width(), 0), length_,
             look().font(text::kBody), theme.text);
}

}  // namespace tiepoint::ui
