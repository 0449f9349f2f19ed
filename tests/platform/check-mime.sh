#!/bin/sh
# A session file is known by its name and by its first bytes, and no other JSON is taken for one.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-mime.sh SOURCE_ROOT BUILT_MIME_XML
. "$(dirname -- "$0")/need.sh"
need xmllint update-mime-database gio
session=application/vnd.railwright.session
notes=application/vnd.railwright.notes
bad=0

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export HOME="$work" XDG_DATA_HOME="$work/share" LC_ALL=C.UTF-8
mkdir -p "$XDG_DATA_HOME/mime/packages" "$work/files"
xmllint --noout "$2" || bad=1
cp "$2" "$XDG_DATA_HOME/mime/packages/"
update-mime-database "$XDG_DATA_HOME/mime" || bad=1

# is FILE TYPE: what the desktop takes this file for.
is ()
{
    type=$(gio info -a standard::content-type "$1" | sed -n 's/.*standard::content-type: //p')
    [ "$type" = "$2" ] || { echo "$1: $type, not $2"; bad=1; }
}

cd "$work/files" || exit 1
echo '{"railwright": 1, "id": "x"}' > by-content
echo '  {"railwright":1}' > indented
echo 'not JSON at all' > by-name.rwlog
echo '{"railwright_notes": 1, "session": "x"}' > notes-by-content
echo 'not JSON at all' > by-name.rwnotes
echo '{"other": 1}' > other.json
echo '{"id": "x", "note": "railwright"}' > mention.json
is by-content "$session"
is indented "$session"
is by-name.rwlog "$session"
is notes-by-content "$notes"
is by-name.rwnotes "$notes"
is other.json application/json
is mention.json application/json

demos=0
for demo in "$1"/demo-sessions/*.rwlog; do
    [ -f "$demo" ] || continue
    demos=$((demos + 1))
    is "$demo" "$session"
    cp "$demo" "$work/files/demo-without-extension"
    is demo-without-extension "$session"
done
[ "$demos" -gt 0 ] || { echo "no demo sessions to try"; bad=1; }
gio mime "$session" > /dev/null || { echo "$session is not registered"; bad=1; }
gio mime "$notes" > /dev/null || { echo "$notes is not registered"; bad=1; }
exit "$bad"
