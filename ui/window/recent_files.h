#pragma once
// The menu of recent files, remembered between runs. Files that are gone are left out.

#include <QMenu>
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
};

}  // namespace tiepoint::ui
