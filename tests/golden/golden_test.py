# SPDX-License-Identifier: MIT
"""Compares the plan of every example with what is kept of it here, and the drawing that README shows
with the one that the program makes.

Two plans are kept as the text a person reads. Of the others and of every plan file a digest is kept,
section by section, so that a person can read what changed: how many lines or entries a section has,
the sum of its numbers by key, and a hash of all of it.

STRIKEOFF_UPDATE_GOLDEN=1 writes them instead; read the difference before committing it."""

import collections
import difflib
import hashlib
import json
import os
import pathlib
import re
import tempfile
import unittest

from program import EXAMPLES, SOURCE, plan, run

UPDATE = os.environ.get("STRIKEOFF_UPDATE_GOLDEN") == "1"
GOLDEN = SOURCE / "tests" / "golden"
WHOLE = ("potting-bench", "bakery-table")


def short_hash(text):
    return hashlib.sha256(text.encode()).hexdigest()[:10]


def numbers(key, value):
    """Every number under a value, with the key it stands at; of a list the list's own."""
    if isinstance(value, dict):
        for inner, below in value.items():
            yield from numbers(inner, below)
    elif isinstance(value, list):
        for below in value:
            yield from numbers(key, below)
    elif isinstance(value, (int, float)) and not isinstance(value, bool):
        yield key, value


def file_digest(printed):
    """A line for each section of a plan file, and under it the sums of its numbers by their keys."""
    lines = [f"whole file: {short_hash(printed)}"]
    for section, value in json.loads(printed).items():
        count = f"{len(value)} of them, " if isinstance(value, list) else ""
        lines.append(f"{section}: {count}{short_hash(json.dumps(value))}")
        sums = collections.defaultdict(float)
        for key, number in numbers(section, value):
            sums[key] += number
        lines += [f"  {key} {total:.9g}" for key, total in sums.items()]
    return "\n".join(lines) + "\n"


def text_digest(printed):
    """What is IN SHORT, and a line for each other section of a plan's text."""
    parts = re.split(r"^([A-Z ]+)\n-+\n", printed, flags=re.MULTILINE)
    sections = list(zip(parts[1::2], parts[2::2]))
    lines = [f"heading: {short_hash(parts[0])}"]
    for name, text in sections:
        lines.append(f"{name}: {len(text.splitlines())} lines, {short_hash(text)}")
        if name == "IN SHORT":
            lines += text.rstrip().splitlines()
    return "\n".join(lines) + "\n"


def kept_of(job):
    """The name of each file kept of an example, and what belongs in it."""
    text = plan(job, "text")
    yield "plan.json.digest", file_digest(plan(job, "json"))
    if job.parent.name in WHOLE:
        yield "plan.txt", text
    else:
        yield "plan.txt.digest", text_digest(text)


class Golden(unittest.TestCase):
    def test_every_example_gives_the_plan_kept(self):
        for job in EXAMPLES:
            for name, printed in kept_of(job):
                path = GOLDEN / job.parent.name / name
                with self.subTest(str(path)):
                    self.compare(path, printed)

    def test_the_drawing_of_the_readme_is_the_program_s(self):
        bench = SOURCE / "examples" / "potting-bench"
        with tempfile.TemporaryDirectory() as place:
            run("draw", bench / "job.json", "-o", place)
            drawn = pathlib.Path(place, "slab-1-plan.svg").read_text(encoding="utf-8")
        self.compare(bench / "slab-1-plan.svg", drawn)
        readme = (SOURCE / "README.md").read_text(encoding="utf-8")
        self.assertIn("(examples/potting-bench/slab-1-plan.svg)", readme)

    def compare(self, path, printed):
        if UPDATE:
            path.parent.mkdir(exist_ok=True)
            path.write_text(printed, encoding="utf-8", newline="")
        kept = path.read_bytes().decode()
        if kept != printed:
            lines = difflib.unified_diff(kept.splitlines(), printed.splitlines(), str(path),
                                         "printed", lineterm="")
            self.fail("\n".join(lines))

    def test_a_digest_tells_one_number_and_one_word_from_another(self):
        kept = '{"pour": {"end_min": 22, "joints": [{"at_mm": [1, 2]}]}, "checks": [{"title": "a"}]}'
        self.assertIn("  at_mm 3\n", file_digest(kept))
        for other in (kept.replace("22", "22.000000001"), kept.replace("[1, 2]", "[2, 1]"),
                      kept.replace('"a"', '"b"')):
            self.assertNotEqual(file_digest(kept), file_digest(other))
        text = "bench\n=====\n\nIN SHORT\n--------\n  4 bags\n\nSHOP\n----\n  screws\n"
        self.assertIn("  4 bags\nSHOP: 1 lines, ", text_digest(text))
        self.assertNotEqual(text_digest(text), text_digest(text.replace("screws", "nails")))

    def test_every_file_kept_belongs_to_an_example(self):
        names = {f"{job.parent.name}/{name}" for job in EXAMPLES for name, _ in kept_of(job)}
        kept = {path.relative_to(GOLDEN).as_posix() for path in GOLDEN.glob("*/plan.*")}
        self.assertEqual(kept, names)


unittest.main()
