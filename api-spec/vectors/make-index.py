#!/usr/bin/env python3
"""Writes index.json from the vector files beside it: python3 make-index.py"""

import hashlib
import json
import pathlib

HERE = pathlib.Path(__file__).resolve().parent

entries = []
for file in HERE.glob("*/*.json"):
    content = file.read_bytes()
    vector = json.loads(content)
    entries.append(
        {
            "id": vector["id"],
            "file": file.relative_to(HERE).as_posix(),
            "kind": vector["kind"],
            "sha256": hashlib.sha256(content).hexdigest(),
        }
    )
entries.sort(key=lambda entry: entry["id"])
lines = ",\n".join("  " + json.dumps(entry) for entry in entries)
(HERE / "index.json").write_text(f"[\n{lines}\n]\n", encoding="utf-8", newline="\n")
print(len(entries), "vectors")
