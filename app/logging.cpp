#include "app/logging.h"

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

spdlog::sink_ptr fileSink() {
    const auto path = logPath();
    if (!path) return nullptr;
    try {
        auto sink = std::make_shared<spdlog::sinks::rotating_file_sink_mt>(path->string(), kLogBytes, kLogFiles);
        sink->set_level(spdlog::level::debug);
        return sink;
    } catch (const spdlog::spdlog_ex&) {
        return nullptr;  // a full disk or a read-only home is no reason not to solve a circuit
    }
}

spdlog::sink_ptr consoleSink(bool verbose) {
    auto sink = std::make_shared<spdlog::sinks::stderr_sink_mt>();
    sink->set_pattern("%l: %v");
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
