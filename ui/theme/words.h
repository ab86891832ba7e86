#pragma once
// Words that a widget paints itself: cards, keys, the tray, the title. A text is drawn whole where it can be; where its room is too small it
// takes more lines (if it may), then a smaller size, down to what can still be read, then a shorter form (if it has one); only then is it
// cut, and a tool tip tells the whole of it. Whoever wants to know whether everything fits watches what is drawn. Window's thread only.

#include <QColor>
#include <QEvent>
#include <QFont>
#include <QPainter>
#include <QString>
#include <QStringList>
#include <QWidget>

#include <vector>

namespace tiepoint::ui {

/// How a text is set.
struct WordStyle {
    QFont font;  ///< at its full size
    QColor colour;
    Qt::Alignment alignment = Qt::AlignLeft | Qt::AlignTop;
    bool wraps = false;
    Qt::TextElideMode shortened = Qt::ElideRight;  ///< of one line; several are shortened at their end
};

/// One text as it was drawn.
struct DrawnWords {
    QWidget* on;
    QString words;  ///< all of them
    QRectF room;    ///< that it was given, in the widget
    QRectF ink;     ///< that its lines take
    double pixels;  ///< size of its letters
    bool whole;
};

/// While one lives it hears of every text that is drawn. At most one at a time.
class WordsWatch {
public:
    WordsWatch();
    ~WordsWatch();
    WordsWatch(const WordsWatch&) = delete;
    WordsWatch& operator=(const WordsWatch&) = delete;

    const std::vector<DrawnWords>& drawn() const { return drawn_; }
    void clear() { drawn_.clear(); }
    void hear(const DrawnWords& words) { drawn_.push_back(words); }

private:
    std::vector<DrawnWords> drawn_;
};

/// The smallest letters that can be read, in pixels that don't depend on the device; and the share of a size down to which it is made smaller.
inline constexpr double kSmallestLetters = 9;
inline constexpr double kLeastLetterShare = 0.7;

/// How small letters of a size may become.
double smallestPixels(double pixels);
/// The style's font, as much smaller as the words need to fit; at the smallest size they may still not fit.
QFont fittingFont(const QString& words, const WordStyle& style, QSizeF room);
/// What the words take in a room of that breadth; where they don't wrap, all of their breadth.
QSizeF wordsSize(const QString& words, const QFont& font, double breadth, bool wraps);

/// The texts of one widget, of which it is a member. Where one is shortened, a tool tip tells the whole of it.
class WordSheet : public QObject {
public:
    explicit WordSheet(QWidget* of);

    /// The widget begins to paint itself anew.
    void begin() { cut_.clear(); }
    /// Draws the words in their room and returns what they take of it.
    QRectF draw(QPainter& painter, const QRectF& room, const QString& words, const WordStyle& style);
    /// Draws the first of several forms of the same words, the longest first, that stands whole in the room. A tool tip tells the longest.
    QRectF drawForm(QPainter& painter, const QRectF& room, const QStringList& forms, const WordStyle& style);
    /// Tells of words that were drawn by other means.
    void note(QPainter& painter, const QString& words, const QRectF& room, const QRectF& ink, double pixels,
              bool whole);
    /// The whole of what was shortened at a place of the widget; empty where nothing was.
    QString wholeAt(QPointF place) const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct Cut {
        QRectF room;
        QString words;
    };
    QWidget* of_;
    std::vector<Cut> cut_;
};

}  // namespace tiepoint::ui
