#pragma once
// Bench files dropped on the window are opened.

#include <QObject>
#include <QWidget>

namespace tiepoint::ui {

class FileDrop : public QObject {
    Q_OBJECT
public:
    /// Takes drops on these widgets.
    FileDrop(std::initializer_list<QWidget*> targets, QObject* parent);

Q_SIGNALS:
    void dropped(const QString& path);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace tiepoint::ui
