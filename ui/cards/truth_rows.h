#pragma once
// The rows of a truth table, which scroll: a row for each combination of the switches, each lamp a disc in its colour and as bright as it
// is, with its brightness in figures. Names stay above; the switches stay at the left while lamps scroll by, as long as they leave them
// room. The print is never made smaller. Choosing a row, by a click or the arrow keys, asks for its position.

#include "ui/live/questions.h"
#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QAbstractScrollArea>

#include <memory>

namespace tiepoint::ui {

class TruthRows : public QAbstractScrollArea {
    Q_OBJECT
public:
    explicit TruthRows(QWidget* parent);

    void setLook(const Look& look);
    /// Null, or an answer without a table: nothing is shown.
    void showTable(std::shared_ptr<const TableAnswer> answer);
    /// While stale no lamp is shown and no row can be chosen.
    void setStale(bool stale);
    /// The row of the bench's present position, or -1. It is scrolled into sight.
    void showPresent(int row);

    const TruthTable* table() const { return answer_ && answer_->table.ok() ? &answer_->table.value() : nullptr; }
    int presentRow() const { return present_; }
    /// Where a row stands in the viewport; empty where it isn't wholly in sight.
    QRectF rowBox(int row) const;
    /// So much room shows all columns, and all rows; pixels.
    QSizeF wantedSize() const;
    double letterPixels() const;

Q_SIGNALS:
    void rowChosen(int row);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool viewportEvent(QEvent* event) override;

private:
    int rowCount() const { return table() ? static_cast<int>(table()->rows.size()) : 0; }
    int wholeRows() const;  ///< that the viewport shows
    double headerHeight() const;
    double rowHeight() const;
    /// Left edge of a column, switches then lamps, in the viewport; one more is the right edge of the last.
    double columnX(std::size_t column) const;
    bool holdsSwitches() const;
    double rowTop(int row) const;
    int rowAt(QPointF at) const;
    void arrange();
    void hover(int row);
    void choose(int row);
    void scrollColumns(int by);
    QString columnName(std::size_t column) const;
    QString lampWords(const TruthRow& row, std::size_t lamp) const;
    void paintRow(QPainter& painter, int row) const;
    void paintSwitches(QPainter& painter, int row) const;
    void paintLamp(QPainter& painter, const QRectF& box, const TruthRow& row, std::size_t lamp) const;
    void paintHeader(QPainter& painter) const;
    void drawWord(QPainter& painter, const QRectF& cell, const QString& word, const QFont& font,
                  const QColor& colour) const;

    Look look_;
    mutable WordSheet sheet_{viewport()};
    std::shared_ptr<const TableAnswer> answer_;
    std::vector<double> edges_;  ///< of the columns before scrolling
    bool stale_ = true;
    int present_ = -1;
    int hovered_ = -1;
};

}  // namespace tiepoint::ui
