#!/bin/sh
# The launcher entry is valid without so much as a hint, and what it names exists.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-desktop.sh SOURCE_ROOT BUILT_DESKTOP_FILE BUILT_SERVICE_FILE
. "$(dirname -- "$0")/need.sh"
need desktop-file-validate
icons=$1/data/icons/hicolor entry=$2 service=$3
bad=0
breach ()
{
    echo "$*"
    bad=1
}
value ()
{
    sed -n "s/^$1=//p" "$entry" | head -n 1
}

complaints=$(desktop-file-validate "$entry" 2>&1) || bad=1
[ -z "$complaints" ] || breach "$complaints"

# Activation over the bus works only if all these names are one name.
id=$(basename "$entry" .desktop)
[ "$(value DBusActivatable)" = true ] || breach "the entry is not D-Bus activatable"
[ "$(value Icon)" = "$id" ] || breach "Icon is not $id"
grep -qx "Name=$id" "$service" || breach "the D-Bus service is not named $id"
grep -qE '^Exec=/.*/railwright --gapplication-service$' "$service" || breach "the D-Bus service starts something else"

[ -f "$icons/scalable/apps/$id.svg" ] || breach "no icon $id"
[ -f "$icons/symbolic/apps/$id-symbolic.svg" ] || breach "no symbolic icon $id-symbolic"
mimes=$(value MimeType | tr ';' ' ')
[ -n "$mimes" ] || breach "no MimeType"
for mime in $mimes; do
    [ -f "$icons/scalable/mimetypes/$(echo "$mime" | tr / -).svg" ] || breach "no icon for $mime"
done
while read -r language; do
    case $language in '' | '#'*) continue ;; esac
    for key in Name GenericName Comment Keywords; do
        grep -q "^$key\[$language\]=" "$entry" || breach "$key is not translated to $language"
    done
done < "$1/po/LINGUAS"
exit "$bad"
