#include "ui/paint/note_places.h"

#include "ui/paint/board_back.h"
#include "ui/paint/tag_ground.h"
#include "ui/theme/plain_text.h"

#include <algorithm>
#include <numeric>

namespace tiepoint::ui {
namespace {

constexpr double kNoteBreadthEm = 15.3;  ///< a third of the window's height
constexpr double kSmallestNote = 0.8;    ///< to which long texts shrink at a desk
/// In a room nobody can point at a note to read the rest of it: long texts take broader papers there.
constexpr double kBroaderNotes[] = {1.5, 2.2, 3};
constexpr int kMostLines = 3;
constexpr double kNoteGapEm = 0.8, kBesideBoardsMm = 6;
constexpr double kScreenShape = 16.0 / 9,
                 kDeskShape = 2.87;  ///< breadth to height of what shows the bench: a screen, or a desk's part of it
const QString kEllipsis = QStringLiteral("\u2026");

/// Words in lines no broader than that; a word that is too long stands alone.
QStringList wrappedText(const std::string& text, double breadthMm, double sizeMm) {
    const Lettering lettering = noteLettering(sizeMm);
    QStringList lines;
    for (const QString& paragraph : plainLines(text).split(QLatin1Char('\n'))) {
        QString line;
        for (const QString& word : paragraph.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
            const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
            if (!line.isEmpty() && textWidthMm(longer, lettering) > breadthMm) {
                lines << line;
                line = word;
            } else {
                line = longer;
            }
        }
        lines << line;
    }
    return lines;
}

bool fitsIn(const QStringList& lines, double breadthMm, double sizeMm) {
    return lines.size() <= kMostLines && std::all_of(lines.begin(), lines.end(), [&](const QString& line) {
               return textWidthMm(line, noteLettering(sizeMm)) <= breadthMm;
           });
}

/// As much of a line as there is room for, with an ellipsis behind.
QString cutOff(QString line, double breadthMm, double sizeMm) {
    while (!line.isEmpty() && textWidthMm(line + kEllipsis, noteLettering(sizeMm)) > breadthMm) line.chop(1);
    return line.trimmed() + kEllipsis;
}

/// Many short lines in one go.
std::string inOneParagraph(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

/// Whether all of a text is seen in letters of a size on a paper of a breadth; then it is written.
bool writeOn(const std::string& text, double breadthMm, NotePlace& place) {
    place.lines = wrappedText(text, breadthMm, place.sizeMm);
    if (fitsIn(place.lines, breadthMm, place.sizeMm)) return true;
    place.lines = wrappedText(inOneParagraph(text), breadthMm, place.sizeMm);
    return fitsIn(place.lines, breadthMm, place.sizeMm);
}

/// What is seen of a text, and how large.
NotePlace writtenNote(const std::string& text, const Picture& picture) {
    const double em = picture.sizes.noteMm;
    const bool isProjected = picture.sizes.numberMm > 0;
    double breadth = (kNoteBreadthEm - kNoteTextEm - kNotePadEm) * em;
    NotePlace place;
    const double smallest = isProjected ? 1 : kSmallestNote;
    for (const double share : {1.0, (1 + smallest) / 2, smallest}) {
        place.sizeMm = share * em;
        if (writeOn(text, breadth, place)) return place;
    }
    if (isProjected && !picture.isOnPaper) {
        const double usual = breadth;
        for (const double share : kBroaderNotes) {
            breadth = share * usual;
            if (writeOn(text, breadth, place)) return place;
        }
    }
    if (picture.isOnPaper) {
        place.lines = wrappedText(text, breadth, place.sizeMm);
        return place;
    }
    place.isCutOff = true;
    const bool more = place.lines.size() > kMostLines;
    place.lines = place.lines.mid(0, kMostLines);
    for (QString& line : place.lines) {
        const bool isLast = &line == &place.lines.back();
        if ((isLast && more) || textWidthMm(line, noteLettering(place.sizeMm)) > breadth)
            line = cutOff(line, breadth, place.sizeMm);
    }
    return place;
}

QSizeF paperSize(const NotePlace& place, double em) {
    double breadth = 0;
    for (const QString& line : place.lines) breadth = std::max(breadth, textWidthMm(line, noteLettering(place.sizeMm)));
    return {breadth + (kNoteTextEm + kNotePadEm) * em,
            static_cast<double>(place.lines.size()) * kNoteLineEm * place.sizeMm + 2 * kNotePadEm * em};
}

bool hasInstruments(const Picture& picture) {
    const auto& parts = picture.bench().parts;
    return std::any_of(parts.begin(), parts.end(), [](const Part& part) { return part.kind->package->rightOfBoards; });
}

/// Lays papers out beside the boards, from the top down, or below everything, from left to right.
class PaperTable {
public:
    PaperTable(const Picture& picture, std::vector<NotePlace>& places) : picture_(picture), places_(places) {}

    /// Where more of the circuit is left for the window: beside the boards, or below them.
    void lay() {
        layBelow();
        if (hasInstruments(picture_)) return;
        const double below = windowHeight();
        const std::vector<NotePlace> places = places_;
        layBeside();
        if (windowHeight() > below) places_ = places;
    }

private:
    std::vector<std::size_t> inOrder(double (QPointF::*coordinate)() const) const {
        std::vector<std::size_t> order(places_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return (places_[a].knot.*coordinate)() < (places_[b].knot.*coordinate)();
        });
        return order;
    }
    /// Of a window of the usual shape that shows the table with its tags and papers, mm.
    double windowHeight() const {
        const double band = tagBandMm(picture_.sizes.readingMm);
        QRectF area = toQt(picture_.table->boardsMm).adjusted(0, -band, 0, band) | toQt(picture_.table->allMm);
        for (const NotePlace& place : places_) area |= place.paper;
        const bool isProjected = picture_.sizes.numberMm > 0;
        return std::max(area.height(), area.width() / (isProjected ? kScreenShape : kDeskShape));
    }

    double gap() const { return kNoteGapEm * picture_.sizes.noteMm; }

    void layBeside() {
        const Rect& boards = picture_.table->boardsMm;
        double left = picture_.table->allMm.right() + kBesideBoardsMm, top = boards.top, breadest = 0;
        for (const std::size_t i : inOrder(&QPointF::y)) {
            QRectF& paper = places_[i].paper;
            double wished = std::max(top, places_[i].knot.y() - paper.height() / 2);
            if (wished + paper.height() > boards.bottom()) wished = std::max(top, boards.bottom() - paper.height());
            if (top > boards.top && wished + paper.height() > boards.bottom()) {  // the next column
                left += breadest + gap();
                breadest = 0;
                wished = boards.top;
            }
            paper.moveTopLeft({left, wished});
            top = paper.bottom() + gap();
            breadest = std::max(breadest, paper.width());
        }
    }

    double topBelow() const {
        const double sign = picture_.table->turned ? turnSignMm(picture_.sizes) : 0;
        const double band = tagBandMm(picture_.sizes.readingMm) + sign;
        return std::max(picture_.table->allMm.bottom(), picture_.table->boardsMm.bottom() + band) + gap();
    }

    /// As many as fit side by side, then the next row.
    void layBelow() {
        const double first = picture_.table->allMm.left, end = picture_.table->allMm.right();
        const auto order = inOrder(&QPointF::x);
        double top = topBelow();
        for (std::size_t from = 0; from < order.size();) {
            std::size_t to = from;
            double breadth = 0, highest = 0;
            for (; to < order.size(); ++to) {
                const QRectF& paper = places_[order[to]].paper;
                if (to > from && first + breadth + paper.width() > end) break;
                breadth += paper.width() + gap();
                highest = std::max(highest, paper.height());
            }
            layRow({order.begin() + static_cast<std::ptrdiff_t>(from), order.begin() + static_cast<std::ptrdiff_t>(to)},
                   first, end - breadth + gap(), top);
            top += highest + gap();
            from = to;
        }
    }

    /// Each below its hole, as far as the others and the end of the row let it. `latest`: of the first one.
    void layRow(const std::vector<std::size_t>& row, double earliest, double latest, double top) {
        for (const std::size_t i : row) {
            QRectF& paper = places_[i].paper;
            const double left = std::max(earliest, std::min(places_[i].knot.x() + gap(), latest));
            paper.moveTopLeft({left, top});
            earliest = left + paper.width() + gap();
            latest += paper.width() + gap();
        }
    }

    const Picture& picture_;
    std::vector<NotePlace>& places_;
};

void tieNote(NotePlace& place, double em) {
    place.eyelet = {place.paper.left() + kNoteEyeletEm * em, place.paper.center().y()};
}

}  // namespace

std::vector<NotePlace> placeNotes(const Picture& picture) {
    const double em = picture.sizes.noteMm;
    std::vector<NotePlace> places;
    for (const Note& note : picture.bench().notes) {
        places.push_back(writtenNote(note.text, picture));
        places.back().knot = toQt(picture.seenAt(note.at));
        places.back().paper = QRectF(QPointF(), paperSize(places.back(), em));
    }
    PaperTable(picture, places).lay();
    for (NotePlace& place : places) tieNote(place, em);
    return places;
}

QRectF notesArea(const Picture& picture) {
    QRectF area;
    if (picture.bench().notes.empty()) return area;
    for (const NotePlace& place : placeNotes(picture)) area |= place.paper;
    return area;
}

NotePlace unfolded(const Picture& picture, int note) {
    const double em = picture.sizes.noteMm;
    NotePlace place = placeNotes(picture)[static_cast<std::size_t>(note)];
    const QPointF corner = place.paper.bottomLeft();
    place.lines = wrappedText(picture.bench().notes[static_cast<std::size_t>(note)].text,
                              (kNoteBreadthEm - kNoteTextEm - kNotePadEm) * em, place.sizeMm);
    place.isCutOff = false;
    place.paper = QRectF(QPointF(), paperSize(place, em));
    place.paper.moveBottomLeft(corner);  // below it there may be no more of the window
    tieNote(place, em);
    return place;
}

}  // namespace tiepoint::ui
