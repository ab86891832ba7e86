#include "ui/window/recent_files.h"

#include "ui/theme/plain_text.h"

#include <QFileInfo>

namespace tiepoint::ui {
namespace {

const QString kRecentSetting = QStringLiteral("files/recent");
constexpr int kMost = 9;

}  // namespace

RecentFiles::RecentFiles(QWidget* parent) : QMenu(QStringLiteral("Open &recent"), parent) {
    connect(this, &QMenu::aboutToShow, this, &RecentFiles::fill);
    fill();
}

QStringList RecentFiles::paths() const {
    QStringList paths = settings_.value(kRecentSetting).toStringList();
    paths.removeIf([](const QString& path) { return !QFileInfo::exists(path); });
    return paths;
}

void RecentFiles::add(const QString& path) {
    if (path.isEmpty()) return;
    QStringList now = paths();
    now.removeAll(path);
    now.prepend(path);
    settings_.setValue(kRecentSetting, QStringList(now.mid(0, kMost)));
    fill();
}

void RecentFiles::fill() {
    clear();
    int number = 0;
    for (const QString& path : paths()) {
        const QFileInfo file(path);
        QAction* open = addAction(QStringLiteral("&%1  %2").arg(++number).arg(menuWords(file.fileName())));
        open->setToolTip(plainTip(path));
        connect(open, &QAction::triggered, this, [this, path] { Q_EMIT chosen(path); });
    }
    menuAction()->setEnabled(number > 0);
    setToolTipsVisible(true);
}

}  // namespace tiepoint::ui
