# SPDX-License-Identifier: MIT
"""Runs the console blocks of README.md and compares what they print.

A block is checked when its first line is `$ strikeoff …`. Commands run in a directory that holds
`examples` and the files the README shows: a ```json block after `<!-- file: NAME -->`. A line `...`
stands for any lines. `$ echo $?` shows the exit status of the command before it."""

import pathlib
import re
import subprocess
import tempfile
import unittest

from program import PROGRAM, SOURCE

README = (SOURCE / "README.md").read_text(encoding="utf-8")
FILE = re.compile(r"^<!-- file: (\S+) -->\n```json\n(.*?)^```$", re.MULTILINE | re.DOTALL)
BLOCK = re.compile(r"^```console\n(\$ strikeoff .*?)^```$", re.MULTILINE | re.DOTALL)


def matches(shown, printed):
    """True when the lines shown are the lines printed, `...` standing for any number of lines."""
    parts = ["(?:.*\n)*?" if line == "..." else re.escape(line) + r"\n" for line in shown]
    return re.fullmatch("".join(parts), "".join(line + "\n" for line in printed)) is not None


def first_missing(shown, printed):
    """The first line shown that is not printed after the ones before it, for the message."""
    rest = iter(printed)
    return next((line for line in shown if line != "..." and line not in rest),
                "(a line is printed that is not shown)")


def transcript(block, directory):
    """The block as it comes out when its commands are really run."""
    lines, status = [], 0
    for command in re.findall(r"^\$ (.*)$", block, re.MULTILINE):
        lines.append(f"$ {command}")
        if command == "echo $?":
            lines.append(str(status))
            continue
        result = subprocess.run(
            ["bash", "-c", command], cwd=directory, timeout=60, encoding="utf-8", check=False,
            env={"PATH": f"{pathlib.Path(PROGRAM).parent}:/usr/bin:/bin", "LC_ALL": "C.UTF-8"},
            stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        status = result.returncode
        lines += [line.rstrip() for line in result.stdout.splitlines()]
    return lines


class Readme(unittest.TestCase):
    def test_every_console_block_prints_what_it_shows(self):
        blocks = BLOCK.findall(README)
        self.assertGreater(len(blocks), 1)
        with tempfile.TemporaryDirectory() as directory:
            (pathlib.Path(directory) / "examples").symlink_to(SOURCE / "examples")
            for name, text in FILE.findall(README):
                (pathlib.Path(directory) / name).write_text(text, encoding="utf-8")
            for block in blocks:
                with self.subTest(block.splitlines()[0]):
                    printed = transcript(block, directory)
                    shown = block.splitlines()
                    if not matches(shown, printed):
                        self.fail("\n".join(["printed:", *printed, "README shows:", *shown,
                                             "first wrong line:", first_missing(shown, printed)]))

    def test_every_file_shown_is_used(self):
        for name, _ in FILE.findall(README):
            self.assertRegex(README, rf"(?m)^\$ strikeoff .*\b{re.escape(name)}")

    def test_a_wrong_line_is_noticed(self):
        self.assertTrue(matches(["a", "...", "c"], ["a", "b", "b", "c"]))
        self.assertTrue(matches(["a", "..."], ["a"]))
        self.assertFalse(matches(["a", "...", "d"], ["a", "b", "c"]))
        self.assertFalse(matches(["a"], ["a", "b"]))


unittest.main()
