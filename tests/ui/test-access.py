#!/usr/bin/python3
"""Everything has a proper name, and the keyboard reaches everything.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os

from bench_ui import Bench, Failed, poll, run, showing, states

ROLES = {"push button", "toggle button", "text", "combo box", "slider", "menu", "level bar", "check box", "list"}
ROWS = {"list item", "tree item", "table row", "panel"}  # a tree's row is a panel in GTK 4.8
DEMOS = os.path.join(os.environ["RAILWRIGHT_SRC_ROOT"], "demo-sessions")
DEMO = os.path.join(DEMOS, "tidepool-racer-trim.rwlog")
BRING_UP = os.path.join(DEMOS, "copper-comet-bring-up.rwlog")
REPLAY_BAR = {"Moment in the session", "Chapter before", "One event back", "Play", "One event on", "Next chapter", "Speed",
              "Skip waiting", "Jump", "Chart over time"}
BENCH = {"Reading of +5 V, board", "Chart over time"}


def bad_names(bench):
    bad = []
    for node in bench.all():
        name = node.get_name() or ""
        if not showing(node) or "focusable" not in states(node):
            continue
        if node.get_role_name() not in ROLES:
            continue
        if not name.strip() or name.startswith(("Gtk", "_", "Rw")):
            bad.append((node.get_role_name(), name))
    return bad


def walk_by_tab(bench, most=120):
    """The names of what Tab reaches, until it comes round."""
    reached = []
    node = None
    for _ in range(most):
        bench.keys("Tab")
        node = bench.focused(node)
        if node is None:
            continue
        key = (node.get_role_name(), node.get_name())
        reached.append(key)
        if len(reached) > 3 and reached[:2] == reached[-2:]:
            break
    return reached


def check(*arguments, job=None, keys=(), wanted=frozenset()):
    with Bench(*arguments) as bench:
        bench.close_cautions()
        if job is not None:
            bench.start_job(job)
        poll(lambda: any(showing(n) for n in bench.all("level bar")) or not arguments, "the side to be filled", 30)
        if keys:
            bench.keys("Escape", *keys)
            poll(lambda: any(showing(n) for n in bench.all("push button", "Stage: ")), "the stages")
        bad = bad_names(bench)
        if bad:
            raise Failed(f"without a proper name: {bad}")
        bench.keys("Escape")
        reached = walk_by_tab(bench)
        names = {name for _, name in reached}
        lost = {node.get_name() for node in bench.all("push button")
                if showing(node) and {"focusable", "enabled", "sensitive"} <= states(node)} - names - {""}
        lost |= wanted - names
        lost = {name for name in lost if not name.startswith(("Minimi", "Maximi", "Close", "+", "−"))}
        if lost:
            raise Failed(f"Tab does not reach: {sorted(lost)}")
        rows = [name for role, name in reached if role in ROWS]
        if len(rows) > 2:
            raise Failed(f"Tab stays {len(rows)} presses in a list: {rows}")
        if "" in rows:
            raise Failed("a row of the plan has no name")
        if arguments == ("--practice",) and not rows:
            raise Failed("Tab does not reach the plan")


def test_doors():
    """the doors: names and Tab"""
    check()


def test_practice():
    """the bench on the practice cabinet: names and Tab"""
    check("--practice")


def test_job():
    """a job on the bench, nothing measured yet: names and Tab, which comes to the entry"""
    check(job="Kelp Gardens", wanted=BENCH)


def test_replay():
    """a replay: names and Tab, which comes to the scrub bar and the whole replay bar"""
    check(DEMO, wanted=REPLAY_BAR)


def test_bring_up():
    """the bring-up beside a replay: names and Tab"""
    check(BRING_UP, keys=["u"], wanted=REPLAY_BAR)


run(test_doors, test_practice, test_job, test_replay, test_bring_up)
