#include "ui/export/teacher_page.h"

#include "core/course/fit.h"
#include "ui/export/paper_sheet.h"
#include "ui/export/save_bytes.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"
#include "ui/theme/theme.h"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QTextDocument>

namespace tiepoint::ui {
namespace {

constexpr int kTeacherDotsPerInch = 300;
constexpr double kTeacherMarginMm = 14, kTeacherMmPerInch = 25.4, kTeacherLetterMm = 3.7;

QString asHtml(std::string_view text) { return qs(text).toHtmlEscaped(); }

QString listUnder(const QString& heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return {};
    QString html = QStringLiteral("<h3>%1</h3><ul>").arg(heading);
    for (const std::string& line : lines) html += QStringLiteral("<li>%1</li>").arg(asHtml(line));
    return html + QStringLiteral("</ul>");
}

QString neededList(const Lesson& lesson) {
    QString html = QStringLiteral("<h3>For each table</h3><ul>");
    for (const NeededPart& needed : partsNeeded(lesson))
        html += QStringLiteral("<li>%1 × %2</li>").arg(needed.count).arg(asHtml(askedFor(needed.example)));
    if (const int jumpers = jumpersNeeded(lesson); jumpers > 0)
        html += QStringLiteral("<li>%1 jumpers</li>").arg(jumpers);
    return html + QStringLiteral("</ul>");
}

QString stepsList(const Lesson& lesson) {
    QString html = QStringLiteral("<h3>Steps</h3><ol>");
    for (const LessonStep& step : lesson.steps) {
        html += QStringLiteral("<li><b>%1</b><br/>%2").arg(asHtml(step.caption), asHtml(step.note));
        if (step.ask) {
            html += QStringLiteral("<br/><i>%1</i>").arg(asHtml(step.ask->question));
            for (std::size_t i = 0; i < step.ask->answers.size(); ++i)
                html += QStringLiteral("<br/>%1 %2%3")
                            .arg(i + 1)
                            .arg(asHtml(step.ask->answers[i]),
                                 static_cast<int>(i) == step.ask->right ? QStringLiteral(" (correct)") : QString());
            html += QStringLiteral("<br/>%1").arg(asHtml(step.ask->seen));
        }
        html += QStringLiteral("</li>");
    }
    return html + QStringLiteral("</ol>");
}

}  // namespace

QString teacherPageText(const Lesson& lesson) {
    QString html = QStringLiteral("<h1>%1</h1><p>%2 minutes. %3</p>")
                       .arg(asHtml(lesson.title))
                       .arg(lesson.minutes)
                       .arg(asHtml(lesson.summary));
    html += listUnder(QStringLiteral("Safety"), lesson.safety);
    html += listUnder(QStringLiteral("Aim"), lesson.teaches);
    if (!lesson.answers.empty())
        html += QStringLiteral("<h3>The wrong idea that it answers</h3><p>%1</p>").arg(asHtml(lesson.answers));
    if (!lesson.surprise.empty()) html += QStringLiteral("<h3>One surprise</h3><p>%1</p>").arg(asHtml(lesson.surprise));
    html += listUnder(QStringLiteral("Must"), lesson.must) + listUnder(QStringLiteral("May"), lesson.may);
    html += neededList(lesson) + listUnder(QStringLiteral("Words"), lesson.words);
    html += stepsList(lesson);
    html += listUnder(QStringLiteral("On paper at the end, and again at the start of the next lesson"), lesson.paper);
    return html + listUnder(QStringLiteral("Packing away"), lesson.packing);
}

std::optional<QString> saveTeacherPage(const Lesson& lesson, const QString& path, Paper paper) {
    QByteArray bytes;
    {
        QBuffer buffer(&bytes);
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer(&buffer);
        writer.setTitle(plainText(lesson.title));
        writer.setCreator(QStringLiteral("Tiepoint"));
        writer.setResolution(kTeacherDotsPerInch);
        writer.setPageSize(QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter));
        writer.setPageMargins(QMarginsF(0, 0, 0, 0));
        const double dotsPerMm = kTeacherDotsPerInch / kTeacherMmPerInch, margin = kTeacherMarginMm * dotsPerMm;
        const QSizeF inside(writer.width() - 2 * margin, writer.height() - 2 * margin);
        PaperSheet sheet(writer);
        QPainter painter;
        if (!painter.begin(&sheet)) return QStringLiteral("nothing can be drawn on such paper");
        QTextDocument document;
        document.documentLayout()->setPaintDevice(&sheet);
        document.setDefaultFont(uiFont(kTeacherLetterMm * dotsPerMm));
        document.setDocumentMargin(0);
        document.setHtml(teacherPageText(lesson));
        document.setPageSize(inside);
        for (int page = 0; page < document.pageCount(); ++page) {
            if (page > 0 && !writer.newPage()) return QStringLiteral("there is no room for another page");
            painter.save();
            painter.translate(margin, margin - page * inside.height());
            document.drawContents(&painter, QRectF(0, page * inside.height(), inside.width(), inside.height()));
            painter.restore();
        }
        painter.end();
    }
    return saveBytes(bytes, path);
}

}  // namespace tiepoint::ui
