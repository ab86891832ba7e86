#!/usr/bin/env bash
# Installs what is missing, builds and runs every test, without a display.
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
step 1 3 "Packages"
install_missing "${BUILD_PACKAGES[@]}" "${TEST_PACKAGES[@]}"
step 2 3 "Build (some minutes the first time)"
build=build/tests
mkdir -p build
cmake -S . -B "$build" -G Ninja --log-level=WARNING -DCMAKE_BUILD_TYPE=Release -DTIEPOINT_TESTS=ON -DTIEPOINT_ASSERTIONS=ON
cmake --build "$build"
step 3 3 "Tests"
cd "$build"
# Window tests run in a real X server of their own; each test process gets a clean state folder.
export XDG_STATE_HOME XDG_CONFIG_HOME
XDG_STATE_HOME=$(mktemp -d) XDG_CONFIG_HOME=$(mktemp -d)
xvfb-run -a -s "-screen 0 1920x1080x24" ctest --output-on-failure -j 2 "$@"
