#include "core/base/stopping.h"

#include <utility>

namespace tiepoint {
namespace {

thread_local const std::stop_token* presentToken = nullptr;

}  // namespace

StopScope::StopScope(std::stop_token token) : token_(std::move(token)), outer_(std::exchange(presentToken, &token_)) {}

StopScope::~StopScope() { presentToken = outer_; }

void stopIfAsked() {
    if (presentToken != nullptr && presentToken->stop_requested()) throw Stopped{};
}

}  // namespace tiepoint
