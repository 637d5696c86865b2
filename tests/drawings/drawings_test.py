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
                drawn = corners(group(tree, "outline")[0])
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

    def sections(self):
        """Of every slab its edge sections, with the job's name and the slab's plan."""
        for job in self.jobs:
            for i, slab in enumerate(self.plan(job)["slabs"]):
                stem = f"{self.jobs.index(job) + 1}-slab-{i + 1}-edge-"
                trees = [tree for name, tree in self.trees.items() if name.startswith(stem)]
                if trees:
                    yield job, slab, trees

    def test_the_concrete_of_an_edge_section_is_as_thick_as_the_plan_says(self):
        uneven = 0
        for job, slab, trees in self.sections():
            if "apron" in job:
                continue
            drawn = []
            for tree in trees:
                heights = [y for _, y in corners(group(tree, "concrete")[0])]
                drawn.append((max(heights) - min(heights)) * scale(tree))
            # A corner before it is rounded can be thicker than any place of the slab.
            self.assertAlmostEqual(max(drawn), slab["thickest"]["thickness_mm"],
                                   delta=2.1 if job == "greenhouse-step" else 0.01, msg=job)
            self.assertGreaterEqual(min(drawn), slab["edge_thickness_mm"] - 0.02)
            uneven += max(drawn) > min(drawn) + 1
        self.assertGreater(uneven, 0)

    def test_the_concrete_ends_at_the_top_of_its_edge_strip(self):
        seen = 0
        for job, _, trees in self.sections():
            for tree in trees:
                for strip in group(tree, "edge-strip"):
                    top = min(y for _, y in corners(group(tree, "concrete")[0]))
                    self.assertAlmostEqual(float(strip.get("y")), top, delta=0.002, msg=job)
                    seen += 1
        self.assertGreater(seen, 50)

    def test_the_scale_bar_is_as_long_as_it_says(self):
        seen = 0
        for stem, tree in self.trees.items():
            shapes = list(tree)
            bars = [k for k, shape in enumerate(shapes) if shape.get("data-what") == "scale-bar"]
            for k in bars:
                words = shapes[k + 2].text
                number, unit = re.fullmatch(r"(\d+) (mm|m|in|ft)", words).groups()
                real = float(number) * {"mm": 1, "m": 1000, "in": 25.4, "ft": 304.8}[unit]
                length = sum(float(half.get("width")) for half in shapes[k])
                self.assertAlmostEqual(length * scale(tree), real, delta=0.002 * scale(tree),
                                       msg=stem)
                seen += 1
        self.assertGreater(seen, 100)

    def test_openings_lie_where_the_plan_says(self):
        seen = 0
        for job in self.jobs:
            for i, slab in enumerate(self.plan(job)["slabs"]):
                tree = self.drawing(job, f"slab-{i + 1}-plan")
                left = min(x for x, _ in corners(group(tree, "outline")[0]))
                front = max(y for _, y in corners(group(tree, "outline")[0]))
                zero = [min(corner[axis] for corner in slab["outline_mm"]) for axis in (0, 1)]
                for drawn, opening in zip(group(tree, "openings"), slab["openings"], strict=True):
                    spots = corners(drawn)
                    xs, ys = [x for x, _ in spots], [y for _, y in spots]
                    for paper, real in (
                            (min(xs) - left, opening["x_mm"] - zero[0]),
                            (front - max(ys), opening["y_mm"] - zero[1]),
                            (max(xs) - min(xs), opening["length_mm"]),
                            (max(ys) - min(ys), opening["depth_mm"])):
                        # Arcs are drawn by chords within a few hundredths of a millimetre.
                        self.assertAlmostEqual(paper * scale(tree), real,
                                               delta=0.004 * scale(tree) + 0.2, msg=job)
                    seen += 1
        self.assertGreater(seen, 5)

    def test_numbers_of_batches_lie_in_their_zones(self):
        seen = 0
        for stem, tree in self.trees.items():
            if "-pour" not in stem:
                continue
            for text in tree.iter(SVG + "text"):
                if text.get("font-weight") != "bold" or not text.text.isdigit():
                    continue
                size = float(text.get("font-size"))
                spot = float(text.get("x")), float(text.get("y")) - size / 3
                zones = [corners(zone) for zone in group(tree, "zone " + text.text)]
                self.assertTrue(any(inside(zone, spot) for zone in zones), f"{stem}: {text.text}")
                seen += 1
        self.assertGreater(seen, 100)

    def test_seams_of_panels_stay_inside_the_slab(self):
        for job in self.jobs:
            for i in range(len(self.plan(job)["slabs"])):
                tree = self.drawing(job, f"slab-{i + 1}-plan")
                outline = corners(group(tree, "outline")[0])
                for seam in group(tree, "seam"):
                    spots = corners(seam)
                    middle = [sum(values) / len(spots) for values in zip(*spots)]
                    for spot in spots:  # a hair inwards: some lie on the edge
                        near = [a + (b - a) * 0.02 for a, b in zip(spot, middle)]
                        self.assertTrue(inside(outline, near), f"{job}: {spot}")

    def test_tiles_of_a_template_fit_together_where_their_crosses_meet(self):
        number = self.jobs.index("pool") + 1
        tiles = {tuple(map(int, stem.split("-")[-2:])): tree for stem, tree in self.trees.items()
                 if stem.startswith(f"{number}-slab-1-opening-1-")}
        self.assertGreater(len(tiles), 4)
        spots = []
        for (row, column), tree in tiles.items():
            crosses = [[(float(line.get(axis + "1")) + float(line.get(axis + "2"))) / 2
                        for line in group(tree, "crosses")] for axis in "xy"]
            step = [max(axis) - min(axis) for axis in crosses]
            for line in group(tree, "opening"):
                spots += [(float(line.get("x" + end)) + (column - 1) * step[0],
                           float(line.get("y" + end)) + (row - 1) * step[1]) for end in "12"]
        centre = [(max(axis) + min(axis)) / 2 for axis in zip(*spots)]
        for x, y in spots:
            self.assertAlmostEqual(((x - centre[0]) ** 2 + (y - centre[1]) ** 2) ** 0.5, 450,
                                   delta=0.3)

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

    def test_the_timeline_is_to_scale_and_deadlines_are_rounded_down(self):
        seen = 0
        for job in self.jobs:
            batches = self.plan(job)["batches"]
            name = f"{self.jobs.index(job) + 1}-timeline-1"
            if not 2 <= len(batches) <= 12 or name not in self.trees:
                continue
            seen += 1
            tree = self.trees[name]
            drawn = [group(tree, f"batch {batch['number']}, from its water") for batch in batches]
            left = [float(boxes[0].get("x")) for boxes in drawn]
            span = batches[-1]["contact_min"] - batches[0]["contact_min"]
            minute = (left[-1] - left[0]) / span
            for batch, boxes in zip(batches, drawn, strict=True):
                for key, place in (("contact_min", float(boxes[0].get("x"))),
                                   ("place_start_min", float(boxes[1].get("x"))),
                                   ("place_end_min", float(boxes[1].get("x")) +
                                    float(boxes[1].get("width")))):
                    self.assertAlmostEqual((place - left[0]) / minute,
                                           batch[key] - batches[0]["contact_min"], delta=0.02)
            for mixer in {batch["mixer"] for batch in batches}:
                taken = group(tree, f"mixer {mixer}")
                ours = [batch for batch in batches if batch["mixer"] == mixer]
                self.assertEqual(len(taken), len(ours))
                for box, batch in zip(taken, ours):
                    self.assertLess((float(box.get("x")) - left[0]) / minute,
                                    batch["contact_min"] - batches[0]["contact_min"])
            words = {text.text for text in tree.iter(SVG + "text")}
            for batch in batches:
                if "meet_by_min" in batch:
                    whole = int(batch["meet_by_min"] + 1e-9)
                    self.assertIn(f"meet by +{whole // 60}:{whole % 60:02}", words)
            self.assertTrue([word for word in words if (word or "").startswith("person 1: ")], job)
        self.assertGreater(seen, 8)

    def test_square_cornered_openings_need_no_template(self):
        number = self.jobs.index("openings") + 1
        self.assertFalse([stem for stem in self.trees if stem.startswith(f"{number}-slab-1-opening-1")])


def group(tree, what):
    """The shapes in the groups of that name."""
    return [shape for element in tree.iter(SVG + "g") if element.get("data-what") == what
            for shape in element]


def corners(shape):
    """Of a polygon, as pairs of numbers."""
    return [tuple(map(float, pair.split(","))) for pair in shape.get("points").split()]


def inside(ring, spot):
    """Whether a spot lies in a polygon: crossings of a ray."""
    crossings = 0
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1]):
        if (y0 > spot[1]) != (y1 > spot[1]):
            crossings += spot[0] < x0 + (spot[1] - y0) / (y1 - y0) * (x1 - x0)
    return crossings % 2 == 1


def scale(tree):
    """How many millimetres one of paper stands for, as the drawing itself says."""
    words = next(text.text for text in tree.iter(SVG + "text")
                 if (text.text or "").startswith("Scale "))
    if "full size" in words:
        return 1
    return int(re.match(r"Scale 1:(\d+)", words).group(1))


if __name__ == "__main__":
    unittest.main()
