"""Checks plan files against a JSON Schema with two programs that are not ours.

Reads YAML with PyYAML, resolved as the YAML 1.2 core schema does, and validates
with the jsonschema package. Arguments: the schema, and a file of lines
"accepts PATH" or "refuses PATH". Prints one line for each file that the schema
does not treat as said, and how many files there were.
"""

import json
import re
import sys

import jsonschema
import yaml


class CoreLoader(yaml.SafeLoader):
    """YAML 1.2 core schema (section 10.3): no dates, no yes and no."""


CoreLoader.yaml_implicit_resolvers = {}
for tag, pattern, first in [
    ("bool", r"^(?:true|True|TRUE|false|False|FALSE)$", "tTfF"),
    ("null", r"^(?:~|null|Null|NULL|)$", ["~", "n", "N", ""]),
    ("int", r"^[-+]?[0-9]+$", "-+0123456789"),
    ("float", r"^[-+]?(?:\.[0-9]+|[0-9]+\.[0-9]*)(?:[eE][-+]?[0-9]+)?$", "-+.0123456789"),
]:
    CoreLoader.add_implicit_resolver("tag:yaml.org,2002:" + tag, re.compile(pattern), list(first))


def verdict(validator, path):
    try:
        with open(path, encoding="utf-8") as f:
            plan = yaml.load(f, CoreLoader)
    except yaml.YAMLError as e:
        return "refuses", "YAML: %s" % e
    error = jsonschema.exceptions.best_match(validator.iter_errors(plan))
    if error is None:
        return "accepts", ""
    return "refuses", "%s: %s" % ("/".join(map(str, error.absolute_path)), error.message[:300])


def main(schema_path, list_path):
    with open(schema_path, encoding="utf-8") as f:
        schema = json.load(f)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    count = 0
    with open(list_path, encoding="utf-8") as f:
        for line in f:
            want, path = line.rstrip("\n").split(" ", 1)
            got, why = verdict(validator, path)
            count += 1
            if got != want:
                print("%s: the schema %s it, want %s. %s" % (path, got, want, why))
    print("%d files" % count)


main(*sys.argv[1:])
