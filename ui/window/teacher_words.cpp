#include "ui/window/teacher_words.h"

#include "ui/theme/qs.h"

#include <QPainter>

namespace tiepoint::ui {
namespace {

constexpr double kHeadLines = 16, kNoteLines = 22, kDimLines = 30;

QString nextWords(const LessonRun& run) {
    using Phase = LessonRun::Phase;
    if (!run.isRunning()) return QStringLiteral("Page Down begins.");
    if (run.isVeiled()) {
        if (run.phase() == Phase::Vote) return QStringLiteral("count hands, then two minutes of talk.");
        return run.phase() == Phase::Talk
                   ? QStringLiteral("a second vote.")
                   : QStringLiteral("the reveal. Right is %1.").arg(run.present().ask->right + 1);
    }
    if (run.phase() == Phase::Revealed && run.present().ask && run.present().ask->wrong)
        return QStringLiteral("the wrong idea beside it: %1.").arg(qs(run.present().ask->wrong->idea));
    const int next = run.step() + 1;
    if (next >= run.lesson()->stepCount()) {
        QString words = QStringLiteral("on paper:");
        for (const std::string& question : run.lesson()->paper) words += QLatin1Char(' ') + qs(question);
        return words;
    }
    const LessonStep& step = run.lesson()->steps[static_cast<std::size_t>(next)];
    return qs(step.caption + ". " + step.note);
}

}  // namespace

TeacherWords::TeacherWords(const LessonRun& run, QWidget* parent)
    : QWidget(parent, Qt::Window | Qt::WindowDoesNotAcceptFocus),
      run_(run),
      theme_(&theme(ThemeName::Day)) {
    setWindowTitle(QStringLiteral("For the teacher"));
    setAttribute(Qt::WA_ShowWithoutActivating);  // the keys stay with what the room sees
    resize(900, 600);
    connect(&run, &LessonRun::changed, this, qOverload<>(&QWidget::update));
}

void TeacherWords::setTheme(const Theme& theme) {
    theme_ = &theme;
    update();
}

QStringList TeacherWords::lines() const {
    if (!run_.lesson()) return {};
    QStringList lines{run_.isRunning() ? QStringLiteral("Step %1 of %2: %3")
                                             .arg(run_.step() + 1)
                                             .arg(run_.lesson()->stepCount())
                                             .arg(qs(run_.present().caption))
                                       : qs(run_.lesson()->title)};
    lines << (run_.isRunning() ? qs(run_.present().note) : qs(run_.lesson()->answers));
    lines << QStringLiteral("Next: ") + nextWords(run_);
    return lines;
}

void TeacherWords::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), theme_->card);
    const QStringList words = lines();
    if (words.isEmpty()) return;
    sheet_.begin();
    const double pad = 0.05 * width(), breadth = width() - 2 * pad, high = height();
    sheet_.draw(painter, {pad, 0.05 * high, breadth, 0.2 * high}, words[0],
                {uiFont(high / kHeadLines, QFont::DemiBold), theme_->text, Qt::AlignLeft | Qt::AlignTop, true});
    sheet_.draw(painter, {pad, 0.27 * high, breadth, 0.36 * high}, words[1],
                {uiFont(high / kNoteLines), theme_->text, Qt::AlignLeft | Qt::AlignTop, true});
    sheet_.draw(painter, {pad, 0.66 * high, breadth, 0.29 * high}, words[2],
                {uiFont(high / kDimLines), theme_->dimText, Qt::AlignLeft | Qt::AlignTop, true});
}

}  // namespace tiepoint::ui
