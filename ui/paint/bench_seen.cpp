#include "ui/paint/bench_seen.h"

namespace tiepoint::ui {

BenchSeen BenchSeen::of(const Picture& picture, std::shared_ptr<const Bench> bench) {
    if (!bench) return {};
    return {std::move(bench), picture.theme, picture.views.turned, picture.sizes};
}

Picture BenchSeen::picture() const {
    Picture picture;
    picture.layout = buildLayout(bench.pointer());
    picture.theme = theme;
    picture.views.turned = turned;
    picture.sizes = sizes;
    picture.arrangeTable();
    return picture;
}

}  // namespace tiepoint::ui
