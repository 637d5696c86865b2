# SPDX-License-Identifier: MIT
"""Compares the plan of every example with the one kept here, byte for byte, and the drawing that
README shows with the one that the program makes.

STRIKEOFF_UPDATE_GOLDEN=1 writes them instead; read the difference before committing it."""

import difflib
import os
import pathlib
import tempfile
import unittest

from program import EXAMPLES, SOURCE, plan, run

UPDATE = os.environ.get("STRIKEOFF_UPDATE_GOLDEN") == "1"


class Golden(unittest.TestCase):
    def test_every_example_gives_the_plan_kept(self):
        for job in EXAMPLES:
            for name, form in (("plan.txt", "text"), ("plan.json", "json")):
                path = SOURCE / "tests" / "golden" / job.parent.name / name
                with self.subTest(str(path)):
                    self.compare(path, plan(job, form))

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

    def test_every_plan_kept_belongs_to_an_example(self):
        kept = {path.parent.name for path in (SOURCE / "tests" / "golden").glob("*/plan.*")}
        self.assertEqual(kept, {job.parent.name for job in EXAMPLES})


unittest.main()
