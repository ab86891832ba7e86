#pragma once
// What comes before what in Qt, told to the thread sanitizer. Qt isn't built with it, so that its locks can't be seen: without this a value that
// travels in a queued call looks like one that two threads use at once. The calls that carry values between threads are wrapped (by the linker,
// in builds with the thread sanitizer); nothing else about Qt is taken for granted, and no report about the program is kept back.

#include <QApplication>
#include <QEvent>

#if defined(__SANITIZE_THREAD__)
#include <sanitizer/tsan_interface.h>
#endif

namespace tiepoint::test {

#if defined(__SANITIZE_THREAD__)

/// An application in which whatever was done before a call was queued comes before the call.
class Application : public QApplication {
public:
    using QApplication::QApplication;

    bool notify(QObject* receiver, QEvent* event) override {
        const bool call = event->type() == QEvent::MetaCall;
        if (call) __tsan_acquire(receiver);
        const bool done = QApplication::notify(receiver, event);
        if (call) __tsan_release(qApp);  // one who blocks until a queued call is over
        return done;
    }
};

#else

using Application = QApplication;

#endif

}  // namespace tiepoint::test
