#!/bin/sh
# Builds everything twice and runs all tests: first as people run it, then the unit tests under sanitizers. The
# fuzz targets, built by clang in a third folder, look for trouble for a minute each, one on every core, while the tests
# of the windows wait and the sanitizers run.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: sh tests/run.sh
# Ends in one line, "N passed, N failed", over all runs; the exit status is 0 only if nothing failed.
# RAILWRIGHT_FUZZ_SECONDS, when set, is how long each fuzz target looks (60).
set -eu
CDPATH='' root=$(cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/src/packages.sh"
. "$root/src/build-tree.sh"
plain=$root/build-tests
sanitized=$root/build-sanitize
fuzzing=$root/build-fuzz

# Whatever stops this script early is a failure, and the closing line has to say so.
private=
fuzz_pid=
closing='0 passed, 1 failed'
finish ()
{
    [ -z "$fuzz_pid" ] || kill "$fuzz_pid" 2> /dev/null || :
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
say "Building for the sanitizers ..."
configure_build "$root" "$sanitized" -Dwerror=true -Db_sanitize=address,undefined -Db_lundef=false
build_targets "$sanitized"

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

fuzz=
build_fuzz && fuzz=yes

rm -f "$plain/meson-logs/testlog.json" "$plain/meson-logs/uilog.json" "$sanitized/meson-logs/testlog.json" \
    "$fuzzing/meson-logs/testlog.json"
meson test -C "$plain" --no-rebuild --print-errorlogs --no-suite ui || say "Some tests failed."

# A preloaded test helper may come before the sanitizer's own library.
export ASAN_OPTIONS=detect_leaks=1:verify_asan_link_order=0 UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1 \
    LSAN_OPTIONS="suppressions='$root/tests/platform/leaks.txt':print_suppressions=0" G_SLICE=always-malloc

# The windows mostly wait for something: whatever they leave of the machine is the fuzz targets'.
if [ -n "$fuzz" ]; then
    nice -n 19 meson test -C "$fuzzing" --no-rebuild --print-errorlogs --suite fuzz > "$private/fuzz.log" 2>&1 &
    fuzz_pid=$!
fi
meson test -C "$plain" --no-rebuild --print-errorlogs --suite ui --logbase uilog || say "Some tests of the windows failed."

# Everything that needs a display or looks at files only was run above. Code that mostly counts is ten times slower
# here.
say "Unit tests under sanitizers ..."
meson test -C "$sanitized" --no-rebuild --print-errorlogs --timeout-multiplier 10 --no-suite ui --no-suite platform ||
    say "Some tests failed under sanitizers."

if [ -n "$fuzz_pid" ]; then
    say "Fuzz targets ..."
    wait "$fuzz_pid" || say "Some fuzz targets found something."
    fuzz_pid=
    cat "$private/fuzz.log"
fi

closing=
/usr/bin/python3 "$root/tests/platform/count-results.py" \
    "$plain/meson-logs/testlog.json" "$plain/meson-logs/uilog.json" "$sanitized/meson-logs/testlog.json" \
    "$fuzzing/meson-logs/testlog.json"
