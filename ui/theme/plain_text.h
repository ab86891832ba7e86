#pragma once
// Text from outside (titles, notes, names of files, sentences that quote them) for the places of a window that would read more into it:
// markup in tool tips, ampersands in menus, the mark of a changed document in window titles. Pure functions; any thread.

#include <QString>

#include <string>

namespace tiepoint::ui {

/// The text in one line with controls and marks of direction shown as their numbers, see core/base/printable.h. For titles and names.
QString plainText(const std::string& text);
QString plainText(const QString& text);
/// The same with line feeds left in. For notes.
QString plainLines(const std::string& text);

/// For setToolTip: words that look like markup are shown as they are.
QString plainTip(const QString& text);
/// For menus and keys: an ampersand stays one, and no letter becomes a shortcut.
QString menuWords(const QString& text);
/// For setWindowTitle: "[*]" in the text stays what it is. The placeholder itself is added behind.
QString titleWords(const QString& text);
/// A name for a file that shows such a title: letters, digits and hyphens, then the ending (".svg").
QString fileNameFor(const std::string& title, const QString& ending);

}  // namespace tiepoint::ui
