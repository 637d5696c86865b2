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

    def test_another_reader_of_svg_draws_every_one(self):
        output = pathlib.Path(self.directory.name, "all.pdf")
        done = subprocess.run([os.environ["RSVG_CONVERT"], "-f", "pdf", "-o", output, *self.files],
                              capture_output=True, timeout=240, check=False)
        self.assertEqual((done.returncode, done.stderr), (0, b""))
        self.assertGreater(output.stat().st_size, 1000 * len(self.files))

    def test_the_same_job_gives_the_same_bytes(self):
        with tempfile.TemporaryDirectory() as again:
            write(again)
            for file in self.files:
                self.assertEqual(file.read_bytes(), pathlib.Path(again, file.name).read_bytes())

    def test_numbers_have_at_most_three_decimals_and_zero_no_sign(self):
        for stem, tree in self.trees.items():
            for element in tree.iter():
                for key, value in element.attrib.items():
                    if key in ("id", "fill", "aria-labelledby", "data-what", "stroke"):
                        continue
                    for number in re.findall(r"-?\d*\.?\d+(?:e[-+]?\d+)?", value):
                        self.assertNotRegex(number, r"^-0*\.?0*$|e|\.\d{4}", f"{stem}: {value}")

    def test_every_id_is_the_drawings_own(self):
        ids = [element.get("id") for tree in self.trees.values() for element in tree.iter()
               if element.get("id")]
        for stem, tree in self.trees.items():
            own = [element.get("id") for element in tree.iter() if element.get("id")]
            self.assertEqual(len(own), len(set(own)))
            for name in own:
                self.assertTrue(name.startswith(stem.split("-", 1)[1] + "-"), name)
        self.assertTrue(ids)

    def test_drawings_hold_no_script_and_fetch_nothing(self):
        for text in self.texts.values():
            self.assertNotRegex(text, r"<script|href|<image|<foreignObject|@import| on[a-z]+=")

    def test_a_hostile_name_stands_in_the_title_as_it_is_written(self):
        for i, name in enumerate(stress.HOSTILE):
            tree = self.drawing(f"hostile-{i + 1}", "slab-1-plan")
            shown = name.replace("\u202e", "\ufffd")
            title = tree.find(SVG + "title").text.rsplit(":", 1)[0].rstrip("\u2026")
            self.assertTrue(title and shown.startswith(title), title)

    def test_the_scale_of_a_slab_is_true(self):
        for job in self.jobs:
            for i, slab in enumerate(self.plan(job)["slabs"]):
                tree = self.drawing(job, f"slab-{i + 1}-plan")
                path = group(tree, "outline")[0].get("d").split("Z")[0]
                drawn = [tuple(map(float, pair.split())) for pair in re.split("[ML]", path) if pair]
                for axis in (0, 1):
                    real = [corner[axis] for corner in slab["outline_mm"]]
                    paper = [corner[axis] for corner in drawn]
                    self.assertAlmostEqual((max(paper) - min(paper)) * scale(tree),
                                           max(real) - min(real), delta=0.002 * scale(tree))

    def test_every_piece_of_a_board_is_drawn_to_scale(self):
        for job in self.jobs:
            for i, board in enumerate(self.plan(job)["cut_list"]["boards"][:60]):
                tree = self.drawing(job, f"board-{i + 1}")
                drawn = group(tree, "piece")
                pieces = [(piece["length_mm"], piece.get("width_mm", strip["width_mm"]))
                          for strip in board["strips"] for piece in strip["pieces"]]
                self.assertEqual(len(drawn), len(pieces))
                for box, (length, width) in zip(drawn, pieces):
                    for key, real in (("width", length), ("height", width)):
                        self.assertAlmostEqual(float(box.get(key)) * scale(tree), real,
                                               delta=0.001 * scale(tree))

    def test_every_piece_of_a_sheet_lies_where_the_plan_says(self):
        for job in self.jobs:
            for i, sheet in enumerate(self.plan(job)["cut_list"]["sheets"][:20]):
                name = f"{self.jobs.index(job) + 1}-sheet-{i + 1}"
                if name not in self.trees:
                    continue
                tree = self.trees[name]
                stock = group(tree, "stock")[0]
                left = float(stock.get("x"))
                bottom = float(stock.get("y")) + float(stock.get("height"))
                for box, piece in zip(group(tree, "piece"), sheet["pieces"], strict=True):
                    at = [float(box.get(key)) for key in ("x", "y", "width", "height")]
                    for paper, real in ((at[0] - left, piece["x_mm"]),
                                        (bottom - at[1] - at[3], piece["y_mm"]),
                                        (at[2], piece["width_mm"]), (at[3], piece["height_mm"])):
                        self.assertAlmostEqual(paper * scale(tree), real, delta=0.003 * scale(tree))

    def test_the_concrete_of_an_edge_section_is_as_thick_as_the_plan_says(self):
        for job in self.jobs:
            for i, slab in enumerate(self.plan(job)["slabs"][:40]):
                name = f"{self.jobs.index(job) + 1}-slab-{i + 1}-edge-1"
                if name not in self.trees or "apron" in job:
                    continue
                tree = self.trees[name]
                points = group(tree, "concrete")[0].get("points").split()
                heights = [float(point.split(",")[1]) for point in points]
                self.assertAlmostEqual((max(heights) - min(heights)) * scale(tree),
                                       slab["edge_thickness_mm"], delta=0.002 * scale(tree))

    def test_templates_are_full_size_and_their_square_measures_true(self):
        seen = 0
        for stem, tree in self.trees.items():
            if "-opening-" not in stem:
                continue
            seen += 1
            job = self.jobs[int(stem.split("-")[0]) - 1]
            units = self.plan(job)["job"]["units"]
            square = group(tree, "control-square")[0]
            self.assertEqual([float(square.get("width")), float(square.get("height"))],
                             [101.6, 101.6] if units == "us" else [100, 100])
            self.assertEqual(tree.get("width"), tree.get("viewBox").split()[2] + "mm")
        self.assertGreater(seen, 5)
        lines = group(self.drawing("openings", "slab-1-opening-2"), "opening")
        for key in "x", "y":
            reach = [float(line.get(key + end)) for line in lines for end in "12"]
            self.assertAlmostEqual(max(reach) - min(reach), 60, delta=0.1)  # a pipe of 60 mm

    def test_square_cornered_openings_need_no_template(self):
        number = self.jobs.index("openings") + 1
        self.assertFalse([stem for stem in self.trees if stem.startswith(f"{number}-slab-1-opening-1")])


def group(tree, what):
    """The shapes in the groups of that name."""
    return [shape for element in tree.iter(SVG + "g") if element.get("data-what") == what
            for shape in element]


def scale(tree):
    """How many millimetres one of paper stands for, as the drawing itself says."""
    words = next(text.text for text in tree.iter(SVG + "text")
                 if (text.text or "").startswith("Scale "))
    if "full size" in words:
        return 1
    return int(re.match(r"Scale 1:(\d+)", words).group(1))


if __name__ == "__main__":
    unittest.main()
