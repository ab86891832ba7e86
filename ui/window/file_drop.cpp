#include "ui/window/file_drop.h"

#include <QDropEvent>
#include <QMimeData>
#include <QUrl>

namespace tiepoint::ui {
namespace {

const QString kPictureType = QStringLiteral("image/png");

/// The one local file that is carried, or nothing: two can't lie on one bench.
QString fileIn(const QMimeData* data) {
    const QList<QUrl> urls = data->urls();
    return urls.size() == 1 && urls.front().isLocalFile() ? urls.front().toLocalFile() : QString();
}

}  // namespace

FileDrop::FileDrop(std::initializer_list<QWidget*> targets, QObject* parent) : QObject(parent) {
    for (QWidget* target : targets) {
        target->setAcceptDrops(true);
        target->installEventFilter(this);
    }
}

bool FileDrop::eventFilter(QObject* watched, QEvent* event) {
    const auto type = event->type();
    if (type != QEvent::DragEnter && type != QEvent::DragMove && type != QEvent::Drop)
        return QObject::eventFilter(watched, event);
    auto* drop = static_cast<QDropEvent*>(event);  // entering and moving are drops that haven't come yet
    const QString path = fileIn(drop->mimeData());
    const bool isPicture = path.isEmpty() && drop->mimeData()->hasFormat(kPictureType);
    if (path.isEmpty() && !isPicture) {
        drop->ignore();
        return true;
    }
    drop->acceptProposedAction();
    if (type != QEvent::Drop) return true;
    if (isPicture)
        Q_EMIT pictureDropped(drop->mimeData()->data(kPictureType));
    else
        Q_EMIT dropped(path);
    return true;
}

}  // namespace tiepoint::ui
