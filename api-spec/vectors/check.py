#!/usr/bin/env python3
"""Runs the golden vectors against a service: python3 check.py http://localhost:8080 [part of an id]

Python 3 standard library only. Prints each vector that fails, and the greatest share of a tolerance that was used. Ends
with 1 if a vector fails, if one with a declared disagreement passes, or if no vector ran.
"""

import json
import pathlib
import sys
import urllib.error
import urllib.parse
import urllib.request

HERE = pathlib.Path(__file__).resolve().parent


def ask(base, request):
    """Sends the request of a vector; status and parsed body."""
    url = base + request["path"]
    if "query" in request:
        url += "?" + urllib.parse.urlencode(request["query"])
    headers = dict(request.get("headers", {}))
    headers.setdefault("Accept", "application/json")
    data = None
    if "text" in request:
        data = request["text"].encode("utf-8")
        headers.setdefault("Content-Type", "application/json")
    elif "body" in request:
        data = json.dumps(request["body"]).encode("utf-8")
        headers["Content-Type"] = "application/json"
    call = urllib.request.Request(url, data=data, headers=headers, method=request["method"])
    try:
        with urllib.request.urlopen(call, timeout=60) as answer:
            status, body = answer.status, answer.read()
    except urllib.error.HTTPError as problem:
        status, body = problem.code, problem.read()
    try:
        return status, json.loads(body)
    except ValueError:
        return status, None


MISSING = object()


def at(tree, pointer):
    """The value at a JSON pointer (RFC 6901), or MISSING."""
    for part in pointer.split("/")[1:]:
        name = part.replace("~1", "/").replace("~0", "~")
        if isinstance(tree, list) and name.isdigit() and int(name) < len(tree):
            tree = tree[int(name)]
        elif isinstance(tree, dict) and name in tree:
            tree = tree[name]
        else:
            return MISSING
    return tree


def same(a, b):
    """Equal as JSON: numbers by value, but a truth value is no number."""
    if isinstance(a, bool) or isinstance(b, bool):
        return a is b
    return a == b


def holds(element, wanted):
    return isinstance(element, dict) and all(
        name in element and same(element[name], value) for name, value in wanted.items()
    )


def number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def fault(tree, expected):
    """None if the expectation holds, else what is wrong; and the share of the tolerance that was used."""
    value = at(tree, expected["pointer"])
    if expected.get("absent"):
        return (None if value is MISSING else f"is {value}, should be absent"), 0.0
    if value is MISSING:
        return "is absent", 0.0
    if "value" in expected:
        tolerance = expected.get("absTol", 0.0) + expected.get("relTol", 0.0) * abs(expected["value"])
        if not number(value):
            return f"is {value!r}, no number", 0.0
        off = abs(value - expected["value"])
        share = off / tolerance if tolerance > 0.0 else (0.0 if off == 0.0 else float("inf"))
        return (None if off <= tolerance else f"is {value}, should be {expected['value']} +- {tolerance:.6g}"), share
    if "min" in expected or "max" in expected:
        if not number(value):
            return f"is {value!r}, no number", 0.0
        if value < expected.get("min", float("-inf")):
            return f"is {value}, should be at least {expected['min']}", 0.0
        if value > expected.get("max", float("inf")):
            return f"is {value}, should be at most {expected['max']}", 0.0
        return None, 0.0
    if "is" in expected:
        return (None if same(value, expected["is"]) else f"is {value!r}, should be {expected['is']!r}"), 0.0
    if "count" in expected:
        length = len(value) if isinstance(value, list) else -1
        return (None if length == expected["count"] else f"has {length} elements, not {expected['count']}"), 0.0
    if "has" in expected:
        found = isinstance(value, list) and any(holds(element, expected["has"]) for element in value)
        return (None if found else f"has no element {expected['has']}"), 0.0
    if "hasNot" in expected:
        found = not isinstance(value, list) or any(holds(element, expected["hasNot"]) for element in value)
        return (f"has an element {expected['hasNot']}" if found else None), 0.0
    return "has an expectation of no known kind", 0.0


def main(base, part):
    failed, passed, missed, most = 0, 0, 0, (0.0, "")
    index = json.loads((HERE / "index.json").read_text(encoding="utf-8"))
    for entry in index:
        if part not in entry["id"]:
            continue
        vector = json.loads((HERE / entry["file"]).read_text(encoding="utf-8"))
        status, tree = ask(base.rstrip("/"), vector["request"])
        faults = []
        if status != vector["expect"]["status"]:
            faults.append(f"status is {status}, should be {vector['expect']['status']}")
        else:
            for expected in vector["expect"]["values"]:
                wrong, share = fault(tree, expected)
                if wrong:
                    faults.append(f"{expected['pointer']} {wrong}")
                elif "disagreement" not in vector:
                    most = max(most, (share, f"{vector['id']} {expected['pointer']}"))
        if "disagreement" in vector:
            if faults:
                missed += 1
                print(f"known disagreement: {vector['id']}: {'; '.join(faults)}")
            else:
                failed += 1
                print(f"FAILED {vector['id']}: declared as a disagreement, but holds: delete the declaration")
        elif faults:
            failed += 1
            print(f"FAILED {vector['id']}: {'; '.join(faults)}")
        else:
            passed += 1
    print(f"greatest share of a tolerance: {100.0 * most[0]:.0f} % ({most[1]})")
    print(f"{passed} passed, {failed} failed, {missed} known disagreements")
    return 1 if failed or passed == 0 else 0


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else ""))
