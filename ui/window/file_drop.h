#pragma once
// Bench files and pictures with a bench inside that are dropped on the window are opened.

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
    void pictureDropped(const QByteArray& png);  ///< one that comes without a file, as from another program

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace tiepoint::ui
