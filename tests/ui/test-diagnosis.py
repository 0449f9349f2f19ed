#!/usr/bin/python3
"""The diagnosis, by keyboard: symptoms, causes and why, another check, a check set aside, a repair that helped in part.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import subprocess
import tempfile

from bench_ui import Bench, Failed, events, poll, press, run, showing, states


def names(bench, role="push button"):
    return [node.get_name() for node in bench.all(role) if showing(node)]


def search_symptom(bench, words, absent=False):
    """S, a few letters, Enter."""
    bench.keys("s")
    bench.find("push button", "Resets by itself: seen", timeout=30)
    bench.type(words)
    poll(lambda: not bench.there("push button", "Resets by itself: seen"), "the search to narrow")
    bench.keys("ctrl+Return" if absent else "Return")
    poll(lambda: bench.there("push button", "Resets by itself: seen"), "the search to be over")
    bench.keys("Escape")
    bench.wait_gone("push button", "Resets by itself: seen")


def heads(bench):
    """The rows of the causes: name, chance in words, trend."""
    return [name for name in names(bench) if " %, " in name and ": " in name]


def start_with_symptoms(bench):
    path = bench.start_job("Tidepool Racer")
    search_symptom(bench, "wavy pict")
    search_symptom(bench, "hum whatever")
    poll(lambda: len(events(path, "symptom")) == 2, "two symptoms in the file")
    bench.find("push button", "Take it", timeout=30)
    return path


def test_symptoms():
    """symptoms are found by a few letters, in groups; Enter says seen, Ctrl+Enter not there"""
    with Bench() as bench:
        path = bench.start_job("Tidepool Racer")
        bench.keys("s")
        for title in ("The game", "Power", "Sound", "Controls and coins"):
            poll(lambda: any(n.get_name() == title for n in bench.all("label")), f"the group {title!r}", 30)
        bench.keys("Escape")
        search_symptom(bench, "wavy pict")
        search_symptom(bench, "no sound", absent=True)
        poll(lambda: len(events(path, "symptom")) == 2, "two symptoms in the file")
        said = [event["symptom"] for event in events(path, "symptom")]
        if said != [{"id": "picture-bars", "state": "present"}, {"id": "no-sound", "state": "absent"}]:
            raise Failed(f"the file says {said}")
        bench.find("push button", "Seen: Wavy picture or a rolling dark bar")
        press(bench.find("push button", "Not there: No sound"))
        poll(lambda: not bench.there("push button", "Not there: No sound"), "the chip to be taken back")


def test_causes():
    """a cause opens to show the factors, their product, and its repair; chances are in numbers and words, with a trend"""
    with Bench() as bench:
        start_with_symptoms(bench)
        rows = poll(lambda: heads(bench), "the causes")
        words = ("almost certain", "likely", "possible", "unlikely")
        if not all(any(word in row for word in words) for row in rows):
            raise Failed(f"no words: {rows}")
        if not any("since the last finding" in row for row in rows):
            raise Failed(f"no trend: {rows}")
        first = bench.find("push button", rows[0])
        press(first)
        poll(lambda: "expanded" in states(first), "the cause to open")
        bench.find("label", "Before anything was seen")
        poll(lambda: any(" for" in n.get_name() and "×" in n.get_name() for n in bench.all("label")), "a factor")
        line = bench.find("label", ", that is ").get_name()
        chance = rows[0].split(": ", 1)[1].split(",")[0]
        if chance not in line:
            raise Failed(f"{line!r} does not come to {chance}")
        press(bench.find("push button", "Show its repair"))
        bench.find("push button", "Do it")
        bench.find("label", "to prove it")
        press(bench.find("push button", "Back"))
        bench.find("push button", "Take it")


def test_other_way():
    """the key I takes the first check instead of the suggested one; Back returns to the suggestion"""
    with Bench() as bench:
        start_with_symptoms(bench)
        other = bench.find("push button", "Instead: ").get_name()
        if "expected" not in other and "equally good" not in other:
            raise Failed(f"says not what it costs more: {other!r}")
        title = other.split(": ", 1)[1].split(",")[0]
        if any(n.get_name() == "Chosen instead" and showing(n) for n in bench.all("label")):
            raise Failed("chosen before it was")
        bench.keys("Escape", "i")
        bench.find("label", "Chosen instead")
        poll(lambda: any(title in n.get_name() and showing(n) for n in bench.all("label")), f"{title!r} on the card")
        press(bench.find("push button", "Back"))
        bench.find("label", "Next check")


def card_title(bench):
    """What the plan begins with is what the card suggests."""
    return next((n.get_name() for n in bench.all("label") if showing(n) and n.get_name().startswith("? ")), None)


def test_set_aside():
    """a check set aside with a reason is not asked again, not even when the file is opened anew; Ctrl+Z brings it back"""
    with Bench() as bench:
        path = start_with_symptoms(bench)
        title = poll(lambda: card_title(bench), "the suggested check")
        bench.keys("q")
        bench.find("push button", "no access")
        bench.keys("Return")
        poll(lambda: events(path, "finding"), "the finding in the file")
        finding = events(path, "finding")[0]["finding"]
        if finding["outcome"] != "skipped":
            raise Failed(f"the file says {finding}")
        note = events(path, "note")[0]["note"]["text"]
        if title[2:] not in note or "no access" not in note:
            raise Failed(f"the note says {events(path, 'note')}")
        poll(lambda: card_title(bench) not in (None, title), "another check")
        bench.find("label", "set aside")
        second = card_title(bench)
    with Bench(path) as bench:  # the replay has it too
        bench.close_cautions()
        poll(lambda: card_title(bench) == second, "the same suggestion in the replay", 30)
    with Bench(path) as bench:
        bench.close_cautions()
        bench.find("label", "nothing is written")
        bench.keys("ctrl+e")
        poll(lambda: bench.there("push button", "Take it"), "the job to go on", 30)
        poll(lambda: card_title(bench) == second, "the same suggestion", 30)
        bench.keys("ctrl+z")
        poll(lambda: card_title(bench) == title, "the first check again", 30)


def answer_until_repair(bench):
    """Shows the repair of the likeliest cause, and does it."""
    press(bench.find("push button", heads(bench)[0]))
    press(bench.find("push button", "Show its repair"))
    press(bench.find("push button", "Do it"))


def test_partly():
    """a repair that helped in part asks what stays, and the file has the repair and what went"""
    with Bench() as bench:
        path = start_with_symptoms(bench)
        poll(lambda: heads(bench), "the causes")
        answer_until_repair(bench)
        bench.find("label", "Did it cure it?")
        press(bench.find("push button", "Partly"))
        stays = bench.find("push button", "Still there: Hum, whatever the volume")
        bench.find("push button", "Still there: Wavy picture or a rolling dark bar")
        press(stays)
        press(bench.find("push button", "That is it"))
        poll(lambda: len(events(path, "symptom")) == 3, "what went, in the file")
        if events(path, "repair")[0]["repair"]["result"] != "no-change":
            raise Failed(f"the repair says {events(path, 'repair')}")
        if events(path, "symptom")[2]["symptom"] != {"id": "picture-bars", "state": "cured"}:
            raise Failed(f"went: {events(path, 'symptom')[2]}")
        bench.find("label", "helped in part")


def tab_to(bench, name, most=90):
    """Tab until what has the focus begins with these words."""
    for _ in range(most):
        node = bench.focused()
        if node is not None and (node.get_name() or "").startswith(name):
            return node
        bench.keys("Tab")
    raise Failed(f"Tab does not come to {name!r}")


def answer_by_keys(bench, path):
    """Takes the check that is on the card, and answers it: a value, or the first of what it may show."""
    before = len(events(path, "reading")) + len(events(path, "finding"))
    title = poll(lambda: card_title(bench), "the suggested check")
    bench.keys("c")
    bench.find("push button", "Back")
    if bench.there("push button", "To the entry"):
        bench.type("5.05")
    bench.keys("Return")
    poll(lambda: len(events(path, "reading")) + len(events(path, "finding")) > before, "the answer in the file")
    poll(lambda: card_title(bench) != title, "another step", 30)


def test_by_keys_alone():
    """from a symptom to the cure without a mouse: check, other ways, set aside, repair, and the question"""
    with Bench() as bench:
        path = bench.start_job("Tidepool Racer")
        search_symptom(bench, "wavy pict")
        bench.find("push button", "Take it", timeout=30)
        answer_by_keys(bench, path)

        ways = poll(lambda: [n for n in names(bench) if n.startswith("Instead: ")], "two other ways")
        titles = [way.split(": ", 1)[1].split(" · ")[0].rsplit(", ", 1)[0] for way in ways]
        for key, title in zip("ij", titles):  # the second straight from the first, and both back to the suggestion
            bench.keys("Escape", key)
            bench.find("label", "Chosen instead")
            poll(lambda: any(n.get_name() == title and showing(n) for n in bench.all("label")), f"{title!r} on the card")
        tab_to(bench, "Back")
        bench.keys("Return")
        bench.find("label", "Next check")

        title = poll(lambda: card_title(bench), "the suggested check")
        bench.keys("q")
        bench.find("push button", "no access")
        bench.keys("Tab", "Return")
        poll(lambda: any(e["finding"]["outcome"] == "skipped" for e in events(path, "finding")), "the check set aside")
        if "no tool for it" not in events(path, "note")[-1]["note"]["text"]:
            raise Failed(f"the note says {events(path, 'note')[-1]}")
        poll(lambda: card_title(bench) not in (None, title), "another check", 30)
        answer_by_keys(bench, path)

        cause = poll(lambda: heads(bench), "the causes")[0]
        tab_to(bench, cause)
        bench.keys("Return")
        bench.find("push button", "Show its repair")
        tab_to(bench, "Show its repair")
        bench.keys("Return")
        bench.find("push button", "Do it")
        poll(lambda: (bench.focused() or bench.app).get_name() == "Do it", "the focus on the repair")
        bench.keys("Return")
        bench.find("label", "Did it cure it?")
        bench.keys("Return")
        poll(lambda: events(path, "repair"), "the repair in the file")
        if events(path, "repair")[0]["repair"]["result"] != "fixed":
            raise Failed(f"the repair says {events(path, 'repair')}")
        bench.find("label", "Fixed")
        bench.find("label", "It was: " + cause.split(": ")[0])


def test_plan_saved():
    """the plan is saved from the menu as a PDF whose pages say what the card says"""
    with tempfile.TemporaryDirectory() as folder, Bench() as bench:
        target = os.path.join(folder, "plan.pdf")
        start_with_symptoms(bench)
        title = poll(lambda: card_title(bench), "the suggested check")[2:]
        bench.keys("F10")
        press(bench.find("menu item", "Save"))
        press(bench.find("menu item", "Save the plan"))
        dialog = poll(lambda: next((w for w in bench.windows() if w.get_name() == "Save the plan"), None), "the dialog")
        bench.find("text", within=dialog).set_text_contents(target)
        press(bench.find("push button", "Save", within=dialog))
        poll(lambda: os.path.exists(target) and os.path.getsize(target) > 1000, "the plan", 60)
        with open(target, "rb") as file:
            if not file.read().startswith(b"%PDF"):
                raise Failed("no PDF")
        text = subprocess.run(["pdftotext", "-layout", target, "-"], capture_output=True, text=True, check=True).stdout
        if "Check: " not in text or title.split(",")[0] not in text or "Tidepool Racer" not in text:
            raise Failed(f"{title!r} is not in {text[:400]!r}")


run(test_symptoms, test_causes, test_other_way, test_set_aside, test_partly, test_by_keys_alone, test_plan_saved)
