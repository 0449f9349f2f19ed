#!/bin/sh
# What "meson install" puts where: nothing that a desktop looks for may be missing, and the data must have come along.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-install.sh SOURCE_ROOT BUILD PREFIX
. "$(dirname -- "$0")/need.sh"
need meson
root=$1 build=$2 prefix=$3
id=org.railwright.bench
bad=0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

meson install -C "$build" --no-rebuild --quiet --destdir "$work" > "$work/log" 2>&1 || { cat "$work/log"; exit 1; }
share=$work$prefix/share
for file in "$work$prefix/bin/railwright" "$work$prefix/bin/railwright-log" \
    "$share/applications/$id.desktop" "$share/metainfo/$id.metainfo.xml" "$share/mime/packages/$id.xml" \
    "$share/dbus-1/services/$id.service" "$share/glib-2.0/schemas/$id.gschema.xml" \
    "$share/icons/hicolor/scalable/apps/$id.svg" "$share/icons/hicolor/symbolic/apps/$id-symbolic.svg" \
    "$share/icons/hicolor/scalable/mimetypes/application-vnd.railwright.session.svg" \
    "$share/icons/hicolor/scalable/mimetypes/application-vnd.railwright.notes.svg" \
    "$share/man/man1/railwright.1" "$share/man/man1/railwright-log.1"; do
    [ -s "$file" ] || { echo "not installed: ${file#"$work"}"; bad=1; }
done
for language in $(grep -v '^#' "$root/po/LINGUAS"); do
    [ -s "$share/locale/$language/LC_MESSAGES/railwright.mo" ] || { echo "no catalogue for $language"; bad=1; }
done
for folder in knowledge lessons profiles schemas stages; do
    [ -n "$(ls "$root/data/$folder" 2> /dev/null)" ] || { echo "data/$folder is empty"; bad=1; }
    diff -r "$root/data/$folder" "$share/railwright/$folder" || bad=1
done
[ "$(sed -n 's/^Exec=\([^ ]*\) .*/\1/p' "$share/dbus-1/services/$id.service")" = "$prefix/bin/railwright" ] ||
    { echo "the D-Bus service does not start the installed program"; bad=1; }
exit "$bad"
