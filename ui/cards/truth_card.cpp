#include "ui/cards/truth_card.h"

#include "ui/cards/part_tint.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kRowHeight = 29;
constexpr double kTop = 2;
constexpr double kLetterSize = 21;
constexpr double kColumnPad = 20;
constexpr double kDisc = 17;
constexpr double kSentenceShare = 0.4;  // of the card, at least, for what stands beside the table
constexpr double kBetween = 30;
constexpr int kWheelStep = 120;
constexpr int kWheelRows = 2;
constexpr float kLampLightness = 0.52F;

/// What the table says in words.
QStringList sentencesOf(const TableAnswer& answer) {
    if (!answer.table.ok())
        return {QStringLiteral("No table: ") + qs(answer.table.error().message) + QStringLiteral(".")};
    const TruthTable& table = *answer.table;
    QStringList sentences;
    if (table.lamps.empty()) sentences << QStringLiteral("No lamp on this bench.");
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp) {
        if (!table.logic[lamp]) continue;
        const Expression& logic = table.logic[lamp]->expression;
        const QString id = qs(answer.bench->parts[table.lamps[lamp]].id),
                      words = qs(logic.inWords(table.switchNames()));
        sentences << (logic.isConstant() ? QStringLiteral("%1 is %2 lit").arg(id, words)
                                         : QStringLiteral("%1 = %2").arg(id, words));
    }
    for (const int index : table.idle)
        sentences << QStringLiteral("%1 changes nothing").arg(qs(table.switches[index].name));
    return sentences;
}

/// What a 1 in the table means: "1: S1, S2 pressed; S3 towards b".
QString meaningOf(const TruthTable& table) {
    std::vector<std::pair<std::string, QStringList>> byPosition;
    for (const TruthSwitch& column : table.switches) {
        const std::string& position = column.positions[1];
        auto known = std::ranges::find(byPosition, position, &std::pair<std::string, QStringList>::first);
        if (known == byPosition.end()) known = byPosition.insert(known, {position, {}});
        known->second << qs(column.name);
    }
    QStringList parts;
    for (const auto& [position, names] : byPosition)
        parts << names.join(QStringLiteral(", ")) + QLatin1Char(' ') + qs(position);
    return QStringLiteral("1: ") + parts.join(QStringLiteral("; "));
}

}  // namespace

TruthCard::TruthCard(QWidget* parent) : AsideCard(parent) {
    setAccessibleName(QStringLiteral("Truth table"));
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
}

void TruthCard::showTable(std::shared_ptr<const TableAnswer> answer) {
    answer_ = std::move(answer);
    stale_ = false;
    sentences_ = sentencesOf(*answer_);
    setAccessibleDescription(sentences_.join(QStringLiteral(". ")));
    setToolTip(sentences_.join(QLatin1Char('\n')));
    scrollTo(first_);
    update();
}

void TruthCard::showStale() {
    stale_ = true;
    update();
}

void TruthCard::showPresent(int row) {
    if (present_ == row) return;
    present_ = row;
    if (row >= 0 && row < first_) scrollTo(row);
    if (row >= first_ + visibleRows()) scrollTo(row - visibleRows() + 1);
    update();
}

void TruthCard::arrangeCard() {
    AsideCard::arrangeCard();
    scrollTo(first_);
}

TruthCard::Columns TruthCard::columns() const {
    const TruthTable& shown = *table();
    const auto widths = [&](double size) {
        const QFontMetricsF metrics(look().font(size, QFont::DemiBold));
        const double pad = look().px(kColumnPad) * size / kLetterSize;
        std::vector<double> each;
        for (const TruthSwitch& column : shown.switches)
            each.push_back(metrics.horizontalAdvance(qs(column.name)) + pad);
        const double lamp = look().px(kDisc) + metrics.horizontalAdvance(QStringLiteral(" 100 %")) + pad;
        for (const int part : shown.lamps) {
            each.push_back(std::max(lamp, metrics.horizontalAdvance(qs(answer_->bench->parts[part].id)) + pad));
        }
        return each;
    };
    const double room = body().width() * (1 - kSentenceShare);
    Columns found;
    found.size = kLetterSize;
    auto each = widths(found.size);
    double sum = 0;
    for (const double width : each) sum += width;
    if (sum > room) {  // many switches: smaller letters, so that no column is lost
        found.size *= room / sum;
        each = widths(found.size);
    }
    found.edges.push_back(body().left());
    for (const double width : each) found.edges.push_back(found.edges.back() + width);
    return found;
}

int TruthCard::visibleRows() const {
    const double height = body().height() - look().px(kTop) - look().px(kRowHeight);
    return std::max(1, static_cast<int>(height / look().px(kRowHeight)));
}

void TruthCard::scrollTo(int first) {
    const int rows = table() ? static_cast<int>(table()->rows.size()) : 0;
    first_ = std::clamp(first, 0, std::max(0, rows - visibleRows()));
    update();
}

QRectF TruthCard::rowBox(int row) const {
    if (!table() || row < first_ || row >= first_ + visibleRows() || row >= static_cast<int>(table()->rows.size()))
        return {};
    const double height = look().px(kRowHeight);
    const Columns found = columns();
    return {found.edges.front() - look().px(6), body().top() + look().px(kTop) + height * (1 + row - first_),
            found.edges.back() - found.edges.front() + look().px(6), height};
}

int TruthCard::rowAt(QPointF at) const {
    for (int row = first_; row < first_ + visibleRows(); ++row) {
        if (rowBox(row).contains(at)) return row;
    }
    return -1;
}

// --- painting ---

void TruthCard::paintBody(QPainter& painter) {
    double left = body().left();
    if (table()) {
        const Columns found = columns();
        paintHeader(painter, found);
        for (int row = first_; row < first_ + visibleRows() && row < static_cast<int>(table()->rows.size()); ++row)
            paintRow(painter, found, row);
        paintScroll(painter, found.edges.back() + look().px(6));
        left = found.edges.back() + look().px(kBetween);
    }
    paintSentences(painter, left);
}

void TruthCard::paintHeader(QPainter& painter, const Columns& columns) const {
    const TruthTable& shown = *table();
    const QFont font = look().font(columns.size, QFont::DemiBold);
    const double top = body().top() + look().px(kTop);
    for (std::size_t i = 0; i + 1 < columns.edges.size(); ++i) {
        const bool lamp = i >= shown.switches.size();
        const QString name =
            lamp ? qs(answer_->bench->parts[shown.lamps[i - shown.switches.size()]].id) : qs(shown.switches[i].name);
        drawLine(painter, QRectF(columns.edges[i], top, columns.edges[i + 1] - columns.edges[i], 0), name, font,
                 look().theme->text);
    }
    const double below = top + look().px(kRowHeight) - look().px(2);
    painter.setPen(QPen(look().theme->cardEdge, look().px(2)));
    painter.drawLine(QPointF(columns.edges.front(), below), QPointF(columns.edges.back() - look().px(8), below));
    if (shown.switches.empty() || shown.lamps.empty()) return;
    const double between = columns.edges[shown.switches.size()] - look().px(9);
    painter.drawLine(
        QPointF(between, top),
        QPointF(between,
                rowBox(std::min<int>(first_ + visibleRows(), static_cast<int>(shown.rows.size())) - 1).bottom()));
}

void TruthCard::paintRow(QPainter& painter, const Columns& columns, int index) const {
    const TruthTable& shown = *table();
    const Theme& theme = *look().theme;
    const TruthRow& row = shown.rows[index];
    const QRectF box = rowBox(index);
    if (index == present_ || index == hovered_) {
        painter.setPen(index == present_ ? QPen(theme.accent, look().px(2)) : QPen(Qt::NoPen));
        painter.setBrush(withAlpha(theme.accent, index == hovered_ ? 0.14 : 0.07));
        painter.drawRoundedRect(box.adjusted(0, look().px(1), 0, -look().px(1)), look().px(5), look().px(5));
    }
    const QFont font = look().font(columns.size);
    const double top = box.center().y() - QFontMetricsF(font).height() / 2;
    for (std::size_t i = 0; i < shown.switches.size(); ++i) {
        const int digit = row.digits[i];
        drawLine(painter, QRectF(columns.edges[i], top, columns.edges[i + 1] - columns.edges[i], 0),
                 QString::number(digit), look().font(columns.size, digit != 0 ? QFont::DemiBold : QFont::Normal),
                 digit != 0 ? theme.text : theme.dimText);
    }
    for (std::size_t lamp = 0; lamp < shown.lamps.size(); ++lamp) {
        const std::size_t i = shown.switches.size() + lamp;
        paintLamp(painter, QRectF(columns.edges[i], box.top(), columns.edges[i + 1] - columns.edges[i], box.height()),
                  row, lamp, columns.size);
    }
}

QString TruthCard::lampWords(const TruthRow& row, std::size_t lamp) const {
    if (row.status == Status::None) return QStringLiteral("none");
    const LampState& state = row.lamps[lamp];
    return state.lit ? QStringLiteral("%1 %").arg(std::round(100 * state.brightness)) : QStringLiteral("dark");
}

void TruthCard::paintLamp(QPainter& painter, const QRectF& box, const TruthRow& row, std::size_t lamp,
                          double size) const {
    if (stale_) return;
    const Theme& theme = *look().theme;
    const LampState& state = row.lamps[lamp];
    const QColor tint = partTint(theme, answer_->bench->parts[table()->lamps[lamp]]);
    const QColor light = QColor::fromHslF(std::max(0.0F, tint.hslHueF()), tint.hslSaturationF(), kLampLightness);
    const double radius = look().px(kDisc) / 2 * size / kLetterSize;
    const QPointF centre(box.left() + radius + look().px(1), box.center().y());
    if (state.lit && !theme.flat) {  // a halo that grows with the light, as on the bench
        painter.setPen(Qt::NoPen);
        painter.setBrush(withAlpha(light, 0.35 * state.brightness));
        painter.drawEllipse(centre, radius * (1.1 + 0.5 * state.brightness), radius * (1.1 + 0.5 * state.brightness));
    }
    painter.setPen(QPen(theme.flat || !state.lit ? theme.dimText : mix(light, theme.text, 0.35), look().px(1.8)));
    painter.setBrush(state.lit ? mix(theme.card, light, 0.25 + 0.75 * state.brightness) : QBrush(Qt::NoBrush));
    painter.drawEllipse(centre, radius, radius);
    const QFont font = look().font(size * 0.9);
    const double left = centre.x() + radius + look().px(6);
    drawLine(painter, QRectF(left, box.center().y() - QFontMetricsF(font).height() / 2, box.right() - left, 0),
             lampWords(row, lamp), font, state.lit ? theme.text : theme.dimText);
}

void TruthCard::paintScroll(QPainter& painter, double x) const {
    const int rows = static_cast<int>(table()->rows.size());
    if (rows <= visibleRows()) return;
    const double top = body().top() + look().px(kTop + kRowHeight), height = visibleRows() * look().px(kRowHeight);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look().theme->cardEdge);
    painter.drawRoundedRect(QRectF(x, top, look().px(5), height), look().px(2), look().px(2));
    painter.setBrush(look().theme->dimText);
    const double length = std::max(look().px(14), height * visibleRows() / rows);
    painter.drawRoundedRect(QRectF(x, top + (height - length) * first_ / (rows - visibleRows()), look().px(5), length),
                            look().px(2), look().px(2));
}

void TruthCard::paintSentences(QPainter& painter, double left) const {
    const Theme& theme = *look().theme;
    const QRectF box(left, body().top(), body().left() + widthBesideKey() - left, body().height());
    const QFont head = look().font(text::kBody);
    drawLine(painter, box, QStringLiteral("Truth table"), head, theme.dimText);
    double top = box.top() + QFontMetricsF(head).height() + look().px(6);
    const auto say = [&](const QString& sentence, const QFont& font, const QColor& colour) {
        const QRectF room(box.left(), top, body().right() - box.left(), box.bottom() - top);
        if (room.height() < QFontMetricsF(font).height()) return;
        painter.setFont(font);
        painter.setPen(colour);
        QRectF taken;
        painter.drawText(room, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, sentence, &taken);
        top = taken.bottom() + look().px(4);
    };
    for (const QString& sentence : sentences_) {
        const bool logic = sentence.contains(QLatin1Char('='));
        say(sentence, look().font(text::kLabel, logic ? QFont::DemiBold : QFont::Normal),
            stale_ ? theme.dimText : theme.text);
    }
    if (table() && !table()->switches.empty()) say(meaningOf(*table()), look().font(text::kSmall), theme.dimText);
}

// --- hands ---

void TruthCard::hover(int row) {
    if (hovered_ == row) return;
    hovered_ = row;
    setCursor(row >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
    update();
}

void TruthCard::mousePressEvent(QMouseEvent* event) {
    const int row = rowAt(event->position());
    if (row >= 0 && !stale_) Q_EMIT rowChosen(row);
}

void TruthCard::mouseMoveEvent(QMouseEvent* event) { hover(rowAt(event->position())); }

void TruthCard::leaveEvent(QEvent*) { hover(-1); }

void TruthCard::wheelEvent(QWheelEvent* event) {
    scrollTo(first_ - event->angleDelta().y() * kWheelRows / kWheelStep);
    hover(rowAt(event->position()));
}

void TruthCard::keyPressEvent(QKeyEvent* event) {
    const int rows = table() ? static_cast<int>(table()->rows.size()) : 0;
    const int step = event->key() == Qt::Key_Down ? 1 : event->key() == Qt::Key_Up ? -1 : 0;
    if (step == 0 || rows == 0) return AsideCard::keyPressEvent(event);
    if (!stale_) Q_EMIT rowChosen(std::clamp(present_ + step, 0, rows - 1));
}

}  // namespace tiepoint::ui
