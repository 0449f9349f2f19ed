# test-log-export.py: a session as a table, as JSON and as pictures.
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
import json
import math
import os
import xml.dom.minidom

import log_runner
from log_runner import (as_lines, comma_locale, reading, run, succeed, usual_events, usual_session,
                        write)

COLUMNS = ["n", "t", "type", "rail", "place", "kind", "value", "over", "step", "u", "verdict",
           "margin", "meter", "power", "board", "warm", "id", "state", "text", "retracted"]


def export(path, kind, *more, **surroundings):
    """The exported bytes."""
    out = log_runner.FOLDER / f"out.{kind}"
    out.unlink(missing_ok=True)
    assert succeed("export", path, "--as", kind, *more, "-o", out, **surroundings) == b""
    return out.read_bytes()


def rows_of(content):
    return list(csv.DictReader(io.StringIO(content.decode("utf-8"), newline=""), strict=True))


def test_csv_reads_back_as_the_events():
    content = export(usual_session(), "csv")
    assert content.endswith(b"\r\n") and content.split(b"\r\n")[0].decode().split(",") == COLUMNS
    rows = rows_of(content)
    events = usual_events()
    assert len(rows) == len(events)
    for row, event in zip(rows, events):
        kind = next(key for key in event if key not in "nt")
        assert (int(row["n"]), float(row["t"])) == (event["n"], event["t"])
        assert row["type"] == (kind if kind != "dream" else "unknown")
        if kind in ("reading", "sample"):
            assert_reading(row, event[kind])
    assert rows[9]["retracted"] == "true" and [row["retracted"] for row in rows].count("true") == 1
    assert (rows[0]["power"], rows[0]["board"], rows[0]["warm"]) == ("on", "fitted", "false")
    assert (rows[1]["id"], rows[1]["state"]) == ("resets", "present")
    assert rows[10]["text"] == events[10]["note"]["text"]
    assert rows[11]["id"] == "10"
    assert (rows[12]["meter"], rows[12]["text"]) == ("m1", "unplugged")
    assert json.loads(rows[14]["text"]) == events[14]


def assert_reading(row, said):
    for key in ["rail", "place", "kind", "meter"]:
        assert row[key] == said[key], key
    assert float(row["step"]) == said["step"]
    if said["value"] is None:
        found = (row["value"], row["over"], row["u"], row["verdict"])
        assert found == ("", "true", "", "none"), row
        return
    assert float(row["value"]) == said["value"] and row["over"] == "false"
    u = (0.005 * abs(said["value"]) + 2 * said["step"]) / math.sqrt(3)
    assert abs(float(row["u"]) - u) < 1e-8 * u, (row["u"], u)
    assert row["verdict"] in ("inside", "close", "outside", "blind")


def test_csv_verdicts_follow_from_the_limits():
    rows = rows_of(export(usual_session(), "csv"))
    verdicts = [(row["rail"], row["place"], row["kind"], row["verdict"]) for row in rows]
    assert ("p5", "board", "dc", "outside") in verdicts  # 4.712 V, limits from 4.90 V
    assert ("p5", "terminals", "dc", "inside") in verdicts
    assert ("m5", "board", "dc", "inside") in verdicts


def test_json_holds_header_summary_and_all_events():
    path = usual_session()
    whole = json.loads(export(path, "json"))
    lines = [json.loads(line) for line in path.read_bytes().splitlines()]
    assert list(whole) == ["header", "summary", "retracted", "events"]
    assert whole["header"] == lines[0] and whole["events"] == lines[1:]
    assert whole["summary"] == json.loads(succeed("summary", path, "--json"))
    assert whole["retracted"] == [10]


def test_the_locale_does_not_reach_files():
    surroundings = comma_locale()
    if surroundings is None:
        return "no comma locale can be made"
    path = usual_session()
    for kind in ["csv", "json"]:
        assert export(path, kind, env=surroundings) == export(path, kind), kind
    return None


def test_svg_is_a_drawing():
    root = xml.dom.minidom.parseString(export(usual_session(), "svg")).documentElement
    assert root.tagName == "svg" and len(root.getElementsByTagName("path")) > 10


def test_png_and_pdf_are_what_they_say():
    path = usual_session()
    assert export(path, "png").startswith(b"\x89PNG\r\n\x1a\n")
    content = export(path, "pdf", "--chart", "time")
    assert content.startswith(b"%PDF-") and content.rstrip().endswith(b"%%EOF")


def trim_session():
    """Three positions of three rails, loaded."""
    events = [{"n": 1, "t": 0.0, "setup": {"power": "on", "board": "fitted", "warm": True}}]
    for k, x in enumerate([4.94, 5.05, 5.17]):
        if k > 0:
            events.append({"n": len(events) + 1, "t": 60.0 * k, "trim": {"moved": True}})
        for rail, value in [("p5", x), ("p12", 2.36 * x), ("m5", 0.22 - x)]:
            events.append(reading(len(events) + 1, 60.0 * k + 5 + len(events), rail, "board",
                                  round(value, 2), step=0.01))
    return write("trim.rwlog", as_lines(events))


def strokes_of(svg):
    """How many things are drawn with a pen: letters are not."""
    paths = xml.dom.minidom.parseString(svg).documentElement.getElementsByTagName("path")
    return sum("stroke:rgb" in path.getAttribute("style") for path in paths)


def test_the_trim_chart_is_a_picture_of_its_own():
    path = trim_session()
    for kind, start in [("svg", b"<?xml"), ("png", b"\x89PNG"), ("pdf", b"%PDF-")]:
        content = export(path, kind, "--chart", "trim")
        assert content.startswith(start) and content != export(path, kind, "--chart", "time"), kind
    assert strokes_of(export(path, "svg", "--chart", "trim")) > 30


def test_without_a_chart_it_is_the_one_over_time():
    path = trim_session()
    assert export(path, "svg") == export(path, "svg", "--chart", "time")


def test_a_trim_chart_of_nothing_says_so_in_words():
    path = write("nothing.rwlog", as_lines([]))
    content = export(path, "svg", "--chart", "trim")
    assert strokes_of(content) == 0  # never an empty axes box
    words = xml.dom.minidom.parseString(content).documentElement.getElementsByTagName("use")
    assert len(words) > 60


def test_pictures_are_the_same_each_time():
    for path in [usual_session(), trim_session()]:
        for kind in ["svg", "png", "pdf"]:
            for chart in ["time", "trim"]:
                first = export(path, kind, "--chart", chart)
                assert first == export(path, kind, "--chart", chart), (kind, chart)


def test_a_dash_is_standard_output():
    path = usual_session()
    assert succeed("export", path, "--as", "csv", "-o", "-") == export(path, "csv")
    assert succeed("export", path, "--as", "png", "-o", "-").startswith(b"\x89PNG")


def test_the_session_itself_is_never_overwritten():
    path = usual_session("precious.rwlog")
    before = path.read_bytes()
    symbolic, hard = log_runner.FOLDER / "symbolic", log_runner.FOLDER / "hard"
    os.symlink(path, symbolic)
    os.link(path, hard)
    for out in [path, symbolic, hard, log_runner.FOLDER / "." / "precious.rwlog"]:
        for kind in ["csv", "json", "svg"]:
            done = run("export", path, "--as", kind, "-o", out)
            assert done.returncode == 2 and b"never overwritten" in done.stderr, done
    done = run("export", symbolic, "--as", "csv", "-o", path)
    assert done.returncode == 2, done
    assert path.read_bytes() == before


def test_a_damaged_file_is_exported_as_far_as_it_goes():
    lines = as_lines(usual_events())
    lines[5] = b"rubbish\n"
    path = write("damaged.rwlog", lines)
    out = log_runner.FOLDER / "damaged.csv"
    done = run("export", path, "--as", "csv", "-o", out)
    assert done.returncode == 1 and b"line 6 " in done.stderr
    assert len(rows_of(out.read_bytes())) == 14


def test_what_cannot_be_written_is_said():
    path = usual_session()
    for kind in ["csv", "svg"]:
        done = run("export", path, "--as", kind, "-o", log_runner.FOLDER / "no" / "such" / "folder")
        assert done.returncode == 1 and b"no/such/folder" in done.stderr, done
        done = run("export", path, "--as", kind, "-o", log_runner.FOLDER)
        assert done.returncode == 1 and done.stderr != b"", done


def test_nothing_is_written_when_the_session_cannot_be_read():
    out = log_runner.FOLDER / "from-nothing.csv"
    done = run("export", log_runner.FOLDER / "not-there", "--as", "csv", "-o", out)
    assert done.returncode == 1 and not out.exists()


if __name__ == "__main__":
    log_runner.main(globals())
