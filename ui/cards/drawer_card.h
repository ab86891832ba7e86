#pragma once
// My drawer: the resistors of a kit, typed as a list and shown with their bands. Mends and the helper take only those.

#include "core/parts/drawer.h"
#include "ui/cards/aside_card.h"

#include <QLabel>
#include <QLineEdit>

namespace tiepoint::ui {

class DrawerCard : public AsideCard {
    Q_OBJECT
public:
    explicit DrawerCard(QWidget* parent);

    void showDrawer(const ResistorDrawer& drawer);
    QLineEdit* list() const { return list_; }
    QToolButton* everythingButton() const { return everything_; }
    QToolButton* starterButton() const { return starter_; }
    QString refusal() const { return refusal_; }

Q_SIGNALS:
    void chosen(const tiepoint::ResistorDrawer& drawer);

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    void commit();

    ResistorDrawer drawer_;
    QString refusal_;
    QLineEdit* list_;
    QToolButton *everything_, *starter_;
};

/// What a beginner's kit usually holds (common practice).
ResistorDrawer starterDrawer();

}  // namespace tiepoint::ui
