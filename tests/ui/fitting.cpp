#include "fitting.h"

#include "ui/theme/words.h"
#include "ui/window/main_window.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QHelpEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPicture>
#include <QScrollArea>
#include <QScrollBar>
#include <QStyleOptionComboBox>
#include <QStyleOptionFrame>
#include <QTextDocument>
#include <QToolButton>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kPixelSlack = 1.5;  ///< pixels that rounding may take
constexpr double kLeastLetters = 9;  ///< of letters that can be read

QString widgetName(const QWidget& widget) {
    const QString name = widget.accessibleName().left(40);
    return QString::fromLatin1(widget.metaObject()->className()).section(QLatin1Char(':'), -1) +
           (name.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(name));
}

QString wishAndRoom(QSizeF wanted, QSizeF given) {
    return QStringLiteral("wants %1 x %2, has %3 x %4")
        .arg(std::ceil(wanted.width()))
        .arg(std::ceil(wanted.height()))
        .arg(std::floor(given.width()))
        .arg(std::floor(given.height()));
}

bool liesInside(const QRectF& inner, const QRectF& outer) {
    return outer.adjusted(-kPixelSlack, -kPixelSlack, kPixelSlack, kPixelSlack).contains(inner);
}

bool liesOver(const QRectF& a, const QRectF& b) {
    const QRectF shared = a & b;
    return shared.width() > kPixelSlack && shared.height() > kPixelSlack;
}

/// The area in whose viewport a widget lies, or whose viewport it is; null: in none.
const QAbstractScrollArea* scrollerOf(const QWidget* widget) {
    for (const QWidget* each = widget; each && each->parentWidget(); each = each->parentWidget()) {
        const auto* area = qobject_cast<const QAbstractScrollArea*>(each->parentWidget());
        if (area && area->viewport() == each) return area;
    }
    return nullptr;
}

class Inspection {
public:
    Inspection(QWidget& root, Shortened shortened) : root_(root), shortened_(shortened) {}

    QStringList all() {
        for (int round = 0; round < 2; ++round) {  // what was laid out may lay out more
            QApplication::processEvents();
            QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        }
        WordsWatch watch;
        QPicture drawing;  // what is drawn counts, no pixel does
        root_.render(&drawing);
        lookAtDrawn(watch.drawn());
        lookAt(&root_);
        for (QWidget* each : root_.findChildren<QWidget*>()) {
            if (each->isVisible() && !each->isWindow()) lookAt(each);
        }
        return wrong_;
    }

private:
    void blame(const QWidget& where, const QString& what) { wrong_ << widgetName(where) + QStringLiteral(": ") + what; }

    // --- painted words ---

    void lookAtDrawn(const std::vector<DrawnWords>& drawn) {
        for (std::size_t i = 0; i < drawn.size(); ++i) {
            const DrawnWords& each = drawn[i];
            if (!each.whole && !isTold(*each.on, each.words, each.room.center()))
                blame(*each.on, QStringLiteral("\"%1\" is cut: %2 pixels, %3 wide")
                                    .arg(each.words)
                                    .arg(each.pixels)
                                    .arg(each.room.width()));
            if (each.pixels < kLeastLetters)
                blame(*each.on, QStringLiteral("\"%1\" is too small: %2 pixels").arg(each.words).arg(each.pixels));
            if (!scrollerOf(each.on) && !liesInside(each.ink, QRectF(each.on->rect())))
                blame(*each.on, QStringLiteral("\"%1\" lies outside").arg(each.words));
            for (std::size_t j = 0; j < i; ++j) {
                if (drawn[j].on == each.on && !scrollerOf(each.on) && liesOver(drawn[j].ink, each.ink))
                    blame(*each.on, QStringLiteral("\"%1\" over \"%2\"").arg(each.words, drawn[j].words));
            }
            for (const QObject* child : each.on->children()) {
                const auto* widget = qobject_cast<const QWidget*>(child);
                if (widget && widget->isVisible() && !widget->isWindow() &&  // a tool tip comes and goes
                    liesOver(each.ink, QRectF(widget->geometry())))
                    blame(*each.on, QStringLiteral("\"%1\" under %2").arg(each.words, widgetName(*widget)));
            }
        }
    }

    /// Whether what is cut stands whole in a tool tip and is heard.
    bool isTold(QWidget& on, const QString& words, QPointF at) {
        if (shortened_ == Shortened::Never) return false;
        QHelpEvent help(QEvent::ToolTip, at.toPoint(), on.mapToGlobal(at.toPoint()));
        QApplication::sendEvent(&on, &help);
        QTextDocument tip;
        const QString said = QToolTip::text();
        Qt::mightBeRichText(said) ? tip.setHtml(said) : tip.setPlainText(said);
        const bool seen = tip.toPlainText().contains(words);
        QToolTip::hideText();
        return seen && isHeard(on, words);
    }

    bool isHeard(const QWidget& on, const QString& words) const {
        for (const QWidget* each = &on; each; each = each->parentWidget())
            if (each->accessibleName().contains(words) || each->accessibleDescription().contains(words)) return true;
        return false;
    }

    // --- widgets ---

    void lookAt(QWidget* widget) {
        const bool scrolls = scrollerOf(widget) != nullptr;
        if (!scrolls && widget != &root_ && widget->parentWidget() &&
            !liesInside(QRectF(widget->geometry()), QRectF(widget->parentWidget()->rect())))
            blame(*widget, QStringLiteral("lies outside of ") + widgetName(*widget->parentWidget()));
        lookAtNeighbours(*widget);
        if (const auto* label = qobject_cast<QLabel*>(widget)) lookAtLabel(*label);
        if (const auto* edit = qobject_cast<QLineEdit*>(widget)) lookAtEdit(*edit);
        if (const auto* list = qobject_cast<QComboBox*>(widget)) lookAtList(*list);
        if (const auto* button = qobject_cast<QToolButton*>(widget)) lookAtButton(*button, button->text());
        if (const auto* box = qobject_cast<QCheckBox*>(widget)) lookAtSize(*box, box->text(), box->sizeHint());
        if (const auto* bar = qobject_cast<QMenuBar*>(widget)) lookAtMenus(*bar);
        if (auto* area = qobject_cast<QScrollArea*>(widget)) lookAtArea(*area);
        if (auto* items = qobject_cast<QAbstractItemView*>(widget)) lookAtItems(*items);
    }

    /// No two things beside each other lie over each other.
    void lookAtNeighbours(const QWidget& widget) {
        const QWidget* parent = widget.parentWidget();
        if (&widget == &root_ || !parent || qobject_cast<const QAbstractScrollArea*>(parent)) return;
        for (const QObject* other : parent->children()) {
            if (other == &widget) break;
            const auto* beside = qobject_cast<const QWidget*>(other);
            if (beside && beside->isVisible() && !beside->isWindow() &&
                liesOver(QRectF(beside->geometry()), QRectF(widget.geometry())))
                blame(widget, QStringLiteral("over ") + widgetName(*beside));
        }
    }

    void lookAtSize(const QWidget& widget, const QString& words, QSizeF wanted) {
        const QSizeF given = widget.size();
        if (words.isEmpty()) return;
        if (wanted.width() > given.width() + kPixelSlack || wanted.height() > given.height() + kPixelSlack)
            blame(widget, QStringLiteral("\"%1\" ").arg(words) + wishAndRoom(wanted, given));
        if (widget.fontInfo().pixelSize() < kLeastLetters)
            blame(widget,
                  QStringLiteral("\"%1\" is too small: %2 pixels").arg(words).arg(widget.fontInfo().pixelSize()));
    }

    void lookAtLabel(const QLabel& label) {
        if (label.text().isEmpty()) return;
        if (!label.wordWrap()) return lookAtSize(label, label.text(), label.sizeHint());
        lookAtSize(label, label.text(), QSizeF(label.minimumSizeHint().width(), label.heightForWidth(label.width())));
    }

    void lookAtButton(const QToolButton& button, const QString& words) {
        // Its own wish holds an icon's room too; what counts are its letters.
        const QFontMetricsF metrics(button.font());
        lookAtSize(button, words,
                   QSizeF(metrics.horizontalAdvance(QString(words).remove(QLatin1Char('&'))), metrics.capHeight()));
    }

    void lookAtEdit(const QLineEdit& edit) {
        QStyleOptionFrame option;
        option.initFrom(&edit);
        option.rect = edit.rect();
        const QRect room = edit.style()->subElementRect(QStyle::SE_LineEditContents, &option, &edit);
        const QString words = edit.text().isEmpty() ? edit.placeholderText() : edit.displayText();
        const QFontMetricsF metrics(edit.font());
        const QSizeF wanted(metrics.horizontalAdvance(words), metrics.height() * 0.9);
        if (words.isEmpty()) return;
        const bool scrolls = edit.hasFocus() && !edit.isReadOnly();  // what is being typed moves with its cursor
        if ((wanted.width() > room.width() && !scrolls) || wanted.height() > room.height() + kPixelSlack)
            blame(edit, QStringLiteral("\"%1\" ").arg(words) + wishAndRoom(wanted, room.size()));
        if (edit.fontInfo().pixelSize() < kLeastLetters) blame(edit, QStringLiteral("letters are too small"));
    }

    void lookAtList(const QComboBox& list) {
        QStyleOptionComboBox option;
        option.initFrom(&list);
        option.rect = list.rect();
        const QRect room =
            list.style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, &list);
        for (int i = 0; i < list.count(); ++i) {
            const double wanted = QFontMetricsF(list.font()).horizontalAdvance(list.itemText(i));
            if (wanted > room.width() + kPixelSlack)
                blame(list,
                      QStringLiteral("\"%1\" ").arg(list.itemText(i)) + wishAndRoom(QSizeF(wanted, 0), room.size()));
        }
    }

    void lookAtMenus(const QMenuBar& bar) {
        for (const QAction* action : bar.actions()) {
            if (!action->isVisible() || action->isSeparator()) continue;
            const QRect place = bar.actionGeometry(const_cast<QAction*>(action));
            if (place.isEmpty() || !liesInside(QRectF(place), QRectF(bar.rect())))
                blame(bar, QStringLiteral("\"%1\" is hidden").arg(action->text()));
        }
        if (bar.fontInfo().pixelSize() < kLeastLetters) blame(bar, QStringLiteral("letters are too small"));
    }

    /// What is broader than its area can't be scrolled to; what is higher can, if that is allowed.
    void lookAtArea(QScrollArea& area) {
        if (!area.widget()) return;
        const QSize whole = area.widget()->size(), seen = area.viewport()->size();
        if (whole.width() > seen.width() + kPixelSlack && area.horizontalScrollBarPolicy() == Qt::ScrollBarAlwaysOff)
            blame(area, QStringLiteral("too broad: ") + wishAndRoom(whole, seen));
        if (whole.height() > seen.height() + kPixelSlack && area.verticalScrollBarPolicy() == Qt::ScrollBarAlwaysOff)
            blame(area, QStringLiteral("too high: ") + wishAndRoom(whole, seen));
        if (whole.height() > seen.height() + kPixelSlack && area.verticalScrollBar()->maximum() == 0)
            blame(area, QStringLiteral("doesn't scroll: ") + wishAndRoom(whole, seen));
    }

    void lookAtItems(QAbstractItemView& items) {
        for (int row = 0; row < items.model()->rowCount(); ++row)
            for (int column = 0; column < items.model()->columnCount(); ++column)
                lookAtItem(items, items.model()->index(row, column));
    }

    void lookAtItem(const QAbstractItemView& items, const QModelIndex& index) {
        const QSize wanted = items.sizeHintForIndex(index), given = items.visualRect(index).size();
        const QString words = index.data().toString();
        if (words.isEmpty() || given.isEmpty()) return;  // it isn't shown
        if (wanted.height() > given.height() + kPixelSlack || wanted.width() > given.width() + kPixelSlack ||
            given.width() > items.viewport()->width() + kPixelSlack)
            blame(items, QStringLiteral("\"%1\" ").arg(words) + wishAndRoom(wanted, given));
    }

    QWidget& root_;
    Shortened shortened_;
    QStringList wrong_;
};

}  // namespace

QStringList misfitsIn(QWidget& widget, Shortened shortened) {
    QStringList wrong = Inspection(widget, shortened).all();
    wrong.removeDuplicates();
    return wrong;
}

QStringList misfitsOf(QWidget& window, Shortened shortened) {
    QStringList wrong;
    const auto* main = qobject_cast<QMainWindow*>(&window);
    const QWidget* stage = main ? main->centralWidget() : &window;
    const auto lookBelow = [&](const QWidget* parent, const auto& below) -> void {
        for (QObject* child : parent->children()) {
            auto* widget = qobject_cast<QWidget*>(child);
            if (!widget || !widget->isVisible() || widget->isWindow()) continue;
            if (qobject_cast<BenchView*>(widget)) {
                below(widget, below);  // the board is no widget's; what lies over it is
            } else if (const auto* view = qobject_cast<const QAbstractScrollArea*>(parent);
                       !view || (widget != view->viewport() &&
                                 !widget->objectName().startsWith(QStringLiteral("qt_scrollarea")))) {
                wrong << misfitsIn(*widget, shortened);
                if (!liesInside(QRectF(widget->geometry()), QRectF(parent->rect())))
                    wrong << widgetName(*widget) + QStringLiteral(": lies outside of the window");
            } else if (view) {
                for (QObject* over : widget->children())
                    if (auto* field = qobject_cast<QWidget*>(over); field && field->isVisible())
                        wrong << misfitsIn(*field, shortened);
            }
        }
    };
    lookBelow(stage, lookBelow);
    wrong.removeDuplicates();
    return wrong;
}

}  // namespace tiepoint::ui
