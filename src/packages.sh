# shellcheck shell=sh
# Which packages the two commands need, and how they get there. Sourced by src/run.sh and tests/run.sh.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# The lists are Debian's names (12 and later, and systems made from it). Everywhere else the tools and libraries are
# looked for themselves, and what is missing is named.

build_packages='gcc libc6-dev meson ninja-build pkgconf gettext libglib2.0-bin libglib2.0-dev-bin libgtk-4-dev
    libgtk-4-bin libjson-glib-dev libserialport-dev libcairo2-dev libpango1.0-dev
    libasound2-dev'
run_packages='adwaita-icon-theme hicolor-icon-theme librsvg2-common dconf-gsettings-backend fonts-dejavu-core'
test_packages='xvfb xdotool openbox dbus-daemon at-spi2-core python3-gi gir1.2-atspi-2.0 gir1.2-gdkpixbuf-2.0
    python3-jsonschema imagemagick poppler-utils desktop-file-utils appstream shared-mime-info libxml2-utils man-db
    locales x11-utils clang libclang-rt-dev'

build_tools='cc meson ninja pkg-config msgfmt glib-compile-resources glib-compile-schemas'
build_modules='gtk4>=4.8 glib-2.0>=2.74 json-glib-1.0>=1.6 libserialport>=0.1.1 cairo>=1.16 pangocairo>=1.50'

say ()
{
    printf '%s\n' "$*" >&2
}

# Runs a command as root, through sudo where need be.
as_root ()
{
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo > /dev/null; then
        sudo "$@"
    else
        say "This needs root and there is no sudo. As root, run:"
        say "  $*"
        return 1
    fi
}

# Prints those of the named packages that dpkg does not have.
missing_packages ()
{
    present=$(dpkg-query -W -f='${db:Status-Status} ${Package}\n' "$@" 2> /dev/null | sed -n 's/^installed //p')
    for package in "$@"; do
        printf '%s\n' "$present" | grep -qxF "$package" || printf ' %s' "$package"
    done
}

# A person at a terminal is asked before anything is installed; a machine that runs the command is not.
agreed ()
{
    [ "$(id -u)" -ne 0 ] && [ -t 0 ] || return 0
    printf 'Install them now with sudo? [Y/n] ' >&2
    read -r answer || answer=n
    case $answer in
    [nN]*) return 1 ;;
    esac
}

install_packages ()
{
    say "Railwright needs packages that are not installed yet:"
    say " $*"
    agreed || { say "Nothing was installed. Run: sudo apt-get install $*"; return 1; }
    as_root apt-get update -q >&2 || say "The package lists could not be brought up to date; trying with the old ones."
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "$@" >&2 || {
        say "The packages could not be installed. Railwright needs GTK 4.8: Debian 12, or a system as new as that."
        return 1
    }
}

# Where there is no apt: names what is missing, and is content when there is nothing.
find_tools ()
{
    lacking=
    for tool in $build_tools; do
        command -v "$tool" > /dev/null || lacking="$lacking $tool"
    done
    for module in $build_modules; do
        pkg-config --exists "$module" 2> /dev/null || lacking="$lacking $module"
    done
    [ -z "$lacking" ] && return 0
    say "Railwright needs these tools and libraries (with their development files), which were not found:"
    say " $lacking"
    say "Install them with your system's package manager, then run this command again."
    return 1
}

# need_packages PACKAGE...: the packages are there when this returns 0.
need_packages ()
{
    if command -v apt-get > /dev/null && command -v dpkg-query > /dev/null; then
        missing=$(missing_packages "$@")
        # shellcheck disable=SC2086  # a list of words
        [ -z "$missing" ] || install_packages $missing
    else
        find_tools
    fi
}
