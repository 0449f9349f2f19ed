#!/bin/sh
# A translation reaches the terminal: the same command speaks German when asked to, and English otherwise.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-german.sh BUILD PROGRAM
export RAILWRIGHT_LOCALE_DIR="$1/po" LC_ALL=C.UTF-8
english=$(LANGUAGE=en "$2" --help) || exit 1
german=$(LANGUAGE=de "$2" --help) || exit 1
[ "$english" != "$german" ] && exit 0
echo "$2 --help reads the same in English and in German:"
echo "$german"
exit 1
