#!/bin/sh
# tests/bench/compare_grep.sh BUILD [ROUNDS]: the built tool beside grep, which only finds words, on one catalog.
#
# Both read the same file and write into a file; each round runs both, the first of them in turn, so that a slow moment of the
# machine meets both. Printed: seconds of each round, medians, megabytes a second, and the ratio, which is what holds on
# another machine. Checks first that both find something and that the tool's output is the same twice.
set -eu
build=$(cd "$1" && pwd)
rounds=${2:-7}
bench=$build/tests/bench/bench_check
tool=$build/tools/grainside
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

"$bench" --catalog >"$work/catalog.jsonl"
"$bench" --terms >"$work/terms"
bytes=$(wc -c <"$work/catalog.jsonl")

# Status 1 of the tool says that there are findings.
run_tool() { "$tool" check --format jsonl "$work/catalog.jsonl" >"$work/tool.out" || [ $? -eq 1 ]; }
run_grep() { LC_ALL=C.UTF-8 grep -o -i -w -F -f "$work/terms" "$work/catalog.jsonl" >"$work/grep.out"; }
run_grep_bytes() { LC_ALL=C grep -o -i -w -F -f "$work/terms" "$work/catalog.jsonl" >"$work/grep.out"; }

run_tool
cp "$work/tool.out" "$work/tool.first"
run_tool
cmp -s "$work/tool.out" "$work/tool.first" || { echo "the tool's output differs from run to run" >&2; exit 1; }
run_grep
[ -s "$work/tool.out" ] && [ -s "$work/grep.out" ] || { echo "one of both finds nothing" >&2; exit 1; }
echo "catalog: $bytes bytes; $(wc -l <"$work/terms") terms for grep, which finds $(wc -l <"$work/grep.out") words;" \
    "the tool writes $(wc -l <"$work/tool.out") lines"

timed() {
    began=$(date +%s%N)
    "run_$1"
    echo "$((($(date +%s%N) - began) / 1000))" >>"$work/$1.times"
}
round=1
while [ "$round" -le "$rounds" ]; do
    if [ $((round % 2)) -eq 1 ]; then order="tool grep grep_bytes"; else order="grep_bytes grep tool"; fi
    for what in $order; do timed "$what"; done
    round=$((round + 1))
done

median() { sort -n "$work/$1.times" | awk '{ at[NR] = $1 } END { print NR % 2 ? at[(NR + 1) / 2] : (at[NR / 2] + at[NR / 2 + 1]) / 2 }'; }
tool_time=$(median tool)
for what in tool grep grep_bytes; do
    time=$(median "$what")
    awk -v what="$what" -v time="$time" -v tool="$tool_time" -v bytes="$bytes" -v rounds="$rounds" 'BEGIN {
        printf "%-10s median of %d: %8.3f s  %7.1f MB/s  tool/this by speed: %.2f\n", what, rounds, time / 1e6, bytes / time, time / tool
    }'
done
