#!/usr/bin/python3
"""Collects the texts of data/knowledge, data/lessons, data/profiles and data/stages for the translators.

SPDX-License-Identifier: GPL-3.0-or-later

gettext reads no JSON, so this writes po/data-strings.h, a list of N_ () lines that xgettext understands. The
program looks the very same strings up at run time. Each line carries file, id and key of its text.

usage: extract-data.py          writes po/data-strings.h
       extract-data.py --check  only says whether it is up to date (exit 1 if not)
"""

import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
TARGET = ROOT / "po" / "data-strings.h"
FOLDERS = ("knowledge", "lessons", "profiles", "stages")

# Keys whose value (a string or a list of strings) a person reads.
TEXT_KEYS = ("title", "label", "detail", "steps", "how", "why", "meaning", "safety", "feeds",
             "purpose", "caution", "needs", "ends", "stops", "unproven", "text", "no")

# What only a lesson calls so.
LESSON_KEYS = ("about", "say", "class", "ask")

# "+12 V" is the same in every language.
BARE_VOLTS = re.compile(r"[+−-]?[0-9.]+ V")

HEAD = """\
/* data-strings.h: the texts of data/knowledge, data/lessons, data/profiles and data/stages, for xgettext only. Made by po/extract-data.py.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

"""


def has_objects(value):
    """The steps of a lesson are no texts, as those of a check are."""
    return isinstance(value, list) and any(isinstance(item, dict) for item in value)


def texts(node, path, keys=TEXT_KEYS):
    """Yields (path, text) for every text below a JSON node, in the order of the file."""
    if isinstance(node, list):
        for item in node:
            yield from texts(item, path, keys)
    elif isinstance(node, dict):
        here = path + [node["id"]] if "id" in node else path
        for key, value in node.items():
            if key in keys and not has_objects(value):
                items = value if isinstance(value, list) else [value]
                yield from ((here + [key], item) for item in items if isinstance(item, str))
            else:
                yield from texts(value, here + [key] if isinstance(value, dict) else here, keys)


def c_string(text):
    for plain, escaped in (("\\", "\\\\"), ('"', '\\"'), ("\n", "\\n"), ("\t", "\\t")):
        text = text.replace(plain, escaped)
    return f'"{text}"'


def entry(name, path, text):
    """A per cent sign in these texts is never a printf directive, whatever follows it."""
    flag = "/* xgettext:no-c-format */\n" if "%" in text else ""
    return f"/* {name}: {', '.join(path)} */\n{flag}N_ ({c_string(text)})\n"


def collect():
    """One entry a different text; a text used twice keeps its first place."""
    seen = {}
    for folder in FOLDERS:
        files = sorted((ROOT / "data" / folder).glob("*.json"))
        if not files:
            sys.exit(f"extract-data.py: no files in data/{folder}")
        for file in files:
            keys = TEXT_KEYS + LESSON_KEYS if folder == "lessons" else TEXT_KEYS
            for path, text in texts(json.loads(file.read_text("utf-8")), [], keys):
                if text and not BARE_VOLTS.fullmatch(text):
                    seen.setdefault(text, entry(f"{folder}/{file.name}", path, text))
    return HEAD + "\n".join(seen.values())


def main(arguments):
    if arguments not in ([], ["--check"]):
        sys.exit(__doc__)
    wanted = collect()
    if not arguments:
        TARGET.write_text(wanted, "utf-8")
    elif not TARGET.exists() or TARGET.read_text("utf-8") != wanted:
        sys.exit("po/data-strings.h is out of date; run: /usr/bin/python3 po/extract-data.py")


main(sys.argv[1:])
