#!/bin/sh
# People see their own decimal mark; files and pipes have a point whatever the locale.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-comma.sh SOURCE_ROOT PROGRAM
. "$(dirname -- "$0")/need.sh"
need localedef xmllint
[ -f /usr/share/i18n/locales/de_DE ] || { echo "the sources of the locales are not installed"; exit 77; }
root=$1 program=$2
bad=0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# A locale of our own, so that the machine need not have one with a comma.
sh "$root/tests/core/make-comma-locale.sh" localedef "$work" "$work/stamp" || exit 1
export LOCPATH="$work:/usr/lib/locale" LANGUAGE=en

# A session whose summary quotes no sentence of the knowledge: those have their numbers written out by translators.
demo=$root/demo-sessions/foghorn-alley-hum.rwlog
for locale in C.UTF-8 de_DE.UTF-8; do
    mkdir "$work/$locale.out"
    {
        LC_ALL=$locale "$program" summary "$demo" > "$work/$locale.out/text" &&
            LC_ALL=$locale "$program" summary "$demo" --json > "$work/$locale.out/json" &&
            LC_ALL=$locale "$program" export "$demo" --as csv -o "$work/$locale.out/csv" &&
            LC_ALL=$locale "$program" export "$demo" --as svg -o "$work/$locale.out/svg"
    } || bad=1
done
point=$work/C.UTF-8.out comma=$work/de_DE.UTF-8.out
grep -qE '[0-9]\.[0-9]+' "$point/text" || { echo "no number with a point in the summary"; bad=1; }
grep -qE '[0-9],[0-9]+' "$comma/text" || { echo "no number with a comma in the German summary"; bad=1; }
grep -nE '[0-9]\.[0-9]+ ?m?V' "$comma/text" && { echo "a point in the German summary"; bad=1; }
for kind in json csv; do
    diff "$point/$kind" "$comma/$kind" || { echo "$kind depends on the locale"; bad=1; }
done
xmllint --noout "$comma/svg" || bad=1
exit "$bad"
