# SPDX-License-Identifier: MIT
"""Compares the plan of every example with the one kept here, byte for byte.

STRIKEOFF_UPDATE_GOLDEN=1 writes the plans instead; read the difference before committing it."""

import difflib
import os
import unittest

from program import EXAMPLES, SOURCE, plan

UPDATE = os.environ.get("STRIKEOFF_UPDATE_GOLDEN") == "1"


class Golden(unittest.TestCase):
    def test_every_example_gives_the_plan_kept(self):
        for job in EXAMPLES:
            for name, form in (("plan.txt", "text"), ("plan.json", "json")):
                path = SOURCE / "tests" / "golden" / job.parent.name / name
                with self.subTest(str(path)):
                    self.compare(path, plan(job, form))

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
