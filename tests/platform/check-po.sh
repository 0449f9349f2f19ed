#!/bin/sh
# Every translation is whole: fresh texts are collected, and none may be missing, fuzzy or malformed.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-po.sh SOURCE_ROOT
set -eu
export LC_ALL=C.UTF-8
for tool in xgettext msgmerge msgfmt msgattrib; do
    command -v "$tool" > /dev/null || { echo "$tool is not installed"; exit 77; }
done

cd "$1/po"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
bad=0

# The keywords are those of Meson's glib preset, which makes the real catalogue.
grep -v '^#' POTFILES > "$work/files"
xgettext --files-from="$work/files" --directory=.. --output="$work/fresh.pot" --from-code=UTF-8 --add-comments \
    --keyword=_ --keyword=N_ --keyword=C_:1c,2 --keyword=NC_:1c,2 --keyword=g_dcgettext:2 \
    --keyword=g_dngettext:2,3 --keyword=g_dpgettext2:2c,3 2> "$work/warnings" || bad=1
if [ -s "$work/warnings" ]; then
    cat "$work/warnings"
    bad=1
fi

languages=$(grep -v '^#' LINGUAS)
for file in *.po; do
    printf '%s\n' "$languages" | grep -qx "${file%.po}" || { echo "po/LINGUAS does not list ${file%.po}"; bad=1; }
done

for language in $languages; do
    msgfmt --check --check-accelerators=_ --output-file=/dev/null "$language.po" || bad=1
    msgmerge --quiet --no-fuzzy-matching --output-file="$work/$language.po" "$language.po" "$work/fresh.pot"
    msgattrib --untranslated --no-obsolete "$work/$language.po" > "$work/missing"
    msgattrib --only-fuzzy --no-obsolete "$work/$language.po" > "$work/fuzzy"
    for kind in missing fuzzy; do
        if [ -s "$work/$kind" ]; then
            echo "po/$language.po, $kind:"
            cat "$work/$kind"
            bad=1
        fi
    done
    msgfmt --statistics --output-file=/dev/null "$work/$language.po"
done
exit "$bad"
