"""Checks a bag without any code of this project: RFC 8493 with nothing but Python's hashlib.

    python3 scripts/reference/bag.py FOLDER

Prints one line for each fault and ends with 1, or prints "valid" and ends with 0. It knows what
this project's own bags need: version 1.0, UTF-8, no fetch.txt.
"""

import hashlib
import re
import sys
from pathlib import Path

bag = Path(sys.argv[1])
faults = []

declaration = (bag / "bagit.txt").read_bytes()
if declaration != b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n":
    faults.append("bagit.txt is not the declaration of version 1.0 in UTF-8")

present = {p.relative_to(bag).as_posix() for p in bag.rglob("*") if p.is_file()}
payload = {name for name in present if name.startswith("data/")}
tags = {name for name in present if not name.startswith(("data/", "tagmanifest-"))}


def manifest(name):
    entries = {}
    for line in (bag / name).read_text("utf-8").splitlines():
        found = re.fullmatch(r"([0-9a-f]+)  (.+)", line)
        if not found:
            faults.append(f"{name}: no digest and path in {line!r}")
            continue
        path = re.sub("%(25|0A|0D)", lambda m: chr(int(m[1], 16)), found[2])
        if path in entries:
            faults.append(f"{name}: {path} twice")
        entries[path] = found[1]
    return entries


for algorithm in ("sha256", "sha512"):
    for name, wanted in ((f"manifest-{algorithm}.txt", payload), (f"tagmanifest-{algorithm}.txt", tags)):
        entries = manifest(name)
        for path in sorted(wanted - entries.keys()):
            faults.append(f"{name}: {path} is in the bag and not listed")
        for path in sorted(entries.keys() - wanted):
            faults.append(f"{name}: {path} is listed and not in the bag")
        for path in sorted(entries.keys() & wanted):
            with open(bag / path, "rb") as file:
                digest = hashlib.file_digest(file, algorithm).hexdigest()
            if digest != entries[path]:
                faults.append(f"{name}: {path} has another digest")

oxum = re.search(r"^Payload-Oxum: (\d+)\.(\d+)$", (bag / "bag-info.txt").read_text("utf-8"), re.M)
total = sum((bag / path).stat().st_size for path in payload)
if not oxum or (int(oxum[1]), int(oxum[2])) != (total, len(payload)):
    faults.append(f"Payload-Oxum is not {total}.{len(payload)}")

print("\n".join(faults) or "valid")
sys.exit(1 if faults else 0)
