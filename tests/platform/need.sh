# shellcheck shell=sh
# need TOOL...: ends a test as "skipped" where a tool that it checks with is not installed.
# SPDX-License-Identifier: GPL-3.0-or-later
need ()
{
    for tool in "$@"; do
        command -v "$tool" > /dev/null || { echo "$tool is not installed"; exit 77; }
    done
}
