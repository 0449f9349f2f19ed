"""Drills and the practice bench, worked by keys: a drill begun, tips put on spots, windows changed.

SPDX-License-Identifier: GPL-3.0-or-later
"""

from bench_ui import newest_session, poll, showing, states, xdo
from stage_ui import events


def focus_window(bench, name):
    """Two windows and a pointer that is nowhere: the keys go where they are sent."""
    xid = poll(lambda: xdo("search", "--onlyvisible", "--name", name).split(), f"the window {name!r}")[-1]
    xdo("windowfocus", xid)
    return poll(lambda: next(w for w in bench.windows() if name in (w.get_name() or "")), f"{name!r} on the bus")


def has_come(bench, name):
    """The program itself brought this window to the front; asks for a window manager."""
    poll(lambda: name in xdo("getactivewindow", "getwindowname"), f"{name!r} to come to the front")
    return poll(lambda: next(w for w in bench.windows() if name in (w.get_name() or "")), f"{name!r} on the bus")


def begin(bench, code, suggestions=True, window=focus_window):
    """A drill by its code, "level-seed"; @window: how its windows get the keys."""
    before = newest_session(practice=True)
    bench.close_cautions()
    bench.keys("ctrl+shift+t")
    bench.find("text", "Seed")
    window(bench, "New drill")
    bench.keys("ctrl+a")
    bench.type(code)
    if not suggestions:
        bench.keys("Tab", "space", "shift+Tab")
    bench.keys("Return")
    poll(lambda: newest_session(practice=True) != before, "the drill's file")
    return window(bench, "Practice bench")


def spot(bench):
    """The name of the spot that has the focus; the main window has a focus of its own."""
    window = next(w for w in bench.windows() if "Practice bench" in (w.get_name() or ""))
    return next((n.get_name() for n in bench.all("push button", within=window) if "focused" in states(n)), "")


def go(bench, keys, name):
    for key in keys.split():
        bench.keys(key)
    poll(lambda: spot(bench).startswith(name), f"the spot {name!r} in focus")


def put(bench, key, name):
    bench.keys(key)
    poll(lambda: f"the {name} tip is here" in spot(bench), f"the {name} tip on {spot(bench)!r}")


def complaint(bench):
    """What the player said, as the window tells it."""
    words = bench.find("label", "The complaint: ").get_name()
    return words.removeprefix("The complaint: ").removesuffix(".").split("; ")


def first_found(bench):
    """The first symptom in the list that shows."""
    return next((n.get_name() for n in bench.all("push button") if (n.get_name() or "").endswith(": seen") and showing(n)),
                None)


def say(bench, symptoms):
    """S opens the list, letters search, Enter says that the first one found is seen."""
    bench.keys("s")
    poll(lambda: first_found(bench), "the list of the symptoms")
    for n, title in enumerate(symptoms, 1):
        bench.type(title.lower())
        poll(lambda: first_found(bench) == f"{title}: seen", f"{title!r} to be found")
        bench.keys("Return")
        poll(lambda: len(events("symptom")) == n, f"{title!r} in the file")
    bench.keys("Escape")
    for title in symptoms:
        bench.find("push button", f"Seen: {title}")


def is_cured(bench):
    """What the person at the cabinet sees: the meter shows five volts at the board, and they stay."""
    bench.keys("alt+1", "b")
    poll(lambda: events("sample")[-1]["sample"]["place"] == "board", "the leads at the board")
    count = len(events("sample"))
    poll(lambda: len(events("sample")) > count + 5, "the meter to follow")
    return all(event["sample"]["value"] > 4.95 for event in events("sample")[-3:])
