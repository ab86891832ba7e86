#include "ui/gesture/selecting.h"

namespace tiepoint::ui {

void selectByClick(Hand& hand, const std::string& id, Qt::KeyboardModifiers modifiers) {
    const QString name = QString::fromStdString(id);
    if (!(modifiers & (Qt::ShiftModifier | Qt::ControlModifier))) {
        hand.setSelection(id.empty() ? QStringList() : QStringList{name});
        return;
    }
    if (id.empty()) return;
    QStringList selection = hand.selection();
    if (!selection.removeOne(name)) selection << name;
    hand.setSelection(selection);
}

std::vector<int> netsOf(const Picture& picture, const std::vector<Hole>& holes) {
    std::vector<int> nets;
    for (const Hole& hole : holes) {
        const int index = picture.layout->holeIndex(hole);
        if (index >= 0) nets.push_back(picture.layout->netOfHole(index));
    }
    return nets;
}

}  // namespace tiepoint::ui
