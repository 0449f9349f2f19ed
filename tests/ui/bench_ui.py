"""Starts the bench and drives it as a person would: by keys, and by what a screen reader is told.

SPDX-License-Identifier: GPL-3.0-or-later

What GTK 4.8 does not offer on the accessibility bus is gone round here: text of entries needs its length, check
buttons and list rows have no action, nothing has screen coordinates.
"""

import glob
import json
import os
import signal
import subprocess
import sys
import time
import warnings

import gi

warnings.simplefilter("ignore")
gi.require_version("Atspi", "2.0")
from gi.repository import Atspi  # noqa: E402

PROGRAM = sys.argv[1] if len(sys.argv) > 1 else "build/src/bench/railwright"


class Failed(Exception):
    pass


def poll(ask, what, timeout=15.0, every=0.03):
    """Asks until the answer is true; never waits by guess."""
    end = time.monotonic() + timeout
    last = None
    while True:
        try:
            answer = ask()
            if answer:
                return answer
        except Exception as error:  # objects come and go while the window changes
            last = error
        if time.monotonic() > end:
            raise Failed(f"waited {timeout:.0f} s for {what} (last: {last})")
        time.sleep(every)


# What these are made of is not told: asking each costs more than all the rest.
LEAVES = {"label", "status bar", "level bar", "text", "image"}


def walk(node, most=60):
    """The node and what is below it, each with its role."""
    role = node.get_role_name()
    yield node, role
    if role in LEAVES:
        return
    try:
        count = min(node.get_child_count(), most)
    except Exception:
        return
    for i in range(count):
        try:
            child = node.get_child_at_index(i)
        except Exception:
            child = None
        if child is not None:
            yield from walk(child, most)


def states(node):
    return {state.value_nick for state in node.get_state_set().get_states()}


def focus_below(node, most=60):
    """What has the focus of the node and what is below it: each is asked once, since Tab is walked with it."""
    told = states(node)
    if "focused" in told:
        return node
    if not told & {"visible", "showing"}:
        return None
    try:
        below = [node.get_child_at_index(i) for i in range(min(node.get_child_count(), most))]
    except Exception:
        return None
    return next((found for found in map(focus_below, filter(None, below)) if found is not None), None)


def focus_after(last, most=60):
    """What has the focus of the node, what is below it, and what comes after it: there Tab leads, all but once a round."""
    found = focus_below(last)
    while found is None:
        parent = last.get_parent()
        if parent is None:
            return None
        after = range(last.get_index_in_parent() + 1, min(parent.get_child_count(), most))
        found = next(filter(None, (focus_below(parent.get_child_at_index(i)) for i in after)), None)
        last = parent
    return found


def showing(node):
    """GTK 4.8 tells no "showing" state: what is visible and has a size is taken to show."""
    if "visible" not in states(node):
        return False
    try:
        box = Atspi.Component.get_extents(node, Atspi.CoordType.WINDOW)
    except Exception:  # gone meanwhile, or the application itself
        return False
    return box.width > 0 and box.height > 0


def newest_session(practice=False):
    """The file of the job that was started last; None while there is none."""
    base = ("XDG_STATE_HOME", "practice") if practice else ("XDG_DATA_HOME", "sessions")
    found = glob.glob(os.path.join(os.environ[base[0]], "railwright", base[1], "*.rwlog"))
    return max(found, key=os.path.getmtime) if found else None


def events(path, key):
    """The events of a session's file that have this payload."""
    with open(path, encoding="utf-8") as file:
        return [event for event in map(json.loads, file.read().splitlines()[1:]) if key in event]


def press(node):
    for name in ("click", "toggle", "activate"):
        for i in range(node.get_n_actions()):
            if node.get_action_name(i) == name:
                node.do_action(i)
                return
    raise Failed(f"{node.get_role_name()} {node.get_name()!r} cannot be pressed")


def text_of(node):
    length = Atspi.Text.get_character_count(node)
    return Atspi.Text.get_text(node, 0, length)


def xdo(*arguments):
    done = subprocess.run(["xdotool", *map(str, arguments)], check=True, capture_output=True, text=True)
    return done.stdout


class Bench:
    """One run of the program."""

    def __init__(self, *arguments, env=None, program=PROGRAM):
        environment = dict(os.environ, G_DEBUG="fatal-criticals", **(env or {}))
        self.process = subprocess.Popen([program, *arguments], env=environment, stderr=subprocess.PIPE, text=True)
        self.app = poll(self._find_app, "the program on the accessibility bus")
        self.wait_window()

    def _find_app(self):
        if self.process.poll() is not None:
            raise SystemExit(f"the program ended with {self.process.returncode}: {self.process.stderr.read()}")
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            app = desktop.get_child_at_index(i)
            if app is not None and app.get_process_id() == self.process.pid and app.get_child_count() > 0:
                return app
        return None

    def wait_window(self):
        """The newest window has the keys; one that is just closing is not taken."""
        def focus():
            xid = xdo("search", "--onlyvisible", "--pid", self.process.pid).split()[-1]
            xdo("windowfocus", xid)
            return xid

        self.xid = poll(focus, "a window")

    def windows(self):
        return [self.app.get_child_at_index(i) for i in range(self.app.get_child_count())]

    def all(self, role=None, name=None, within=None):
        """@role: a name, or several."""
        roles = (role,) if isinstance(role, str) else role
        roots = [within] if within is not None else self.windows()
        for root in roots:
            for node, kind in walk(root):
                if roles is not None and kind not in roles:
                    continue
                if name is not None and name not in (node.get_name() or ""):
                    continue
                yield node

    def find(self, role, name=None, within=None, timeout=15.0):
        return poll(lambda: next((n for n in self.all(role, name, within) if showing(n)), None),
                    f"{role} {name!r}", timeout)

    def there(self, role, name):
        return any(showing(node) for node in self.all(role, name))

    def wait_gone(self, role, name):
        poll(lambda: not self.there(role, name), f"{role} {name!r} to go")

    def focused(self, last=None):
        """@last: what had the focus before Tab was pressed, where that is known; it only saves asking everything."""
        try:
            near = focus_after(last) if last is not None else None
        except Exception:  # it went meanwhile
            near = None
        if near is not None:
            return near
        return next((found for found in map(focus_below, self.windows()) if found is not None), None)

    def keys(self, *keys):
        """Sends keys to whatever has the focus. Names as xdotool knows them."""
        xdo("key", "--clearmodifiers", "--delay", 30, *keys)

    def type(self, text):
        xdo("type", "--delay", 30, "--", text)

    def close_cautions(self):
        """They come once, before the first job."""
        if any(window.get_name() == "Safety" for window in self.windows()):
            self.keys("Escape")
            poll(lambda: not any(w.get_name() == "Safety" for w in self.windows()), "the cautions to close")

    def start_job(self, name):
        """A new job by keyboard; returns its file."""
        before = newest_session()
        self.close_cautions()
        self.keys("ctrl+n")
        self.find("text", "Name of the cabinet")
        self.type(name)
        self.keys("Return")
        self.find("text", "Reading of +5 V, board")
        return poll(lambda: newest_session() if newest_session() != before else None, "the job's file")

    def shot(self, path):
        subprocess.run(["import", "-window", "root", path], check=True)

    def close(self):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGTERM)
            self.process.wait(10)

    def __enter__(self):
        return self

    def __exit__(self, kind, value, trace):
        if kind is not None and os.environ.get("RAILWRIGHT_SHOTS"):
            self.shot(os.path.join(os.environ["RAILWRIGHT_SHOTS"], f"failed-{os.getpid()}.png"))
        code = self.process.poll()
        self.close()
        if code is not None and code != 0:
            print(self.process.stderr.read(), file=sys.stderr)
            if kind is None:
                raise Failed(f"the program ended by itself with {code}")


def run(*tests):
    """Each test is a function; prints TAP."""
    print(f"1..{len(tests)}")
    failed = 0
    for number, test in enumerate(tests, 1):
        claim = (test.__doc__ or test.__name__).strip().splitlines()[0]
        try:
            test()
            print(f"ok {number} - {claim}", flush=True)
        except Exception as error:
            failed += 1
            print(f"not ok {number} - {claim}", flush=True)
            print(f"# {type(error).__name__}: {error}", file=sys.stderr)
            import traceback
            traceback.print_exc()
    sys.exit(1 if failed else 0)
