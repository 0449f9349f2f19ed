#!/bin/sh
# Runs a command with a home, a session bus and an X server of its own, and the freshly built program's data at hand.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: env.sh [--wm] COMMAND ARGUMENT...
#   --wm     with a window manager: needed where windows are maximized, full screen, or more than one
# environment, all optional: SCREEN (1280x800x24), and any variable below that is set with a default.
# Meson gives G_TEST_BUILDDIR; without it the build folder is "build".
#
# Everything is set before the bus starts, because programs that the bus starts inherit its environment, not ours.
# What those programs print goes to standard error: standard output belongs to the command, which may speak TAP.
set -eu
for tool in Xvfb dbus-run-session; do
    command -v "$tool" > /dev/null || { echo "$tool is not installed" >&2; exit 77; }
done
CDPATH='' root=$(cd -- "$(dirname -- "$0")/../.." && pwd)
. "$root/src/build-tree.sh"

with_wm=
if [ "${1-}" = --wm ]; then
    with_wm=yes
    shift
fi

private=$(mktemp -d)
server=
clean_up ()
{
    [ -z "$server" ] || kill "$server" 2> /dev/null || :
    rm -rf "$private"
}
trap clean_up EXIT
trap 'exit 130' INT TERM
export HOME="$private" XDG_RUNTIME_DIR="$private/run" XDG_CONFIG_HOME="$private/config" \
    XDG_DATA_HOME="$private/data" XDG_CACHE_HOME="$private/cache" XDG_STATE_HOME="$private/state"
mkdir -p "$XDG_RUNTIME_DIR" "$XDG_CONFIG_HOME/gtk-4.0" "$XDG_DATA_HOME" "$XDG_CACHE_HOME" "$XDG_STATE_HOME"
chmod 700 "$XDG_RUNTIME_DIR"
printf '[Settings]\ngtk-enable-animations=false\ngtk-cursor-blink=false\n' > "$XDG_CONFIG_HOME/gtk-4.0/settings.ini"

export GDK_BACKEND=x11 GSK_RENDERER="${GSK_RENDERER-cairo}" GTK_A11Y="${GTK_A11Y-atspi}" GTK_USE_PORTAL=0 \
    GSETTINGS_BACKEND="${GSETTINGS_BACKEND-memory}" GIO_USE_VFS=local LC_ALL="${LC_ALL-C.UTF-8}"
unset WAYLAND_DISPLAY XAUTHORITY DBUS_SESSION_BUS_ADDRESS AT_SPI_BUS_ADDRESS DESKTOP_STARTUP_ID
build_tree_env "$root" "$(dirname -- "${G_TEST_BUILDDIR-$root/build/tests}")"

# The server picks a number that is free and tells it when it is ready, so that any number of these may start at once.
mkfifo "$private/number"
Xvfb -displayfd 3 -screen 0 "${SCREEN-1280x800x24}" -nolisten tcp -noreset 3> "$private/number" > /dev/null 2>&1 &
server=$!
read -r number < "$private/number" || { echo "the X server did not start" >&2; exit 1; }
export DISPLAY=":$number"

# The window manager is to be there before the first window, and to the end: a test would blame the program for its lack.
# It reads memory that it has freed, which only shows with what makes our own program's mistakes show.
# shellcheck disable=SC2016  # expanded by the inner shell
[ -z "$with_wm" ] || set -- sh -c 'env -u G_SLICE -u MALLOC_PERTURB_ openbox --sm-disable >&2 3>&- & wm=$!
    left=200
    until xprop -root _NET_SUPPORTING_WM_CHECK | grep -q "window id"; do
        left=$((left - 1))
        [ "$left" -gt 0 ] || { echo "the window manager did not start" >&2; exit 1; }
        sleep 0.05
    done
    status=0
    "$@" || status=$?
    kill "$wm" || { echo "the window manager ended by itself" >&2; status=1; }
    exit "$status"' wm "$@"
exec 3>&1 1>&2
status=0
# shellcheck disable=SC2016
dbus-run-session -- sh -c 'exec "$@" >&3 3>&-' command "$@" || status=$?
exit "$status"
