# test-schemas.py: every shipped file fits its schema, and deliberately wrong documents do not.
# SPDX-License-Identifier: GPL-3.0-or-later
import copy
import json
import pathlib

import jsonschema

from shipped import DATA, DEMOS, STAGES, Report, knowledge_paths, load, profile_paths

SCHEMAS = {name: load(DATA / "schemas" / f"{name}.schema.json") for name in ("profile", "session", "notes", "knowledge", "stages", "lesson")}
STORE = {schema["$id"]: schema for schema in SCHEMAS.values()}
WRONG = load(pathlib.Path(__file__).with_name("wrong-documents.json"))


def validator(name, definition=None):
    schema = SCHEMAS[name]
    resolver = jsonschema.RefResolver(schema["$id"], schema, STORE)
    if definition:
        schema = {"$ref": f"{schema['$id']}#/definitions/{definition}"}
    return jsonschema.Draft7Validator(schema, resolver=resolver)


def complaints_about(document, judge, where):
    for error in judge.iter_errors(document):
        place = "/".join(str(step) for step in error.absolute_path)
        yield f"{where}: {place or '(top)'}: {error.message[:200]}"


def session_complaints(path):
    """Line by line: a header, then events numbered upwards; every line must be whole JSON."""
    header, event = validator("session", "header"), validator("session", "event")
    last = 0
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        where = f"{path.name}:{number}"
        try:
            document = json.loads(line)
        except ValueError as problem:
            yield f"{where}: {problem}"
            continue
        yield from complaints_about(document, header if number == 1 else event, where)
        if number > 1:
            if document.get("n", 0) <= last:
                yield f"{where}: n {document.get('n')} does not follow {last}"
            last = document.get("n", last)
    if last == 0:
        yield f"{path.name}: no event"


def put(document, pointer, value):
    """Sets what a JSON pointer names; the word (absent) removes it."""
    *path, last = pointer.strip("/").split("/")
    for step in path:
        document = document[int(step) if isinstance(document, list) else step]
    last = int(last) if isinstance(document, list) else last
    if value == "(absent)":
        del document[last]
    else:
        document[last] = value


def changed(base, changes):
    document = copy.deepcopy(base)
    for pointer, value in changes.items():
        put(document, pointer, value)
    return document


def table_complaints():
    """Each base must be right and each change to it wrong, or the change would prove nothing."""
    for group in WRONG:
        judge = validator(group["schema"], group.get("definition"))
        base = load(DATA / group["file"]) if "file" in group else group["base"]
        yield from complaints_about(base, judge, f"{group['title']}: the right one")
        for wrong in group["wrong"]:
            if judge.is_valid(changed(base, wrong["set"])):
                yield f"{group['title']}: accepted although {wrong['why']}"
        for right in group.get("right", []):
            yield from complaints_about(changed(base, right["set"]), judge, f"{group['title']}: {right['why']}")


def schema_complaints():
    for name, schema in SCHEMAS.items():
        try:
            jsonschema.Draft7Validator.check_schema(schema)
        except jsonschema.SchemaError as problem:
            yield f"{name}: {problem.message}"


def main():
    report = Report()
    report.claim("the schemas are draft-07 schemas", schema_complaints())
    for path in profile_paths():
        report.claim(f"{path.name} fits", complaints_about(load(path), validator("profile"), path.name))
    for path in knowledge_paths():
        report.claim(f"{path.name} fits", complaints_about(load(path), validator("knowledge"), path.name))
    report.claim("stages.json fits", complaints_about(load(STAGES), validator("stages"), "stages.json"))
    for path in sorted((DATA / "lessons").glob("*.json")):
        report.claim(f"{path.name} fits", complaints_about(load(path), validator("lesson"), path.name))
    for path in sorted(DEMOS.glob("*.rwlog")):
        report.claim(f"{path.name} fits line by line", session_complaints(path))
    report.claim("wrong documents are refused, unknown keys are not", table_complaints())
    report.finish()


main()
