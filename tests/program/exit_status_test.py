# SPDX-License-Identifier: MIT
"""Exit statuses, streams and files of the real program."""

import json
import os
import pathlib
import subprocess
import tempfile
import unittest

from program import EXAMPLES, PROGRAM, SOURCE, run, without_comments

BENCH = SOURCE / "examples" / "potting-bench" / "job.json"


def bench_with(**changes):
    """The bench's job as text, with these top-level keys replaced."""
    return json.dumps(json.loads(without_comments(BENCH.read_text())) | changes)


class Status(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.place = pathlib.Path(place.name)

    def test_0_when_planned_with_nothing_at_stop(self):
        result = run("plan", BENCH)
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        self.assertIn("greenhouse potting bench", result.stdout)

    def test_every_example_can_be_poured_as_it_stands(self):
        for job in EXAMPLES:
            self.assertEqual(run("plan", job).returncode, 0, job)

    def test_1_when_something_is_at_stop_and_the_plan_is_still_printed(self):
        mix = {"name": "wet", "bag": "25 kg", "yield": "14 L", "working_time": "20 min",
               "water": {"least": "3 L", "most": "4 L", "use": "5 L"}}
        result = run("plan", "-", "--format", "json", stdin=bench_with(mix=mix))
        self.assertEqual(result.returncode, 1)
        stops = [c["code"] for c in json.loads(result.stdout)["checks"] if c["level"] == "stop"]
        self.assertIn("water-most", stops)

    def test_2_when_the_command_line_is_wrong(self):
        for arguments in ([], ["paln", BENCH], ["plan"], ["plan", BENCH, "--format", "pdf"],
                          ["plan", BENCH, "--colour"], ["schema", "bench"], ["list", "cakes"]):
            with self.subTest(arguments):
                result = run(*arguments)
                self.assertEqual((result.returncode, result.stdout), (2, ""))
                self.assertNotEqual(result.stderr, "")

    def test_3_when_the_job_is_wrong(self):
        for text in ("", "{", "[]", "{}", bench_with(units="imperial"), "\x00", "{" * 100000):
            with self.subTest(text[:30]):
                result = run("plan", "-", stdin=text)
                self.assertEqual((result.returncode, result.stdout), (3, ""))
                self.assertRegex(result.stderr, r"<stdin>:\d+:\d+: error: ")

    def test_3_names_file_line_and_column(self):
        job = self.place / "job.json"
        job.write_text('{\n  "thickness": "1 in"\n}\n')
        result = run("check", job)
        self.assertEqual(result.returncode, 3)
        self.assertIn(f"{job}:2:3: error: ", result.stderr)

    def test_diagnostics_come_as_json_when_asked(self):
        result = run("plan", "-", "--diagnostics", "json", stdin=bench_with(units="imperial"))
        self.assertEqual(result.returncode, 3)
        problem = json.loads(result.stderr)[0]
        self.assertEqual((problem["pointer"], problem["severity"]), ("/units", "error"))

    def test_4_when_a_file_cannot_be_read(self):
        for path in (self.place / "none.json", self.place):
            result = run("plan", path)
            self.assertEqual((result.returncode, result.stdout), (4, ""))
            self.assertIn(str(path), result.stderr)

    def test_4_when_standard_output_is_full(self):
        with open("/dev/full", "w", encoding="utf-8") as full:
            for arguments in (["plan", BENCH], ["new"], ["schema", "job"], ["list", "mixes"]):
                self.assertEqual(run(*arguments, stdout=full).returncode, 4, arguments)

    def test_a_closed_pipe_ends_it_without_a_word(self):
        reader, writer = os.pipe()
        os.close(reader)
        # Python ignores SIGPIPE; its child must not, as a shell's child does not.
        result = subprocess.run([PROGRAM, "plan", BENCH], stdout=writer, stderr=subprocess.PIPE,
                                restore_signals=True, check=False)
        os.close(writer)
        self.assertEqual(result.stderr, b"")

    def test_help_and_version_go_to_standard_output(self):
        for option in ("--help", "--version"):
            result = run(option)
            self.assertEqual((result.returncode, result.stderr), (0, ""))
            self.assertNotEqual(result.stdout, "")

    def test_the_starter_job_can_be_planned(self):
        self.assertIn(run("plan", "-", stdin=run("new").stdout).returncode, (0, 1))


class Drawings(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.place = pathlib.Path(place.name)

    def test_the_paths_printed_are_the_files_written(self):
        result = run("draw", BENCH, "-o", self.place / "new")
        self.assertEqual((result.returncode, result.stderr), (0, ""))
        paths = result.stdout.splitlines()
        self.assertGreater(len(paths), 5)
        self.assertEqual(sorted(paths), sorted(map(str, (self.place / "new").iterdir())))
        for path in paths:
            self.assertTrue(pathlib.Path(path).read_text().rstrip().endswith("</svg>"))

    def test_a_second_run_writes_the_same_bytes(self):
        def drawn():
            run("draw", BENCH, "-o", self.place)
            return {path.name: path.read_bytes() for path in self.place.iterdir()}
        self.assertEqual(drawn(), drawn())

    def test_drawings_of_another_plan_are_named_and_kept(self):
        for name in ("board-7.svg", "notes.txt", *(f"sheet-{i}.svg" for i in range(10, 19))):
            (self.place / name).write_text("old")
        for quiet in ([], ["-q"]):
            result = run("draw", BENCH, "-o", self.place, *quiet)
            self.assertEqual(result.returncode, 0)
            self.assertIn('"board-7.svg", "sheet-10.svg"', result.stderr)
            self.assertIn("and 5 more", result.stderr)
            self.assertNotIn("notes.txt", result.stderr)
        self.assertEqual((self.place / "board-7.svg").read_text(), "old")

    def test_what_is_in_the_way_of_one_drawing_stops_all(self):
        (self.place / "timeline-1.svg").mkdir()
        result = run("draw", BENCH, "-o", self.place)
        self.assertEqual((result.returncode, result.stdout), (4, ""))
        self.assertIn("timeline-1.svg", result.stderr)
        self.assertEqual(os.listdir(self.place), ["timeline-1.svg"])

    def test_a_directory_needs_a_name(self):
        result = run("draw", BENCH, "-o", "")
        self.assertEqual(result.returncode, 4)
        self.assertIn("it has no name", result.stderr)

    def test_a_wrong_job_makes_no_directory(self):
        self.assertEqual(run("draw", "-", "-o", self.place / "new", stdin="{}").returncode, 3)
        self.assertEqual(os.listdir(self.place), [])

    def test_a_drawing_never_replaces_the_job(self):
        name = run("draw", BENCH, "-o", self.place / "first").stdout.splitlines()[0]
        job = self.place / pathlib.Path(name).name
        job.write_text(BENCH.read_text())
        self.assertEqual(run("draw", job, "-o", self.place).returncode, 2)
        self.assertEqual(job.read_text(), BENCH.read_text())

    def test_a_directory_without_room_is_status_4(self):
        for place in (BENCH, BENCH / "new", "/dev/null", "/proc/new"):
            result = run("draw", BENCH, "-o", place)
            self.assertEqual((result.returncode, result.stdout), (4, ""), place)
            self.assertIn(str(place), result.stderr)


class Quiet(unittest.TestCase):
    def test_check_prints_only_stops_and_cautions(self):
        loud, quiet = run("check", BENCH), run("check", BENCH, "-q")
        self.assertIn("\n  ok  ", loud.stdout)
        self.assertNotIn("\n  ok  ", quiet.stdout)
        cautions = [line for line in loud.stdout.splitlines() if line.startswith("  caution")]
        self.assertEqual([line for line in quiet.stdout.splitlines()
                          if line.startswith("  caution")], cautions)
        self.assertEqual(quiet.returncode, loud.returncode)

    def test_a_written_plan_is_not_told(self):
        with tempfile.TemporaryDirectory() as place:
            target = pathlib.Path(place, "plan.txt")
            result = run("plan", BENCH, "--quiet", "-o", target)
            self.assertEqual((result.stdout, result.stderr), ("", ""))
            self.assertEqual(target.read_text(), run("plan", BENCH).stdout)


class Files(unittest.TestCase):
    def setUp(self):
        place = tempfile.TemporaryDirectory()
        self.addCleanup(place.cleanup)
        self.place = pathlib.Path(place.name)

    def test_o_writes_what_standard_output_would_get(self):
        result = run("plan", BENCH, "-o", self.place / "plan.txt")
        self.assertEqual((result.returncode, result.stdout), (0, ""))
        self.assertEqual((self.place / "plan.txt").read_text(), run("plan", BENCH).stdout)

    def test_o_to_a_place_that_is_not_there_is_status_4(self):
        target = self.place / "none" / "plan.txt"
        result = run("plan", BENCH, "-o", target)
        self.assertEqual((result.returncode, result.stdout), (4, ""))
        self.assertIn(str(target), result.stderr)

    def test_a_wrong_job_leaves_the_old_file_alone(self):
        target = self.place / "plan.txt"
        target.write_text("old")
        self.assertEqual(run("plan", "-", "-o", target, stdin="{}").returncode, 3)
        self.assertEqual(target.read_text(), "old")
        self.assertEqual(os.listdir(self.place), ["plan.txt"])

    def test_o_never_writes_over_the_job(self):
        job = self.place / "job.json"
        job.write_text(BENCH.read_text())
        other = self.place / "same.json"
        other.symlink_to(job)
        for target in (job, other):
            self.assertNotEqual(run("plan", job, "-o", target).returncode, 0)
            self.assertEqual(job.read_text(), BENCH.read_text())

    def test_o_to_a_directory_is_status_4(self):
        self.assertEqual(run("plan", BENCH, "-o", self.place).returncode, 4)
        self.assertEqual(os.listdir(self.place), [])


unittest.main()
