#!/usr/bin/python3
"""The bring-up by keyboard alone: from the complaint through the stages to the label on the supply.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import tempfile

import bench_ui
from bench_ui import Bench, Failed, poll, run
from stage_ui import Side, answer, enter, events, measure, read, save_label, save_record, switch


def say_complaint(bench):
    bench.keys("s")
    bench.find("push button", "Resets by itself: seen", timeout=30)
    bench.keys("Return")
    poll(lambda: events("symptom"), "the complaint in the file")
    bench.keys("Escape")
    bench.wait_gone("push button", "Resets by itself: seen")


def look(side):
    bench = side.bench
    enter(side, "Look and isolate")
    said = answer(side, "Is the plug out of its outlet?", "e")
    if said != {"check": "stage-plug-out", "outcome": "no"}:
        raise Failed(f"answered {said}")
    side.find("label", "Stop: The cabinet is not isolated")
    side.stands("Look and isolate", "stopped")
    if side.there("label", "Pull the plug and wait five minutes."):
        raise Failed("the steps show while the stage is stopped")
    before = len(events("stage"))
    bench.keys("o")
    bench.find("label", "This stage is stopped")
    if len(events("stage")) != before:
        raise Failed("a stopped stage was left by its key")
    bench.keys("ctrl+z")
    side.wait_gone("label", "Stop: The cabinet is not isolated")
    for question in ("Is the plug out of its outlet?", "Does the earth wire reach all metal", "Are the mains screws covered?",
                     "Is it free of burnt plugs"):
        answer(side, question, "y")
    side.find("label", "Pull the plug and wait five minutes.")


def bare_supply(side):
    bench = side.bench
    enter(side, "Supply without the board")
    switch(bench, "f", "board", "out")
    switch(bench, "p", "power", "on")
    spots = read(side, (("ripple", "12 mV"), ("+5 V", "5.9"), ("+12 V", "12.1"), ("−5 V", "-5.05")))
    if len(spots) != 4 or not all("terminals" in spot for spot in spots):
        raise Failed(f"asked for {spots}")
    if any(r["reading"]["place"] != "terminals" for r in events("reading")):
        raise Failed(f"kept {events('reading')}")
    answer(side, "Does a dummy load hang on the supply?", "y")
    side.find("label", "Stop: Do not fit the board: +5 V stands at 5.9")
    side.stands("Supply without the board", "stopped")
    bench.keys("alt+1", "t")
    bench.find("text", "Reading of +5 V, terminals")
    bench.type("5.12")
    bench.keys("Return")
    side.stands("Supply without the board", "now")


def fit_board(side):
    """Nothing is plugged with the power on."""
    bench = side.bench
    enter(side, "Fit the board")
    side.find("label", "Stop: The power is on")
    side.stands("Fit the board", "stopped")
    switch(bench, "p", "power", "off")
    side.stands("Fit the board", "now")
    for question in ("Have the rails fallen", "Do key and row", "Is this the cabinet's own board"):
        answer(side, question, "y")
    switch(bench, "f", "board", "fitted")


LOADED = (("ripple", "12 mV"), ("wire of ground", "320 mV"), ("wire of", "60 mV"), ("+12 V, terminals", "12.1"),
          ("+12 V", "12.02"), ("−5 V, terminals", "-5.05"), ("−5 V", "-5.03"), ("+5 V, terminals", "5.12"), ("+5 V", "4.74"))
TURNED = (("+12 V", "12.32"), ("−5 V", "-5.05"), ("+5 V, terminals", "5.22"), ("+5 V", "4.99"))


def power(side):
    bench = side.bench
    enter(side, "First power")
    switch(bench, "p", "power", "on")
    read(side, LOADED)
    side.stands("First power", "now")
    enter(side, "Under load")
    spots = read(side, LOADED)
    if len(spots) < 8:
        raise Failed(f"asked for {spots} alone")


def go_against(side, why):
    bench = side.bench
    bench.keys("F7")
    poll(lambda: "focused" in bench_ui.states(side.find("text", "Why you go on")), "the reason to be asked for")
    bench.type(why)
    bench.keys("Return")
    poll(lambda: events("stage")[-1]["stage"].get("against") == why, "the reason in the file")


def trim(side):
    """What is lost in the wiring stops the trim; a reason goes past it and stays written down."""
    bench = side.bench
    enter(side, "Set the trim")
    side.stands("Set the trim", "stopped")
    side.find("label", "Stop: ")
    go_against(side, "the wire comes on Friday")
    side.stands("Set the trim", "now")
    side.find("label", "Gone past: ")
    side.find("label", "Mark how the trim stands now.")
    bench.keys("r")
    poll(lambda: events("trim"), "the turn in the file")
    read(side, TURNED)


def rest(side):
    bench = side.bench
    enter(side, "Read every rail again")
    read(side, TURNED)
    enter(side, "Warm-up")
    read(side, TURNED)
    answer(side, "After 20 minutes, can the connector be held?", "y")
    enter(side, "Volume, lamps, cold starts")
    for question in ("volume up and down", "all lamps on", "three cold starts"):
        answer(side, question, "y")


def close(side, path):
    """The complaint was never said to be gone: closing names it, and a reason goes past it."""
    bench = side.bench
    enter(side, "Close")
    side.find("label", "Stop: The complaint is still there: “Resets by itself”")
    side.stands("Close the job", "stopped")
    go_against(side, "the owner tries it at home")
    side.stands("Close the job", "now")
    switch(bench, "p", "power", "off")
    side.find("text", "Who did it")
    answer(side, "Are all covers and earth wires back on?", "y")
    save_label(bench, path)
    save_record(bench, path + ".record.pdf")


def test_bring_up():
    """from the complaint through the stages to the label, by keyboard alone; gates stop, and a reason goes past them"""
    with tempfile.TemporaryDirectory() as folder, Bench() as bench:
        bench.start_job("Tidepool Racer")
        bench.keys("Escape")
        say_complaint(bench)
        side = Side(bench)
        side.stands("Look and isolate", "ahead")
        look(side)
        bare_supply(side)
        fit_board(side)
        power(side)
        trim(side)
        rest(side)
        path = os.path.join(folder, "label.pdf")
        close(side, path)
        bench.keys("ctrl+l")
        bench.find("label", "Are all covers and earth wires back on?", within=poll(
            lambda: next(w for w in bench.windows() if w.get_name() == "What was done"), "what was done"))
        bench.find("label", "stage: Close the job, on against advice: the owner tries it at home")
        entered = [e["stage"]["id"] for e in events("stage") if "read" not in e["stage"] and "against" not in e["stage"]]
        if entered != ["look", "bare-supply", "fit-board", "first-power", "under-load", "trim", "recheck", "warm-up",
                       "exercise", "close"]:
            raise Failed(f"the file has the stages {entered}")


def test_practice():
    """the practice cabinet's meter reads a stage from its first spot to its last; a value that ruins a board stops it"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: events("sample"), "the meter to speak")
        side = Side(bench)
        enter(side, "Look and isolate")
        side.find("label", "Stop: The power is on")
        switch(bench, "p", "power", "off")
        for question in ("Is the plug out", "Does the earth wire", "Are the mains screws", "Is it free of burnt"):
            answer(side, question, "y")
        enter(side, "Supply without the board")
        switch(bench, "f", "board", "out")
        switch(bench, "p", "power", "on")
        if len(measure(side)) != 4:
            raise Failed("not every rail and the ripple were asked for")
        bare = {r["reading"]["rail"]: r["reading"]["value"] for r in events("reading") if r["reading"]["kind"] == "dc"}
        if set(bare) != {"p5", "p12", "m5"} or not 4.5 < bare["p5"] < 5.6:
            raise Failed(f"read {bare}")
        switch(bench, "p", "power", "off")
        enter(side, "Fit the board")
        for question in ("Have the rails fallen", "Do key and row", "Is this the cabinet's own board"):
            answer(side, question, "y")
        switch(bench, "f", "board", "fitted")
        enter(side, "First power")
        switch(bench, "p", "power", "on")
        measure(side)
        side.stands("First power", "now")
        bench.keys("alt+1", "b")
        bench.find("text", "Reading of +5 V, board")
        bench.type("5.95")
        bench.keys("Return")
        bench.find("label", "Off now: +5 V stands at 5.95")
        side.stands("First power", "stopped")
        if side.there("label", "Steps") or side.there("label", "To be measured"):
            raise Failed("there is something to be done while the power must go off")


run(test_bring_up, test_practice)
