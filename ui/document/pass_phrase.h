#pragma once
// The lock on how much a bench reveals: a digest made from a pass phrase and a fresh salt. It keeps honest learners from peeking and is no
// security, since the file can be edited by hand.

#include <QString>

#include <string>

namespace tiepoint::ui {

/// The text of a lock that this phrase opens; different each time.
std::string lockWith(const QString& phrase);
/// Whether a phrase opens a lock. False for a lock of another form.
bool opens(const QString& phrase, const std::string& lock);

}  // namespace tiepoint::ui
