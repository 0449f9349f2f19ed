#!/bin/sh
# The desktop starts the program over the session bus, gives it the launcher's actions and hands it files.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: activate.sh SOURCE_ROOT BUILD
. "$(dirname -- "$0")/need.sh"
need gapplication gdbus xdotool Xvfb dbus-run-session

id=org.railwright.bench

# The windows of the program that can be seen, by number.
windows ()
{
    xdotool search --all --onlyvisible --pid "$(bus_pid)" --name . 2> /dev/null | wc -l
}

bus_pid ()
{
    gdbus call --session --dest org.freedesktop.DBus --object-path /org/freedesktop/DBus \
        --method org.freedesktop.DBus.GetConnectionUnixProcessID "$id" 2> /dev/null | tr -dc '0-9 ' | awk '{ print $NF }'
}

# until_true SECONDS COMMAND...: polls; the deadline is generous because a loaded machine is slow.
until_true ()
{
    tries=$(($1 * 10))
    shift
    while ! "$@"; do
        tries=$((tries - 1))
        [ "$tries" -gt 0 ] || { echo "not so within the time: $*"; return 1; }
        sleep 0.1
    done
}

has_windows ()
{
    [ "$(windows)" -ge "$1" ]
}

has_window_named ()
{
    xdotool search --onlyvisible --name "$1" > /dev/null 2>&1
}

is_gone ()
{
    [ -z "$(bus_pid)" ]
}

drive ()
{
    actions=$(sed -n 's/^Actions=//p' "$build/data/$id.desktop" | tr ';' ' ')
    gapplication launch "$id" || return 1
    until_true 20 has_windows 1 || return 1
    for action in $actions; do
        gapplication list-actions "$id" | grep -qx "$action" || { echo "no action $action"; return 1; }
    done
    gapplication action "$id" new-window || return 1
    until_true 20 has_windows 2 || return 1
    demo=$(ls "$root"/demo-sessions/*.rwlog | head -n 1)
    cabinet=$(sed -n '1s/.*"cabinet": *{ *"name": *"\([^"]*\)".*/\1/p' "$demo")
    [ -n "$cabinet" ] || { echo "$demo names no cabinet"; return 1; }
    gapplication launch "$id" "$demo" || return 1
    until_true 20 has_window_named "$cabinet" || return 1
    gapplication action "$id" quit || return 1
    until_true 20 is_gone
}

if [ "$1" = --inside ]; then
    root=$2 build=$3
    drive
    exit
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/dbus-1/services" "$work/applications"
sed "s|^Exec=[^ ]*|Exec=\"$2/src/bench/railwright\"|" "$2/data/$id.service" > "$work/dbus-1/services/$id.service"
cp "$2/data/$id.desktop" "$work/applications/"
# A launcher entry counts only if its program is on the path.
export PATH="$2/src/bench:$PATH" XDG_DATA_DIRS="$work:${XDG_DATA_DIRS:-/usr/local/share:/usr/share}"
sh "$1/tests/ui/env.sh" --wm sh "$0" --inside "$1" "$2"
