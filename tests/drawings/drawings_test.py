# SPDX-License-Identifier: MIT
"""Every drawing of every example and of a set of hard jobs: in a browser, in a second reader of
SVG, and measured against the plan."""

import json
import os
import pathlib
import re
import subprocess
import tempfile
import unittest
import xml.etree.ElementTree as xml

import browser
import stress
from program import EXAMPLES

WRITE = os.environ["WRITE_DRAWINGS"]
SVG = "{http://www.w3.org/2000/svg}"


def write(directory):
    """Draws everything there; the names of the jobs, in the order of their numbers."""
    jobs = {job.parent.name: job for job in EXAMPLES}
    for name, text in stress.jobs().items():
        jobs[name] = pathlib.Path(directory, name + ".json")
        jobs[name].write_text(text, encoding="utf-8")
    subprocess.run([WRITE, directory, *jobs.values()], check=True, timeout=120)
    return list(jobs)


class Drawings(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.directory = tempfile.TemporaryDirectory()
        cls.addClassCleanup(cls.directory.cleanup)
        cls.jobs = write(cls.directory.name)
        cls.files = sorted(pathlib.Path(cls.directory.name).glob("*.svg"))
        cls.texts = {file.stem: file.read_text(encoding="utf-8") for file in cls.files}
        cls.trees = {stem: xml.fromstring(text) for stem, text in cls.texts.items()}

    def plan(self, job):
        number = self.jobs.index(job) + 1
        return json.loads(
            pathlib.Path(self.directory.name, f"{number}-plan.json").read_text(encoding="utf-8"))

    def drawing(self, job, name):
        return self.trees[f"{self.jobs.index(job) + 1}-{name}"]

    def test_a_browser_finds_no_text_on_another_and_nothing_off_the_page(self):
        found = browser.measure(os.environ["CHROMIUM"], self.texts.values())
        self.assertEqual(len(found), len(self.texts))
        wrong = [f"{self.jobs[int(stem.split('-')[0]) - 1]} {stem}: {fault}"
                 for stem, one in zip(self.texts, found) for fault in browser.faults(one)]
        self.assertEqual(wrong, [], "\n".join(wrong[:60]))


if __name__ == "__main__":
    unittest.main()
