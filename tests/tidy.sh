#!/usr/bin/env bash
# Runs clang-tidy (14) over core, ui and app with the checks of .clang-tidy; every remark is an error.
#   bash tests/tidy.sh            all sources
#   bash tests/tidy.sh changed    those that differ from main, and those that include a header that does
#   bash tests/tidy.sh FILE...    these
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
install_missing "${BUILD_PACKAGES[@]}" "${TIDY_PACKAGES[@]}"
build=build/tidy
# One command for each source: it is judged alone, whatever it is grouped with in a build. Nothing needs to be built.
cmake -S . -B "$build" -G Ninja --log-level=WARNING -DCMAKE_BUILD_TYPE=Debug -DTIEPOINT_TESTS=OFF -DTIEPOINT_UNITY=OFF >/dev/null

all_sources() { git ls-files -co --exclude-standard core ui app | grep '\.cpp$'; }

changed_sources() {
    local changed header
    changed=$(git diff --name-only --diff-filter=d "$(git merge-base main HEAD)" -- core ui app; git ls-files -o --exclude-standard core ui app)
    grep '\.cpp$' <<<"$changed" || true
    for header in $(grep '\.h$' <<<"$changed"); do grep -rlF --include='*.cpp' "#include \"$header\"" core ui app || true; done
}

if [ $# -eq 0 ]; then
    sources=$(all_sources)
elif [ "$1" = changed ]; then
    sources=$(changed_sources | sort -u)
else
    sources=$(printf '%s\n' "$@")
fi
count=$(grep -c . <<<"$sources" || true)
echo "$count sources, $(nproc) at a time."
remarks=$(mktemp)
tidy_one() { clang-tidy-14 -p "$1" --quiet --warnings-as-errors='*' "$2" 2>/dev/null || true; }
export -f tidy_one
xargs -r -P "$(nproc)" -I{} bash -c 'tidy_one "$0" "$1"' "$build" {} <<<"$sources" >"$remarks"
# A header's remark comes once for each source that includes it.
sed -E 's/^[^ ]*\/((core|ui|app)\/)/\1/' "$remarks" | grep -E '(warning|error): ' | sort | uniq -c | sort -rn || { echo "No remark."; exit 0; }
echo "The remarks in full: $remarks"
exit 1
