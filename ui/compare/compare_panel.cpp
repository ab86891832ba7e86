#include "ui/compare/compare_panel.h"

#include "core/base/stopping.h"
#include "ui/paint/miniature.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kEdge = 40, kVerdictHeight = 70, kTitleRow = 44, kListHeight = 250, kBetween = 24,
                 kButtonBreadth = 150, kTaskRow = 64, kGoalButtonBreadth = 260;
constexpr std::size_t kMostBoardsShown = 12;  ///< more can't be made out

QString exerciseVerdict(const Comparison& comparison) {
    if (comparison.isReached()) return QStringLiteral("You have reached the goal");
    return comparison.sameBehaviour ? QStringLiteral("It does what is asked for. Can it be done with less?")
                                    : QStringLiteral("Not there yet: look at what is marked");
}

QString verdictOf(const Comparison& comparison) {
    if (comparison.sameCircuit && comparison.sameBehaviour)
        return QStringLiteral("The same circuit, and it does the same");
    if (comparison.sameCircuit) return QStringLiteral("The same circuit, but it doesn't do the same");
    return comparison.sameBehaviour ? QStringLiteral("Another circuit, but it does the same")
                                    : QStringLiteral("Another circuit, and it does something else");
}

/// Places of one difference, or of all, on one of the two benches.
void addPlaces(Miniature& picture, const BenchDifference& difference, bool onTarget) {
    const auto& ids = onTarget ? difference.targetParts : difference.parts;
    const auto& holes = onTarget ? difference.targetHoles : difference.holes;
    picture.pointed.insert(picture.pointed.end(), holes.begin(), holes.end());
    if (holes.empty()) picture.cornered.insert(picture.cornered.end(), ids.begin(), ids.end());
}

}  // namespace

ComparePanel::ComparePanel(QWidget* stage)
    : QWidget(stage),
      look_{&theme(ThemeName::Day), 1},
      verdict_(new QLabel(this)),
      titles_{new QLabel(this), new QLabel(this)},
      pictures_{new QLabel(this), new QLabel(this)},
      list_(new QListWidget(this)),
      task_(new QLabel(this)),
      done_(new QToolButton(this)),
      goal_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Comparison"));
    verdict_->setTextFormat(Qt::PlainText);
    for (QLabel* title : titles_) title->setTextFormat(Qt::PlainText);
    task_->setTextFormat(Qt::PlainText);
    task_->setWordWrap(true);
    for (QLabel* picture : pictures_) picture->setAlignment(Qt::AlignCenter);
    list_->setAccessibleName(QStringLiteral("What differs"));
    list_->setWordWrap(true);
    done_->setText(QStringLiteral("Close"));
    pool_.setMaxThreadCount(1);
    connect(list_, &QListWidget::currentRowChanged, this, [this] { paintPictures(); });
    connect(done_, &QToolButton::clicked, this, &ComparePanel::close);
    connect(goal_, &QToolButton::clicked, this, &ComparePanel::toggleGoal);
    stage->installEventFilter(this);
    hide();
}

ComparePanel::~ComparePanel() {
    stop_.request_stop();
    pool_.waitForDone();
}

void ComparePanel::compare(std::shared_ptr<const Bench> mine, std::shared_ptr<const ComparisonTarget> target,
                           const QString& task) {
    stop_.request_stop();
    stop_ = {};
    mine_ = std::move(mine);
    target_ = std::move(target);
    comparison_ = {};
    working_ = true;
    rows_.clear();
    list_->clear();
    showsGoal_ = !isExercise();
    task_->setText(task);
    task_->setVisible(!task.isEmpty());
    const auto& locks = target_->limits.locks;
    goal_->setVisible(isExercise() && std::ranges::find(locks, "mends") == locks.end());
    verdict_->setText(QStringLiteral("Comparing…"));
    setGeometry(parentWidget()->rect());
    arrange();
    show();
    raise();
    list_->setFocus(Qt::OtherFocusReason);
    pool_.start([this, number = ++asked_, bench = mine_, wanted = target_, token = stop_.get_token()] {
        const StopScope scope(token);
        try {
            auto result = compareBenches(bench, *wanted);
            QMetaObject::invokeMethod(
                this,
                [this, number, result] {
                    if (number == asked_) take(result);
                },
                Qt::QueuedConnection);
        } catch (const Stopped&) {  // another comparison, or none, is wanted now
        }
    });
}

void ComparePanel::toggleGoal() {
    showsGoal_ = !showsGoal_;
    fillList();
    arrange();
}

void ComparePanel::take(const Result<Comparison>& result) {
    working_ = false;
    if (result) comparison_ = *result;
    verdict_->setText(!result        ? plainText(result.error().message)
                      : isExercise() ? exerciseVerdict(comparison_)
                                     : verdictOf(comparison_));
    fillList();
    arrange();
    Q_EMIT shown();
}

/// Of an exercise where to look, each place once, until its goal is shown; a goal that is reached leaves nothing to look for.
void ComparePanel::fillList() {
    rows_.clear();
    list_->clear();
    const auto add = [this](const QString& line, const BenchDifference* of) {
        rows_.push_back(of);
        list_->addItem(line);
    };
    for (const auto* told : {&comparison_.differences, &comparison_.behaviour}) {
        if (!showsGoal_ && comparison_.sameBehaviour) break;
        for (const BenchDifference& each : *told) {
            const QString line = plainText(showsGoal_ ? each.text : each.look);
            if (showsGoal_ || list_->findItems(line, Qt::MatchExactly).isEmpty()) add(line, &each);
        }
    }
    for (const std::string& each : comparison_.limits) add(plainText(each), nullptr);
    list_->setVisible(list_->count() > 0);
}

const BenchDifference* ComparePanel::chosen() const {
    const int row = list_->currentRow();
    return row < 0 || row >= static_cast<int>(rows_.size()) ? nullptr : rows_[static_cast<std::size_t>(row)];
}

/// Names may be longer than their room: the whole one stands in the tip.
void ComparePanel::layTitles() {
    for (const bool onTarget : {false, true}) {
        QLabel* label = titles_[onTarget ? 1 : 0];
        const QString name = plainText(onTarget ? target_->bench().title : mine_->title);
        const QString whole = !onTarget      ? QStringLiteral("This bench: %1").arg(name)
                              : isExercise() ? QStringLiteral("Goal: %1").arg(name)
                                             : QStringLiteral("Target: %1").arg(name);
        const QString shown = label->fontMetrics().elidedText(whole, Qt::ElideMiddle, label->width());
        label->setText(shown);
        label->setToolTip(shown == whole ? QString() : plainTip(whole));
    }
}

void ComparePanel::paintPictures() {
    if (!mine_ || !target_) return;
    layTitles();
    for (const bool onTarget : {false, true}) {
        QLabel* label = pictures_[onTarget ? 1 : 0];
        if (onTarget && !showsGoal_) continue;
        if (onTarget && !target_->hasPlaces) {
            label->setText(QStringLiteral("A circuit without places"));
            continue;
        }
        const Bench& bench = onTarget ? target_->bench() : *mine_;
        if (bench.boards.empty() || bench.boards.size() > kMostBoardsShown) {
            label->setText(bench.boards.empty() ? QStringLiteral("No board")
                                                : QStringLiteral("Too many boards to show"));
            continue;
        }
        Miniature picture;
        picture.bench = onTarget ? target_->layout->bench : mine_;
        picture.theme = look_.theme;
        picture.size = label->size();
        picture.ratio = devicePixelRatioF();
        picture.views.arrows = Arrows::Off;
        picture.live = false;
        if (const BenchDifference* one = chosen()) {
            addPlaces(picture, *one, onTarget);
        } else {
            const bool reached = !showsGoal_ && comparison_.sameBehaviour;
            for (const BenchDifference& each : comparison_.differences)
                if (!reached) addPlaces(picture, each, onTarget);
        }
        if (!picture.isEmpty()) label->setPixmap(QPixmap::fromImage(paintMiniature(picture)));
    }
}

void ComparePanel::setLook(const Look& look) {
    look_ = look;
    const Theme& colours = *look.theme;
    verdict_->setFont(look.font(text::kTitle, QFont::DemiBold));
    verdict_->setStyleSheet(QStringLiteral("color: %1;").arg(colours.text.name()));
    for (QLabel* each : {task_, titles_[0], titles_[1], pictures_[0], pictures_[1]}) {
        each->setFont(look.font(text::kLabel));
        each->setStyleSheet(QStringLiteral("color: %1;").arg(colours.text.name()));
    }
    list_->setFont(look.font(text::kBody));
    list_->setStyleSheet(QStringLiteral("QListWidget { color: %1; background: %2; border: 1px solid %3; }"
                                        "QListWidget::item { padding: %5px; }"
                                        "QListWidget::item:selected { color: %1; background: %4; }")
                             .arg(colours.text.name(), colours.card.name(), colours.cardEdge.name(),
                                  mix(colours.card, colours.accent, 0.16).name())
                             .arg(look.ipx(6)) +
                         scrollBarStyle(look));
    for (QToolButton* button : {done_, goal_}) {
        button->setFont(look.font(text::kBody));
        button->setStyleSheet(
            QStringLiteral("QToolButton { color: %1; background: %2; border: 1px solid %3; border-radius: %4px; }")
                .arg(colours.text.name(), colours.card.name(), colours.accent.name())
                .arg(look.ipx(8)));
    }
    task_->setFont(look.font(text::kBody));
    if (!isVisible()) return;
    arrange();
    update();
}

void ComparePanel::arrange() {
    const int edge = look_.ipx(kEdge), between = look_.ipx(kBetween), button = look_.ipx(kButtonBreadth);
    const int top = look_.ipx(kVerdictHeight), row = look_.ipx(kTitleRow), list = look_.ipx(kListHeight);
    const int goal = goal_->isHidden() ? 0 : look_.ipx(kGoalButtonBreadth) + between;
    const int task = task_->isHidden() ? 0 : look_.ipx(kTaskRow);
    goal_->setText(showsGoal_ ? QStringLiteral("Hide the goal") : QStringLiteral("Show the goal"));
    verdict_->setGeometry(edge, edge / 2, width() - 2 * edge - button - goal, top);
    done_->setGeometry(width() - edge - button, edge / 2 + top / 5, button, 3 * top / 5);
    goal_->setGeometry(done_->x() - goal, done_->y(), goal - between, done_->height());
    task_->setGeometry(edge, edge / 2 + top, width() - 2 * edge, task);
    const int across = showsGoal_ ? 2 : 1;
    const int breadth = (width() - 2 * edge - (across - 1) * between) / across;
    const int titleTop = edge / 2 + top + task, pictureTop = titleTop + row;
    const int high = height() - pictureTop - (list_->isHidden() ? 0 : list + between) - between;
    for (int i = 0; i < 2; ++i) {
        const int left = edge + i * (breadth + between);
        titles_[i]->setVisible(i < across);
        pictures_[i]->setVisible(i < across);
        titles_[i]->setGeometry(left, titleTop, breadth, row);
        pictures_[i]->setGeometry(left, pictureTop, breadth, std::max(high, 1));
    }
    list_->setGeometry(edge, height() - list - between, width() - 2 * edge, list);
    paintPictures();
}

void ComparePanel::close() {
    stop_.request_stop();
    ++asked_;
    working_ = false;
    hide();
    Q_EMIT closed();
}

bool ComparePanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == parentWidget() && event->type() == QEvent::Resize && isVisible())
        setGeometry(parentWidget()->rect());
    return QWidget::eventFilter(watched, event);
}

void ComparePanel::resizeEvent(QResizeEvent*) { arrange(); }

void ComparePanel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), look_.theme->benchTop);
}

void ComparePanel::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return close();
    QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
