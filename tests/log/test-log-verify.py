# test-log-verify.py: what is damaged is found, at the right place, and nothing else is.
# SPDX-License-Identifier: GPL-3.0-or-later
import hashlib
import re

import log_runner
from log_runner import as_lines, run, succeed, usual_events, usual_session, write


def test_a_good_file_is_good():
    text = succeed("verify", usual_session()).decode()
    assert "header good" in text and "Tidepool Racer" in text
    assert "15 events read" in text
    assert "1 event is not understood" in text
    assert "nothing is damaged" in text
    assert "noticed" not in text and "damaged:" not in text


def test_damage_is_named_by_line_byte_and_reason():
    lines = as_lines(usual_events())
    lines[3] = b"{\"n\":3,\"t\":4.2,\"reading\":{\"rail\":\"p5\",\"place\":\"moon\",\"value\":5}}\n"
    lines[9] = b"rubbish\n"
    path = write("damaged.rwlog", lines)
    done = run("verify", path)
    text = done.stdout.decode()
    assert done.returncode == 1
    found = re.findall(r"^damaged: line (\d+) \(byte (\d+)\): (.+)$", text, re.MULTILINE)
    places = [(4, sum(map(len, lines[:3]))), (10, sum(map(len, lines[:9])))]
    assert [(int(line), int(byte)) for line, byte, _ in found] == places, text
    assert "moon" in found[0][2]
    assert "13 events read" in text and "nothing is damaged" not in text
    assert done.stderr.decode() == f"{path}: damaged lines: 4, 10\n", done.stderr


def test_a_torn_tail_is_named():
    lines = as_lines(usual_events())
    whole = b"".join(lines)
    done = run("verify", write("torn.rwlog", whole[:-11]))
    start = len(whole) - len(lines[-1])
    assert done.returncode == 1
    torn = f"torn: the file ends {len(lines[-1]) - 11} bytes into it"
    assert f"damaged: line 16 (byte {start}): {torn}" in done.stdout.decode()
    assert b"16 (torn)" in done.stderr


def test_a_missing_last_newline_is_no_damage():
    path = write("unended.rwlog", b"".join(as_lines(usual_events()))[:-1])
    assert b"nothing is damaged" in succeed("verify", path)


def test_a_lost_header_does_not_hide_the_rest():
    lines = as_lines(usual_events())
    lines[0] = b"{\"rail\n"
    lines[5] = b"rubbish\n"
    whole = b"".join(lines)
    done = run("verify", write("headless.rwlog", whole[:-3]))
    text = done.stdout.decode()
    assert done.returncode == 1 and "damaged: header: " in text and "line 1: " in text, text
    assert f"damaged: line 6 (byte {sum(map(len, lines[:5]))}): " in text, text
    assert f"damaged: line 16 (byte {len(whole) - len(lines[-1])}): torn" in text, text
    assert "13 events read" in text
    assert "damaged lines: 1 (header), 6, 16 (torn)" in done.stderr.decode(), done.stderr


def test_what_is_no_session_at_all_is_damaged():
    for content in [b"", b"\n", b"hello", b"hello\nworld\n", bytes(range(256)) * 40]:
        done = run("verify", write("other", content))
        assert done.returncode == 1 and b"header" in done.stderr, done
        assert b"0 events read" in done.stdout, done
    done = run("verify", log_runner.FOLDER / "not-there")
    assert done.returncode == 1 and done.stdout == b"" and b"not-there" in done.stderr, done


def test_every_cut_is_found():
    content = b"".join(as_lines(usual_events()))
    for cut in range(0, len(content), 53):
        done = run("verify", write("cut.rwlog", content[:cut]))
        whole = content[cut - 1:cut] == b"\n" or content[cut:cut + 1] == b"\n"
        good = b"\n" in content[:cut] and whole
        assert done.returncode == (0 if good else 1), (cut, done)
        assert good or b"line " in done.stderr or b"lines: " in done.stderr, done.stderr


def test_a_flipped_byte_harms_its_own_line_only():
    lines = as_lines(usual_events())
    for index in range(1, len(lines)):
        broken = list(lines)
        broken[index] = b"\x00" + lines[index][1:]
        done = run("verify", write("flipped.rwlog", broken))
        assert done.returncode == 1
        assert f"damaged: line {index + 1} ".encode() in done.stdout, done.stdout
        assert done.stdout.count(b"damaged:") == 1


def test_oddities_are_noticed_but_are_no_damage():
    events = usual_events()
    del events[4]  # number 5
    events[-1]["t"] = 3.0
    events.append({"n": 7, "t": 30, "note": {"text": "again"}})
    text = succeed("verify", write("odd.rwlog", as_lines(events))).decode()
    assert "1 event number is missing: 5" in text
    assert "1 event number does not rise: 7" in text
    assert "time runs back at 1 event: 15" in text
    assert "nothing is damaged" in text


def test_the_file_is_left_alone():
    path = write("left.rwlog", b"".join(as_lines(usual_events()))[:-20])
    before = (hashlib.sha256(path.read_bytes()).digest(), path.stat().st_mtime_ns)
    run("verify", path)
    run("summary", path)
    assert before == (hashlib.sha256(path.read_bytes()).digest(), path.stat().st_mtime_ns)


if __name__ == "__main__":
    log_runner.main(globals())
