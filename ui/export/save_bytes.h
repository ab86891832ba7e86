#pragma once
// What was drawn into memory becomes a file whole, or not at all.

#include <QByteArray>
#include <QString>

#include <optional>

namespace tiepoint::ui {

/// Nothing, or why it couldn't be written, in plain words.
std::optional<QString> saveBytes(const QByteArray& bytes, const QString& path);

}  // namespace tiepoint::ui
