#!/usr/bin/env bash
# Runs the core's and the program's tests with the address and undefined-behaviour sanitizers, and the window's tests in which threads work
# side by side with the thread sanitizer. "address" or "thread" as an argument runs only one of them.
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
install_missing "${BUILD_PACKAGES[@]}" "${TEST_PACKAGES[@]}" "${FUZZ_PACKAGES[@]}"
which=${1:-all}
export XDG_STATE_HOME XDG_CONFIG_HOME
XDG_STATE_HOME=$(mktemp -d) XDG_CONFIG_HOME=$(mktemp -d)
settings=$PWD/tests/sanitizers

build() { # KIND TARGET...
    local kind=$1
    shift
    # clang weaves the checks in twice as fast as g++.
    cmake -S . -B "build/$kind" -G Ninja --log-level=WARNING -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug \
        -DCMAKE_CXX_FLAGS_DEBUG="-O1 -gline-tables-only" -DTIEPOINT_TESTS=ON -DTIEPOINT_ASSERTIONS=ON -DTIEPOINT_SANITIZE="$kind"
    cmake --build "build/$kind" --target "$@"
}

if [ "$which" != thread ]; then
    build address core_tests app_tests
    export ASAN_OPTIONS=strict_string_checks=1:detect_stack_use_after_return=1
    export LSAN_OPTIONS=suppressions=$settings/leaks.txt:print_suppressions=0
    export UBSAN_OPTIONS=print_stacktrace=1
    build/address/tests/core_tests --gtest_brief=1 &
    core=$!
    xvfb-run -a -s "-screen 0 1920x1080x24" build/address/tests/app_tests --gtest_brief=1
    wait $core
fi
if [ "$which" != address ]; then
    build thread thread_tests
    export TSAN_OPTIONS=suppressions=$settings/threads.txt:ignore_noninstrumented_modules=1:halt_on_error=0:exitcode=66:print_suppressions=0
    # Some kernels spread addresses wider than the sanitizer of g++ 12 knows.
    xvfb-run -a -s "-screen 0 1920x1080x24" setarch -R build/thread/tests/thread_tests --gtest_brief=1
fi
