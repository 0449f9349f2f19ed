#!/bin/sh
# Runs one fuzz target for a while, from its seeds. Says little unless it finds something: then what libFuzzer said,
# and the bytes that did it, in hex.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: run-fuzz.sh TARGET SEEDS [LIBFUZZER_OPTION...]
# RAILWRIGHT_FUZZ_SECONDS says how long (60).
set -u
export LC_ALL=C
target=$1 seeds=$2
shift 2

# libFuzzer takes 0 for "for ever".
seconds=${RAILWRIGHT_FUZZ_SECONDS:-60}
case $seconds in
*[!0-9]* | 0* | ??????*)
    echo "RAILWRIGHT_FUZZ_SECONDS is \"$seconds\", which is no number of seconds from 1 to 99999"
    exit 1
    ;;
esac
[ -n "$(find "$seeds" -type f | head -n 1)" ] || { echo "$seeds: no seeds"; exit 1; }

work=$(mktemp -d) || exit 1
running=
trap 'rm -rf "$work"' EXIT
trap '[ -z "$running" ] || kill "$running" 2> /dev/null; exit 130' INT TERM
mkdir "$work/new" "$work/found"

# What is new goes to the first folder; the seeds are only read.
export UBSAN_OPTIONS=halt_on_error=1:abort_on_error=1:print_stacktrace=1
export ASAN_OPTIONS=detect_leaks=1:quarantine_size_mb=64
"$target" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=1024 -print_final_stats=1 \
    -artifact_prefix="$work/found/" "$@" "$work/new" "$seeds" > "$work/log" 2>&1 &
running=$!
wait "$running"
status=$?

runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$work/log")
[ "$status" -ne 0 ] || [ "${runs:-0}" -gt 0 ] || { echo "not one input was tried"; status=1; }
if [ "$status" -eq 0 ]; then
    echo "$runs inputs in $seconds s, $(sed -n 's/^#.* \(cov: [0-9]*\) .*/\1/p' "$work/log" | tail -n 1), nothing found"
    exit 0
fi
# What meson prints of a failed test ends after a hundred lines.
echo "found something (exit status $status):"
noise='^#[0-9]|NEW_FUNC|^(INFO|Dictionary|stat|MS|0x|Base64|NOTE)|^artifact_prefix|^ +Combine'
frames='^ *#[0-9]+ .* in (fuzzer::|__libc_start|_start )'
grep -avE "$noise|$frames" "$work/log" |
    sed '/^Shadow bytes around/,/^==/d' | cut -c1-300 | head -n 55
for file in "$work/found"/*; do
    [ -f "$file" ] || continue
    echo "the bytes of ${file##*/}:"
    od -An -v -tx1 -w64 "$file" | sed 's/^ //'
done
exit 1
