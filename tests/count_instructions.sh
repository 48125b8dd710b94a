#!/bin/sh
# How many instructions setting one résumé takes, and where: `sh tests/count_instructions.sh FILE`.
# Counts do not hang on what else the machine does, so two builds can be compared. Needs valgrind.
set -eu
cd "$(dirname "$0")/.."
resume=${1:-samples/marine-biology.resume}
quoin=${QUOIN:-build/bin/quoin}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
valgrind --tool=callgrind --callgrind-out-file="$folder/counts" \
    "$quoin" set "$resume" -o "$folder/out.pdf" >"$folder/log" 2>&1 || {
    cat "$folder/log" >&2
    exit 1
}
callgrind_annotate --inclusive=yes "$folder/counts" >"$folder/report"
grep 'PROGRAM TOTALS' "$folder/report"
for function in build_resume read_theme compose quoin::fit make_pages write_pdf; do
    awk -v name="$function" 'index($0, name "(") || index($0, name "[abi") { print; exit }' \
        "$folder/report" | sed 's/\[.*//' | cut -c 1-120
done
