#!/bin/sh
# The software-centre entry is strictly valid, and its newest release is the version being built.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-metainfo.sh BUILT_METAINFO VERSION
. "$(dirname -- "$0")/need.sh"
need appstreamcli xmllint

# Version 1 of the validator calls the tag that version 0.16 wants deprecated; no file pleases both.
set -- "$1" "$2" --pedantic --strict --explain --no-net
case $(appstreamcli --version) in
*' 0.'*) ;;
*) set -- "$@" --override developer-name-tag-deprecated=pedantic,developer-info-missing=pedantic ;;
esac
file=$1 version=$2
shift 2
appstreamcli validate "$@" "$file" || exit 1

bad=0
text ()
{
    xmllint --xpath "string($1)" "$file"
}
expect ()
{
    [ "$(text "$1")" = "$2" ] || { echo "$1 is '$(text "$1")', not '$2'"; bad=1; }
}
expect '/component/releases/release[1]/@version' "$version"
expect '/component/launchable' "$(text /component/id).desktop"
expect '/component/project_license' GPL-3.0-or-later
expect 'count(/component/branding/color)' 2
expect 'count(/component/content_rating)' 1
exit "$bad"
