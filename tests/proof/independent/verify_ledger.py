#!/usr/bin/env python3
"""Proves an exported ledger with nothing but Python's own library: it shares no code with the program that wrote it.

    verify_ledger.py LEDGER SIZE:ROOT [--checks CHECKS.csv] [--proof PROOF.json]

LEDGER is what `sturn ledger export` writes, one entry a line. SIZE:ROOT is a checkpoint that was kept outside the shop,
as a certificate prints it: the first SIZE entries must hash to ROOT (RFC 9162, 2.1.1; SHA-256). With --checks, the
readings of `sturn export checks` must be those that the ledger tells of, neither more nor fewer. With --proof, the
output of `sturn ledger prove CHECK --json` must lead from that entry to its root (RFC 9162, 2.1.3.2).
Exit status 0: all of it holds. 1: what does not is printed.
"""
import argparse
import collections
import csv
import hashlib
import json
import sys


def leaf_hash(entry: bytes) -> bytes:
    return hashlib.sha256(b"\x00" + entry).digest()


def node_hash(left: bytes, right: bytes) -> bytes:
    return hashlib.sha256(b"\x01" + left + right).digest()


def root_of(leaves):
    """RFC 9162, 2.1.1, from the definition: split at the largest power of two below the size."""
    if not leaves:
        return hashlib.sha256(b"").digest()
    stack = []  # (height, hash) of complete subtrees, highest first
    for leaf in leaves:
        height, top = 0, leaf
        while stack and stack[-1][0] == height:
            top = node_hash(stack.pop()[1], top)
            height += 1
        stack.append((height, top))
    top = stack.pop()[1]
    while stack:
        top = node_hash(stack.pop()[1], top)
    return top


def leads_to_root(leaf: bytes, index: int, size: int, path, root: bytes) -> bool:
    """RFC 9162, 2.1.3.2."""
    if index >= size:
        return False
    fn, sn, r = index, size - 1, leaf
    for p in path:
        if sn == 0:
            return False
        if fn & 1 or fn == sn:
            r = node_hash(p, r)
            while fn and not fn & 1:
                fn >>= 1
                sn >>= 1
        else:
            r = node_hash(r, p)
        fn >>= 1
        sn >>= 1
    return sn == 0 and r == root


class Trail:
    def __init__(self, path):
        with open(path, "rb") as file:
            self.lines = file.read().split(b"\n")
        if self.lines and not self.lines[-1]:
            self.lines.pop()
        self.leaves = [leaf_hash(line) for line in self.lines]
        self.faults = []

    def read_entries(self):
        """Each entry counts on from the one before and is written as RFC 8785 has it."""
        for number, line in enumerate(self.lines, start=1):
            try:
                entry = json.loads(line.decode("utf-8"))
            except ValueError as error:
                self.faults.append(f"entry {number} is no JSON: {error}")
                continue
            if entry.get("seq") != number:
                self.faults.append(f"entry {number} says it is entry {entry.get('seq')}")
            plain = json.dumps(entry, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
            if plain.encode("utf-8") != line:
                self.faults.append(f"entry {number} is not written canonically")
            yield entry

    def compare_checkpoint(self, checkpoint):
        size, root = checkpoint.removeprefix("STURN:L:").split(":")
        size = int(size)
        if size > len(self.lines):
            self.faults.append(f"the ledger has {len(self.lines)} entries, the checkpoint counted {size}")
        elif root_of(self.leaves[:size]).hex() != root.lower():
            self.faults.append(f"the first {size} entries do not have the checkpoint's root")

    def compare_proof(self, path):
        with open(path, encoding="utf-8") as file:
            proof = json.load(file)
        size, root = proof["checkpoint"].split(":")
        index = proof["sequence"] - 1
        hashes = [bytes.fromhex(text) for text in proof["path"]]
        leaf = self.leaves[index] if index < len(self.leaves) else b""
        if leaf.hex() != proof["leaf"] or not leads_to_root(leaf, index, int(size), hashes, bytes.fromhex(root)):
            self.faults.append(f"the proof of check {proof['check']} does not lead to its root")


def told_readings(entries):
    """Every reading the ledger tells of, a corrected check's left out: (tool, date, phase, target, reading, unit)."""
    checks = {}
    corrected = set()
    for entry in entries:
        if entry.get("kind") != "check":
            continue
        facts = entry["facts"]
        checks[facts["id"]] = facts
        if facts["corrects"] is not None:
            corrected.add(facts["corrects"])
    readings = collections.Counter()
    for number, facts in checks.items():
        if number in corrected:
            continue
        for point in facts["points"]:
            for reading in point["readings"]:
                readings[(facts["tool"], facts["date"], facts["phase"], float(point["target"]), reading)] += 1
    return readings


def exported_readings(path):
    with open(path, encoding="utf-8", newline="") as file:
        return collections.Counter(
            (row["tool"], row["date"], row["phase"], float(row["target"]), row["reading"])
            for row in csv.DictReader(file)
        )


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ledger")
    parser.add_argument("checkpoint")
    parser.add_argument("--checks")
    parser.add_argument("--proof")
    typed = parser.parse_args()
    trail = Trail(typed.ledger)
    entries = list(trail.read_entries())
    trail.compare_checkpoint(typed.checkpoint)
    if typed.proof:
        trail.compare_proof(typed.proof)
    if typed.checks:
        told, exported = told_readings(entries), exported_readings(typed.checks)
        for reading in (told - exported).keys():
            trail.faults.append(f"the ledger tells of a reading that no record shows: {reading}")
        for reading in (exported - told).keys():
            trail.faults.append(f"a record shows a reading that the ledger does not tell of: {reading}")
    for fault in trail.faults[:100]:
        print(fault)
    if not trail.faults:
        print(f"{len(trail.lines)} entries hold")
    return 1 if trail.faults else 0


if __name__ == "__main__":
    sys.exit(main())
