#include "ui/window/start_card.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"
#include "ui/window/bench_thumbnail.h"

#include <QKeyEvent>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kColumns = 5;
constexpr double kBenchWidth = 258;
constexpr double kBenchHeight = 190;
constexpr double kBenchGap = 14;
constexpr double kStartPad = 34;
constexpr double kHeader = 74;
constexpr double kRecoveryRow = 62;
constexpr std::string_view kBenchFolder = "benches/";

/// A plain key with a word.
class PlainKey : public QAbstractButton {
public:
    PlainKey(const QString& word, QWidget* parent, bool inviting = false)
        : QAbstractButton(parent),
          inviting_(inviting) {
        setText(word);
        setFocusPolicy(Qt::TabFocus);
        setAttribute(Qt::WA_Hover);
    }
    void setLook(const Look& look) {
        look_ = look;
        update();
    }
    double wantedWidth() const {
        return QFontMetricsF(look_.font(text::kBody - 2, QFont::Medium)).horizontalAdvance(text()) + look_.px(44);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const double margin = look_.px(4);
        paintKey(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin),
                 {inviting_, underMouse(), isDown(), hasFocus()});
        sheet_.begin();
        sheet_.draw(painter, QRectF(rect()), text(),
                    {look_.font(text::kBody - 2, QFont::Medium), look_.theme->text, Qt::AlignCenter});
    }

private:
    bool inviting_;
    Look look_{&theme(ThemeName::Day), 1};
    WordSheet sheet_{this};
};

PlainKey* plain(QAbstractButton* key) { return static_cast<PlainKey*>(key); }

}  // namespace

BenchKey::BenchKey(const QString& file, std::shared_ptr<const Bench> bench, QWidget* parent)
    : QAbstractButton(parent),
      file_(file),
      bench_(std::move(bench)),
      look_{&theme(ThemeName::Day), 1} {
    setText(menuWords(title()));
    setAccessibleName(title());
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
}

QString BenchKey::title() const { return plainText(bench_->title); }

void BenchKey::setLook(const Look& look) {
    look_ = look;
    picture_ = {};
    update();
}

QRectF BenchKey::pictureBox() const {
    const double margin = look_.px(10);
    return QRectF(rect()).adjusted(margin, margin, -margin, -look_.px(44));
}

void BenchKey::draw() {
    picture_ = benchThumbnail(bench_, *look_.theme, pictureBox().size().toSize(), devicePixelRatioF());
    update();
}

void BenchKey::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(4);
    paintKey(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin),
             {false, underMouse(), isDown(), hasFocus()});
    QPainterPath corner;
    corner.addRoundedRect(pictureBox(), look_.px(5), look_.px(5));
    painter.save();
    painter.setClipPath(corner);
    painter.fillPath(corner, look_.theme->benchTop);
    if (isDrawn()) painter.drawPixmap(pictureBox().topLeft(), picture_);
    painter.restore();
    sheet_.begin();
    sheet_.draw(painter, QRectF(look_.px(8), height() - look_.px(44), width() - look_.px(16), look_.px(36)), title(),
                {look_.font(text::kSmall + 2, QFont::Medium), look_.theme->text, Qt::AlignCenter});
}

StartCard::StartCard(const std::vector<Recovery>& recoveries, QWidget* parent)
    : QWidget(parent),
      look_{&theme(ThemeName::Day), 1},
      recoveries_(recoveries),
      first_(new PlainKey(QStringLiteral("Light a first LED"), this, true)),
      new_(new PlainKey(QStringLiteral("New bench"), this)),
      open_(new PlainKey(QStringLiteral("Open…"), this)),
      recover_(new PlainKey(QStringLiteral("Recover"), this)),
      forget_(new PlainKey(QStringLiteral("Throw away"), this)),
      close_(new PlainKey(QStringLiteral("\u00d7"), this)) {
    setAccessibleName(QStringLiteral("Start"));
    setFocusPolicy(Qt::ClickFocus);
    close_->setAccessibleName(QStringLiteral("Close"));
    recover_->setVisible(!recoveries_.empty());
    forget_->setVisible(!recoveries_.empty());
    connect(first_, &QAbstractButton::clicked, this, &StartCard::firstChosen);
    connect(new_, &QAbstractButton::clicked, this, &StartCard::newChosen);
    connect(open_, &QAbstractButton::clicked, this, &StartCard::openChosen);
    connect(close_, &QAbstractButton::clicked, this, &QWidget::hide);
    connect(recover_, &QAbstractButton::clicked, this, [this] { Q_EMIT recoveryChosen(recoveries_.front()); });
    connect(forget_, &QAbstractButton::clicked, this, [this] {
        Q_EMIT recoveryRefused(recoveries_.front());
        recoveries_.erase(recoveries_.begin());
        recover_->setVisible(!recoveries_.empty());
        forget_->setVisible(!recoveries_.empty());
        update();
    });
    addBenches();
    drawing_.setInterval(0);
    connect(&drawing_, &QTimer::timeout, this, &StartCard::drawNext);
}

void StartCard::setVisible(bool visible) {
    // The keyboard goes back to whoever takes it: passed on from key to key it would seem to have been sent to the bench with Tab.
    if (QWidget* focus = focusWidget(); !visible && focus) focus->clearFocus();
    QWidget::setVisible(visible);
}

void StartCard::addBenches() {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with(kBenchFolder)) continue;
        auto read = readBench(file.text);
        if (!read) continue;  // a test opens every one of them
        const QString name = QString::fromUtf8(file.name.data(), static_cast<qsizetype>(file.name.size()));
        auto* key = new BenchKey(name, std::make_shared<const Bench>(std::move(read).value().bench), this);
        connect(key, &QAbstractButton::clicked, this, [this, name] { Q_EMIT benchChosen(name); });
        benches_.push_back(key);
    }
}

void StartCard::drawNext() {
    const auto next = std::ranges::find_if(benches_, [](const BenchKey* key) { return !key->isDrawn(); });
    if (next == benches_.end() || !isVisible()) return drawing_.stop();
    (*next)->draw();
}

void StartCard::setLook(const Look& look) {
    look_ = look;
    for (BenchKey* key : benches_) key->setLook(look);
    for (QAbstractButton* key : {first_, new_, open_, recover_, forget_, close_}) plain(key)->setLook(look);
    update();
}

void StartCard::placeIn(const QRect& frame) {
    const int rows = (static_cast<int>(benches_.size()) + kColumns - 1) / kColumns;
    const double width = 2 * kStartPad + kColumns * (kBenchWidth + kBenchGap) - kBenchGap;
    const double height =
        kStartPad + kHeader + rows * (kBenchHeight + kBenchGap) + (recoveries_.empty() ? 0 : kRecoveryRow);
    const QSizeF size(look_.px(width), look_.px(height));
    setGeometry(QRectF(QRectF(frame).center() - QPointF(size.width() / 2, size.height() / 2), size).toRect());
    arrange();
    drawing_.start();
}

void StartCard::arrange() {
    const double pad = look_.px(kStartPad), gap = look_.px(kBenchGap);
    const double top = look_.px(kHeader) + (recoveries_.empty() ? 0 : look_.px(kRecoveryRow)) + look_.px(8);
    for (std::size_t i = 0; i < benches_.size(); ++i) {
        const QPointF at(pad + static_cast<double>(i % kColumns) * look_.px(kBenchWidth + kBenchGap),
                         top + static_cast<double>(i / kColumns) * (look_.px(kBenchHeight) + gap));
        benches_[i]->setGeometry(QRectF(at, QSizeF(look_.px(kBenchWidth), look_.px(kBenchHeight))).toRect());
    }
    const double keyHeight = look_.px(52);
    double right = width() - pad;
    for (QAbstractButton* key : {close_, open_, new_, first_}) {
        const double keyWidth = plain(key)->wantedWidth();
        right -= keyWidth;
        key->setGeometry(QRectF(right, look_.px(22), keyWidth, keyHeight).toRect());
        right -= look_.px(6);
    }
    right = width() - pad;
    for (QAbstractButton* key : {forget_, recover_}) {
        const double keyWidth = plain(key)->wantedWidth();
        right -= keyWidth;
        key->setGeometry(QRectF(right, look_.px(kHeader + 8), keyWidth, keyHeight).toRect());
        right -= look_.px(6);
    }
}

QString StartCard::recoveryWords() const {
    const Recovery& recovery = recoveries_.front();
    const QString what =
        recovery.sourcePath.isEmpty() ? QStringLiteral("a bench that had no file yet") : plainText(recovery.sourcePath);
    return QStringLiteral("Unsaved work was left behind: %1, %2.")
        .arg(what, QLocale().toString(recovery.savedAt, QLocale::ShortFormat));
}

void StartCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    const double pad = look_.px(kStartPad);
    sheet_.begin();
    sheet_.draw(painter, QRectF(pad, look_.px(22), first_->x() - pad, look_.px(52)),
                QStringLiteral("Benches of the harbour"),
                {look_.font(text::kTitle, QFont::DemiBold), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter});
    if (recoveries_.empty()) return;
    const QRectF row(pad, look_.px(kHeader + 8), recover_->x() - pad - look_.px(10), look_.px(52));
    sheet_.draw(painter, row, recoveryWords(),
                {look_.font(text::kBody - 2), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter, true});
}

void StartCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        hide();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
