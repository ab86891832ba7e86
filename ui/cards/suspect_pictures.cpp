#include "ui/cards/suspect_pictures.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "ui/paint/miniature.h"

#include <QPainter>

#include <algorithm>
#include <string_view>

namespace tiepoint::ui {
namespace {

constexpr double kAboutThingMm = 5;

/// The button stands for itself; the light has a way of its own through the resistor, so that each look can be had.
constexpr std::string_view kLookBench = "looks/look.bench.json";
constexpr std::size_t kLookResistor = 1, kLookButton = 2, kLookLight = 3;
constexpr double kDimOhm = 2.4e3;  ///< about 1 mA: a third as bright as usual

std::string_view lookText() { return std::ranges::find(embeddedFiles(), kLookBench, &EmbeddedFile::name)->text; }

Bench lookBench(const Bench& plan, const std::string& light) {
    Bench bench = readBench(lookText()).value().bench;
    Part& shown = bench.parts[kLookLight];
    if (const Part* own = plan.findPart(light)) {
        if (own->kind == shown.kind) shown.values = own->values;
        shown.id = own->id;
    }
    const auto button = std::ranges::find_if(plan.parts, [](const Part& part) { return part.kind->hasCap; });
    if (button != plan.parts.end()) {
        bench.parts[kLookButton].id = button->id;
        bench.parts[kLookButton].cap = button->cap;
    } else {
        bench.parts.erase(bench.parts.begin() + kLookButton);
    }
    return bench;
}

QImage oneLook(LookOfLight look, const Bench& plan, const std::string& light, bool pressed, const Theme& theme,
               QSize size, double ratio) {
    Bench bench = lookBench(plan, light);
    if (look == LookOfLight::Dark) bench.jumpers.pop_back();  // no way back to minus
    if (look == LookOfLight::Dim) bench.parts[kLookResistor].values.front() = kDimOhm;
    const bool withButton = bench.parts.size() > kLookLight;
    const Point first = *holeMm(bench, Hole{"A", Line::D, withButton ? 8 : 12}),
                last = *holeMm(bench, Hole{"A", Line::G, withButton ? 17 : 18});
    Miniature picture;
    picture.bench = std::make_shared<const Bench>(std::move(bench));
    picture.theme = &theme;
    picture.size = size;
    picture.ratio = ratio;
    picture.views.arrows = Arrows::Off;
    picture.pressed = pressed;
    picture.frameMm = Rect{first.x, first.y - 1, last.x - first.x, last.y - first.y + 2};
    return paintMiniature(picture);
}

}  // namespace

QImage pictureOfThing(const std::shared_ptr<const Bench>& bench, const std::string& id, const Theme& theme, QSize size,
                      double ratio) {
    std::vector<Point> points;
    const auto add = [&](const std::optional<Hole>& hole) {
        const auto at = hole ? holeMm(*bench, *hole) : std::nullopt;
        if (at) points.push_back(*at);
    };
    if (const Part* part = bench->findPart(id))
        for (const auto& lead : part->leads) add(lead);
    if (const Jumper* jumper = bench->findJumper(id)) {
        for (const JumperEnd& end : jumper->ends)
            if (const auto* hole = std::get_if<Hole>(&end)) add(*hole);
    }
    if (points.empty()) return {};
    double left = points.front().x, right = left, top = points.front().y, bottom = top;
    for (const Point& point : points) {
        left = std::min(left, point.x), right = std::max(right, point.x);
        top = std::min(top, point.y), bottom = std::max(bottom, point.y);
    }
    Miniature picture;
    picture.bench = bench;
    picture.theme = &theme;
    picture.size = size;
    picture.ratio = ratio;
    picture.views.arrows = Arrows::Off;
    picture.live = false;
    picture.frameMm = Rect{left - kAboutThingMm, top - kAboutThingMm, right - left + 2 * kAboutThingMm,
                           bottom - top + 2 * kAboutThingMm};
    return paintMiniature(picture);
}

QImage pictureOfLook(LookOfLight look, const Bench& plan, const std::string& light, bool pressed, const Theme& theme,
                     QSize size, double ratio) {
    if (look != LookOfLight::AlwaysLit) return oneLook(look, plan, light, pressed, theme, size, ratio);
    const QSize half(size.width() / 2 - 2, size.height());
    QImage both(size * ratio, QImage::Format_ARGB32_Premultiplied);
    both.setDevicePixelRatio(ratio);
    both.fill(Qt::transparent);
    QPainter painter(&both);
    painter.drawImage(QPointF(0, 0), oneLook(LookOfLight::Lit, plan, light, true, theme, half, ratio));
    painter.drawImage(QPointF(size.width() - half.width(), 0),
                      oneLook(LookOfLight::Lit, plan, light, false, theme, half, ratio));
    return both;
}

}  // namespace tiepoint::ui
