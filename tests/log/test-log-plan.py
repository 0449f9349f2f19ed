# test-log-plan.py: plans from the knowledge and of bare problems, costed again by walking them.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import re

import log_runner
from log_runner import as_lines, comma_locale, run, succeed, usual_session, write

CASES = log_runner.ROOT / "tests" / "advice" / "plan_cases.json"


# --- bare problems ----------------------------------------------------------------------------

def cost(node, problem, weights):
    """Minutes of a printed plan times the chance of coming to it, from the problem's own numbers."""
    mass = sum(weights)
    if node is None:
        assert mass < 1e-12, f"the plan ends although something is left: {weights}"
        return 0.0
    if "repair" in node:
        assert list(node) == ["repair", "else"], node
        index = [cause["id"] for cause in problem["causes"]].index(node["repair"])
        left = [0.0 if i == index else weight for i, weight in enumerate(weights)]
        return problem["causes"][index]["repair_minutes"] * mass + cost(node["else"], problem, left)
    assert list(node) == ["check", "outcomes"], node
    check = next(one for one in problem["checks"] if one["id"] == node["check"])
    assert len(node["outcomes"]) == len(check["chance"]), node
    total = check["minutes"] * mass
    for chances, below in zip(check["chance"], node["outcomes"]):
        total += cost(below, problem, [weight * chance for weight, chance in zip(weights, chances)])
    return total


def priors(problem):
    weights = [cause["prior"] for cause in problem["causes"]]
    return [weight / sum(weights) for weight in weights]


def test_plans_of_the_cases_are_optimal_and_cost_what_they_say():
    problems = json.loads(CASES.read_text(encoding="utf-8"))["problems"]
    lines = succeed("plan", "--problem", CASES, "--json").decode().splitlines()
    assert len(lines) == len(problems) >= 10
    answered = 0
    for problem, line in zip(problems, lines):
        plan = json.loads(line)
        assert list(plan) == ["expected_minutes", "plan"], plan
        walked = cost(plan["plan"], problem, priors(problem))
        assert abs(walked - plan["expected_minutes"]) < 1e-9, (walked, plan["expected_minutes"])
        if "answers" in problem:
            answered += 1
            optimum = problem["answers"]["optimum_minutes"]
            assert abs(walked - optimum) < 1e-9, (walked, optimum)
    assert answered >= 10


def test_one_problem_gives_the_same_plan_as_in_a_collection():
    problems = json.loads(CASES.read_text(encoding="utf-8"))["problems"]
    lines = succeed("plan", "--problem", CASES, "--json").splitlines(keepends=True)
    for index in [0, len(problems) - 1]:
        path = write("one.json", json.dumps(problems[index]).encode())
        assert succeed("plan", "--problem", path, "--json") == lines[index]


def test_problems_that_make_no_sense_are_refused():
    good = json.loads(CASES.read_text(encoding="utf-8"))["problems"][0]
    check = good["checks"][0]
    minutes = {**good, "checks": [{**check, "minutes": "x"}]}
    sums = {**good, "checks": [{**check, "chance": [[0.1] * 5] * 2}]}
    for name, content in {"nothing": b"", "words": b"causes", "list": b"[1]", "bare": b"{}",
                          "broken": json.dumps(good).encode()[:-5],
                          "minutes": json.dumps(minutes).encode(),
                          "sums": json.dumps(sums).encode()}.items():
        done = run("plan", "--problem", write(name, content), "--json")
        assert done.returncode == 1 and done.stderr != b"", (name, done)
    done = run("plan", "--problem", log_runner.FOLDER / "not-there.json", "--json")
    assert done.returncode == 1 and b"not-there.json" in done.stderr


def test_a_bad_problem_in_a_collection_keeps_its_place():
    good = json.loads(CASES.read_text(encoding="utf-8"))["problems"][0]
    path = write("mixed.json", json.dumps({"problems": [good, {"causes": []}, good]}).encode())
    done = run("plan", "--problem", path, "--json")
    lines = done.stdout.splitlines()
    assert done.returncode == 1 and b"problem 2" in done.stderr
    assert len(lines) == 3 and lines[0] == lines[2] and lines[1] == b"null"


# --- plans from the knowledge -----------------------------------------------------------------

def walk(node):
    """Every node below and with this one."""
    if node is None:
        return
    yield node
    for below in below_of(node):
        yield from walk(below)


def below_of(node):
    return node["outcomes"] if "check" in node else [] if "cut" in node else [node["else"]]


def assert_adds_up(plan):
    """Expected minutes are the sum of minutes by the chance of coming there; chances split."""
    nodes = list(walk(plan["plan"]))
    total = sum(node["reach"] * node["expected_minutes" if "cut" in node else "minutes"]
                for node in nodes)
    assert abs(total - plan["expected_minutes"]) < 1e-9, (total, plan["expected_minutes"])
    for node in nodes:
        if "check" in node:
            below = sum(one["reach"] for one in node["outcomes"] if one is not None)
            assert abs(below - node["reach"]) < 1e-9, node["check"]
            assert len(node["names"]) == len(node["outcomes"])
        elif "repair" in node and node["else"] is not None:
            assert node["else"]["reach"] < node["reach"] + 1e-12
    assert abs(plan["plan"]["reach"] - 1) < 1e-9


def plan_of(*args):
    return json.loads(succeed("plan", *args, "--json"))


def test_a_plan_adds_up():
    plan = plan_of("--symptom", "resets", "--depth", "3")
    assert list(plan) == ["expected_minutes", "repairs_only_minutes", "perfect_minutes", "depth",
                          "plan"]
    assert_adds_up(plan)
    assert plan["perfect_minutes"] <= plan["expected_minutes"] <= plan["repairs_only_minutes"]
    assert plan["depth"] == 3 and "check" in plan["plan"]


def test_depth_changes_what_is_shown_and_not_the_plan():
    shallow = plan_of("--symptom", "resets", "--depth", "1")
    deep = plan_of("--symptom", "resets", "--depth", "20")
    assert_adds_up(shallow)
    assert_adds_up(deep)
    assert deep["expected_minutes"] == shallow["expected_minutes"]
    assert not any("cut" in node for node in walk(deep["plan"]))
    assert any("cut" in node for node in walk(shallow["plan"]))


def checks_below(node, above=0):
    inside = [checks_below(one, above + ("check" in node))
              for one in below_of(node) if one is not None]
    return max(inside, default=above)


def test_depth_limits_the_checks():
    for depth in [1, 2, 3]:
        assert checks_below(plan_of("--symptom", "resets", "--depth", depth)["plan"]) == depth


def test_a_plan_begins_where_the_session_stands():
    path = usual_session()
    following = json.loads(succeed("summary", path, "--json"))["next"]
    assert plan_of(path, "--depth", "2")["plan"]["check"] == following[0]["check"]
    assert plan_of(path, "--depth", "2") != plan_of("--depth", "2")


def test_symptoms_are_added_to_the_session():
    path = write("bare.rwlog", as_lines([]))
    args = ["--symptom", "resets", "--depth", "2"]
    assert plan_of(path, *args) == plan_of(*args)
    text = succeed("plan", path, *args, "--symptom", "audio-hum").decode()
    assert "Resets by itself" in text, text


def shown(node):
    """What a reader is told to do at a node and below, without its chances and minutes."""
    if "check" in node:
        return node["check"], [shown(one) if one and one["reach"] >= 0.01 else None for one in node["outcomes"]]
    return ("cut", node["cut"]) if "cut" in node else ("repair", node["repair"])


def merged(node):
    """The nodes that a reader sees: outcomes that lead to the same are told once."""
    yield node
    seen = []
    for one in below_of(node):
        if one is None or one["reach"] < 0.01 or shown(one) in seen:
            continue
        seen.append(shown(one))
        yield from merged(one)


def test_text_and_json_are_the_same_tree():
    plan = plan_of("--symptom", "resets", "--depth", "2")
    text = succeed("plan", "--symptom", "resets", "--depth", "2").decode()
    seen = [node for node in merged(plan["plan"]) if "check" in node or "cut" in node]
    assert text.count("Check: ") == len(seen), (text.count("Check: "), len(seen))
    assert text.count(" …\n") == sum("cut" in node for node in seen)
    assert len(seen) < sum("check" in node or "cut" in node for node in walk(plan["plan"])), "nothing was merged"
    assert "Cut: only 2 checks deep are shown" in text, text


def per_cent(share):
    return "< 1 %" if 0 < share < 0.01 else f"{100 * share:.0f} %"


def test_what_is_cut_is_said_in_shares_of_cases():
    plan = plan_of("--symptom", "resets", "--depth", "2")
    text = succeed("plan", "--symptom", "resets", "--depth", "2").decode()
    deep = sum(node["reach"] for node in walk(plan["plan"]) if "cut" in node)
    rare = sum(one["reach"] for node in walk(plan["plan"]) if "check" in node
               for one in node["outcomes"] if one is not None and one["reach"] < 0.01)
    assert f"{per_cent(deep)} of cases go deeper" in text, (deep, text)
    assert f"in all {per_cent(rare)} of cases" in text, (rare, text)


def test_danger_stands_before_the_step_that_meets_it():
    knowledge = [one for path in (log_runner.DATA / "knowledge").glob("checks-*.json")
                 for one in json.loads(path.read_text(encoding="utf-8"))["checks"]]
    safety = {one["title"]: one["safety"] for one in knowledge
              if one["hazard"] in ("near-mains", "mains", "tube")}
    lines = succeed("plan", "--symptom", "resets", "--depth", "6").decode().splitlines()
    told = {}  # words of a caution → its number
    met = 0
    for index, line in enumerate(lines):
        before = re.match(r"! Caution (\d+): (.*)", lines[index - 1].strip())
        if before:
            assert before[2] not in told, "stated in full twice"
            told[before[2]] = before[1]
        for title, words in safety.items():
            if line.strip().startswith(f"Check: {title} ("):
                met += 1
                assert lines[index - 1].strip().startswith("! "), (lines[index - 1], line)
                if line.endswith(" …"):
                    continue  # a hint of the danger is enough where the check itself is elsewhere
                assert words in told, (words, line)
                assert before or f"caution {told[words]} above" in lines[index - 1], (lines[index - 1], line)
    assert met > 0, "no such step in this plan: choose another"


def test_a_symptom_nobody_knows_is_refused_with_those_known():
    done = run("plan", "--symptom", "sulks")
    assert done.returncode == 1 and done.stdout == b""
    text = done.stderr.decode()
    known = [one["id"] for path in (log_runner.DATA / "knowledge").glob("symptoms-*.json")
             for one in json.loads(path.read_text(encoding="utf-8"))["symptoms"]]
    assert "sulks" in text and all(one in text for one in known) and len(known) >= 10, text


def test_json_has_no_commas_from_the_locale():
    surroundings = comma_locale()
    if surroundings is None:
        return "no comma locale can be made"
    args = ["plan", "--symptom", "resets", "--depth", "2", "--json"]
    assert succeed(*args, env=surroundings) == succeed(*args)
    args = ["plan", "--problem", CASES, "--json"]
    assert succeed(*args, env=surroundings) == succeed(*args)
    return None


def test_a_damaged_session_is_planned_from_and_said():
    path = write("damaged.rwlog", as_lines([]) + [b"rubbish\n"])
    done = run("plan", path, "--depth", "1")
    assert done.returncode == 1 and b"line 2 " in done.stderr and b"Check: " in done.stdout


if __name__ == "__main__":
    log_runner.main(globals())
