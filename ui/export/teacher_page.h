#pragma once
// The teacher's page of a lesson on paper: aim, minutes, must and may, kit, words, safety, packing away, and its steps with their notes and
// questions. Real letters, for searching and for reading aloud. Needs a QGuiApplication, but no display.

#include "core/course/lesson.h"
#include "ui/export/paper_plan.h"

#include <QString>

#include <optional>

namespace tiepoint::ui {

/// What stands on it, as simple HTML.
QString teacherPageText(const Lesson& lesson);

/// Writes it as PDF, atomically. Returns why it failed, or nothing.
std::optional<QString> saveTeacherPage(const Lesson& lesson, const QString& path, Paper paper = Paper::A4);

}  // namespace tiepoint::ui
