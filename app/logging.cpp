#include "app/logging.h"

#include "core/base/printable.h"

#include <spdlog/pattern_formatter.h>
#include <spdlog/sinks/rotating_file_sink.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

#include <cstdlib>
#include <memory>
#include <vector>

namespace tiepoint::app {
namespace {

constexpr std::size_t kLogBytes = 1 << 20;
constexpr std::size_t kLogFiles = 3;

/// Writes a line as another formatter does, with nothing in it that isn't printable: it may tell names out of files, and names of files.
class PrintableFormatter final : public spdlog::formatter {
public:
    explicit PrintableFormatter(std::string pattern) : pattern_(std::move(pattern)), inner_(pattern_) {}

    void format(const spdlog::details::log_msg& message, spdlog::memory_buf_t& line) override {
        const std::string text = printable({message.payload.data(), message.payload.size()});
        spdlog::details::log_msg plain = message;
        plain.payload = text;
        inner_.format(plain, line);
    }
    std::unique_ptr<spdlog::formatter> clone() const override { return std::make_unique<PrintableFormatter>(pattern_); }

private:
    std::string pattern_;
    spdlog::pattern_formatter inner_;
};

spdlog::sink_ptr fileSink() {
    const auto path = logPath();
    if (!path) return nullptr;
    try {
        auto sink = std::make_shared<spdlog::sinks::rotating_file_sink_mt>(path->string(), kLogBytes, kLogFiles);
        sink->set_formatter(std::make_unique<PrintableFormatter>("%+"));
        sink->set_level(spdlog::level::debug);
        return sink;
    } catch (const spdlog::spdlog_ex&) {
        return nullptr;  // a full disk or a read-only home is no reason not to solve a circuit
    }
}

spdlog::sink_ptr consoleSink(bool verbose) {
    auto sink = std::make_shared<spdlog::sinks::stderr_sink_mt>();
    sink->set_formatter(std::make_unique<PrintableFormatter>("%l: %v"));
    sink->set_level(verbose ? spdlog::level::debug : spdlog::level::warn);
    return sink;
}

}  // namespace

std::optional<std::filesystem::path> logPath() {
    const char* state = std::getenv("XDG_STATE_HOME");
    if (state != nullptr && *state == '/') return std::filesystem::path(state) / "tiepoint" / "tiepoint.log";
    const char* home = std::getenv("HOME");
    if (home == nullptr || *home != '/') return std::nullopt;
    return std::filesystem::path(home) / ".local" / "state" / "tiepoint" / "tiepoint.log";
}

void startLogging(bool verbose) {
    std::vector<spdlog::sink_ptr> sinks{consoleSink(verbose)};
    if (auto file = fileSink()) {
        sinks.push_back(file);
        spdlog::register_logger(std::make_shared<spdlog::logger>("file", file));
    }
    auto logger = std::make_shared<spdlog::logger>("tiepoint", sinks.begin(), sinks.end());
    logger->set_level(spdlog::level::debug);
    logger->flush_on(spdlog::level::warn);
    spdlog::set_error_handler([](const std::string&) {});
    logger->set_error_handler([](const std::string&) {});
    spdlog::set_default_logger(logger);
    spdlog::debug("log: {}", logPath().value_or("none").string());
}

}  // namespace tiepoint::app
