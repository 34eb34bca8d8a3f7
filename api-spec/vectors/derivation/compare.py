#!/usr/bin/env python3
"""Holds the vectors against the derivations: every number that a script derives must stand in its vector.

Runs all scripts (some minutes). A stated value must be the derived one to its last digit but one; a bound may be laxer
by what the note of the vector says, at most 1 %, never stricter. Ends with 1 if one differs.
"""

import json
import pathlib
import sys

import balances
import cooling
import heating
import lethality

VECTORS = pathlib.Path(__file__).resolve().parent.parent


def derived():
    for vector, pointer, value in lethality.expected():
        yield vector, pointer, "value", value
    for module in (balances, cooling, heating):
        for row in module.expected():
            for key, value in row[2].items():
                yield row[0], row[1], key, value


def main():
    files = {path.stem: path for path in VECTORS.glob("*/*.json")}
    wrong, count = [], 0
    for vector, pointer, key, value in derived():
        count += 1
        if vector not in files:
            wrong.append(f"{vector}: derived, but there is no such vector")
            continue
        expected = json.loads(files[vector].read_text(encoding="utf-8"))["expect"]["values"]
        stated = [e[key] for e in expected if e["pointer"] == pointer and key in e]
        close = 1e-4 * abs(value) + 0.006
        if key == "value":
            good = any(abs(s - value) <= close for s in stated)
        elif key == "min":
            good = any(value * 0.99 - close <= s <= value + close for s in stated)
        else:
            good = any(value - close <= s <= value * 1.01 + close for s in stated)
        if not good:
            wrong.append(f"{vector} {pointer}: derived {key} {value:.4f}, stated {stated}")
    print("\n".join(wrong))
    print(f"{count} derived, {len(wrong)} differ")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
