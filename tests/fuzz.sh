#!/usr/bin/env bash
# tests/fuzz.sh [SECONDS [FORMAT...]]: lets libFuzzer make up bytes for the program's readers, each for so long (default: 60 s).
# Needs clang. What breaks a reader is put into tests/fuzz/corpus/FORMAT, from where a test reads it ever after.
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
install_missing "${BUILD_PACKAGES[@]}" "${FUZZ_PACKAGES[@]}"
seconds=${1:-60}
shift || true
build=build/fuzz
cmake -S . -B "$build" -G Ninja --log-level=WARNING -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O1 -g1" \
    -DTIEPOINT_TESTS=OFF -DTIEPOINT_FUZZ=ON -DTIEPOINT_ASSERTIONS=ON -DTIEPOINT_SANITIZE=address
cmake --build "$build" --target fuzz
formats=("$@")
[ $# -gt 0 ] || mapfile -t formats < <(ls tests/fuzz/corpus)
broken=0
for format in "${formats[@]}"; do
    program=$build/tests/fuzz_$format found=$build/found/$format kept=tests/fuzz/corpus/$format log=$build/fuzz_$format.log
    mkdir -p "$found"
    "$program" --samples "$found"
    # A slow input counts as broken: ten seconds for what fits into 4 kB.
    "$program" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2000 -max_len=4096 -artifact_prefix="$kept/" -print_final_stats=1 \
        "$found" "$kept" >"$log" 2>&1 || { broken=$((broken + 1)); echo "$format is broken; see $log"; }
    echo "$format: $(sed -nE 's/^stat::number_of_executed_units: *//p' "$log") runs"
done
exit $((broken > 0))
