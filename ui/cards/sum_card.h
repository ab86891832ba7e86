#pragma once
// One sum in large digits: the drops once round the loop are the supply's volts, or what comes into a junction goes out of it. Under each
// number lies a bar, one length a volt or a milliampere, so that the parts' bars together are as long as the whole's. For a room above all.

#include "ui/cards/aside_card.h"
#include "ui/cards/loop_text.h"

#include <map>
#include <string>
#include <vector>

namespace tiepoint::ui {

class SumCard : public AsideCard {
    Q_OBJECT
public:
    explicit SumCard(QWidget* parent);

    /// The picture is read only during the call; `id` is the part or jumper pointed at.
    void showPicture(const Picture& picture, const std::string& id);
    /// A number of the sum: "3.05 V" over "R1"; the whole stands last, behind the equals sign.
    struct Term {
        QString number, name;
        std::string part;  ///< id, or empty
        double share = 0;  ///< of the whole
        friend bool operator==(const Term&, const Term&) = default;
    };
    const std::vector<Term>& terms() const { return terms_; }
    const QString& heading() const { return heading_; }
    /// Where a term's bar lies, in the card.
    QRectF bar(std::size_t term) const;

    bool isForRoom() const override { return true; }
    double roomHeight(double most) const override;

protected:
    void paintBody(QPainter& painter) override;

private:
    struct Places {
        double digits = 0;                  ///< size of the numbers, pixels
        std::vector<double> lefts, widths;  ///< of the terms
        double barsLeft = 0, perShare = 0;
        double top = 0, barTop = 0, barHeight = 0;
    };
    Places places() const;

    QString heading_, alone_;  ///< alone_: where there is no sum
    std::vector<Term> terms_;
    std::map<std::string, QColor> tints_;
};

}  // namespace tiepoint::ui
