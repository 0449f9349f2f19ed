# shellcheck shell=sh
# Makes a build folder and tells a program that runs from it where its data lie.
# Sourced by src/run.sh, tests/run.sh and tests/ui/env.sh.
# SPDX-License-Identifier: GPL-3.0-or-later

# configure_build SOURCE_ROOT BUILD OPTION...: a build folder that fits this source folder; nothing to do where there is
# one. The file "made-for" tells a tree that was moved or copied: its build folder knows the wrong paths.
configure_build ()
{
    source_root=$1 build_folder=$2
    shift 2
    if [ -f "$build_folder/build.ninja" ]; then
        [ -f "$build_folder/made-for" ] || return 0
        [ "$(cat "$build_folder/made-for")" = "$source_root" ] && return 0
    fi
    [ ! -f "$build_folder/meson-private/coredata.dat" ] || set -- --wipe "$@"
    output=$(meson setup "$@" "$build_folder" "$source_root" 2>&1) || { printf "%s\n" "$output" | tail -n 15 >&2; return 1; }
    printf '%s\n' "$source_root" > "$build_folder/made-for"
}

# build_targets BUILD TARGET...: builds these, or everything; silent unless it goes wrong.
build_targets ()
{
    output=$(ninja -C "$@" 2>&1) || { printf '%s\n' "$output" >&2; return 1; }
}

# build_tree_env SOURCE_ROOT BUILD: data, settings schema, translations and icons, as an installed program finds them.
build_tree_env ()
{
    export RAILWRIGHT_DATA_DIR="$1/data"
    export RAILWRIGHT_LOCALE_DIR="$2/po"
    export GSETTINGS_SCHEMA_DIR="$2/data"
    export XDG_DATA_DIRS="$1/data:${XDG_DATA_DIRS:-/usr/local/share:/usr/share}"
}
