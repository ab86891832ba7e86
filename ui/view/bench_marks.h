#pragma once
// What the hand points at on the bench: selection, hovered net, what is carried, words beside the pointer. Changes the marks of the
// picture, which it doesn't own, and says so. Belongs to the window's thread.

#include "ui/paint/picture.h"

#include <QObject>
#include <QStringList>
#include <QTimer>

#include <string>
#include <vector>

namespace tiepoint::ui {

class BenchMarks : public QObject {
    Q_OBJECT
public:
    explicit BenchMarks(Marks& marks);

    Marks& marks() { return marks_; }  ///< after changing them: show()
    const Marks& marks() const { return marks_; }
    void show() { Q_EMIT changed(); }
    /// Sets one of them that lasts beyond a gesture.
    template <class T>
    void set(T Marks::*mark, const T& value) {
        if (marks_.*mark == value) return;
        marks_.*mark = value;
        show();
    }

    /// Nets that something dragged would join, lit beside the hovered one.
    void lightNets(std::vector<int> nets);
    const std::vector<int>& litNets() const { return litNets_; }
    /// Words at a place that stay for a moment.
    void flash(const std::string& words, Point at);
    /// Words for who hears the bench, which nobody sees.
    void tell(const std::string& words);
    const std::string& told() const { return told_; }  ///< last
    /// Takes back what a gesture carries and points at; words stay if they were to stay for a moment.
    void clearCarried();
    /// The same and all words.
    void clear();

    QStringList selection() const;
    void setSelection(const QStringList& ids);
    /// The id of what alone is selected, or empty.
    std::string soleSelection() const;
    void setHover(int net, Point at, const std::string& part);
    void clearHover() { setHover(-1, {}, {}); }
    /// Lets go of what another bench doesn't have.
    void followBench(const Bench& bench);

Q_SIGNALS:
    void changed();  ///< any of them
    void carriedCleared();
    void selectionChanged();
    void hoverChanged();  ///< of net or part
    void toldAnew();      ///< words that are to be heard

private:
    Marks& marks_;
    std::vector<int> litNets_;
    std::string told_;
    QTimer flashing_;
};

}  // namespace tiepoint::ui
