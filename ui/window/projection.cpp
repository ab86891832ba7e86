#include "ui/window/projection.h"

#include "ui/view/room_mode.h"

#include <QEvent>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kEndMargin = 6;

}  // namespace

Projection::Projection(BenchView& view, const Actions& actions, QWidget& window)
    : QObject(&window),
      view_(view),
      actions_(actions),
      window_(window),
      blank_(new QWidget(view.parentWidget())),
      end_(new QToolButton(view.parentWidget())) {
    blank_->setAutoFillBackground(true);
    blank_->setStyleSheet(QStringLiteral("background: black;"));
    blank_->setAccessibleName(QStringLiteral("Blank screen"));
    blank_->setCursor(Qt::BlankCursor);
    blank_->installEventFilter(this);
    blank_->hide();
    end_->setText(QStringLiteral("Back to the desk (F11)"));
    end_->setFocusPolicy(Qt::NoFocus);
    end_->hide();
    connect(end_, &QToolButton::clicked, actions_.project, &QAction::toggle);
    connect(actions_.ink, &QAction::toggled, this, [this](bool on) { view_.room().setInking(on); });
    connect(actions_.wipeInk, &QAction::triggered, this, [this] { view_.room().wipeInk(); });
    connect(actions_.blank, &QAction::toggled, this, &Projection::setBlank);
    actions_.blank->setEnabled(false);  // letters are the caps' until there is a screen to blank
}

void Projection::setProjecting(bool projecting) {
    if (projecting == projecting_) return;
    projecting_ = projecting;
    if (projecting) wasFullScreen_ = window_.isFullScreen();
    actions_.blank->setChecked(false);
    actions_.blank->setEnabled(projecting);
    end_->setVisible(projecting);
    window_.setWindowState(window_.windowState().setFlag(Qt::WindowFullScreen, projecting || wasFullScreen_));
    Q_EMIT changed();  // the view has its new place before it fits the circuit into it
    view_.room().setProjecting(projecting);
    if (projecting) {
        lockScale();
        if (view_.picture().theme->name != ThemeName::Projector) Q_EMIT themeOffered();
    } else if (std::exchange(locked_, false)) {
        Views views = view_.views();
        views.lockedFullScaleAmpere.reset();
        view_.setViews(views);
    }
}

void Projection::lockScale() {
    const Picture& picture = view_.picture();
    if (!picture.live() || picture.views.lockedFullScaleAmpere || picture.snapshot->largestCurrentAmpere <= 0) return;
    Views views = picture.views;
    views.lockedFullScaleAmpere = fullScaleAmpere(picture);
    locked_ = true;
    view_.setViews(views);
}

void Projection::setBlank(bool blank) {
    blank_->setVisible(blank);
    if (blank) blank_->raise();
}

bool Projection::eventFilter(QObject* watched, QEvent* event) {
    if (watched == blank_ && event->type() == QEvent::MouseButtonPress) {
        actions_.blank->setChecked(false);
        return true;
    }
    return QObject::eventFilter(watched, event);
}

int Projection::bandHeight(const Look& look) {
    styleEnd(look);
    return end_->height() + 2 * look.ipx(kEndMargin);
}

int Projection::buttonBreadth() const { return end_->width() + end_->height(); }

void Projection::styleEnd(const Look& look) {
    const Theme& theme = *look.theme;
    end_->setFont(look.font(text::kSmall));
    end_->setStyleSheet(
        QStringLiteral(
            "QToolButton { color: %1; background: %2; border: 1px solid %3; border-radius: 5px; padding: 4px 10px; }")
            .arg(theme.text.name(), theme.card.name(), theme.cardEdge.name()));
    end_->adjustSize();
}

void Projection::placeIn(const QRect& frame, const Look& look) {
    blank_->setGeometry(frame);
    styleEnd(look);
    const int margin = look.ipx(kEndMargin);
    end_->move(frame.right() - end_->width() - margin, frame.top() + margin);
    end_->raise();
    if (blank_->isVisible()) blank_->raise();
}

}  // namespace tiepoint::ui
