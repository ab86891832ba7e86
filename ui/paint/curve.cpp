#include "ui/paint/curve.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kCubicPieces = 48;
constexpr double kPieceMm = 0.5;

double apart(QPointF a, QPointF b) { return std::hypot(b.x() - a.x(), b.y() - a.y()); }

/// How far along a cubic's parameter a distance lies.
double parameterAt(const Cubic& cubic, double distanceMm) {
    QPointF last = cubic.a;
    double gone = 0;
    for (int i = 1; i <= kCubicPieces; ++i) {
        const QPointF next = cubic.at(static_cast<double>(i) / kCubicPieces);
        const double piece = apart(last, next);
        if (gone + piece >= distanceMm && piece > 0) return (i - 1 + (distanceMm - gone) / piece) / kCubicPieces;
        gone += piece;
        last = next;
    }
    return 1;
}

QPointF middle(QPointF a, QPointF b, double t) { return a + (b - a) * t; }

Cubic head(const Cubic& q, double t) {
    const QPointF ab = middle(q.a, q.b, t), bc = middle(q.b, q.c, t), cd = middle(q.c, q.d, t);
    const QPointF abc = middle(ab, bc, t), bcd = middle(bc, cd, t);
    return {q.a, ab, abc, middle(abc, bcd, t)};
}

Cubic reversed(const Cubic& q) { return {q.d, q.c, q.b, q.a}; }

}  // namespace

Polyline::Polyline(std::vector<QPointF> points) : points_(std::move(points)) {
    distances_.reserve(points_.size());
    double gone = 0;
    for (std::size_t i = 0; i < points_.size(); ++i) {
        if (i > 0) gone += apart(points_[i - 1], points_[i]);
        distances_.push_back(gone);
    }
    for (std::size_t i = 0; i + 1 < points_.size(); ++i) {
        const QPointF step = points_[i + 1] - points_[i];
        angles_.push_back(std::atan2(step.y(), step.x()));
    }
}

Polyline Polyline::of(const QPainterPath& path) {
    std::vector<QPointF> points;
    for (int i = 0; i < path.elementCount(); ++i) {
        const QPainterPath::Element e = path.elementAt(i);
        if (e.type != QPainterPath::CurveToElement) {
            points.emplace_back(e);
            continue;
        }
        const Cubic cubic{points.back(), QPointF(e), QPointF(path.elementAt(i + 1)), QPointF(path.elementAt(i + 2))};
        const int pieces = std::clamp(static_cast<int>(cubic.lengthMm() / kPieceMm), 4, 200);
        for (int k = 1; k <= pieces; ++k) points.push_back(cubic.at(static_cast<double>(k) / pieces));
        i += 2;
    }
    return Polyline(std::move(points));
}

Place Polyline::at(double distanceMm) const {
    if (isEmpty()) return {};
    const auto after = std::upper_bound(distances_.begin() + 1, distances_.end() - 1, distanceMm);
    const auto i = static_cast<std::size_t>(after - distances_.begin());
    const QPointF from = points_[i - 1], to = points_[i];
    const double piece = distances_[i] - distances_[i - 1];
    const double share = piece > 0 ? (distanceMm - distances_[i - 1]) / piece : 0;
    return {middle(from, to, share), angles_[i - 1]};
}

QPointF Cubic::at(double t) const {
    const double s = 1 - t;
    return a * (s * s * s) + b * (3 * s * s * t) + c * (3 * s * t * t) + d * (t * t * t);
}

double Cubic::lengthMm() const {
    double sum = 0;
    QPointF last = a;
    for (int i = 1; i <= kCubicPieces; ++i) {
        const QPointF next = at(static_cast<double>(i) / kCubicPieces);
        sum += apart(last, next);
        last = next;
    }
    return sum;
}

Cubic Cubic::between(double fromMm, double toMm) const {
    const double first = parameterAt(*this, fromMm), last = parameterAt(*this, toMm);
    const Cubic upTo = head(*this, last);
    return last > 0 ? reversed(head(reversed(upTo), 1 - first / last)) : upTo;
}

QPainterPath Cubic::path() const {
    QPainterPath path(a);
    path.cubicTo(b, c, d);
    return path;
}

double CubicChain::lengthMm() const {
    double sum = 0;
    for (const Cubic& piece : pieces) sum += piece.lengthMm();
    return sum;
}

CubicChain CubicChain::between(double fromMm, double toMm) const {
    CubicChain some;
    double begin = 0;
    for (const Cubic& piece : pieces) {
        const double end = begin + piece.lengthMm();
        const double from = std::max(fromMm, begin), to = std::min(toMm, end);
        if (to > from) some.pieces.push_back(piece.between(from - begin, to - begin));
        begin = end;
    }
    if (some.pieces.empty()) some.pieces.push_back(pieces.back().between(0, 0));
    return some;
}

QPainterPath CubicChain::path() const {
    QPainterPath path(pieces.front().a);
    for (const Cubic& piece : pieces) path.cubicTo(piece.b, piece.c, piece.d);
    return path;
}

CubicChain CubicChain::lifted(QPointF by) const {
    CubicChain lifted = *this;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Cubic& piece = lifted.pieces[i];
        piece = piece.lifted(by);
        if (i > 0) piece.a += by;
        if (i + 1 < pieces.size()) piece.d += by;
    }
    return lifted;
}

}  // namespace tiepoint::ui
