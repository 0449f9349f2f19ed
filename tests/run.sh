#!/bin/sh
# Builds everything twice and runs all tests: first as people run it, then the unit tests under sanitizers. The
# fuzz targets, built by clang in a third folder, look for trouble for a minute each, one on every core, while the tests
# of the windows wait and the sanitizers run.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: sh tests/run.sh
# Ends in one line, "N passed, N failed", over all runs; the exit status is 0 only if nothing failed.
# RAILWRIGHT_FUZZ_SECONDS, when set, is how long each fuzz target looks (60).
#
# Tests that wait run beside work that counts. Seconds of the processor, without a compiler cache: the plain build 170, the
# sanitized one 300 (a tenth less with -g1), tests under sanitizers 400 (30 less with a short study), fuzz targets 600.
# At -O1 the sanitized build would take 75 less and its tests 85 more. One after the other, the whole took 18 minutes on
# two idle cores; what waited with nothing beside it were the plain unit tests (140 seconds) and the meters' tests under
# sanitizers (187 seconds of tests for 36 of work).
set -eu
CDPATH='' root=$(cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/src/packages.sh"
. "$root/src/build-tree.sh"
plain=$root/build-tests
sanitized=$root/build-sanitize
fuzzing=$root/build-fuzz

# Whatever stops this script early is a failure, and the closing line has to say so.
private=
build_pid='' count_pid='' meter_pid=''
closing='0 passed, 1 failed'
finish ()
{
    for pid in $build_pid $count_pid $meter_pid; do
        kill "$pid" 2> /dev/null || :
    done
    [ -z "$private" ] || rm -rf "$private"
    [ -z "$closing" ] || echo "$closing"
}
trap finish EXIT
trap 'exit 130' INT TERM

# shellcheck disable=SC2086  # lists of words
need_packages $build_packages $run_packages $test_packages

# No test may see or touch the home of the person who runs it.
private=$(mktemp -d)
export HOME="$private" XDG_CONFIG_HOME="$private/config" XDG_DATA_HOME="$private/data" \
    XDG_CACHE_HOME="$private/cache" XDG_STATE_HOME="$private/state" XDG_RUNTIME_DIR="$private/run"
mkdir -p -m 700 "$XDG_RUNTIME_DIR"
unset LANGUAGE DISPLAY WAYLAND_DISPLAY DBUS_SESSION_BUS_ADDRESS

say "Building for the tests ..."
configure_build "$root" "$plain" -Dwerror=true
build_targets "$plain"
rm -f "$plain/meson-logs/testlog.json" "$plain/meson-logs/uilog.json" "$sanitized/meson-logs/testlog.json" \
    "$sanitized/meson-logs/meterlog.json" "$fuzzing/meson-logs/testlog.json"

# Only the fuzz targets are built here. Where they cannot be, everything else is still tested: their log is then missing,
# which counts as a failure.
build_fuzz ()
{
    command -v clang > /dev/null || {
        say "The fuzz targets need clang and its runtime libraries (Debian: clang libclang-rt-dev): not found."
        return 1
    }
    if (export CC=clang && configure_build "$root" "$fuzzing" -Dc_args=-fsanitize=fuzzer-no-link \
        -Db_sanitize=address,undefined -Db_lundef=false) && build_targets "$fuzzing" fuzz-targets; then
        return 0
    fi
    say "The fuzz targets could not be built; the reason is above. Besides clang they need its runtime libraries" \
        "(Debian: libclang-rt-dev)."
    return 1
}

# Reports name lines, which is all that -g1 keeps.
build_others ()
{
    ninja () { nice -n 10 ninja "$@"; }
    configure_build "$root" "$sanitized" -Dwerror=true -Dc_args=-g1 -Db_sanitize=address,undefined -Db_lundef=false &&
        build_targets "$sanitized" || return 1
    if build_fuzz; then
        touch "$private/fuzz-is-built"
    fi
}

# Many unit tests wait for a meter that answers slowly: whatever they leave of the machine builds the other two trees.
say "Building for the sanitizers and the fuzz targets beside the tests ..."
build_others &
build_pid=$!
meson test -C "$plain" --no-rebuild --print-errorlogs --no-suite ui || say "Some tests failed."
wait "$build_pid" || exit 1
build_pid=

# A preloaded test helper may come before the sanitizer's own library.
export ASAN_OPTIONS=detect_leaks=1:verify_asan_link_order=0 UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1 \
    LSAN_OPTIONS="suppressions='$root/tests/platform/leaks.txt':print_suppressions=0"

# sanitized_tests NICENESS OPTION...: code that mostly counts is ten times slower there.
sanitized_tests ()
{
    niceness=$1
    shift
    G_SLICE=always-malloc nice -n "$niceness" meson test -C "$sanitized" --no-rebuild --print-errorlogs --timeout-multiplier 10 "$@"
}

# What counts rather than waits: the fuzz targets, then the unit tests under sanitizers. Everything that needs a display
# or looks at files only is run in the plain tree alone.
counting ()
{
    if [ -e "$private/fuzz-is-built" ]; then
        nice -n 19 meson test -C "$fuzzing" --no-rebuild --print-errorlogs --suite fuzz > "$private/fuzz.log" 2>&1 ||
            say "Some fuzz targets found something."
    fi
    sanitized_tests 19 --no-suite ui --no-suite platform --no-suite meter > "$private/sanitized.log" 2>&1 ||
        say "Some tests failed under sanitizers."
}

# The windows mostly wait for something, and so do the meters, one after the other: the rest has whatever they leave of the
# machine.
counting &
count_pid=$!
sanitized_tests 0 --num-processes 1 --suite meter --logbase meterlog > "$private/meter.log" 2>&1 &
meter_pid=$!
meson test -C "$plain" --no-rebuild --print-errorlogs --suite ui --logbase uilog ||
    say "Some tests of the windows failed."

say "Tests of meters under sanitizers ..."
wait "$meter_pid" || say "Some tests of meters failed under sanitizers."
meter_pid=
cat "$private/meter.log"

say "Fuzz targets, and unit tests under sanitizers ..."
wait "$count_pid" || say "The fuzz targets or the sanitizers' tests did not come to their end."
count_pid=
cat "$private/fuzz.log" "$private/sanitized.log" 2> /dev/null || :

closing=
/usr/bin/python3 "$root/tests/platform/count-results.py" \
    "$plain/meson-logs/testlog.json" "$plain/meson-logs/uilog.json" "$sanitized/meson-logs/testlog.json" \
    "$sanitized/meson-logs/meterlog.json" "$fuzzing/meson-logs/testlog.json"
