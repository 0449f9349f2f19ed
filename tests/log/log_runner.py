# log_runner.py: what the tests of railwright-log share: running it, sessions, reporting in TAP.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import traceback

PROGRAM = os.environ["RAILWRIGHT_LOG"]
ROOT = pathlib.Path(os.environ["RAILWRIGHT_SRC_ROOT"])
DATA = pathlib.Path(os.environ["RAILWRIGHT_DATA_DIR"])
FOLDER = pathlib.Path(tempfile.mkdtemp(prefix="railwright-log-"))


def run(*args, input=b"", env=None, timeout=120):
    """The finished process; its output is bytes. Nothing of the person's own data folder is seen."""
    surroundings = {**os.environ, "XDG_DATA_HOME": str(FOLDER / "data"), "LANGUAGE": "C",
                    **(env or {})}
    return subprocess.run([PROGRAM, *map(str, args)], input=input, env=surroundings,
                          timeout=timeout, stdout=subprocess.PIPE, stderr=subprocess.PIPE)


def succeed(*args, **more):
    done = run(*args, **more)
    assert done.returncode == 0, f"{args}: status {done.returncode}: {done.stderr.decode()}"
    assert done.stderr == b"", done.stderr
    return done.stdout


def header(profile="classic-5-12-m5"):
    with open(DATA / "profiles" / f"{profile}.json", encoding="utf-8") as file:
        whole = json.load(file)
    return {"railwright": 1, "id": "0b6a1f0e-8f6a-4c53-9d5f-3f1f8f0f7a11",
            "started": "2026-03-14T09:30:00Z",
            "cabinet": {"name": "Tidepool Racer", "tag": "B-07"}, "profile": whole,
            "meters": [{"id": "m1", "name": "bench meter", "percent": 0.5, "counts": 2}]}


def reading(n, t, rail, place, value, kind="dc", step=0.001, what="reading"):
    return {"n": n, "t": t, what: {"rail": rail, "place": place, "kind": kind, "value": value,
                                   "step": step, "meter": "m1"}}


def usual_events():
    """One of each kind, a retract, an overload, an event from the future."""
    return [
        {"n": 1, "t": 0.0, "setup": {"power": "on", "board": "fitted", "warm": False}},
        {"n": 2, "t": 1.5, "symptom": {"id": "resets", "state": "present"}},
        reading(3, 4.21, "p5", "board", 4.712),
        reading(4, 4.4, "p5", "board", 4.713, what="sample"),
        reading(5, 6.0, "p5", "board", 0.012, kind="ripple"),
        reading(6, 8.0, "p5", "terminals", 5.021),
        reading(7, 9.0, "m5", "board", -4.98),
        {"n": 8, "t": 9.5, "reading": {"rail": "p12", "place": "board", "kind": "dc", "value": None,
                                       "over": True, "step": 0.01, "meter": "m1"}},
        reading(9, 11.0, "gnd", "wire", 0.012),
        {"n": 10, "t": 12.0, "mark": {"what": "reset seen"}},
        {"n": 11, "t": 13.25, "note": {"text": "fan is noisy, \"very\"\nsecond line; 5,02"}},
        {"n": 12, "t": 14.0, "retract": {"n": 10}},
        {"n": 13, "t": 15.0, "gap": {"meter": "m1", "why": "unplugged"}},
        {"n": 14, "t": 16.0, "stage": {"id": "under-load"}},
        {"n": 15, "t": 17.123456, "dream": {"of": "electric things"}},
    ]


def as_lines(events, head=None):
    objects = [head or header(), *events]
    return [json.dumps(one, ensure_ascii=False).encode() + b"\n" for one in objects]


def write(name, content):
    path = FOLDER / name
    path.write_bytes(content if isinstance(content, bytes) else b"".join(content))
    return path


def usual_session(name="usual.rwlog"):
    return write(name, as_lines(usual_events()))


def comma_locale():
    """Surroundings with a decimal comma, made on the spot; None where that cannot be done."""
    if shutil.which("localedef") is None:
        return None
    places = FOLDER / "locales"
    places.mkdir(exist_ok=True)
    subprocess.run(["localedef", "-c", "-i", "de_DE", "-f", "UTF-8", str(places / "de_DE.UTF-8")],
                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
    if not (places / "de_DE.UTF-8").exists():
        return None
    return {"LOCPATH": str(places), "LC_ALL": "de_DE.UTF-8"}


def main(namespace):
    """Runs every function whose name begins with "test_"; the names say the claims."""
    tests = [(name, function) for name, function in namespace.items() if name.startswith("test_")]
    print(f"1..{len(tests)}")
    failures = 0
    for number, (name, function) in enumerate(tests, 1):
        claim = name[len("test_"):].replace("_", "-")
        try:
            skip = function()
            print(f"ok {number} {claim}" + (f" # SKIP {skip}" if skip else ""))
        except Exception:
            failures += 1
            print(f"not ok {number} {claim}")
            for line in traceback.format_exc().splitlines():
                print("# " + line)
    shutil.rmtree(FOLDER, ignore_errors=True)
    sys.exit(1 if failures else 0)
