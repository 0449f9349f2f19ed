#!/bin/sh
# Prints what po/POTFILES has to hold: every file with a text for people.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: sh po/list-potfiles.sh > po/POTFILES     (from any folder: cd first)
#        sh po/list-potfiles.sh --check           says what is missing or too much in po/POTFILES
set -eu
export LC_ALL=C
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$root"

# A gettext call: the macro's name as a word of its own, then a bracket.
call='(^|[^A-Za-z0-9_])(_|N_|C_|NC_|Q_|ngettext|g_dgettext|g_dcgettext|g_dngettext|g_dpgettext2?) ?\('

list ()
{
    echo '# Made by po/list-potfiles.sh: every file with a text for people.'
    {
        ls data/*.desktop.in data/*.metainfo.xml.in data/*.mime.xml.in data/*.gschema.xml
        echo po/data-strings.h
        find src -name '*.[ch]' -exec grep -lE "$call" {} +
        find src -name '*.ui' -exec grep -l 'translatable="yes"' {} +
    } | sort
}

case ${1-} in
'')
    list
    ;;
--check)
    expected=$(mktemp)
    trap 'rm -f "$expected"' EXIT
    list > "$expected"
    if ! diff -u po/POTFILES "$expected"; then
        echo 'po/POTFILES is out of date; run: sh po/list-potfiles.sh > po/POTFILES' >&2
        exit 1
    fi
    ;;
*)
    echo "usage: list-potfiles.sh [--check]" >&2
    exit 2
    ;;
esac
