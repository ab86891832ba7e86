#pragma once
// The menu of recent files, remembered between runs. Files that are gone are left out.

#include <QMenu>
#include <QSettings>
#include <QStringList>

namespace tiepoint::ui {

class RecentFiles : public QMenu {
    Q_OBJECT
public:
    explicit RecentFiles(QWidget* parent);

    /// Puts a file on top.
    void add(const QString& path);
    QStringList paths() const;

Q_SIGNALS:
    void chosen(const QString& path);

private:
    void fill();

    QSettings settings_;  ///< kept, so that it is written when there is time
};

}  // namespace tiepoint::ui
