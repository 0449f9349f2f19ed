# test-words.py: the words of the shipped files keep the house rules: they read alike and translate well.
# SPDX-License-Identifier: GPL-3.0-or-later
import re

from shipped import Knowledge, Report, knowledge_paths, load, profiles

# Where people read it, a negative number has a true minus; the dash of a compound word is another matter.
HYPHEN_MINUS = re.compile(r"(?<![\w-])-\d")
MISSING_SPACE = re.compile(r"\d(mV|V|mA|A|Ω|kΩ|W|mm²|°C)(?![\w])")
ASCII_UNIT = re.compile(r"\b(ohm|uF|uV|deg C|Ohms?)\b")
DOUBLE_SPACE = re.compile(r"  |\s$|^\s")
UNFINISHED = re.compile(r"\b(TODO|FIXME|XXX|TBD)\b|\?\?")

TITLE, SENTENCE, STEP = 60, 240, 200


def texts():
    """(where, kind, text) of all that people read; kind is title, sentence or step."""
    knowledge = Knowledge.shipped()
    for entry in knowledge.symptoms + knowledge.causes + knowledge.checks + knowledge.computed:
        yield entry["id"], "title", entry["title"]
        for key in ("detail", "why", "safety"):
            if key in entry:
                yield f"{entry['id']}: {key}", "sentence", entry[key]
        for step in entry.get("how", []):
            yield f"{entry['id']}: how", "step", step
        for outcome in entry.get("outcomes", []):
            yield f"{entry['id']}: {outcome['id']}", "title", outcome["title"]
            if "meaning" in outcome:
                yield f"{entry['id']}: {outcome['id']}", "sentence", outcome["meaning"]
        repair = entry.get("repair", {"steps": []})
        if "title" in repair:
            yield f"{entry['id']}: repair", "title", repair["title"]
        for step in repair["steps"]:
            yield f"{entry['id']}: repair", "step", step
    for profile in profiles():
        yield profile["id"], "title", profile["title"]
        for rail in profile["rails"]:
            yield f"{profile['id']}: {rail['id']}", "title", rail["label"]
            yield f"{profile['id']}: {rail['id']}", "title", rail["feeds"]


def matching(pattern):
    return (f"{where}: “{text}”" for where, _, text in texts() if pattern.search(text))


def lengths():
    limits = {"title": TITLE, "sentence": SENTENCE, "step": STEP}
    return (f"{where}: {len(text)} characters: “{text}”"
            for where, kind, text in texts() if len(text) > limits[kind])


def ends():
    for where, kind, text in texts():
        if kind == "title" and text.endswith((".", ":")) or kind != "title" and not text.endswith((".", "?")):
            yield f"{where}: “{text}”"


def starts():
    for where, kind, text in texts():
        if kind != "title" and not (text[0].isupper() or text[0] in "+−0123456789"):
            yield f"{where}: “{text}”"


def doubles():
    """A title stands for one thing: no two of a kind share one."""
    knowledge = Knowledge.shipped()
    for kind in (knowledge.symptoms, knowledge.causes, knowledge.checks, knowledge.computed):
        titles = [entry["title"].lower() for entry in kind]
        yield from (f"“{title}” comes twice" for title in set(titles) if titles.count(title) > 1)


def heads():
    return (f"{path.name}: does not say what it is for"
            for path in knowledge_paths() if not load(path).get("about"))


def main():
    report = Report()
    report.claim("negative numbers have a true minus", matching(HYPHEN_MINUS))
    report.claim("a space stands between number and unit", matching(MISSING_SPACE))
    report.claim("units have their own signs", matching(ASCII_UNIT))
    report.claim("no stray spaces", matching(DOUBLE_SPACE))
    report.claim("nothing is unfinished or shouts", matching(re.compile(f"{UNFINISHED.pattern}|!")))
    report.claim("titles, sentences and steps are short", lengths())
    report.claim("sentences end, titles do not", ends())
    report.claim("sentences start with a capital, a sign or a number", starts())
    report.claim("titles are unique", doubles())
    report.claim("every knowledge file says what it is for", heads())
    report.finish()


main()
