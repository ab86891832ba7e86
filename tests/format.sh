#!/usr/bin/env bash
# Checks that every C++ file is written as clang-format (14) would write it, by .clang-format. "fix" as an argument writes them so.
set -euo pipefail
cd "$(dirname "$0")/.."
source app/packages.sh
install_missing "${FORMAT_PACKAGES[@]}"
how=(--dry-run --Werror)
[ "${1:-}" != fix ] || how=(-i)
git ls-files -co --exclude-standard '*.cpp' '*.h' | while read -r file; do [ ! -f "$file" ] || echo "$file"; done |
    xargs -P "$(nproc)" -n 40 clang-format-14 "${how[@]}" || { echo "Not as written by clang-format: bash tests/format.sh fix" >&2; exit 1; }
