#!/bin/sh
# A man page sets without a warning, and tells of the very options that the program's own help does.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-man.sh MAN_PAGE PROGRAM HELP_ARGUMENTS...
# Each help argument is one call: "--help", or "summary --help" for a command that has options of its own.
. "$(dirname -- "$0")/need.sh"
need man groff
export LC_ALL=C.UTF-8 MANWIDTH=100
unset LANGUAGE
page=$1 program=$2
shift 2
bad=0

warnings=$(man --warnings -E UTF-8 -l -Tutf8 -Z "$page" 2>&1 > /dev/null)
[ -z "$warnings" ] || { echo "$warnings"; bad=1; }

for section in NAME SYNOPSIS DESCRIPTION OPTIONS FILES ENVIRONMENT 'EXIT STATUS'; do
    grep -qxF ".SH $section" "$page" || { echo "$page: no section $section"; bad=1; }
done

options ()
{
    grep -oE '(^|[^[:alnum:]-])--[a-z][a-z-]*' | grep -oE -- '--[a-z-]+' | grep -vE -- '--(help-|gapplication)' | sort -u
}
told=$(man -E UTF-8 -l -Tutf8 "$page" 2> /dev/null | sed 's/.\x08//g; s/\x1b\[[0-9;]*m//g; s/‐/-/g' | options)
known=$(
    for call in "$@"; do
        # shellcheck disable=SC2086  # the words of one call
        "$program" $call || echo "cannot run: $program $call" >&2
    done | options
)
[ -n "$known" ] || { echo "$program --help tells of no option"; bad=1; }
for option in $told; do
    printf '%s\n' "$known" | grep -qxF -e "$option" || { echo "$page: $program --help does not know $option"; bad=1; }
done
for option in $known; do
    printf '%s\n' "$told" | grep -qxF -e "$option" || { echo "$page does not tell of $option"; bad=1; }
done
exit "$bad"
