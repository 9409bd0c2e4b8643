#!/bin/sh
# expect_exit.sh STATUS TEXT COMMAND...: passes where the command ends with this status and says this text somewhere.
status=$1
text=$2
shift 2
output=$("$@" 2>&1)
got=$?
printf '%s\n' "$output"
[ "$got" -eq "$status" ] || { echo "exit status $got, expected $status" >&2; exit 1; }
case $output in
    *"$text"*) ;;
    *) echo "the output does not hold: $text" >&2; exit 1 ;;
esac
