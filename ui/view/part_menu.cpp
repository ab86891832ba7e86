#include "ui/view/part_menu.h"

#include "core/bench/describe.h"
#include "core/edit/placement.h"
#include "core/edit/swap.h"
#include "core/hunt/hidden_slip.h"
#include "ui/gesture/measurands.h"
#include "ui/paint/bench_painter.h"
#include "ui/theme/qs.h"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kMenuAway = 54;    ///< of the menu from what it is about, in the 1080-line layout
constexpr double kFirstRow = 28;    ///< the tie meets the menu's first row where it can
constexpr double kHoleFrameMm = 2;  ///< about a hole that the menu is about
constexpr double kTieInset = 10;

/// The four places about a frame, moved into the room where they stand out of it; pixels of the viewport.
std::array<QRectF, 4> placesAbout(const QRectF& about, const QSizeF& size, const QRectF& room, const Look& look) {
    const double away = look.px(kMenuAway);
    const double top = about.center().y() - look.px(kFirstRow), left = about.center().x() - size.width() / 2;
    const std::array corners{QPointF(about.right() + away, top), QPointF(about.left() - away - size.width(), top),
                             QPointF(left, about.bottom() + away), QPointF(left, about.top() - away - size.height())};
    const double rightmost = std::max(room.left(), room.right() - size.width());
    const double lowest = std::max(room.top(), room.bottom() - size.height());
    std::array<QRectF, 4> places;
    for (std::size_t i = 0; i < corners.size(); ++i)
        places[i] = QRectF(
            QPointF(std::clamp(corners[i].x(), room.left(), rightmost), std::clamp(corners[i].y(), room.top(), lowest)),
            size);
    return places;
}

/// The line from what a menu is about to the menu: straight where they stand beside or below each other.
QLineF tieBetween(const QRectF& about, const QRectF& menu, double inset) {
    const double x = std::clamp(about.center().x(), menu.left() + inset, menu.right() - inset);
    const double y = std::clamp(about.center().y(), menu.top() + inset, menu.bottom() - inset);
    if (menu.left() >= about.right()) return {about.right(), about.center().y(), menu.left(), y};
    if (menu.right() <= about.left()) return {about.left(), about.center().y(), menu.right(), y};
    if (menu.top() >= about.bottom()) return {about.center().x(), about.bottom(), x, menu.top()};
    return {about.center().x(), about.top(), x, menu.bottom()};
}

QRectF boxOf(const Outline& body) {
    const double reach = std::max(body.halfLength, body.halfWidth);
    return {body.centre.x - reach, body.centre.y - reach, 2 * reach, 2 * reach};
}

}  // namespace

PartMenu::About PartMenu::aboutAt(const QContextMenuEvent& event) {
    const bool byMouse = event.reason() == QContextMenuEvent::Mouse;
    if (byMouse) needs_.pointer.setAt(event.pos());
    About about;
    const QStringList selected = needs_.hand.selection();
    if (byMouse) {
        const Under under = needs_.hovering.under(needs_.pointer.at());
        about.thing = under.thing();
        about.hole = under.hole;
        about.choices = measurandsOf(picture(), under);
    } else {
        about.hole = needs_.pinning.holeHere();
        about.choices = needs_.pinning.measurandsHere();
        if (!selected.isEmpty()) about.thing = selected.front().toStdString();
    }
    if (about.thing.empty() && about.hole) {
        if (const auto occupant = occupantOf(picture().bench(), *about.hole)) about.thing = occupant->id;
    }
    const Bench& bench = picture().bench();
    if (!bench.findPart(about.thing) && !bench.findJumper(about.thing)) about.thing.clear();
    about.several = selected.size() > 1 && selected.contains(qs(about.thing));
    return about;
}

void PartMenu::addAction(ThingMenu& menu, const QString& word, const QString& key, RowPicture rowPicture,
                         QAction* action) {
    if (!action) return;
    menu.addRow(word, key, std::move(rowPicture), [action = QPointer<QAction>(action)] {
        if (action) action->trigger();
    });
}

void PartMenu::addThing(ThingMenu& menu, const About& about) {
    const Part* part = picture().bench().findPart(about.thing);
    const Jumper* jumper = picture().bench().findJumper(about.thing);
    Pictured thing;
    if (part) thing.part = *part;
    if (jumper) thing.jumperColour = jumper->colour;
    const bool turns = part && part->kind->package->reach != Reach::Flying;
    if (turns) addAction(menu, QStringLiteral("Turn"), QStringLiteral("]"), turnedPicture(thing), actions_.turn);
    if (jumper)
        addAction(menu, jumper->flat ? QStringLiteral("Arch") : QStringLiteral("Lay flat"), QStringLiteral("F6"),
                  laidPicture(jumper->colour, !jumper->flat), actions_.layFlat);
    addAction(menu, QStringLiteral("Duplicate"), QStringLiteral("Ctrl D"), twicePicture(thing), actions_.duplicate);
    addAction(menu, QStringLiteral("Remove"), QStringLiteral("Del"), emptyHolesPicture(), actions_.remove);
    if (!part || about.several) return;
    addAction(menu, QStringLiteral("Why?"), QStringLiteral("Shift F1"), openContactPicture(), actions_.why);
    addAction(menu, QStringLiteral("Help"), QStringLiteral("F1"), sheetPicture(), actions_.help);
}

/// Another of the same: where something may be broken that can't be seen, and where something is.
void PartMenu::addSwap(ThingMenu& menu, const std::string& thing) {
    const Bench& bench = picture().bench();
    const Part* part = bench.findPart(thing);
    const Jumper* jumper = bench.findJumper(thing);
    const Condition condition = part ? part->condition : jumper ? jumper->condition : Condition::Sound;
    if (condition == Condition::Sound && !isHunting(bench)) return;
    const Pictured pictured{part ? std::optional(*part) : std::nullopt,
                            jumper ? std::optional(jumper->colour) : std::nullopt};
    menu.addRow(QStringLiteral("Swap for a new one"), QString(), twicePicture(pictured), [this, thing] {
        if (const auto why = needs_.hand.document().push(swapEdit(picture().bench(), thing)))
            needs_.hand.flash(why->toStdString(), Point{picture().table->allMm.left, picture().table->allMm.top});
    });
}

void PartMenu::addPins(ThingMenu& menu, const About& about) {
    if (isHunting(picture().bench())) return;  // there only a meter tells
    bool first = true;
    for (const Measurand& of : about.choices) {
        menu.addRow(needs_.pinning.pinWords(of), std::exchange(first, false) ? QStringLiteral("F5") : QString(),
                    tagPicture(), [this, of] { needs_.pinning.pin(of); });
    }
    const bool ofHole = about.hole && !about.choices.empty() && std::holds_alternative<VoltsAt>(about.choices.front());
    if (ofHole)
        menu.addRow(QStringLiteral("Pin volts between this hole and another\u2026"), QStringLiteral("Shift F5"),
                    twoHolesPicture(), [this, hole = about.hole] { needs_.pinning.probeFrom(hole); });
}

void PartMenu::open(const QContextMenuEvent& event) {
    if (needs_.gestures.isUnderWay()) return;
    const About about = aboutAt(event);
    if (about.thing.empty() && about.choices.empty()) return;
    if (!about.thing.empty() && !about.several) needs_.hand.setSelection({qs(about.thing)});
    QWidget* view = needs_.viewport.parentWidget();
    auto* menu = new ThingMenu(lookFor(*picture().theme, view->window()->size()), view);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->setAccessibleName(about.thing.empty() ? QStringLiteral("What can be done here")
                                                : QStringLiteral("What can be done with %1").arg(qs(about.thing)));
    if (!about.thing.empty()) addThing(*menu, about);
    if (!about.thing.empty() && !about.several) addSwap(*menu, about.thing);
    if (!about.several) addPins(*menu, about);
    if (menu->isEmpty()) return menu->deleteLater();
    popUp(*menu, about);
}

QRectF PartMenu::frameOf(const About& about) const {
    if (!about.thing.empty()) return selectionFrame(picture(), about.thing);
    const Point at = about.hole ? picture().seenAt(*about.hole) : needs_.camera.toMm(needs_.pointer.at());
    return {at.x - kHoleFrameMm / 2, at.y - kHoleFrameMm / 2, kHoleFrameMm, kHoleFrameMm};
}

/// How much of what lies on the table a frame would hide, square pixels.
double PartMenu::hiddenBy(const QRectF& frame) const {
    double hidden = 0;
    const auto add = [&](const QRectF& mm) {
        const QRectF shared = frame & QRectF(needs_.camera.fromMm({mm.left(), mm.top()}),
                                             needs_.camera.fromMm({mm.right(), mm.bottom()}));
        hidden += shared.width() * shared.height();
    };
    for (const PartPlace& place : picture().table->parts) add(boxOf(place.pose.body));
    for (int jumper = 0; jumper < static_cast<int>(picture().bench().jumpers.size()); ++jumper)
        add(jumperLine(picture(), jumper).boundingRect());
    return hidden;
}

void PartMenu::popUp(ThingMenu& menu, const About& about) {
    QWidget& window = *needs_.viewport.window();
    const QRectF room(needs_.viewport.mapFrom(&window, QPoint(0, 0)), window.size());
    const QRectF mm = frameOf(about);
    const QRectF frame(needs_.camera.fromMm({mm.left(), mm.top()}), needs_.camera.fromMm({mm.right(), mm.bottom()}));
    const Look look = lookFor(*picture().theme, window.size());
    menu.ensurePolished();  // its style says how large it is
    const auto places = placesAbout(frame, menu.sizeHint(), room, look);
    const QRectF* best = &places.front();
    double least = std::numeric_limits<double>::infinity();
    for (const QRectF& place : places) {
        const double hidden = place.intersects(frame) ? std::numeric_limits<double>::max() : hiddenBy(place);
        if (hidden < least) best = &place, least = hidden;
    }
    QObject::connect(&menu, &QMenu::aboutToHide, &needs_.viewport,
                     [this] { needs_.marks.set(&Marks::tie, std::optional<std::pair<Point, Point>>()); });
    menu.popup(needs_.viewport.mapToGlobal(best->topLeft().toPoint()));
    const QRectF shown(needs_.viewport.mapFromGlobal(menu.geometry().topLeft()), menu.size());
    const QLineF tie = tieBetween(frame, shown, look.px(kTieInset));
    needs_.marks.set(&Marks::tie, std::optional(std::pair(needs_.camera.toMm(tie.p1()), needs_.camera.toMm(tie.p2()))));
}

}  // namespace tiepoint::ui
