#!/usr/bin/python3
"""The file of a job goes away, comes back, and is asked for by a second writer: nothing is lost, all of it is said.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import shutil

from bench_ui import Bench, Failed, events, poll, run

FOLDER = os.path.join(os.environ["XDG_DATA_HOME"], "railwright", "sessions")


def values(path):
    return [event["reading"]["value"] for event in events(path, "reading")]


def test_lost_folder():
    """a lost folder is said at once, readings go on, and all of them are in the file when it is back"""
    with Bench() as bench:
        path = bench.start_job("Gull Gate")
        bench.type("5.01")
        bench.keys("Return")
        poll(lambda: values(path) == [5.01], "the first reading")
        shutil.rmtree(FOLDER)
        bench.type("11.9")
        bench.keys("Return")
        bench.find("label", "Cannot write", timeout=3)
        bench.type("-4.97")
        bench.keys("Return")
        bench.find("label", "writing…")
        if bench.there("label", "kept: −5 V"):
            raise Failed("said to be kept with nowhere to keep it")
        os.makedirs(FOLDER)
        poll(lambda: os.path.exists(path) and values(path) == [5.01, 11.9, -4.97], "all readings in the file", 10)
        bench.wait_gone("label", "Cannot write")
        bench.find("label", "kept: −5 V")


def test_second_writer():
    """a session that one window writes can be replayed by another, but not written"""
    shutil.rmtree(FOLDER, ignore_errors=True)
    with Bench() as bench:
        path = bench.start_job("Gull Gate")
        bench.type("5.01")
        bench.keys("Return")
        poll(lambda: values(path) == [5.01], "the first reading")
        os.spawnlp(os.P_WAIT, bench.process.args[0], bench.process.args[0], path)  # handed to the running program
        bench.find("label", "nothing is written")
        bench.wait_window()
        bench.keys("ctrl+e")
        bench.find("label", "is being written by another window or program")
        if values(path) != [5.01]:
            raise Failed("the second window wrote")


run(test_lost_folder, test_second_writer)
