# SPDX-License-Identifier: MIT
"""What a terminal gets: colour, width, and no control character of a job file."""

import fcntl
import json
import os
import pty
import re
import struct
import subprocess
import tempfile
import termios
import unittest

from program import PROGRAM, SOURCE, run, without_comments

BENCH = SOURCE / "examples" / "potting-bench" / "job.json"
CLEAN = {"PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8", "TERM": "xterm"}
SEQUENCE = re.compile(r"\x1b\[[0-9;]*m")


def on_terminal(*arguments, columns=0, env=None):
    """What the program writes to a terminal of so many columns; 0: it does not say."""
    leader, follower = pty.openpty()
    fcntl.ioctl(follower, termios.TIOCSWINSZ, struct.pack("HHHH", 24 if columns else 0, columns, 0, 0))
    with subprocess.Popen([PROGRAM, *map(str, arguments)], stdin=subprocess.DEVNULL,
                          stdout=follower, stderr=follower, env=CLEAN | (env or {})) as process:
        os.close(follower)
        text = b""
        try:
            while part := os.read(leader, 65536):
                text += part
        except OSError:  # the end of a terminal
            pass
    os.close(leader)
    return text.decode().replace("\r\n", "\n")


def widest(text):
    return max(len(line) for line in SEQUENCE.sub("", text).splitlines())


class Color(unittest.TestCase):
    def test_a_terminal_gets_emphasis_and_the_same_words(self):
        text = on_terminal("plan", BENCH, columns=100)
        self.assertIn("\x1b[1mSHOP\x1b[0m", text)
        self.assertIn("\x1b[33mcaution\x1b[0m", text)
        self.assertEqual(SEQUENCE.sub("", text), run("plan", BENCH).stdout)

    def test_a_stop_is_red_and_says_so(self):
        job = json.loads(without_comments(BENCH.read_text()))
        job["mix"] = {"name": "wet", "bag": "25 kg", "yield": "14 L", "working_time": "20 min",
                      "water": {"least": "3 L", "most": "4 L", "use": "5 L"}}
        with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
            json.dump(job, file)
            file.flush()
            self.assertIn("\x1b[1;31mSTOP\x1b[0m", on_terminal("check", file.name))

    def test_no_escape_sequence_reaches_a_pipe_or_a_file(self):
        with tempfile.TemporaryDirectory() as place:
            target = os.path.join(place, "plan.txt")
            for color in ("auto", "always", "never"):
                run("plan", BENCH, "--color", color, "-o", target)
                with open(target, encoding="utf-8") as file:
                    self.assertNotIn("\x1b", file.read(), color)
        for command in ("plan", "check", "why"):
            self.assertNotIn("\x1b", run(command, BENCH).stdout)
        self.assertNotIn("\x1b", run("plan", BENCH, "--color", "never").stdout)

    def test_no_color_and_a_dumb_terminal_are_heeded_unless_the_command_line_says_otherwise(self):
        for env in ({"NO_COLOR": "1"}, {"TERM": "dumb"}):
            with self.subTest(env):
                self.assertNotIn("\x1b", on_terminal("check", BENCH, env=env))
                self.assertIn("\x1b", on_terminal("check", BENCH, "--color", "always", env=env))
        self.assertNotIn("\x1b", on_terminal("check", BENCH, "--color", "never"))
        self.assertIn("\x1b", on_terminal("check", BENCH, env={"NO_COLOR": ""}))

    def test_always_colours_a_pipe_too(self):
        self.assertIn("\x1b[1m", run("plan", BENCH, "--color", "always").stdout)


class Width(unittest.TestCase):
    def test_lines_fit_the_terminal(self):
        for columns in (60, 72, 80, 99):
            with self.subTest(columns):
                for command in (["plan", BENCH], ["check", BENCH], ["why", BENCH],
                                ["list", "mixes"], ["odds", BENCH, "--runs", "100"]):
                    text = on_terminal(*command, columns=columns)
                    self.assertLessEqual(widest(text), columns, command)

    def test_a_terminal_is_taken_as_60_to_100_columns(self):
        narrow = SEQUENCE.sub("", on_terminal("plan", BENCH, columns=20))
        self.assertEqual(narrow, run("plan", BENCH, "--width", "60").stdout)
        wide = SEQUENCE.sub("", on_terminal("plan", BENCH, columns=300))
        self.assertEqual(wide, run("plan", BENCH).stdout)

    def test_columns_counts_where_the_terminal_does_not_say(self):
        self.assertLessEqual(widest(on_terminal("plan", BENCH, env={"COLUMNS": "70"})), 70)
        for wrong in ("", "wide", "0", "-3"):
            self.assertEqual(SEQUENCE.sub("", on_terminal("plan", BENCH, env={"COLUMNS": wrong})),
                             run("plan", BENCH).stdout)

    def test_a_pipe_is_100_columns_wherever_it_starts(self):
        self.assertEqual(run("plan", BENCH, env={"COLUMNS": "60"}).stdout, run("plan", BENCH).stdout)

    def test_width_is_obeyed_everywhere(self):
        for job in sorted(SOURCE.glob("examples/*/job.json")):
            for width in (60, 77, 200):
                text = run("plan", job, "--width", str(width)).stdout
                self.assertLessEqual(widest(text), width, job)
        self.assertGreater(widest(run("plan", BENCH, "--width", "200").stdout), 100)

    def test_a_wrong_width_is_a_wrong_command(self):
        for width in ("59", "201", "wide", "80.5", "-80", ""):
            result = run("plan", BENCH, f"--width={width}")
            self.assertEqual((result.returncode, result.stdout), (2, ""), width)


class ControlCharacters(unittest.TestCase):
    EVIL = ("\x1b[31m", "\x07", "\r", "\b", "\x9b31m", "\x85", "\x7f", "\n", "\x00")

    def job(self, where, text):
        job = json.loads(without_comments(BENCH.read_text()))
        slab = job["slabs"][0]
        name = f"a{text}b"
        if where == "job":
            job["name"] = name
        elif where == "slab":
            slab["name"] = name
        elif where == "opening":
            slab["openings"] = [{"name": name, "at": ["20 in", "8 in"],
                                 "rectangle": {"length": "5 in", "depth": "5 in"}}]
        elif where == "mix":
            job["mix"] = {"name": name, "bag": "25 kg", "yield": "14 L", "working_time": "20 min",
                          "water": {"least": "3 L", "most": "4 L"}}
        elif where == "stock":
            job["forms"] = {"strip_stock": [{"name": name, "length": "84 in", "width": "14 in",
                                             "thickness": "5/8 in", "price": 9}]}
        elif where == "key":
            job[name] = 1
        elif where == "key of a slab":
            slab[name] = 1
        return json.dumps(job)

    def test_none_of_a_job_file_reaches_the_terminal(self):
        for where in ("job", "slab", "opening", "mix", "stock", "key", "key of a slab"):
            for text in self.EVIL:
                for form in (["text"], ["json"], ["text", "--diagnostics", "json"]):
                    with self.subTest(where=where, text=text, form=form):
                        result = run("plan", "-", "--format", *form, stdin=self.job(where, text))
                        printed = (result.stdout + result.stderr).replace("\n", "")
                        self.assertFalse([c for c in printed if ord(c) < 32 or 127 <= ord(c) < 160])

    def test_a_name_with_control_characters_is_refused(self):
        for where in ("job", "slab", "opening", "mix", "stock"):
            for text in self.EVIL:
                result = run("check", "-", stdin=self.job(where, text))
                self.assertEqual(result.returncode, 3, (where, text))
                self.assertIn("control character", result.stderr)

    def test_letters_of_any_script_stay(self):
        for text in ("\u00e9\u00df", "\u53f0", "\u05d0", "\u00a0"):
            self.assertEqual(run("check", "-", stdin=self.job("job", text)).returncode, 0, text)


unittest.main()
