#!/usr/bin/env bash
# Installs what is missing, builds Release and opens the demo bench.
# Without a display it says so and writes a picture of the solved bench instead.
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
step 1 3 "Packages"
install_missing "${BUILD_PACKAGES[@]}"
step 2 3 "Build (a few minutes the first time)"
build=build/release
cmake -S . -B "$build" -G Ninja --log-level=WARNING -DCMAKE_BUILD_TYPE=Release -DTIEPOINT_TESTS=OFF
cmake --build "$build" --target tiepoint
step 3 3 "The demo bench"
demo=resources/benches/beacon-lamp.bench.json
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    exec "$build/tiepoint" "${@:-$demo}"
fi
picture=$build/beacon-lamp.png
"$build/tiepoint" render "$demo" --hold S1 -o "$picture"
echo "There is no display here, so no window opens. A picture of the solved bench: $picture"
