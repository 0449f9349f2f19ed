#!/usr/bin/python3
"""Two sessions of a cabinet are compared by keyboard alone.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import shutil

from bench_ui import Bench, Failed, poll, run, xdo

DEMOS = os.path.join(os.environ["RAILWRIGHT_SRC_ROOT"], "demo-sessions")
TODAY = os.path.join(DEMOS, "tidepool-racer-a-year-later.rwlog")
LAST_YEAR = "tidepool-racer-trim.rwlog"
TITLE = "Tidepool Racer · B-07: 2026-03-14 and 2027-03-20 compared"


def lay_by(*names):
    """Copies of demos in the user's own folder; nothing else is there."""
    folder = os.path.join(os.environ["XDG_DATA_HOME"], "railwright", "sessions")
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    for name in names:
        shutil.copy(os.path.join(DEMOS, name), folder)


def window(bench, title):
    return poll(lambda: next((w for w in bench.windows() if w.get_name() == title), None), f"the window {title!r}")


def focus_on(bench, title):
    poll(lambda: xdo("getactivewindow", "getwindowname").strip() == title, f"{title!r} in front")


def compare(bench):
    bench.close_cautions()
    bench.find("push button", "Play", timeout=30)
    bench.keys("ctrl+shift+c")
    focus_on(bench, "Compare with…")
    chooser = window(bench, "Compare with…")
    bench.find("list item", "2026-03-14", within=chooser)
    bench.keys("Return")
    focus_on(bench, TITLE)
    return window(bench, TITLE)


def rows(bench, top):
    return [n.get_name() for n in bench.all("list item", within=top)]


def test_chosen():
    """the other session of the cabinet is offered, and what changed is told, the surest first"""
    lay_by(LAST_YEAR, "lantern-drift-wiring.rwlog", "tidepool-racer-a-year-later.rwlog")
    with Bench(TODAY) as bench:
        top = compare(bench)
        bench.find("label", "values changed beyond the meters' errors.", within=top)
        told = poll(lambda: rows(bench, top), "the rows")
        if not told[0].startswith("+5 V, along the wire, warm: 60.1") or "inside then, outside now" not in told[0]:
            raise Failed(f"first row: {told[0]!r}")
        if not any(row.startswith("Edge connector oxidised: 0 % then, ") for row in told):
            raise Failed(f"no cause among {told}")
        bench.find("panel", "+5 V, board, warm: 5.009", within=top)
        picture = next(n for n in bench.all(within=top) if n.get_name() == "Charts of both visits on one scale")
        if "2026-03-14: " not in (picture.get_description() or ""):
            raise Failed(f"the picture says {picture.get_description()!r}")


def test_rows_by_keys():
    """Down goes from change to change"""
    lay_by(LAST_YEAR)
    with Bench(TODAY) as bench:
        top = compare(bench)
        told = poll(lambda: rows(bench, top), "the rows")
        for _ in range(12):
            node = bench.focused()
            if node is not None and node.get_name() == told[0]:
                break
            bench.keys("Tab")
        else:
            raise Failed("Tab does not reach the list")
        for row in told[1:4]:
            bench.keys("Down")
            poll(lambda: bench.focused() is not None and bench.focused().get_name() == row, f"{row!r} in focus")


def test_charts_by_keys():
    """V turns to the trim maps, which say themselves in words, and back; Escape closes"""
    lay_by(LAST_YEAR)
    with Bench(TODAY) as bench:
        top = compare(bench)

        def said():
            return next(n for n in bench.all(within=top)
                        if n.get_name() == "Charts of both visits on one scale").get_description()

        before = said()
        bench.keys("v")
        poll(lambda: "set point" in said().lower() and said() != before, "the trim maps")
        bench.keys("v")
        poll(lambda: said() == before, "the charts over time")
        bench.keys("Escape")
        poll(lambda: not any(w.get_name() == TITLE for w in bench.windows()), "the window to close")


def test_saved():
    """Ctrl+S saves text, Ctrl+P a picture"""
    lay_by(LAST_YEAR)
    with Bench(TODAY) as bench:
        compare(bench)
        for key, title, name, begins in (("ctrl+s", "Save what changed", "what.txt", b"Tidepool Racer"),
                                         ("ctrl+p", "Save the picture", "what.png", b"\x89PNG")):
            path = os.path.join(os.environ["HOME"], name)
            bench.keys(key)
            focus_on(bench, title)
            bench.keys("ctrl+a")
            bench.type(path)
            bench.keys("Return")
            poll(lambda: os.path.exists(path) and os.path.getsize(path) > 200, path)
            with open(path, "rb") as file:
                if not file.read().startswith(begins):
                    raise Failed(f"{path} begins otherwise")
            focus_on(bench, TITLE)


def test_bench_job():
    """a job at the bench is compared with as it stands; it goes on, and what is kept meanwhile is compared too"""
    lay_by()
    with Bench() as bench:
        bench.find("push button", "New")
        path = bench.start_job("Tidepool Racer")
        bench.type("5.021")
        bench.keys("Return")
        poll(lambda: "5.021" in open(path, encoding="utf-8").read(), "the reading in the file")
        earlier = path.replace(".rwlog", "-earlier.rwlog")
        with open(path, encoding="utf-8") as file:
            lines = file.read()
        head, rest = lines.split("\n", 1)
        identity = head.split('"id":"')[1].split('"')[0]
        started = head.split('"started":"')[1][:4]
        head = head.replace(identity, "11111111-2222-3333-4444-555555555555").replace(f'"started":"{started}',
                                                                                      '"started":"2001')
        with open(earlier, "w", encoding="utf-8") as file:
            file.write(head + "\n" + rest.replace("5.021", "5.300"))
        bench.keys("Escape", "ctrl+shift+c")
        focus_on(bench, "Compare with…")
        bench.keys("Return")
        top = poll(lambda: next((w for w in bench.windows() if (w.get_name() or "").endswith(" compared")), None),
                   "the window")
        told = poll(lambda: rows(bench, top), "the rows")
        if not told[0].startswith("+5 V, board: 5.300\u202fV then, 5.021\u202fV now, "):
            raise Failed(f"first row: {told[0]!r}")
        xdo("windowfocus", "--sync", xdo("search", "--onlyvisible", "--name", "^Tidepool Racer$").split()[0])
        bench.keys("alt+1")
        bench.type("5.113")
        bench.keys("Return")
        poll(lambda: rows(bench, top)[0].startswith("+5 V, board: 5.300\u202fV then, 5.113\u202fV now, "),
             "the new value in the first row")


run(test_chosen, test_rows_by_keys, test_charts_by_keys, test_saved, test_bench_job)
