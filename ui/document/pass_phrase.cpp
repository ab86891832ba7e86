// A lock reads "sha256:SALT:DIGEST" in hexadecimal digits. The key derivation is PBKDF2 (RFC 8018) as Qt offers it.

#include "ui/document/pass_phrase.h"

#include <QCryptographicHash>
#include <QPasswordDigestor>
#include <QRandomGenerator>
#include <QStringList>

namespace tiepoint::ui {
namespace {

constexpr int kRounds = 20000, kDigestBytes = 32, kSaltWords = 4;
const QString kMethod = QStringLiteral("sha256");

QByteArray digestOf(const QString& phrase, const QByteArray& salt) {
    return QPasswordDigestor::deriveKeyPbkdf2(QCryptographicHash::Sha256, phrase.trimmed().toUtf8(), salt, kRounds,
                                              kDigestBytes);
}

}  // namespace

std::string lockWith(const QString& phrase) {
    quint32 words[kSaltWords];
    QRandomGenerator::system()->fillRange(words);
    const QByteArray salt(reinterpret_cast<const char*>(words), sizeof words);
    const QStringList pieces{kMethod, QString::fromLatin1(salt.toHex()),
                             QString::fromLatin1(digestOf(phrase, salt).toHex())};
    return pieces.join(QLatin1Char(':')).toStdString();
}

bool opens(const QString& phrase, const std::string& lock) {
    const QStringList pieces = QString::fromStdString(lock).split(QLatin1Char(':'));
    if (pieces.size() != 3 || pieces[0] != kMethod) return false;
    const QByteArray salt = QByteArray::fromHex(pieces[1].toLatin1());
    return !salt.isEmpty() && digestOf(phrase, salt) == QByteArray::fromHex(pieces[2].toLatin1());
}

}  // namespace tiepoint::ui
