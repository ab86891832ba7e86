#include "app/class_page.h"

#include "core/base/printable.h"
#include "ui/paint/miniature.h"
#include "ui/view/parallel_for.h"

#include <QBuffer>
#include <QByteArray>

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

constexpr int kPictureWidth = 420, kPictureHeight = 240;
constexpr std::size_t kMostBoards = 6;  ///< more can't be made out in a row

constexpr std::string_view kHead = R"(<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>{title}</title><style>
body {{ font-family: sans-serif; color: #23262b; margin: 2em; max-width: 75em; }}
table {{ border-collapse: collapse; width: 100%; }}
th, td {{ border-bottom: 1px solid #d8d1c3; padding: .6em; text-align: left; vertical-align: top; }}
img {{ display: block; width: {width}px; max-width: 30vw; height: auto; border: 1px solid #d8d1c3; }}
.no {{ font-weight: bold; }}
ul {{ margin: 0; padding-left: 1.2em; }}
</style></head><body>
<h1>{title}</h1>
<p>{summary}</p>
<table><thead><tr><th>File</th><th>Bench</th><th>Circuit</th><th>Behaviour</th><th>What differs</th></tr></thead><tbody>
)";

std::string escaped(std::string_view text) {
    return QString::fromStdString(printable(text)).toHtmlEscaped().toStdString();
}

ui::Miniature pictureOf(const LearnerRow& row) {
    ui::Miniature picture;
    if (!row.bench || !row.error.empty() || row.bench->boards.size() > kMostBoards) return picture;
    picture.bench = row.bench;
    picture.theme = &ui::theme(ui::ThemeName::Day);
    picture.size = QSize(kPictureWidth, kPictureHeight);
    picture.pressed = false;
    for (const BenchDifference& each : row.comparison.differences)
        picture.pointed.insert(picture.pointed.end(), each.holes.begin(), each.holes.end());
    return picture;
}

std::string asPng(const QImage& image) {
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    image.convertToFormat(QImage::Format_RGB32).save(&buffer, "PNG");
    return buffer.data().toBase64().toStdString();
}

std::vector<std::string> picturesOf(const std::vector<LearnerRow>& rows) {
    std::vector<std::string> pictures(rows.size());
    ui::Work work;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        work.emplace_back([&rows, &pictures, i] {
            const ui::Miniature picture = pictureOf(rows[i]);
            if (!picture.isEmpty()) pictures[i] = asPng(ui::paintMiniature(picture));
        });
    }
    ui::parallelFor(work);
    return pictures;
}

std::string_view circuitWords(bool same) { return same ? "the same" : "another"; }
std::string_view behaviourWords(bool same) { return same ? "the same" : "another"; }

std::string listOf(const Comparison& comparison) {
    std::string list;
    for (const auto* told : {&comparison.differences, &comparison.behaviour})
        for (const BenchDifference& each : *told) list += "<li>" + escaped(each.text) + "</li>";
    for (const std::string& each : comparison.limits) list += "<li>" + escaped(each) + "</li>";
    return list.empty() ? "nothing" : "<ul>" + list + "</ul>";
}

std::string rowAsHtml(const LearnerRow& row, const std::string& picture) {
    const std::string image = picture.empty() ? ""
                                              : fmt::format("<img alt=\"{}\" src=\"data:image/png;base64,{}\">",
                                                            escaped(row.bench->title), picture);
    if (!row.error.empty())
        return fmt::format("<tr><td>{}</td><td></td><td colspan=\"3\" class=\"no\">can't be compared: {}</td></tr>\n",
                           escaped(row.file), escaped(row.error));
    const Comparison& comparison = row.comparison;
    return fmt::format("<tr><td>{}</td><td>{}</td><td{}>{}</td><td{}>{}</td><td>{}</td></tr>\n", escaped(row.file),
                       image, comparison.sameCircuit ? "" : " class=\"no\"", circuitWords(comparison.sameCircuit),
                       comparison.sameBehaviour ? "" : " class=\"no\"", behaviourWords(comparison.sameBehaviour),
                       listOf(comparison));
}

}  // namespace

std::string classAsHtml(const std::vector<LearnerRow>& rows, const ComparisonTarget& target) {
    std::size_t circuits = 0, behaviours = 0, errors = 0;
    for (const LearnerRow& row : rows) {
        errors += row.error.empty() ? 0 : 1;
        circuits += row.error.empty() && row.comparison.sameCircuit ? 1 : 0;
        behaviours += row.error.empty() && row.comparison.sameBehaviour ? 1 : 0;
    }
    const std::string title = "Compared with " + escaped(target.bench().title);
    const std::string summary = fmt::format("{} files: {} do the same, {} are the same circuit, {} can't be compared.",
                                            rows.size(), behaviours, circuits, errors);
    std::string page =
        fmt::format(kHead, fmt::arg("title", title), fmt::arg("summary", summary), fmt::arg("width", kPictureWidth));
    const std::vector<std::string> pictures = picturesOf(rows);
    for (std::size_t i = 0; i < rows.size(); ++i) page += rowAsHtml(rows[i], pictures[i]);
    return page + "</tbody></table></body></html>\n";
}

}  // namespace tiepoint::app
