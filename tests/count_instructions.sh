#!/bin/sh
# How many instructions setting one résumé takes, by stage, each beside what it may take of a full page, and
# how they grow from one page to ten: `sh tests/count_instructions.sh [FILE]`. Counts do not hang on what
# else the machine does, so two builds can be compared. Needs valgrind.
set -eu
cd "$(dirname "$0")/.."
resume=${1:-samples/nursing.resume}
quoin=${QUOIN:-build/bin/quoin}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT

count() { # FILE REPORT
    valgrind --tool=callgrind --callgrind-out-file="$folder/counts" \
        "$quoin" set "$1" -o "$folder/out.pdf" >"$folder/log" 2>&1 || {
        cat "$folder/log" >&2
        exit 1
    }
    callgrind_annotate --inclusive=yes --threshold=100 "$folder/counts" >"$2"
}

millions() { # REPORT FUNCTION: with all that it calls
    awk -v name="$2" '
        index($0, name) { gsub(",", "", $1); printf "%.1f", $1 / 1e6; found = 1; exit }
        END { if (!found) printf "?" }' "$1"
}

# Ten times the sections below one heading.
ten_pages() {
    awk '/^section:/ { below = 1 }
         below { rest = rest $0 "\n" }
         !below { print } /^name:/ { print "pages: 12" }
         END { for (i = 0; i < 10; ++i) printf "%s\n", rest }' "$1"
}

ten_pages "$resume" >"$folder/ten.resume"
count "$resume" "$folder/one"
count "$folder/ten.resume" "$folder/ten"
printf '%-22s %8s %8s %10s\n' 'millions' 'a page' 'at most' 'ten pages'
while IFS='|' read -r stage function budget; do
    printf '%-22s %8s %8s %10s\n' "$stage" "$(millions "$folder/one" "$function")" "$budget" \
        "$(millions "$folder/ten" "$function")"
done <<END
all|PROGRAM TOTALS|45
the loader|:_dl_start |2.5
  the command line|commands::(anonymous namespace)::make_app(|0.6
  the list of fonts|commands::open_fonts(|1.5
  the source read|quoin::model::build_resume(|4
  the theme read|quoin::theme::read_theme(|2.5
  composition|quoin::composition::compose(|21
    of that HarfBuzz|:hb_shape_full |9
  the fit|quoin::fit::fit(|3.5
  pages|quoin::stages::make_pages(|0.5
  the PDF|quoin::pdf::write_pdf|12
    of that deflate|quoin::pdf::deflate|6
END
