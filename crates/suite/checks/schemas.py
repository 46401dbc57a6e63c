"""Holds answers of the program against the schemas they are published with.

usage: schemas.py SCHEMA.json ANSWER.json [SCHEMA.json ANSWER.json ...]

Every answer has to keep its schema. Then each is cut short and spoilt, in every way that a careless change of the
program would: a key left out, a key too many, a value of another kind. The schema has to object to each, or it says
less than the answer does. What does not hold is a line on standard error, and the exit code is 1. A summary is
printed as JSON.
"""

import copy
import json
import sys
from pathlib import Path

from jsonschema import Draft202012Validator

# Of a list so many members are kept before it is spoilt: none of ours says more of a longer one.
SHORT = 2
# Objects whose keys are names; another name in them is no mistake.
NAMES = {"points", "allowances"}


def shortened(value):
    if isinstance(value, list):
        return [shortened(member) for member in value[:SHORT]]
    if isinstance(value, dict):
        return {key: shortened(member) for key, member in value.items()}
    return value


def places(value, way=()):
    """The way to every value, the outermost first."""
    yield way
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, member in inside:
        yield from places(member, (*way, step))


def at(value, way):
    for step in way:
        value = value[step]
    return value


def spoilt(answer, optional):
    """The answer with one mistake, and what the mistake is."""
    for way in places(answer):
        value = at(answer, way)
        named = bool(way) and way[-1] in NAMES and isinstance(value, dict)
        if isinstance(value, dict) and not named:
            other = copy.deepcopy(answer)
            at(other, way)["a_key_too_many"] = 1
            yield other, f"{way} has a key too many"
        if not way:
            continue
        *above, last = way
        holder = at(answer, above)
        if isinstance(holder, dict) and not (above and above[-1] in NAMES) and last not in optional:
            other = copy.deepcopy(answer)
            del at(other, above)[last]
            yield other, f"{way} is left out"
        other = copy.deepcopy(answer)
        at(other, above)[last] = {"of": ["another", "kind"]}
        yield other, f"{way} is of another kind"


def optional_keys(schema):
    """Keys that some object of a schema may be without."""
    found = set()
    for way in places(schema):
        value = at(schema, way)
        if isinstance(value, dict) and "required" in value and "properties" in value:
            found |= set(value["properties"]) - set(value["required"])
    return found


def main(arguments):
    wrong, noticed = [], 0
    for schema_file, answer_file in zip(arguments[::2], arguments[1::2], strict=True):
        schema = json.loads(Path(schema_file).read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(schema)
        judge = Draft202012Validator(schema)
        answer = json.loads(Path(answer_file).read_text(encoding="utf-8"))
        for error in judge.iter_errors(answer):
            wrong.append(f"{answer_file}: {error.json_path}: {error.message[:200]}")
        for other, mistake in spoilt(shortened(answer), optional_keys(schema)):
            if judge.is_valid(other):
                wrong.append(f"{schema_file} does not mind that {mistake}")
            else:
                noticed += 1
    for line in wrong[:40]:
        print(line, file=sys.stderr)
    print(json.dumps({"answers": len(arguments) // 2, "noticed": noticed}))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
