#!/bin/sh
# library_is_silent.sh NM LIBRARY: fails where the library asks for a symbol that prints or ends the program. Those who
# embed it own the console and the process.
set -eu
nm=$1
library=$2
case $library in
    *.a) symbols=$("$nm" -A -u "$library") ;;
    *) symbols=$("$nm" -D -u "$library") ;;
esac
[ -n "$symbols" ] || { echo "no symbols in $library" >&2; exit 2; }
ends='abort|exit|_exit|_Exit|quick_exit'
prints='v?f?printf|v?dprintf|__v?f?printf_chk|puts|fputs|putchar|fputc|putc|fwrite|perror|syslog|stdout|stderr'
streams='_ZSt4cout|_ZSt4cerr|_ZSt4clog|_ZSt5wcout|_ZSt5wcerr|_ZSt5wclog'
if printf '%s\n' "$symbols" | grep -E "[[:space:]]($ends|$prints|$streams)(@.*)?\$"; then
    echo "the library must neither print nor end the program: the symbols above" >&2
    exit 1
fi
echo "$(printf '%s\n' "$symbols" | wc -l) symbols asked for, none prints or ends the program"
