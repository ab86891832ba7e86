#pragma once
// The truth table as a card: a row for each combination, each lamp a disc in its colour and as bright as it is, with its brightness in
// figures; beside it when each lamp is lit, in logic, and the switches that change nothing. Choosing a row asks for its position.

#include "ui/cards/aside_card.h"
#include "ui/live/questions.h"

#include <QStringList>

#include <memory>
#include <optional>

namespace tiepoint::ui {

class TruthCard : public AsideCard {
    Q_OBJECT
public:
    explicit TruthCard(QWidget* parent);

    void showTable(std::shared_ptr<const TableAnswer> answer);
    /// The bench changed and the new table isn't there yet: no lamp is shown.
    void showStale();
    /// The row of the bench's present position, or -1.
    void showPresent(int row);

    const TruthTable* table() const { return answer_ && answer_->table.ok() ? &answer_->table.value() : nullptr; }
    bool isStale() const { return stale_; }
    int presentRow() const { return present_; }
    const QStringList& sentences() const { return sentences_; }
    /// Where a row stands in the widget; empty where it is scrolled away.
    QRectF rowBox(int row) const;

Q_SIGNALS:
    void rowChosen(int row);

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    /// Left edges of the columns, switches then lamps, and the right edge of the last.
    struct Columns {
        std::vector<double> edges;
        double size = 0;  ///< of the letters, in layout pixels
    };

    Columns columns() const;
    int visibleRows() const;
    int rowAt(QPointF at) const;
    void scrollTo(int first);
    void hover(int row);
    QString lampWords(const TruthRow& row, std::size_t lamp) const;
    void paintHeader(QPainter& painter, const Columns& columns) const;
    void paintRow(QPainter& painter, const Columns& columns, int row) const;
    void paintLamp(QPainter& painter, const QRectF& box, const TruthRow& row, std::size_t lamp, double size) const;
    void paintScroll(QPainter& painter, double x) const;
    void paintSentences(QPainter& painter, double left) const;

    std::shared_ptr<const TableAnswer> answer_;
    QStringList sentences_;
    bool stale_ = true;
    int present_ = -1;
    int hovered_ = -1;
    int first_ = 0;  ///< row that stands uppermost
};

}  // namespace tiepoint::ui
