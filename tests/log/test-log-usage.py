# test-log-usage.py: help, version, and what is said to wrong usage.
# SPDX-License-Identifier: GPL-3.0-or-later
import os

import log_runner
from log_runner import run, succeed, usual_session

COMMANDS = ["summary", "plan", "export", "compare", "decode", "verify"]


def assert_wrong(*args):
    done = run(*args)
    text = done.stderr.decode()
    assert done.returncode == 2, f"{args}: status {done.returncode}: {text}"
    assert done.stdout == b"", done.stdout
    assert text.count("\n") == 1 and text.endswith("\n"), text
    assert text.startswith("railwright-log") and "--help" in text, text
    return text


def test_help_is_given_for_all_and_each():
    text = succeed("--help").decode()
    for command in COMMANDS:
        assert f"\n  {command}" in text, text
        own = succeed(command, "--help").decode()
        assert f"railwright-log {command}" in own, own
    for option in ["--symptom", "--depth", "--json", "--problem"]:
        assert option in succeed("plan", "--help").decode()
    for option in ["--as", "--chart", "-o"]:
        assert option in succeed("export", "--help").decode()
    assert "--format" in succeed("decode", "--help").decode()


def test_the_version_is_told():
    text = succeed("--version").decode()
    assert text.startswith("railwright-log 0."), text


def test_a_command_must_be_named():
    assert "command" in assert_wrong()
    assert "dance" in assert_wrong("dance")
    assert_wrong("--loud")
    assert_wrong("--json")


def test_every_command_refuses_what_it_does_not_know():
    for command in COMMANDS:
        assert "--loud" in assert_wrong(command, "--loud")


def test_file_must_be_one():
    path = usual_session()
    for command in ["summary", "verify", "export"]:
        assert "FILE" in assert_wrong(command)
        assert "FILE" in assert_wrong(command, path, path)
    assert "FILE" in assert_wrong("plan", path, path)
    assert "FILE" in assert_wrong("decode", "--format", "lines", path)


def test_export_says_what_is_missing():
    path = usual_session()
    out = log_runner.FOLDER / "never"
    assert "--as" in assert_wrong("export", path, "-o", out)
    assert "--as" in assert_wrong("export", path, "--as", "xls", "-o", out)
    assert "-o" in assert_wrong("export", path, "--as", "csv")
    assert "--chart" in assert_wrong("export", path, "--as", "svg", "--chart", "pie", "-o", out)
    for chart in ["time", "trim"]:
        assert "--chart" in assert_wrong("export", path, "--as", "csv", "--chart", chart, "-o", out)
    assert not out.exists()


def test_plan_says_what_does_not_go_together():
    path = usual_session()
    for depth in ["0", "-1", "21", "x"]:
        assert "--depth" in assert_wrong("plan", "--depth", depth).replace("“x”", "--depth x")
    assert "--json" in assert_wrong("plan", "--problem", path)
    assert "--problem" in assert_wrong("plan", path, "--problem", path, "--json")
    assert "--problem" in assert_wrong("plan", "--symptom", "resets", "--problem", path, "--json")


def test_decode_lists_the_formats_it_knows():
    for args in [["decode"], ["decode", "--format", "morse"]]:
        text = assert_wrong(*args)
        assert "lines" in text and "scpi" in text, text


def test_a_full_disk_is_said():
    if not os.path.exists("/dev/full"):
        return "no /dev/full"
    path = usual_session()
    done = run("export", path, "--as", "csv", "-o", "/dev/full")
    assert done.returncode == 1 and b"/dev/full" in done.stderr, done


if __name__ == "__main__":
    log_runner.main(globals())
