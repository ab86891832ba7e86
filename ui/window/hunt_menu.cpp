#include "ui/window/hunt_menu.h"

#include "core/base/capital.h"
#include "ui/theme/qs.h"

#include <QRandomGenerator>

namespace tiepoint::ui {
namespace {

constexpr quint64 kMostHuntNumber = quint64{1} << 53;  ///< as on the command line
constexpr int kDrawnNumbers = 10000;                   ///< one that is drawn is short enough to be told on

}  // namespace

HuntMenu::HuntMenu(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      action_(new QAction(QStringLiteral("Begin a &fault hunt"), this)) {
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &HuntMenu::askNumber);
    connect(&parts_.document, &BenchDocument::benchChanged, this, [this] { asked_ = nullptr; });
    connect(&parts_.questions, &Questions::huntReady, this,
            [this](const std::shared_ptr<const HuntAnswer>& answer) { take(*answer); });
}

void HuntMenu::askNumber() {
    MessageBar::Question ask;
    ask.line = QStringLiteral("Which number is the hunt to have?");
    ask.more = QStringLiteral("The same number hides the same slip on every computer. Nothing typed: any number.");
    ask.phrase = true;
    ask.masked = false;
    ask.answers = {{QStringLiteral("Begin"), [this] { begin(parts_.bar.phrase().text().trimmed()); }},
                   {QStringLiteral("Cancel"), [] {}}};
    ask.cancel = [] {};
    parts_.bar.ask(std::move(ask));
}

void HuntMenu::begin(const QString& typed) {
    bool isNumber = true;
    const quint64 number = typed.isEmpty() ? static_cast<quint64>(QRandomGenerator::global()->bounded(1, kDrawnNumbers))
                                           : typed.toULongLong(&isNumber);
    if (!isNumber || number > kMostHuntNumber)
        return parts_.bar.say(MessageBar::Tone::Notice,
                              QStringLiteral("The number of a hunt is a whole number, such as 7."));
    asked_ = parts_.document.bench();
    parts_.questions.askHunt(asked_, number);
}

void HuntMenu::take(const HuntAnswer& answer) {
    if (!asked_ || answer.target != asked_) return;  // another bench stands there by now
    asked_ = nullptr;
    if (!answer.bench) return parts_.bar.say(MessageBar::Tone::Notice, qs(capitalised(answer.why)) + QLatin1Char('.'));
    parts_.files.openMade(*answer.bench, [this, number = answer.number] {
        parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Hunt number %1. Good luck.").arg(number));
    });
}

}  // namespace tiepoint::ui
