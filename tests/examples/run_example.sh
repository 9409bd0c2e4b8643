#!/bin/sh
# run_example.sh PROGRAM PRINTS: runs an example and compares what it prints with what its header says.
set -eu
"$1" | diff -u --label 'the header says' "$2" --label 'came out' -
echo "$(wc -l <"$2") lines as the header says"
