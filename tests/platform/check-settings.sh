#!/bin/sh
# The settings schema is strictly valid; the program uses every key of it, and none that is not in it.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-settings.sh SOURCE_ROOT
. "$(dirname -- "$0")/need.sh"
need glib-compile-schemas xmllint
cd "$1" || exit 1
bad=0
glib-compile-schemas --strict --dry-run data || bad=1

schema=$(echo data/*.gschema.xml)
keys=$(xmllint --xpath '//key/@name' "$schema" | tr -d ' ' | sed 's/^name="\(.*\)"$/\1/')
[ -n "$keys" ] || { echo "$schema has no keys"; bad=1; }
for key in $keys; do
    grep -rqF "\"$key\"" src/bench || { echo "$schema: nothing in src/bench uses \"$key\""; bad=1; }
done

used=$(grep -rhoE 'g_settings_(get|set|reset|bind|create_action)[a-z_]* \([a-z_>.-]+, "[a-z-]+"' src/bench |
    sed 's/.*"\(.*\)"/\1/' | sort -u)
for key in $used; do
    printf '%s\n' "$keys" | grep -qxF "$key" || { echo "src/bench uses the key \"$key\", which $schema lacks"; bad=1; }
done
exit "$bad"
