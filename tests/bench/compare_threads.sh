#!/bin/sh
# tests/bench/compare_threads.sh BUILD [THREADS] [ROUNDS]: the built tool with one thread beside itself with several (2).
#
# Ten copies of the benchmark's catalog as one file, read from the cache and written into a file; both in each round, the
# first of them in turn. Checks first that both write the same bytes. Printed: the median of each and the ratio, which
# means something on an idle machine only. Aim: 1.8 with two threads on two cores.
set -eu
build=$(cd "$1" && pwd)
threads=${2:-2}
rounds=${3:-7}
tool=$build/tools/grainside
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

"$build/tests/bench/bench_check" --catalog >"$work/one.jsonl"
for copy in 1 2 3 4 5 6 7 8 9 10; do cat "$work/one.jsonl"; done >"$work/catalog.jsonl"

# Status 1 of the tool says that there are findings.
run() { "$tool" check --format jsonl --threads "$1" "$work/catalog.jsonl" >"$work/out.$1" || [ $? -eq 1 ]; }
run 1
run "$threads"
cmp "$work/out.1" "$work/out.$threads" || { echo "the number of threads changes the output" >&2; exit 1; }

round=1
while [ "$round" -le "$rounds" ]; do
    if [ $((round % 2)) -eq 1 ]; then order="1 $threads"; else order="$threads 1"; fi
    for count in $order; do
        began=$(date +%s%N)
        run "$count"
        echo "$((($(date +%s%N) - began) / 1000))" >>"$work/times.$count"
    done
    round=$((round + 1))
done
median() { sort -n "$work/times.$1" | awk '{ at[NR] = $1 } END { print at[int((NR + 1) / 2)] }'; }
awk -v one="$(median 1)" -v many="$(median "$threads")" -v threads="$threads" 'BEGIN {
    printf "1 thread %.3f s, %d threads %.3f s: %.2f times as fast\n", one / 1e6, threads, many / 1e6, one / many
}'
