#!/bin/sh
# Makes the locale de_DE.UTF-8, which writes a decimal comma, in a folder for LOCPATH.
# Usage: make-comma-locale.sh LOCALEDEF FOLDER STAMP
# SPDX-License-Identifier: GPL-3.0-or-later
set -e
mkdir -p "$2"
"$1" --no-archive -i de_DE -f UTF-8 "$2/de_DE.UTF-8" 2> "$3.log" || { cat "$3.log" >&2; exit 1; }
touch "$3"
