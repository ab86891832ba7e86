#!/usr/bin/env bash
# Runs clang-tidy (14) over core, ui and app with the checks of .clang-tidy; every remark is an error.
#   bash tests/tidy.sh            all sources, in the groups in which they are compiled: a group takes as long as three of its sources alone
#   bash tests/tidy.sh changed    those that differ from main, and those that include a header that does
#   bash tests/tidy.sh FILE...    these
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
install_missing "${BUILD_PACKAGES[@]}" "${TIDY_PACKAGES[@]}"
build=build/tidy unity=ON
# Named sources are judged alone, whatever they are grouped with in a build. Nothing needs to be built but what the core embeds.
[ $# -eq 0 ] || build=build/tidy-alone unity=OFF
cmake -S . -B "$build" -G Ninja --log-level=WARNING -DCMAKE_BUILD_TYPE=Debug -DTIEPOINT_TESTS=OFF -DTIEPOINT_UNITY=$unity \
    -DCMAKE_CXX_COMPILER=clang++ >/dev/null
cmake --build "$build" --target core/embedded_files.cpp >/dev/null

all_groups() { sed -nE 's/^ *"file": "(.*Unity.*)",?$/\1/p' "$build/compile_commands.json"; }

changed_sources() {
    local changed header
    changed=$(git diff --name-only --diff-filter=d "$(git merge-base main HEAD)" -- core ui app; git ls-files -o --exclude-standard core ui app)
    grep '\.cpp$' <<<"$changed" || true
    for header in $(grep '\.h$' <<<"$changed"); do grep -rlF --include='*.cpp' "#include \"$header\"" core ui app || true; done
}

if [ $# -eq 0 ]; then
    sources=$(all_groups)
elif [ "$1" = changed ]; then
    sources=$(changed_sources | sort -u)
else
    sources=$(printf '%s\n' "$@")
fi
count=$(grep -c . <<<"$sources" || true)
echo "$count to judge, $(nproc) at a time."
remarks=$(mktemp)
tidy_one() { clang-tidy-14 -p "$1" --quiet --warnings-as-errors='*' "$2" 2>/dev/null || true; }
export -f tidy_one
xargs -r -P "$(nproc)" -I{} bash -c 'tidy_one "$0" "$1"' "$build" {} <<<"$sources" >"$remarks"
# A header's remark comes once for each source that includes it.
sed -E 's/^[^ ]*\/((core|ui|app)\/)/\1/' "$remarks" | grep -E '(warning|error): ' | sort | uniq -c | sort -rn || { echo "No remark."; exit 0; }
echo "The remarks in full: $remarks"
exit 1
