// The wrapped calls; see qt_order.h. The names are Qt's, as the linker knows them.

#include "qt_order.h"

#if defined(__SANITIZE_THREAD__)

#include <QMutex>
#include <QSemaphore>
#include <QThreadPool>

#include <functional>
#include <memory>

extern "C" {

bool __real__ZN11QMetaObject16invokeMethodImplEP7QObjectPN9QtPrivate15QSlotObjectBaseEN2Qt14ConnectionTypeEPv(
    QObject* receiver, QtPrivate::QSlotObjectBase* slot, Qt::ConnectionType type, void* result);
bool __wrap__ZN11QMetaObject16invokeMethodImplEP7QObjectPN9QtPrivate15QSlotObjectBaseEN2Qt14ConnectionTypeEPv(
    QObject* receiver, QtPrivate::QSlotObjectBase* slot, Qt::ConnectionType type, void* result) {
    __tsan_release(receiver);
    const bool done =
        __real__ZN11QMetaObject16invokeMethodImplEP7QObjectPN9QtPrivate15QSlotObjectBaseEN2Qt14ConnectionTypeEPv(
            receiver, slot, type, result);
    if (type == Qt::BlockingQueuedConnection) __tsan_acquire(qApp);
    return done;
}

void __real__ZN11QThreadPool5startESt8functionIFvvEEi(QThreadPool* pool, std::function<void()> work, int priority);
void __wrap__ZN11QThreadPool5startESt8functionIFvvEEi(QThreadPool* pool, std::function<void()> work, int priority) {
    // Qt's own thread takes hold of the work before it runs it, so the work is only reached through a pointer that no one changes.
    auto* kept = new std::function<void()>(std::move(work));
    __tsan_release(kept);
    __real__ZN11QThreadPool5startESt8functionIFvvEEi(
        pool,
        [kept]() __attribute__((no_sanitize("thread"))) {
            __tsan_acquire(kept);
            (*kept)();
            delete kept;
        },
        priority);
}

void __real__ZN10QSemaphore7releaseEi(QSemaphore* semaphore, int count);
void __wrap__ZN10QSemaphore7releaseEi(QSemaphore* semaphore, int count) {
    __tsan_release(semaphore);
    __real__ZN10QSemaphore7releaseEi(semaphore, count);
}

void __real__ZN10QSemaphore7acquireEi(QSemaphore* semaphore, int count);
void __wrap__ZN10QSemaphore7acquireEi(QSemaphore* semaphore, int count) {
    __real__ZN10QSemaphore7acquireEi(semaphore, count);
    __tsan_acquire(semaphore);
}

// A mutex that is free is taken in Qt's header, where it is seen; one that isn't, in here.
void __real__ZN11QBasicMutex12lockInternalEv(QBasicMutex* mutex);
void __wrap__ZN11QBasicMutex12lockInternalEv(QBasicMutex* mutex) {
    __real__ZN11QBasicMutex12lockInternalEv(mutex);
    __tsan_acquire(mutex);
}

void __real__ZN11QBasicMutex14unlockInternalEv(QBasicMutex* mutex);
void __wrap__ZN11QBasicMutex14unlockInternalEv(QBasicMutex* mutex) {
    __tsan_release(mutex);
    __real__ZN11QBasicMutex14unlockInternalEv(mutex);
}

}  // extern "C"

#endif
