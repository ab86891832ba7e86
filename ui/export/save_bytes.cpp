#include "ui/export/save_bytes.h"

#include "core/base/file_io.h"

namespace tiepoint::ui {

std::optional<QString> saveBytes(const QByteArray& bytes, const QString& path) {
    const auto written =
        writeFileAtomically(path.toStdString(), {bytes.constData(), static_cast<std::size_t>(bytes.size())});
    if (!written) return QString::fromStdString(written.error().message);
    return std::nullopt;
}

}  // namespace tiepoint::ui
