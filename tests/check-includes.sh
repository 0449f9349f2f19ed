#!/bin/sh
# The shape of the tree: which folder of src/ may include which, and what every file has to have.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-includes.sh [SOURCE_ROOT]
# Prints file and line of every breach; the exit status is 0 only if there is none.
set -u
export LC_ALL=C
CDPATH='' cd -- "${1-$(dirname -- "$0")/..}" || exit 1
bad=0
breach ()
{
    printf '%s\n' "$*"
    bad=1
}

# folder FOLDER "folders it may include" "system headers it may not": the arrows of the dependency table.
folder ()
{
    dir=$1 may="$1 $2" ban=$3
    [ -d "src/$dir" ] || { breach "src/$dir is missing"; return; }
    for file in $(find "src/$dir" -name '*.[ch]'); do
        while IFS=: read -r line include; do
            [ -n "$line" ] || continue
            header=$(printf '%s\n' "$include" | sed 's/^[^"<]*["<]\([^">]*\)[">].*/\1/')
            case $include in
            *'<'*) printf '%s\n' "$header" | grep -Eq "^($ban)" && breach "$file:$line: $dir may not include <$header>" ;;
            *../* | */*) breach "$file:$line: headers are included by bare name, not \"$header\"" ;;
            *) allowed_header || breach "$file:$line: $dir may not include \"$header\"" ;;
            esac
        done <<LINES
$(grep -nE '^[[:space:]]*#[[:space:]]*include' "$file")
LINES
    done
}

# Ours and in an allowed folder, or made by the build.
allowed_header ()
{
    case $header in
    config.h | rw-*resources.h) return 0 ;;
    esac
    for from in $may; do
        [ -f "src/$from/$header" ] && return 0
    done
    return 1
}

toolkit='gtk|gdk|gsk|adwaita|X11'
drawing='cairo|pango'
folder core     ""                                            "$toolkit|$drawing|libserialport"
folder advice   "core"                                        "$toolkit|$drawing|libserialport"
folder meter    "core"                                        "$toolkit|$drawing"
folder practice "core meter"                                  "$toolkit|$drawing|libserialport"
folder chart    "core advice"                                 "$toolkit|libserialport"
folder report   "core advice chart"                           "$toolkit|libserialport"
folder log      "core advice meter practice chart report"     "$toolkit|libserialport"
folder bench    "core advice meter practice chart report log" "libserialport"
for dir in src/*/; do
    case $dir in
    src/core/ | src/advice/ | src/meter/ | src/practice/ | src/chart/ | src/report/ | src/log/ | src/bench/) ;;
    *) breach "$dir: a folder without a line in the dependency table" ;;
    esac
done

# never "what" PATTERN FILE...: a thing that must not occur.
never ()
{
    what=$1 pattern=$2
    shift 2
    hits=$(grep -nE "$pattern" "$@" /dev/null) && breach "$what:
$hits"
}

pure=$(find src/core src/advice src/chart -name '*.[ch]'; find src/meter -name 'rw-decoder*' -o -name 'rw-detect*')
# shellcheck disable=SC2086  # a list of files without spaces
never "no wall clock and no hidden randomness below the links and widgets" \
    '(g_get_real_time|g_date_time_new_now|g_get_current_time|gettimeofday|CLOCK_REALTIME|localtime|g_random_|srand|[^a-z_]rand) ?\(|[^a-z_]time ?\((NULL|&)' \
    $pure
# shellcheck disable=SC2046
never "the locale is met in rw-quantity only, and set by the two programs" '(localeconv|nl_langinfo|setlocale|uselocale) ?\(' \
    $(find src/core src/advice src/meter src/practice src/chart src/report -name '*.[ch]' ! -name 'rw-quantity.c')
# shellcheck disable=SC2046
never "decoders do no input or output" 'libserialport|gio/|g_file_|GSocket|fopen|[^a-z_]read \(' \
    $(find src/meter -name 'rw-decoder*' -o -name 'rw-detect*')

double=$(find src \( -name '*.[ch]' -o -name '*.ui' \) -exec basename {} \; | grep -vx 'main\.c' | sort | uniq -d)
[ -z "$double" ] || breach "file names are unique in all of src:" "$double"

for file in $(find src tests -name '*.[ch]'); do
    head -n 12 "$file" | grep -q 'SPDX-License-Identifier: GPL-3.0-or-later' || breach "$file: no SPDX line at the top"
    [ "$(wc -l < "$file")" -le 600 ] || breach "$file: $(wc -l < "$file") lines; split it (600 at most)"
    case $file in
    */pch/*.h) ;; # a main file to the compiler
    *.h) grep -q '^#pragma once' "$file" || breach "$file: no #pragma once" ;;
    src/*.c) grep -m 1 '^#include' "$file" | grep -q '"config.h"' || breach "$file: config.h is not its first include" ;;
    esac
done
for file in $(find src tests po .ci -name '*.sh' -o -name '*.py' -o -path .ci/run); do
    head -n 8 "$file" | grep -q 'SPDX-License-Identifier: GPL-3.0-or-later' || breach "$file: no SPDX line at the top"
done

# The top level: these and dot files, each of them there. Build folders are what .gitignore says.
expected='DEVELOPERS.md LICENSE README.md data demo-sessions meson.build po src tests'
for entry in *; do
    case " $expected build build-tests build-sanitize " in
    *" $entry "*) ;;
    *) case $entry in
        build-*) ;;
        *) breach "$entry: does not belong at the top level" ;;
        esac ;;
    esac
done
for entry in $expected; do
    [ -e "$entry" ] || breach "$entry is missing at the top level"
done
exit "$bad"
