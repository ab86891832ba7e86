#pragma once
// What is still possible: the things to blame with their pictures, or the last few slips in a sentence each. What was ruled out never vanishes:
// it moves to the right, struck through, under what ruled it out.

#include "ui/cards/aside_card.h"
#include "ui/live/doctor_run.h"

#include <QImage>

#include <map>
#include <memory>

namespace tiepoint::ui {

class DoctorCausesCard : public AsideCard {
    Q_OBJECT
public:
    explicit DoctorCausesCard(QWidget* parent);

    /// `seen`: in a few words, what was seen, by number.
    void showAnswer(std::shared_ptr<const DoctorAnswer> answer, const QStringList& seen);
    /// Pictures of things by their ids.
    void setPictures(std::map<std::string, QImage> pictures);

    static constexpr int kMostPictured = 9;

protected:
    void paintBody(QPainter& painter) override;

private:
    void paintShare(QPainter& painter, const QRectF& bar);
    void paintThings(QPainter& painter, const QRectF& room);
    void paintSlips(QPainter& painter, const QRectF& room);
    void paintRuledOut(QPainter& painter, const QRectF& room);
    void paintPicture(QPainter& painter, const QRectF& room, const std::string& id);

    std::shared_ptr<const DoctorAnswer> answer_;
    QStringList seen_;
    std::map<std::string, QImage> pictures_;
};

}  // namespace tiepoint::ui
