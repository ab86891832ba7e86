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

constexpr double kEdge = 40, kVerdictHeight = 70, kTitleRow = 44, kListHeight = 250, kBetween = 24, kKeyBreadth = 150;

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
      done_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Comparison"));
    verdict_->setTextFormat(Qt::PlainText);
    for (QLabel* title : titles_) title->setTextFormat(Qt::PlainText);
    for (QLabel* picture : pictures_) picture->setAlignment(Qt::AlignCenter);
    list_->setAccessibleName(QStringLiteral("What differs"));
    list_->setWordWrap(true);
    done_->setText(QStringLiteral("Close"));
    pool_.setMaxThreadCount(1);
    connect(list_, &QListWidget::currentRowChanged, this, [this] { paintPictures(); });
    connect(done_, &QToolButton::clicked, this, &ComparePanel::close);
    stage->installEventFilter(this);
    hide();
}

ComparePanel::~ComparePanel() {
    stop_.request_stop();
    pool_.waitForDone();
}

void ComparePanel::compare(std::shared_ptr<const Bench> mine, std::shared_ptr<const ComparisonTarget> target) {
    stop_.request_stop();
    stop_ = {};
    mine_ = std::move(mine);
    target_ = std::move(target);
    comparison_ = {};
    working_ = true;
    list_->clear();
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

void ComparePanel::take(const Result<Comparison>& result) {
    working_ = false;
    if (result) comparison_ = *result;
    verdict_->setText(result ? verdictOf(comparison_) : QString::fromStdString(result.error().message));
    fillList();
    paintPictures();
    Q_EMIT shown();
}

void ComparePanel::fillList() {
    list_->clear();
    for (const auto* told : {&comparison_.differences, &comparison_.behaviour})
        for (const BenchDifference& each : *told) list_->addItem(plainText(each.text));
    list_->setVisible(list_->count() > 0);
}

const BenchDifference* ComparePanel::chosen() const {
    const int row = list_->currentRow(), first = static_cast<int>(comparison_.differences.size());
    if (row < 0) return nullptr;
    return row < first ? &comparison_.differences[static_cast<std::size_t>(row)]
                       : &comparison_.behaviour[static_cast<std::size_t>(row - first)];
}

void ComparePanel::paintPictures() {
    if (!mine_ || !target_) return;
    for (const bool onTarget : {false, true}) {
        QLabel* label = pictures_[onTarget ? 1 : 0];
        titles_[onTarget ? 1 : 0]->setText(plainText(
            onTarget ? QStringLiteral("Target: %1").arg(plainText(target_->bench().title)) : plainText(mine_->title)));
        if (onTarget && !target_->hasPlaces) {
            label->setText(QStringLiteral("A circuit without places"));
            continue;
        }
        Miniature picture;
        picture.bench = onTarget ? target_->layout->bench : mine_;
        picture.theme = look_.theme;
        picture.size = label->size();
        picture.ratio = devicePixelRatioF();
        picture.views.arrows = Arrows::Off;
        picture.live = false;
        picture.frameMm = boardsFrameMm(*picture.bench);
        if (const BenchDifference* one = chosen()) {
            addPlaces(picture, *one, onTarget);
        } else {
            for (const BenchDifference& each : comparison_.differences) addPlaces(picture, each, onTarget);
        }
        if (!picture.isEmpty()) label->setPixmap(QPixmap::fromImage(paintMiniature(picture)));
    }
}

void ComparePanel::setLook(const Look& look) {
    look_ = look;
    const Theme& colours = *look.theme;
    verdict_->setFont(look.font(text::kTitle, QFont::DemiBold));
    verdict_->setStyleSheet(QStringLiteral("color: %1;").arg(colours.text.name()));
    for (QLabel* each : {titles_[0], titles_[1], pictures_[0], pictures_[1]}) {
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
    done_->setFont(look.font(text::kBody));
    done_->setStyleSheet(
        QStringLiteral("QToolButton { color: %1; background: %2; border: 1px solid %3; border-radius: %4px; }")
            .arg(colours.text.name(), colours.card.name(), colours.accent.name())
            .arg(look.ipx(8)));
    if (!isVisible()) return;
    arrange();
    update();
}

void ComparePanel::arrange() {
    const int edge = look_.ipx(kEdge), between = look_.ipx(kBetween), key = look_.ipx(kKeyBreadth);
    const int top = look_.ipx(kVerdictHeight), row = look_.ipx(kTitleRow), list = look_.ipx(kListHeight);
    verdict_->setGeometry(edge, edge / 2, width() - 2 * edge - key, top);
    done_->setGeometry(width() - edge - key, edge / 2 + top / 5, key, 3 * top / 5);
    const int half = (width() - 2 * edge - between) / 2, pictureTop = edge / 2 + top + row;
    const int high = height() - pictureTop - list - 2 * between;
    for (int i = 0; i < 2; ++i) {
        const int left = edge + i * (half + between);
        titles_[i]->setGeometry(left, edge / 2 + top, half, row);
        pictures_[i]->setGeometry(left, pictureTop, half, std::max(high, 1));
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
