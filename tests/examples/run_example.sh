#!/bin/sh
# run_example.sh PRINTS PROGRAM [NAME]: runs an example and compares what it prints with what its header says.
set -eu
prints=$1
shift
out=$("$@")
printf '%s\n' "$out" | diff -u --label 'the header says' "$prints" --label 'came out' -
echo "$(wc -l <"$prints") lines as the header says"
