#pragma once
// What do you see? Four pictures of a light to choose from, and a way out when something is hot.

#include "ui/cards/card.h"

#include <QImage>
#include <QToolButton>

#include <vector>

namespace tiepoint::ui {

/// What is asked about.
struct DoctorLight {
    QString id;             ///< of the light; empty: the plan has none
    QString position;       ///< "with S1 pressed"; empty: nothing is pressed, or there is nothing to press
    bool isNext = false;    ///< it is the next thing to look at
    bool hasThrows = true;  ///< there are switches, so that it may shine in every position of them
    friend bool operator==(const DoctorLight&, const DoctorLight&) = default;
};

class DoctorSeenCard : public Card {
    Q_OBJECT
public:
    enum Key { Dark, Dim, Lit, AlwaysLit, Hot };
    explicit DoctorSeenCard(QWidget* parent);

    void showLight(const DoctorLight& light);
    /// By button; those of the first four.
    void setPictures(const std::vector<QImage>& pictures);
    /// How large pictures are wanted.
    QSize pictureSize() const;
    const DoctorLight& light() const { return light_; }
    const std::vector<QToolButton*>& buttons() const { return buttons_; }

Q_SIGNALS:
    void seen(int button);

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    QSizeF tileSize() const;

    DoctorLight light_;
    std::vector<QToolButton*> buttons_;
};

}  // namespace tiepoint::ui
