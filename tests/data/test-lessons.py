# test-lessons.py: lessons name what is there, warn before what can hurt, and keep the house rules of words.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import re

from shipped import DATA, DEMOS, Knowledge, Report, load, profile, rails_of

LESSONS = DATA / "lessons"
SHIPPED = {"what-the-screw-does", "wiring-or-supply", "when-minus-five-cannot-be-met"}
TEXTS = ("title", "say", "class", "ask", "caution", "about")
# Marks that no sentence needs, and what gettext takes for a printf directive.
DIRECTIVE = re.compile(r"% [a-z]|!|  |^\s|\s$|(?<![\w-])-\d|\d(mV|V|A|Ω|kV|cm)(?!\w)")
SENTENCES, TITLE = 420, 40


def session_of(lesson):
    name = lesson["on"].get("session")
    return [json.loads(line) for line in (DEMOS / f"{name}.rwlog").read_text("utf-8").splitlines()] if name else None


def rails(lesson):
    session = session_of(lesson)
    return rails_of(session[0]["profile"] if session else profile(lesson["on"]["practice"]["profile"]))


def named_rails(step):
    return step.get("hide", []) + [step[key] for key in ("spotlight",) if key in step] + (
        [step["call"]["rail"]] if "call" in step else [])


def strangers(lesson):
    there = rails(lesson)
    for number, step in enumerate(lesson["steps"], 1):
        for rail in named_rails(step):
            if rail not in there:
                yield f"{lesson['id']}: step {number} names the rail {rail}"


def marks(session):
    return [(event["n"], event["mark"]["what"]) for event in session[1:] if "mark" in event]


def chapters(lesson):
    session = session_of(lesson)
    for number, step in enumerate(lesson["steps"], 1):
        title = step.get("go", {}).get("chapter")
        if title is None:
            continue
        if session is None:
            yield f"{lesson['id']}: step {number} goes to a chapter of a cabinet"
        elif title not in [what for _, what in marks(session)]:
            yield f"{lesson['id']}: step {number}: no chapter “{title}”"


def answers(lesson):
    """Over a session, each round of calls is answered by a later reading; a practice cabinet can be read."""
    session = session_of(lesson)
    here = 0
    for number, step in enumerate(lesson["steps"], 1):
        if session is None:
            return
        title = step.get("go", {}).get("chapter")
        here = next((n for n, what in marks(session) if what == title), 0) if "go" in step else here
        if "call" not in step:
            continue
        found = [event["n"] for event in session[1:] if event["n"] > here and all(
            event.get("reading", {}).get(key) == step["call"][key] for key in ("rail", "place"))]
        if not found:
            yield f"{lesson['id']}: step {number}: nothing answers the calls"
        else:
            here = found[0]


def called_is_hidden(lesson):
    """The class must not see what it is to call, and the teacher knows to reveal it."""
    for number, step in enumerate(lesson["steps"], 1):
        if "call" in step and (step["call"]["rail"] not in step.get("hide", []) or step.get("until") != "reveal"):
            yield f"{lesson['id']}: step {number} asks for what is seen, or does not wait for the reveal"


def faults(lesson):
    causes = [cause["id"] for cause in Knowledge.shipped().causes]
    for fault in lesson["on"].get("practice", {}).get("faults", []):
        if fault["cause"] not in causes:
            yield f"{lesson['id']}: no cause {fault['cause']}"


def hazards(lesson):
    """Said before the step that meets them: of the lesson, and again at a step at the supply's own screws."""
    caution = lesson.get("caution", "")
    for word in ("mains", "cover", "alone"):
        if word not in caution:
            yield f"{lesson['id']}: its caution does not name {word}"
    for number, step in enumerate(lesson["steps"], 1):
        if step.get("call", {}).get("place") == "terminals" and "mains" not in step.get("caution", ""):
            yield f"{lesson['id']}: step {number} is taken at the supply, and says no caution"
        for key in ("say", "class", "ask"):
            if re.search(r"\b(tube|anode|monitor|inside (the|a) supply|primary)\b", step.get(key, ""), re.I) and not step.get("caution"):
                yield f"{lesson['id']}: step {number}: “{step[key]}” without a caution"
            if re.search(r"\bregulator\b.*\b(replaced|new)\b|\bnew regulator\b", step.get(key, ""), re.I) and not re.search(
                    r"\btrained\b", " ".join(step.get(k, "") for k in TEXTS)):
                yield f"{lesson['id']}: step {number}: who replaced it?"


def texts(lesson):
    for node in [lesson] + lesson["steps"]:
        for key in TEXTS:
            if key in node:
                yield key, node[key]


def words(lesson):
    for key, text in texts(lesson):
        if DIRECTIVE.search(text):
            yield f"{lesson['id']}: {key}: “{text}”"
        if len(text) > (TITLE if key == "title" else SENTENCES):
            yield f"{lesson['id']}: {key}: {len(text)} letters: “{text[:60]}…”"
        if key == "title" and text.endswith("."):
            yield f"{lesson['id']}: title “{text}” ends with a point"


def taught(lesson):
    """Each has a call, a text for the class, and something to say at every step."""
    if not any("call" in step for step in lesson["steps"]):
        yield f"{lesson['id']}: nobody is asked to call"
    for number, step in enumerate(lesson["steps"], 1):
        if "say" not in step:
            yield f"{lesson['id']}: step {number} says nothing"
        if step.get("show") == "text" and "class" not in step:
            yield f"{lesson['id']}: step {number} shows no words"


def main():
    report = Report()
    lessons = [load(path) for path in sorted(LESSONS.glob("*.json"))]

    def all_of(rule):
        return [complaint for lesson in lessons for complaint in rule(lesson)]

    ids = {lesson["id"] for lesson in lessons}
    report.claim("the three lessons are there, each in a file of its id",
                 [f"missing {SHIPPED - ids}"] * bool(SHIPPED - ids)
                 + [path.name for path in sorted(LESSONS.glob("*.json")) if load(path)["id"] != path.stem])
    report.claim("every rail is one of the cabinet", all_of(strangers))
    report.claim("every chapter is one of the session", all_of(chapters))
    report.claim("every round of calls over a session has its answer", all_of(answers))
    report.claim("what is to be called is hidden", all_of(called_is_hidden))
    report.claim("planted faults are causes", all_of(faults))
    report.claim("hazards are said before the step that meets them", all_of(hazards))
    report.claim("words keep the house rules", all_of(words))
    report.claim("every step says something", all_of(taught))
    report.finish()


main()
