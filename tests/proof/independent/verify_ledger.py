#!/usr/bin/env python3
"""Proves an exported ledger with nothing but Python's own library: it shares no code with the program that wrote it.

    verify_ledger.py LEDGER SIZE:ROOT [--checks CHECKS.csv] [--proof PROOF.json] [--key HEX]

LEDGER is what `sturn ledger export` writes, one entry a line. SIZE:ROOT is a checkpoint that was kept outside the shop,
as a certificate prints it: the first SIZE entries must hash to ROOT (RFC 9162, 2.1.1; SHA-256). With --checks, the
readings of `sturn export checks` must be those that the ledger tells of, neither more nor fewer. With --proof, the
output of `sturn ledger prove CHECK --json` must lead from that entry to its root (RFC 9162, 2.1.3.2). Signatures in the
ledger are checked as db/proof/PROVING.md tells (Ed25519, RFC 8032); with --key, that public key must be among the keys
that signed, and each later one have been signed by the one before.
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


# Ed25519 verification from RFC 8032, 5.1: the field of 2^255 - 19, points in extended coordinates (5.1.4).
FIELD = 2**255 - 19
ORDER = 2**252 + 27742317777372353535851937790883648493
CURVE_D = -121665 * pow(121666, FIELD - 2, FIELD) % FIELD
ROOT_OF_MINUS_ONE = pow(2, (FIELD - 1) // 4, FIELD)


def add_points(p, q):
    a = (p[1] - p[0]) * (q[1] - q[0]) % FIELD
    b = (p[1] + p[0]) * (q[1] + q[0]) % FIELD
    c = 2 * p[3] * q[3] * CURVE_D % FIELD
    d = 2 * p[2] * q[2] % FIELD
    e, f, g, h = b - a, d - c, d + c, b + a
    return e * f % FIELD, g * h % FIELD, f * g % FIELD, e * h % FIELD


def multiply(scalar, point):
    product = (0, 1, 1, 0)
    while scalar:
        if scalar & 1:
            product = add_points(product, point)
        point = add_points(point, point)
        scalar >>= 1
    return product


def point_of(octets: bytes):
    """RFC 8032, 5.1.3; None for what is no point."""
    number = int.from_bytes(octets, "little")
    y, sign = number & ((1 << 255) - 1), number >> 255
    if y >= FIELD:
        return None
    square = (y * y - 1) * pow(CURVE_D * y * y + 1, FIELD - 2, FIELD) % FIELD
    x = pow(square, (FIELD + 3) // 8, FIELD)
    if (x * x - square) % FIELD:
        x = x * ROOT_OF_MINUS_ONE % FIELD
    if (x * x - square) % FIELD or (x == 0 and sign):
        return None
    if x & 1 != sign:
        x = FIELD - x
    return x, y, 1, x * y % FIELD


BASE = point_of((4 * pow(5, FIELD - 2, FIELD) % FIELD).to_bytes(32, "little"))


def is_signed_by(key: str, message: bytes, signature: str) -> bool:
    """RFC 8032, 5.1.7."""
    try:
        octets, signed = bytes.fromhex(key), bytes.fromhex(signature)
    except ValueError:
        return False
    if len(octets) != 32 or len(signed) != 64:
        return False
    public, commitment = point_of(octets), point_of(signed[:32])
    scalar = int.from_bytes(signed[32:], "little")
    if public is None or commitment is None or scalar >= ORDER:
        return False
    challenge = int.from_bytes(hashlib.sha512(signed[:32] + octets + message).digest(), "little") % ORDER
    left, right = multiply(scalar, BASE), add_points(commitment, multiply(challenge, public))
    return (left[0] * right[2] - right[0] * left[2]) % FIELD == 0 and (
        left[1] * right[2] - right[1] * left[2]
    ) % FIELD == 0


def statement(title, *lines):
    return "".join(line + "\n" for line in (title, *(f"{name}: {value}" for name, value in lines))).encode()


def checkpoint_statement(shop, facts):
    return statement("steadyturn checkpoint v1", ("shop", shop), ("key", facts["key"]), ("size", facts["size"]),
                     ("root", facts["root"]), ("time", facts["at"]))


def key_statement(shop, facts):
    return statement("steadyturn key v1", ("shop", shop), ("key", facts["id"]), ("public", facts["public_key"]),
                     ("holder", facts["holder"]), ("replaces", facts["replaces"] or "nothing"),
                     ("lost", facts["lost_reason"] or "nothing"), ("size", facts["size"]), ("root", facts["root"]),
                     ("time", facts["made_at"]))


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

    def compare_signatures(self, entries, trusted):
        """Who may sign from which entry on, and whether what was signed is the ledger as it stands."""
        shop, keys, good = "", [], 0
        for entry in entries:
            number, kind, facts = entry["seq"], entry["kind"], entry["facts"]
            if kind == "setting" and facts["name"] == "shop_id":
                shop = facts["value"]
            if kind not in ("signing_key", "checkpoint"):
                continue
            if facts["size"] != number - 1 or root_of(self.leaves[: number - 1]).hex() != facts["root"]:
                self.faults.append(f"what entry {number} signed is not the ledger's first {number - 1} entries")
            if kind == "checkpoint":
                if not keys or facts["key"] != keys[-1]["id"]:
                    self.faults.append(f"entry {number} is signed by a key that is not in force")
                elif not is_signed_by(keys[-1]["public_key"], checkpoint_statement(shop, facts), facts["signature"]):
                    self.faults.append(f"the signature of entry {number} does not hold")
                else:
                    good += 1
                continue
            text = key_statement(shop, facts)
            if facts["id"] != hashlib.sha256(bytes.fromhex(facts["public_key"])).hexdigest()[:16]:
                self.faults.append(f"the key of entry {number} has another id than it should")
            if not is_signed_by(facts["public_key"], text, facts["signature"]):
                self.faults.append(f"the key of entry {number} has not signed for itself")
            if facts["replaces"] != (keys[-1]["id"] if keys else ""):
                self.faults.append(f"the key of entry {number} does not replace the one before")
            elif keys and facts["lost_reason"]:
                print(f"note: the key of entry {number} replaces one that was lost: {facts['lost_reason']}")
                if any(key["public_key"] == trusted for key in keys):
                    self.faults.append(f"the trusted key does not vouch for the key of entry {number}")
            elif keys and not is_signed_by(keys[-1]["public_key"], text, facts["old_signature"]):
                self.faults.append(f"the key of entry {number} was not signed by the one before")
            keys.append(facts)
            good += 1
        if trusted and all(key["public_key"] != trusted for key in keys):
            self.faults.append(f"the ledger was not signed by the trusted key {trusted}")
        return good

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
    parser.add_argument("--key", default="")
    typed = parser.parse_args()
    trail = Trail(typed.ledger)
    entries = list(trail.read_entries())
    trail.compare_checkpoint(typed.checkpoint)
    signed = trail.compare_signatures(entries, typed.key.lower())
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
        print(f"{len(trail.lines)} entries hold, {signed} signed statements among them")
    return 1 if trail.faults else 0


if __name__ == "__main__":
    sys.exit(main())
