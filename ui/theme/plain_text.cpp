#include "ui/theme/plain_text.h"

#include "core/base/printable.h"

#include <QTextDocument>

namespace tiepoint::ui {

QString plainText(const std::string& text) { return QString::fromStdString(printable(text)); }

QString plainText(const QString& text) { return plainText(text.toStdString()); }

QString plainLines(const std::string& text) { return QString::fromStdString(printableLines(text)); }

QString plainTip(const QString& text) {
    const QString plain = plainLines(text.toStdString());
    return Qt::mightBeRichText(plain) ? Qt::convertFromPlainText(plain, Qt::WhiteSpaceNormal) : plain;
}

QString menuWords(const QString& text) { return plainText(text).replace(QLatin1Char('&'), QStringLiteral("&&")); }

QString titleWords(const QString& text) {
    return plainText(text).replace(QStringLiteral("[*]"), QStringLiteral("[*][*]"));
}

QString fileNameFor(const std::string& title, const QString& ending) {
    constexpr int kLongest = 60;  // disks take 255 bytes
    QString name;
    for (const QChar c : QString::fromStdString(title).toLower().left(kLongest))
        name += c.isLetterOrNumber() ? c : QLatin1Char('-');
    return (name.isEmpty() ? QStringLiteral("bench") : name) + ending;
}

}  // namespace tiepoint::ui
