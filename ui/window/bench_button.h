#pragma once
// A bench on the start card: its picture, a heading and a line. A button as broad as it is laid out.

#include "ui/theme/look.h"
#include "ui/theme/words.h"

#include <QAbstractButton>
#include <QPixmap>

namespace tiepoint::ui {

class BenchButton : public QAbstractButton {
    Q_OBJECT
public:
    struct Words {
        QString number;  ///< of a course; empty: a bench of one's own, which is quieter
        QString heading, line;
        QString aside = {};  ///< at the right of the heading: "8 min"
    };

    /// `file` is the name of an embedded file, or a path.
    BenchButton(const QString& file, Words words, QWidget* parent);

    const QString& file() const { return file_; }
    const Words& words() const { return words_; }
    void setLook(const Look& look);
    /// How large its picture is, in device-independent pixels.
    QSize pictureSize() const;
    /// A picture of that size, or a null one where there can be none.
    void setPicture(const QImage& picture);
    bool isDrawn() const { return !picture_.isNull(); }

Q_SIGNALS:
    void resized();  ///< its picture has another size

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    QRectF pictureBox() const;

private:
    void paintWords(QPainter& painter, double left);

    QString file_;
    Words words_;
    Look look_;
    WordSheet sheet_{this};
    QPixmap picture_;
};

/// A button with a word on it: plain, filled (of which there is but one in sight), or a word alone.
class WordButton : public QAbstractButton {
    Q_OBJECT
public:
    enum class Shape { Plain, Filled, Link };
    WordButton(const QString& word, Shape shape, QWidget* parent);

    void setLook(const Look& look);
    double wantedWidth() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Shape shape_;
    Look look_;
    WordSheet sheet_{this};
};

}  // namespace tiepoint::ui
