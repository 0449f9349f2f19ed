#!/bin/sh
# Words of a file are only ever words: nothing in src/ makes markup, a link or a command of them.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-shown.sh [SOURCE_ROOT]
# Prints file and line of every use of what interprets words; the exit status is 0 only if there is none but those
# that are named here, each of which escapes what it is given.
set -u
export LC_ALL=C
CDPATH='' cd -- "${1-$(dirname -- "$0")/..}" || exit 1

# What takes markup, opens links, or runs something.
pattern='set_markup|use-markup|use_markup|tooltip_markup|tooltip-markup|secondary-use-markup|link_button|LinkButton'
pattern="$pattern|show_uri|uri_launcher|launch_default_for_uri|g_spawn|g_subprocess|g_app_info_launch"
pattern="$pattern|[^_a-z](system|popen|execl[ep]*|execv[pe]*) ?\\("

# file and what makes it safe there: it must stand in the file.
escaped='src/bench/rw-record-box.c:g_markup_escape_text'

bad=0
for file in $(grep -rlE "$pattern" src --include='*.[ch]' --include='*.ui'); do
    guard=$(printf '%s\n' "$escaped" | sed -n "s|^$file:||p")
    if [ -n "$guard" ] && grep -q "$guard" "$file"; then
        continue
    fi
    grep -nE "$pattern" "$file" | sed "s|^|$file:|"
    bad=1
done
exit $bad
