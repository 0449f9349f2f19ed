#!/bin/sh
# src/run.sh does what it says, tried in a copy with stand-ins for the package manager, the build tools and the program.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# usage: check-run.sh SOURCE_ROOT
set -u
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
tree="$work/a folder/rail wright" tools="$work/tools"
mkdir -p "$tree/src" "$tools"
cp "$1/src/run.sh" "$1/src/packages.sh" "$1/src/build-tree.sh" "$tree/src/"
bad=0

tool ()
{
    { echo '#!/bin/sh'; cat; } > "$tools/$1"
    chmod +x "$tools/$1"
}
tool meson <<'STUB'
echo "meson $*" >> "$CALLS"
[ -z "${BREAK_SETUP-}" ] || { echo "error: gtk4 was not found"; exit 1; }
while [ $# -gt 2 ]; do shift; done
mkdir -p "$1/meson-private"
: > "$1/meson-private/coredata.dat"
: > "$1/build.ninja"
STUB
tool ninja <<'STUB'
echo "ninja $*" >> "$CALLS"
[ -z "${BREAK_BUILD-}" ] || { echo "error: it does not compile"; exit 1; }
echo 'ninja: no work to do.'
mkdir -p "$2/src/bench"
cat > "$2/src/bench/railwright" <<'PROGRAM'
#!/bin/sh
for argument in "$@"; do echo "argument: $argument"; done
echo "data: $RAILWRIGHT_DATA_DIR"
echo "settings: $GSETTINGS_SCHEMA_DIR"
echo "translations: $RAILWRIGHT_LOCALE_DIR"
echo "icons: $XDG_DATA_DIRS"
exit 7
PROGRAM
chmod +x "$2/src/bench/railwright"
STUB
tool dpkg-query <<'STUB'
shift 2
for package in "$@"; do
    case " ${ABSENT-} " in *" $package "*) ;; *) echo "installed $package" ;; esac
done
STUB
tool apt-get <<'STUB'
echo "apt-get $*" >> "$CALLS"
[ -z "${BREAK_APT-}" ]
STUB
tool sudo <<'STUB'
echo "sudo $*" >> "$CALLS"
exec "$@"
STUB
tool id <<'STUB'
echo "${AS_USER-0}"
STUB

export CALLS="$work/calls" DISPLAY=:0
unset WAYLAND_DISPLAY GDK_BACKEND XDG_RUNTIME_DIR XDG_DATA_DIRS
PATH=$tools:$PATH

# run FOLDER ARGUMENT...: starts the command from a folder; its output, status and calls are kept. The words of $with
# are put into its environment.
with=
run ()
{
    : > "$CALLS"
    # shellcheck disable=SC2086  # words
    output=$(cd "$1" && shift && env $with sh "$command" "$@" 2> "$work/said" < /dev/null)
    status=$?
    said=$(cat "$work/said")
    calls=$(cat "$CALLS")
}

# claim "WHAT" TEXT PATTERN: the text has the pattern in it.
claim ()
{
    case $2 in
    *"$3"*) ;;
    *) printf 'not so: %s\n  looked for: %s\n  in: %s\n' "$1" "$3" "$2"; bad=1 ;;
    esac
}
silent ()
{
    [ -z "$2" ] || { printf 'not so: %s\n  it said: %s\n' "$1" "$2"; bad=1; }
}

command=src/run.sh
run "$tree"
claim 'without an argument the practice cabinet opens' "$output" 'argument: --practice'
claim 'the first start configures' "$calls" 'meson setup'
claim 'the first start says that it takes a while' "$said" 'Building Railwright'
claim 'shipped data come from the source tree' "$output" "data: $tree/data"
claim 'settings come from the build folder' "$output" "settings: $tree/build/data"
claim 'translations come from the build folder' "$output" "translations: $tree/build/po"
claim 'icons are found beside those of the system' "$output" "icons: $tree/data:/usr/local/share:/usr/share"
claim 'the status of the program is the status of the command' "$status" 7

command="$tree/src/run.sh"
mkdir "$work/else where"
run "$work/else where" 'my job.rwlog' --new-window
claim 'a file name with a space arrives whole' "$output" 'argument: my job.rwlog'
claim 'further arguments are handed on' "$output" 'argument: --new-window'
case $output in *--practice*) echo 'not so: with a file the practice cabinet stays shut'; bad=1 ;; esac
case $calls in *meson* | *apt-get*) echo "not so: the second start neither configures nor installs: $calls"; bad=1 ;; esac
silent 'the second start is quiet' "$said"

mv "$tree" "$work/moved"
tree="$work/moved" command="$work/moved/src/run.sh"
run "$work"
claim 'a tree that was moved is configured anew' "$calls" 'meson setup --wipe'
claim 'and runs from its new place' "$output" "data: $tree/data"

with=DISPLAY=
run "$work"
with=
claim 'without a display it says so' "$said" 'no display'
claim 'without a display it fails' "$status" 1
silent 'without a display the program is not started' "$output"
with=DISPLAY=
run "$work" --version
with=
claim 'the version is told without a display' "$output" 'argument: --version'

mv "$tree/build/build.ninja" "$work/kept"
with=BREAK_SETUP=yes
run "$work"
with=
mv "$work/kept" "$tree/build/build.ninja"
claim 'a failed configuration shows the reason' "$said" 'gtk4 was not found'
claim 'a failed configuration fails' "$status" 1
case $calls in *ninja*) echo 'not so: after a failed configuration nothing is built'; bad=1 ;; esac

with=BREAK_BUILD=yes
run "$work"
with=
claim 'a failed build shows the reason' "$said" 'it does not compile'
claim 'a failed build fails' "$status" 1
silent 'after a failed build the program is not started' "$output"

export ABSENT='meson libgtk-4-dev'
run "$work"
claim 'what is missing is named' "$said" 'meson libgtk-4-dev'
claim 'only what is missing is installed' "$calls" '--no-install-recommends meson libgtk-4-dev'
case $calls in *sudo*) echo 'not so: root needs no sudo'; bad=1 ;; esac
with=AS_USER=1000
run "$work"
with=
claim 'others go through sudo' "$calls" 'sudo env DEBIAN_FRONTEND=noninteractive apt-get install'
with=BREAK_APT=yes
run "$work"
with=
claim 'a failed installation says what system is needed' "$said" 'Debian 12'
claim 'a failed installation fails' "$status" 1
silent 'after a failed installation the program is not started' "$output"
unset ABSENT

# Elsewhere: no apt at all. Only the stand-ins and a few plain tools are on the path.
rm "$tools/apt-get" "$tools/dpkg-query"
for plain in sh cat tail dirname mkdir chmod id env; do
    [ -e "$tools/$plain" ] || ln -s "$(command -v "$plain")" "$tools/$plain"
done
for known in cc msgfmt glib-compile-resources glib-compile-schemas pkg-config; do
    echo exit 0 | tool "$known"
done
with=PATH=$tools
run "$work"
with=
claim 'without apt it goes on where all is found' "$output" 'argument: --practice'
rm "$tools/msgfmt"
tool pkg-config <<'STUB'
[ "$2" != "libserialport>=0.1.1" ]
STUB
with=PATH=$tools
run "$work"
with=
claim 'without apt it names the tools that are missing' "$said" 'msgfmt'
claim 'without apt it names the libraries that are missing' "$said" 'libserialport>=0.1.1'
claim 'and fails' "$status" 1
exit "$bad"
