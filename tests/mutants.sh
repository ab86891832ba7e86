#!/usr/bin/env bash
# tests/mutants.sh N [SEED]: tries N small random changes to the core, one at a time, and says which the core's tests catch.
#
# The tree is copied first and never changed: a changed source is compiled beside the copy and linked in front of the core's library.
# A change is
#   caught     when the tests fail, crash or take far too long (the library's assertions are on),
#   equal      when the compiler makes the same code of it, or tests/mutants/equal.txt lists it with the reason why it means the same,
#   survived   when every test passes: a test is missing.
# One that doesn't compile is replaced by another. JOBS at a time (default: one for each processor). SANITIZER=address has the tests watched
# for reads and writes out of bounds too, and takes three times as long.
set -euo pipefail
cd "$(dirname "$0")/.."
root=$PWD
[ $# -ge 1 ] || { echo "Usage: bash tests/mutants.sh N [SEED]" >&2; exit 2; }
wanted=$1
seed=${2:-$(date +%s)}
jobs=${JOBS:-$(nproc)}
work=$root/build/mutants
tree=$work/tree
mkdir -p "$tree" "$work/tried"
exec 8>"$work/lock"
flock -n 8 || { echo "Another run is using $work." >&2; exit 2; }

# --- The copy, and the tests as they are -----------------------------------------------------------------------------------------
# A file that is the same keeps its time, so that only what changed is compiled again.
copy_tree() {
    local name
    git ls-files -co --exclude-standard >"$work/files"
    (cd "$tree" && find . -type f | sed 's|^\./||') | { grep -vxFf "$work/files" || true; } | (cd "$tree" && xargs -r rm -f)
    while read -r name; do
        [ -f "$name" ] || continue
        cmp -s "$name" "$tree/$name" && continue
        mkdir -p "$tree/$(dirname "$name")"
        cp "$name" "$tree/$name"
    done <"$work/files"
}
copy_tree
cmake -S "$tree" -B "$work/build" -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG="-O1 -w ${SANITIZER:+-fsanitize=$SANITIZER}" \
    -DTIEPOINT_TESTS=ON -DTIEPOINT_ASSERTIONS=ON -DTIEPOINT_UNITY_CORE=OFF >/dev/null
cmake --build "$work/build" --target core_tests
g++ -std=c++20 -O1 -o "$work/choose" tests/mutants/choose.cpp
build=$work/build
export ASAN_OPTIONS=detect_leaks=0:hard_rss_limit_mb=2000
export GTEST_BRIEF=1 GTEST_FAIL_FAST=1

# The tests in three parts, quick ones first: most changes are caught at once.
baseline() {
    local started=$SECONDS
    GTEST_BRIEF=0 "$build/tests/core_tests" >"$work/baseline.txt" 2>&1 || { tail -30 "$work/baseline.txt"; echo "The tests fail as they are." >&2; exit 1; }
    sed -nE 's/^\[ +OK \] ([^ ,]+).* \(([0-9]+) ms\)$/\2 \1/p' "$work/baseline.txt" | sort -n >"$work/times"
    awk '$1 < 40 {print $2}' "$work/times" | paste -sd: >"$work/part1"
    awk '$1 >= 40 && $1 < 800 {print $2}' "$work/times" | paste -sd: >"$work/part2"
    awk '$1 >= 800 {print $2}' "$work/times" | paste -sd: >"$work/part3"
    echo "$(wc -l <"$work/times") tests pass in $((SECONDS - started)) s."
}
baseline
patience=$((60 + 5 * $(awk '{ms += $1} END {print int(ms / 1000)}' "$work/times")))
(cd "$build" && ninja -t commands tests/core_tests) >"$work/commands"
(cd "$build" && ninja -t deps) | sed 's/^ *//' >"$work/deps"
tail -1 "$work/commands" | sed 's/^: && //; s/ && :$//' >"$work/link"

# --- One change ------------------------------------------------------------------------------------------------------------------
# The objects of the build that see a source: its own, or those of all that include a header.
objects_of() {
    case $1 in
        *.cpp) echo "core/CMakeFiles/core.dir/${1#core/}.o" ;;
        *) awk -v header="$tree/$1" '/: #deps/ {object = $1; sub(/:$/, "", object)} $1 == header {print object}' "$work/deps" ;;
    esac
}

# compile OBJECT SOURCES OUT [release]: compiles what the build makes OBJECT of, with the sources below SOURCES going before those of the copy.
compile() {
    local command
    command=$(grep -F -- " -o $1 " "$work/commands" | sed -E "s|^.*ccache ||; s| -o [^ ]+| -o $3|; s| -MD -MT [^ ]+ -MF [^ ]+||; s| -I$tree | -I$2 -I$tree |")
    local source=${command##* }
    [ ! -f "$2${source#"$tree"}" ] || command="${command% *} $2${source#"$tree"}"
    [ "${4:-}" != release ] || command=$(sed -E 's/ -fsanitize=[^ ]+//g; s/ -O1 / -O2 -DNDEBUG /; s/ -D_GLIBCXX_ASSERTIONS//' <<<"$command")
    (cd "$build" && eval "$command")
}

# Whether the compiler makes the same code of both.
is_same_code() { # FILE PLACE
    local object
    for object in $(objects_of "$1"); do
        compile "$object" "$tree" "$2/old.o" release && compile "$object" "$2/tree" "$2/new.o" release || return 1
        cmp -s "$2/old.o" "$2/new.o" || return 1
    done
}

try() { # FILE OFFSET LENGTH NEW PLACE: prints the verdict
    local file=$1 place=$5 link object out count=0 part
    link=$(cat "$work/link")
    for object in $(objects_of "$file"); do
        out=$place/$((count++)).o
        compile "$object" "$place/tree" "$out" >>"$place/compile.txt" 2>&1 || { echo broken; return; }
        case $object in
            tests/*) link=${link/"$object"/"$out"} ;;
            *) link=${link/" core/libcore.a"/" $out core/libcore.a"} ;;
        esac
    done
    [ "$count" -gt 0 ] || { echo broken; return; }
    link=$(sed -E "s| -o tests/core_tests| -o $place/core_tests|" <<<"$link")
    (cd "$build" && eval "$link") >"$place/link.txt" 2>&1 || { echo broken; return; }
    for part in 1 2 3; do
        (cd "$build/tests" && timeout -s KILL "$patience" "$place/core_tests" --gtest_filter="$(cat "$work/part$part")") >"$place/out.txt" 2>&1 ||
            { echo caught; return; }
    done
    if is_same_code "$file" "$place" >>"$place/compile.txt" 2>&1; then echo equal; else echo survived; fi
}

# One numbered change: tried, its verdict written down and told.
judge() { # NUMBER FILE LINE OFFSET LENGTH NEW KIND
    local number=$1 file=$2 line=$3 offset=$4 length=$5 new=$6 kind=$7 place=$work/tried/$1 verdict old changed
    rm -rf "$place"
    mkdir -p "$place/tree/$(dirname "$file")"
    { head -c "$offset" "$tree/$file"; printf '%s' "$new"; tail -c +"$((offset + length + 1))" "$tree/$file"; } >"$place/tree/$file"
    old=$(sed -n "${line}p" "$tree/$file" | sed 's/^ *//')
    changed=$(sed -n "${line}p" "$place/tree/$file" | sed 's/^ *//')
    if grep -qF -- "$file | $old | $changed | " "$root/tests/mutants/equal.txt"; then verdict=equal; else verdict=$(try "$file" "$offset" "$length" "$new" "$place"); fi
    rm -f "$place/core_tests" "$place"/*.o
    exec 6>"$work/turn"
    flock 6
    printf '%s\t%s\n' "$verdict" "$number" >>"$work/verdicts"
    [ "$verdict" = broken ] || printf '%-9s %s:%s: a %s\n    - %s\n    + %s\n' "$verdict" "$file" "$line" "$kind" "$old" "$changed"
    exec 6>&-
}

# Takes the next change until enough are tried.
worker() {
    local number fields
    while :; do
        exec 6>"$work/turn"
        flock 6
        number=$(($(cat "$work/next") + 1))
        echo "$number" >"$work/next"
        [ "$(grep -cv '^broken' "$work/verdicts")" -lt "$wanted" ] || return 0
        exec 6>&-
        IFS=$'\x1f' read -r -a fields < <(sed -n "${number}p" "$work/changes" | tr '\t' '\037')
        [ ${#fields[@]} -ge 6 ] || return 0
        judge "$number" "${fields[@]}"
    done
}

(cd "$tree" && "$work/choose" $((wanted * 3)) "$seed" $(find core -name '*.cpp' -o -name '*.h' | sort)) >"$work/changes" 2>/dev/null
: >"$work/verdicts"
echo 0 >"$work/next"
for _ in $(seq "$jobs"); do worker & done
wait

# --- The sum ---------------------------------------------------------------------------------------------------------------------
count() { grep -c "^$1" "$work/verdicts" || true; }
caught=$(count caught) survived=$(count survived) equal=$(count equal)
echo
echo "Seed $seed: caught $caught, survived $survived, equal in meaning $equal ($(count broken) didn't compile)."
[ $((caught + survived)) -eq 0 ] || echo "Caught: $((100 * caught / (caught + survived))) % of those that change the meaning."
