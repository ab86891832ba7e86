#pragma once
// The menu at a part, a jumper or a hole: by the right button, or by the menu key at what is selected or in the cursor's hole. It opens
// where it hides least and never over what it is about, tied to it by a line. Belongs to the window's thread.

#include "ui/view/pinning.h"
#include "ui/view/thing_menu.h"

#include <QAction>
#include <QContextMenuEvent>
#include <QPointer>

namespace tiepoint::ui {

/// What the window does to what is selected; each may be null.
struct ThingActions {
    QAction* turn = nullptr;
    QAction* duplicate = nullptr;
    QAction* remove = nullptr;
    QAction* layFlat = nullptr;
    QAction* why = nullptr;
    QAction* help = nullptr;
};

class PartMenu {
public:
    /// All must outlive it.
    struct Needs {
        QWidget& viewport;
        Hand& hand;
        BenchMarks& marks;
        const Hovering& hovering;
        PointerHand& pointer;
        const GestureRun& gestures;
        const Camera& camera;
        Pinning& pinning;
    };
    explicit PartMenu(const Needs& needs) : needs_(needs) {}

    void setActions(const ThingActions& actions) { actions_ = actions; }
    void open(const QContextMenuEvent& event);

private:
    /// What it is about: something selected, else a hole.
    struct About {
        std::string thing;
        std::optional<Hole> hole;
        std::vector<Measurand> choices;
        bool several = false;  ///< other things are selected too
    };
    About aboutAt(const QContextMenuEvent& event);
    void addThing(ThingMenu& menu, const About& about);
    void addSwap(ThingMenu& menu, const std::string& thing);
    void addPins(ThingMenu& menu, const About& about);
    void addAction(ThingMenu& menu, const QString& word, const QString& key, RowPicture picture, QAction* action);
    QRectF frameOf(const About& about) const;
    double hiddenBy(const QRectF& frame) const;
    void popUp(ThingMenu& menu, const About& about);

    const Picture& picture() const { return needs_.hand.picture(); }

    Needs needs_;
    ThingActions actions_;
};

}  // namespace tiepoint::ui
