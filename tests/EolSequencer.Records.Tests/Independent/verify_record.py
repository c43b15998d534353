"""Checks the record of a data folder without EolSequencer: ledger, seals, keys, and the chain of every run.

    python3 verify_record.py record.db

Needs Python 3.9 and the openssl command, no network and no private key. Written from src/EolSequencer.Records/README.md.
Prints what is not as it was written, one finding a line, then a sum. Ends with 0 when all is whole, 1 when it is not, 2 when
it could not be checked. Not checked: series (they are compressed with Brotli) and the tables that are made from the events.
"""

import hashlib
import json
import pathlib
import sqlite3
import subprocess
import sys
import tempfile

NOTHING_BEFORE = bytes(32)


class Record:
    """A record, and what was found wrong with it."""

    def __init__(self, database):
        self.database = database
        self.findings = []
        self.begun = {}  # run -> link of its first event
        self.ended = {}  # run -> ledger entry of its end
        self.keys_made = set()  # SHA-256 of public keys

    def find(self, text):
        self.findings.append(text)

    def chain(self, name, rows):
        """Follows a chain over rows of (number, link, bytes); goes on from the link it finds. Yields (number, link, content)."""
        before, due = NOTHING_BEFORE, 1
        for number, link, content in rows:
            if number != due:
                self.find(f"{name} {due}: missing")
            elif hashlib.sha256(before + content).digest() != link:
                self.find(f"{name} {number}: its bytes and the link before do not give its link")
            before, due = link, number + 1
            try:
                said = dict(json.loads(content))
            except (ValueError, TypeError):
                self.find(f"{name} {number}: its bytes are no JSON object")
                continue
            if said.get("n") != number:
                self.find(f"{name} {number}: its bytes say {said.get('n')}")
            yield number, link, said

    def check_ledger(self):
        seals = {n: sealed for n, *sealed in self.rows("SELECT ledger, signature, public FROM seal JOIN station_key ON station_key.id = key")}
        entries = 0
        for number, link, entry in self.chain("ledger entry", self.rows("SELECT n, hash, bytes FROM ledger ORDER BY n")):
            entries += 1
            if "begun" in entry:
                self.begun[entry["begun"]] = entry.get("first")
                continue
            if "ended" in entry:
                self.ended[entry["ended"]] = entry
            elif entry.get("act") == "key-made":
                self.keys_made.add(entry.get("about", {}).get("public"))
            sealed = seals.pop(number, None)
            if sealed is None:
                self.find(f"ledger entry {number}: it is not sealed")
            elif not is_seal(link, *sealed):
                self.find(f"ledger entry {number}: its seal does not fit")
        for number in seals:
            self.find(f"seal of ledger entry {number}: there is no such entry, or none that has a seal")
        for key, public in self.rows("SELECT id, public FROM station_key"):
            if hashlib.sha256(public).hexdigest() not in self.keys_made:
                self.find(f"station key {key}: the ledger does not know it")
        return entries

    def check_runs(self):
        runs = [row for (row,) in self.rows("SELECT DISTINCT id >> 20 FROM event ORDER BY 1")]
        seen = set()
        for row in runs:
            seen.add(self.check_run(row))
        for run in self.begun.keys() - seen:
            self.find(f"run {run}: it is missing")
        return len(runs)

    def check_run(self, row):
        name, first, last, count = f"in row {row}", None, None, 0
        events = self.rows("SELECT id & 1048575, hash, bytes FROM event WHERE id >> 20 = ? ORDER BY id", row)
        for number, link, event in self.chain(f"run row {row} event", events):
            count += 1
            last = link.hex()
            if number == 1:
                name, first = event.get("run-begun", name), last
                for path, sha in event.get("sources", []):
                    self.check_source(name, path, sha)
        end = self.ended.get(name)
        if self.begun.get(name) != first:
            self.find(f"run {name}: its first event is not the one in the ledger")
        if end and (end.get("last"), end.get("events")) != (last, count):
            self.find(f"run {name}: its last event is not the one in the ledger")
        return name

    def check_source(self, run, path, sha):
        kept = self.rows("SELECT bytes FROM source WHERE hash = ?", sha).fetchone()
        if kept is None or hashlib.sha256(kept[0]).hexdigest() != sha:
            self.find(f"run {run}: the text of {path} is missing or changed")

    def rows(self, sql, *values):
        return self.database.execute(sql, values)


def is_seal(link, signature, public):
    """Asks openssl whether r and s (IEEE P1363) are a signature over this link with this key (SubjectPublicKeyInfo)."""
    with tempfile.TemporaryDirectory() as folder:
        files = {"link": link, "seal": der_of(signature[:32], signature[32:]), "key": public}
        for name, content in files.items():
            (pathlib.Path(folder) / name).write_bytes(content)
        command = "openssl pkeyutl -verify -pubin -keyform DER -inkey key -in link -sigfile seal".split()
        return subprocess.run(command, cwd=folder, capture_output=True).returncode == 0


def der_of(*numbers):
    """A DER sequence of whole numbers (X.690), each below 2**256."""
    whole = b""
    for number in numbers:
        content = number.lstrip(b"\0") or b"\0"
        if content[0] & 0x80:
            content = b"\0" + content
        whole += bytes([2, len(content)]) + content
    return bytes([0x30, len(whole)]) + whole


def main(path):
    # immutable: a medium that cannot be written is read as well. What still stands in a write-ahead log would not be seen.
    log = pathlib.Path(path + "-wal")
    how = "mode=ro" if log.exists() and log.stat().st_size > 0 else "mode=ro&immutable=1"
    record = Record(sqlite3.connect(f"{pathlib.Path(path).resolve().as_uri()}?{how}", uri=True))
    entries = record.check_ledger()
    runs = record.check_runs()
    for finding in record.findings:
        print(finding)
    print(f"{runs} runs, {entries} ledger entries, {len(record.findings)} findings")
    return 1 if record.findings else 0


if __name__ == "__main__":
    try:
        sys.exit(main(*sys.argv[1:]))
    except (OSError, TypeError, sqlite3.Error) as trouble:
        print(f"it could not be checked: {trouble}")
        sys.exit(2)
