#!/bin/sh
# Builds Railwright where need be and starts it.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: sh src/run.sh             the practice cabinet
#        sh src/run.sh FILE...     saved sessions
# Anything else is handed to the program as it is (see "man railwright").
set -eu
CDPATH='' root=$(cd -- "$(dirname -- "$0")/.." && pwd)
build=$root/build
. "$root/src/packages.sh"
. "$root/src/build-tree.sh"

# Only what a person at the bench needs, not the tests.
build_program ()
{
    [ -x "$build/src/bench/railwright" ] || say "Building Railwright; the first time takes a minute or two ..."
    configure_build "$root" "$build" || return 1
    build_targets "$build" src/bench/railwright src/log/railwright-log data/gschemas.compiled railwright-gmo
}

# can_open_window ARGUMENT...: there is a display, or nothing is asked for that needs one.
can_open_window ()
{
    case " $* " in *' --help '* | *' --version '*) return 0 ;; esac
    [ -n "${DISPLAY-}${WAYLAND_DISPLAY-}" ] || [ -S "${XDG_RUNTIME_DIR-}/wayland-0" ] || [ "${GDK_BACKEND-}" = broadway ]
}

# shellcheck disable=SC2086  # lists of words
need_packages $build_packages $run_packages || exit 1
build_program || { say "Railwright could not be built; the reason is above."; exit 1; }
can_open_window "$@" || {
    say "There is no display to open a window on: start this from a desktop session."
    say "Saved sessions can be read without one: $build/src/log/railwright-log --help"
    exit 1
}
build_tree_env "$root" "$build"
[ $# -gt 0 ] || set -- --practice
exec "$build/src/bench/railwright" "$@"
