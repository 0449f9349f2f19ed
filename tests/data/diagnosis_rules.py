# diagnosis_rules.py: what tables, words and cautions of the diagnosis must keep to, as functions that complain.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Each rule takes the whole knowledge and yields complaints; none means that it is kept. Rules of what tells
# causes apart look at each shipped profile by itself, with what applies to it.
import itertools
import math

from shipped import meets, profiles, rails_of, row

EXACT = 1e-9
# An outcome speaks for or against a cause only where one of the rows shows it in this share of cabinets:
# what hardly ever happens tells nothing at a bench, however large its ratio.
EVIDENT = 0.2
MOVES = 2       # a check moves a cause when some outcome is this many times as likely, or as rare, as by default
APART = 4       # two causes are apart when some outcome differs by this factor
RAISES = 3      # a symptom points to a cause that shows it this many times as often as the default
BROAD_SHARE = (0.02, 0.05)  # of all weight on a profile, for what no list can hold
READING = {"dc": ("DC volts", "DC millivolts"), "ripple": ("AC volts", "AC millivolts"), "ohms": ("ohms",),
           "amps": ("current", "amps"), "celsius": ("thermometer", "°C")}
PLACES = {"terminals": ("terminals", "screw", "raw sound rail"), "board": ("finger", "on the board"),
          "chip": ("chip",), "wire": ("finger on the board's side",)}


def distance(one, two):
    """The largest log-ratio of two rows over the outcomes that one of them shows often enough."""
    return max((abs(math.log(p / q)) for p, q in zip(one, two) if max(p, q) >= EVIDENT), default=0)


def pair(share):
    """A symptom's chance as a row of two outcomes: seen, not seen."""
    return [share, 1 - share]


def plain(causes):
    """Causes with rows: the program computes those of a broad one."""
    return [cause["id"] for cause in causes if not cause.get("broad")]


def rows_of(knowledge):
    for entry in knowledge.checks + knowledge.computed:
        for cause, chances in entry["chance"].items():
            yield entry, cause, chances


def shares(knowledge):
    """Every chance lies from 0 to 1, every row has one for each outcome, and they add up to 1."""
    for symptom in knowledge.symptoms:
        for cause, p in symptom["chance"].items():
            if not 0 <= p <= 1:
                yield f"{symptom['id']}: {cause}: {p}"
    for entry, cause, chances in rows_of(knowledge):
        if not all(0 <= p <= 1 for p in chances):
            yield f"{entry['id']}: {cause}: {chances}"
        if len(chances) != len(entry["outcomes"]):
            yield f"{entry['id']}: {cause}: {len(chances)} chances for {len(entry['outcomes'])} outcomes"
        if abs(sum(chances) - 1) > EXACT:
            yield f"{entry['id']}: {cause}: they add up to {sum(chances):.4f}"


def tiling(knowledge):
    """The outcomes of a measuring check, or of a computed value, cover the line from end to end, once."""
    for check in knowledge.checks + knowledge.computed:
        if "measure" not in check and "rail" not in check:
            continue
        first, *_, last = check["outcomes"]
        if "from" in first or "to" in last:
            yield f"{check['id']}: the ends are not open"
        for low, high in itertools.pairwise(check["outcomes"]):
            if low.get("to") is None or low.get("to") != high.get("from"):
                yield f"{check['id']}: gap or overlap between {low['id']} and {high['id']}"
        marks = [outcome.get("to", math.inf) for outcome in check["outcomes"][:-1]]
        if marks != sorted(set(marks)):
            yield f"{check['id']}: thresholds {marks}"


def references(knowledge):
    """Every id that is spoken of exists: causes in tables, checks that prove, rails."""
    causes = {cause["id"] for cause in knowledge.causes}
    checks = {check["id"] for check in knowledge.checks}
    rails = {rail for profile in profiles() for rail in rails_of(profile)}
    for entry in knowledge.symptoms + knowledge.causes + knowledge.checks + knowledge.computed:
        for cause in set(entry.get("chance", {})) - causes - {"default"}:
            yield f"{entry['id']}: there is no cause {cause}"
        for check in set(entry.get("repair", {}).get("recheck", [])) - checks:
            yield f"{entry['id']}: there is no check {check} to prove the repair by"
        for rail in set(entry.get("needs", {}).get("rails", [])) - rails:
            yield f"{entry['id']}: no profile has a rail {rail}"
        if entry.get("measure", {}).get("rail", "gnd") not in rails | {"gnd"}:
            yield f"{entry['id']}: no profile has a rail {entry['measure']['rail']}"


def provable(knowledge):
    """On every profile on which a cause occurs one of its rechecks applies."""
    for profile in profiles():
        here = {check["id"] for check in knowledge.for_profile(profile).checks}
        for cause in knowledge.causes:
            if meets(cause, profile) and not here & set(cause["repair"]["recheck"]):
                yield f"{cause['id']}: nothing proves its repair on {profile['id']}"


def movable(knowledge):
    """Some outcome of some check is MOVES times as likely, or as rare, with the cause as by default."""
    for profile in profiles():
        here = knowledge.for_profile(profile)
        for cause in plain(here.causes):
            moves = max((distance(row(check, cause), row(check, "default")) for check in here.checks), default=0)
            if moves < math.log(MOVES):
                yield f"{profile['id']}: no check moves {cause}, by {math.exp(moves):.1f} at most"


def tells(tables, one, two):
    """Some outcome of some table differs by APART between two causes."""
    return any(distance(row(table, one), row(table, two)) >= math.log(APART) for table in tables)


def apart(knowledge):
    """Any two causes of a profile differ by APART in a check, a symptom or a computed finding."""
    for profile in profiles():
        here = knowledge.for_profile(profile)
        for one, two in itertools.combinations(plain(here.causes), 2):
            seen = (distance(pair(row(s, one)), pair(row(s, two))) for s in here.symptoms)
            if not tells(here.checks + here.computed, one, two) and max(seen) < math.log(APART):
                yield f"{profile['id']}: nothing tells {one} from {two}"


def close_at_the_bench(knowledge):
    """Pairs that no check that anyone may do, and nothing computed, tells apart: {(one, two): profiles}."""
    close = {}
    for profile in profiles():
        here = knowledge.for_profile(profile)
        tables = [check for check in here.checks if check["who"] == "anyone"] + here.computed
        for one, two in itertools.combinations(sorted(plain(here.causes)), 2):
            if not tells(tables, one, two):
                close.setdefault((one, two), []).append(profile["id"])
    return close


def apart_at_the_bench(knowledge, accepted):
    """So they must be, but for accepted pairs with a reason; and an exception that is not needed goes."""
    close = close_at_the_bench(knowledge)
    known = {tuple(sorted(pair["causes"])): pair.get("reason", "") for pair in accepted}
    for (one, two), where in close.items():
        if not known.get((one, two)):
            yield f"no check that anyone may do tells {one} from {two} on {', '.join(where)}"
    for one, two in set(known) - set(close):
        yield f"the exception for {one} and {two} is not needed"


def pointing(knowledge):
    """Every symptom points to a cause, on each profile."""
    for profile in profiles():
        causes = plain(knowledge.for_profile(profile).causes)
        for symptom in knowledge.symptoms:
            most = max(row(symptom, cause) for cause in causes) / symptom["chance"]["default"]
            if most < RAISES:
                yield f"{profile['id']}: {symptom['id']} raises no cause more than {most:.1f} times"


def told(knowledge):
    """Nothing is left unsaid: steps, expected value, mode, place, and what each outcome means."""
    for symptom in knowledge.symptoms:
        if not symptom.get("detail"):
            yield f"{symptom['id']}: says nothing more than its title"
    for cause in knowledge.causes:
        if not cause.get("detail") or len(cause["repair"]["steps"]) < 3:
            yield f"{cause['id']}: its repair or its reason is too short"
    for check in knowledge.checks:
        yield from told_of(check)


def told_of(check):
    how, measure = check["how"], check.get("measure")
    if len(how) < 2 or not how[-1].startswith("Expect ") or sum(s.startswith("Expect ") for s in how) != 1:
        yield f"{check['id']}: its last step does not say what to expect"
    for outcome in check["outcomes"]:
        if not outcome.get("meaning"):
            yield f"{check['id']}: {outcome['id']}: no meaning"
    for word in ([READING[measure["kind"]], PLACES[measure["place"]]] if measure else []):
        if not any(one in " ".join(how) for one in word):
            yield f"{check['id']}: its steps do not say {' or '.join(word)}"


def broad(knowledge):
    """One cause is what the list does not have: no rows, a small share of the weight, handed to somebody."""
    ids = [cause["id"] for cause in knowledge.causes if cause.get("broad")]
    if ids != ["other"]:
        yield f"broad are {ids}"
    for entry in knowledge.symptoms + knowledge.checks + knowledge.computed:
        if set(ids) & set(entry["chance"]):
            yield f"{entry['id']}: has a row for what is not in the list"
    for profile in profiles():
        here = knowledge.for_profile(profile).causes
        share = sum(c["prior"] for c in here if c.get("broad")) / sum(c["prior"] for c in here)
        if not BROAD_SHARE[0] <= share <= BROAD_SHARE[1]:
            yield f"{profile['id']}: what is not in the list has {share:.3f} of the weight"


def often(knowledge):
    """Faults that come together are said so from both sides alike, and some cabinet can have both."""
    causes = {cause["id"]: cause for cause in knowledge.causes}
    for cause in knowledge.causes:
        for other, factor in cause.get("often_with", {}).items():
            where = f"{cause['id']} with {other}"
            if other not in causes or other == cause["id"] or causes[other].get("broad") or cause.get("broad"):
                yield f"{where}: no such pair"
                continue
            if factor <= 1 or causes[other].get("often_with", {}).get(cause["id"]) != factor:
                yield f"{where}: {factor} from one side only, or no more than chance"
            if not any(meets(cause, p) and meets(causes[other], p) for p in profiles()):
                yield f"{where}: no profile can have both"
