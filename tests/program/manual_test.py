# SPDX-License-Identifier: MIT
"""The manual page and the completions name what the program really takes, and nothing else."""

import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

from program import PROGRAM, SOURCE, run

MANUAL = SOURCE / "src" / "man" / "strikeoff.1.in"
COMPLETIONS = SOURCE / "src" / "completions"
OPTION = re.compile(r"(?<![\w-])--?[a-z][a-z-]*")


def without_descriptions(text):
    """Help without what stands to the right of the options."""
    return "\n".join(re.split(r"\s{2,}", line.strip())[0] for line in text.splitlines())


def commands():
    """Each command of the program with its options, as its help has them."""
    names = re.findall(r"^  ([a-z]+)(?: [A-Z\[].*?| -o.*?)?  +\S", run("--help").stdout.split(
        "Commands:")[1].split("\n\n")[0], re.MULTILINE)
    return {name: set(OPTION.findall(without_descriptions(run(name, "--help").stdout)))
            | {"-h", "--help"} for name in names}


COMMANDS = commands()
OPTIONS = set().union(*COMMANDS.values()) | {"--version"}


def choices(command, option):
    """The words an option takes, as the program's message about a wrong one lists them."""
    arguments = {"draw": ["-o", "x"], "resume": ["x"]}.get(command, [])
    message = run(command, "x", *arguments, option, "none-of-them").stderr
    return set(re.search(r"\{(.*?)\}", message)[1].split(","))


class Source(unittest.TestCase):
    def test_the_list_of_commands_is_read_right(self):
        self.assertEqual(sorted(COMMANDS), ["check", "draw", "list", "new", "odds", "plan",
                                            "resume", "schema", "why"])
        self.assertIn("--runs", COMMANDS["odds"])
        self.assertNotIn("--runs", COMMANDS["plan"])

    def test_every_option_listed_is_taken(self):
        for command, options in COMMANDS.items():
            for option in options:
                self.assertNotIn("there is no option", run(command, option).stderr)


class Manual(unittest.TestCase):
    def setUp(self):
        self.text = MANUAL.read_text().replace(r"\-", "-")

    def test_it_names_every_option_and_no_other(self):
        section = self.text.split(".SH OPTIONS")[1].split(".SH")[0]
        tags = re.findall(r"^\.TP\n(.*)$", section, re.MULTILINE)
        self.assertEqual(set(OPTION.findall(" ".join(tags))), OPTIONS)
        self.assertLessEqual(set(OPTION.findall(re.sub(r"^\.\\?\".*$", "", self.text, flags=re.M))),
                             OPTIONS)

    def test_it_names_every_command_and_no_other(self):
        synopsis = re.findall(r"^\.B strikeoff (\w+)$", self.text, re.MULTILINE)
        section = self.text.split(".SH COMMANDS")[1].split(".SH")[0]
        self.assertEqual(sorted(synopsis), sorted(COMMANDS))
        self.assertEqual(sorted(re.findall(r"^\.TP\n\.BI? (\w+)", section, re.MULTILINE)),
                         sorted(COMMANDS))

    def test_it_names_every_exit_status_of_the_help(self):
        told = re.findall(r"^  (\d+)  ", run("--help").stdout.split("Exit status:")[1], re.MULTILINE)
        section = self.text.split(".SH EXIT STATUS")[1].split(".SH")[0]
        self.assertEqual(re.findall(r"^\.B (\d+)$", section, re.MULTILINE), told)

    def test_it_names_every_form_and_table(self):
        words = set(re.findall(r"\w+", self.text.split(".SH OPTIONS")[1]))
        for option in ("--format", "--table", "--color", "--diagnostics"):
            self.assertLessEqual(choices("plan", option), words)

    @unittest.skipUnless(shutil.which("man"), "man-db is not installed")
    def test_man_has_no_warning(self):
        result = subprocess.run(["man", "--warnings", "-l", str(MANUAL)], capture_output=True,
                                check=True, env={"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8"})
        self.assertEqual(result.stderr, b"")

    @unittest.skipUnless(shutil.which("mandoc"), "mandoc is not installed")
    def test_mandoc_has_no_warning(self):
        result = subprocess.run(["mandoc", "-T", "lint", "-W", "warning", str(MANUAL)],
                                capture_output=True, encoding="utf-8", check=False)
        self.assertEqual((result.returncode, result.stdout), (0, ""))


class Bash(unittest.TestCase):
    def offered(self, *words):
        """What bash offers for the last of the words."""
        script = (f'source "{COMPLETIONS}/strikeoff.bash"; COMP_WORDS=("$@"); '
                  'COMP_CWORD=$(($# - 1)); _strikeoff; printf "%s\\n" "${COMPREPLY[@]}"')
        with tempfile.TemporaryDirectory() as place:
            pathlib.Path(place, "job.json").touch()
            pathlib.Path(place, "drawings").mkdir()
            result = subprocess.run(["bash", "-c", script, "bash", "strikeoff", *words], cwd=place,
                                    capture_output=True, encoding="utf-8", check=True)
        self.assertEqual(result.stderr, "")
        return set(result.stdout.split())

    def test_it_offers_the_commands(self):
        self.assertEqual(self.offered(""), set(COMMANDS) | {"--help", "--version"})
        self.assertEqual(self.offered("pl"), {"plan"})

    def test_it_offers_the_options_of_each_command(self):
        for command, options in COMMANDS.items():
            self.assertEqual(self.offered(command, "-"), options - {"-h"}, command)

    def test_it_offers_the_words_of_options_and_arguments(self):
        for command, options in COMMANDS.items():
            for option in options & {"--format", "--table", "--color", "--diagnostics"}:
                if command != "list":  # its own argument is checked first
                    self.assertEqual(self.offered(command, option, ""), choices(command, option))
        for command in ("list", "schema"):
            message = run(command, "none-of-them").stderr
            self.assertEqual(self.offered(command, ""),
                             set(re.search(r"\{(.*?)\}", message)[1].split(",")))

    def test_it_offers_files_and_directories(self):
        self.assertEqual(self.offered("plan", ""), {"job.json", "drawings"})
        self.assertEqual(self.offered("draw", "job.json", "-o", ""), {"drawings"})
        self.assertEqual(self.offered("new", ""), set())


@unittest.skipUnless(shutil.which("fish"), "fish is not installed")
class Fish(unittest.TestCase):
    def offered(self, line):
        script = f'source "{COMPLETIONS}/strikeoff.fish"; complete -C "{line}"'
        with tempfile.TemporaryDirectory() as home:
            result = subprocess.run(["fish", "--no-config", "-c", script], capture_output=True,
                                    encoding="utf-8", check=True, cwd=home,
                                    env={"PATH": f"{pathlib.Path(PROGRAM).parent}:/usr/bin:/bin",
                                         "HOME": home})
        self.assertEqual(result.stderr, "")
        return {found.split("\t")[0] for found in result.stdout.splitlines()}

    def test_it_offers_the_commands(self):
        self.assertEqual(self.offered("strikeoff "), set(COMMANDS))

    def test_it_offers_the_options_of_each_command(self):
        for command, options in COMMANDS.items():
            long = {option for option in options if option.startswith("--")}
            self.assertEqual(self.offered(f"strikeoff {command} --"), long, command)

    def test_it_offers_the_words_of_options_and_arguments(self):
        for command, options in COMMANDS.items():
            for option in options & {"--format", "--table", "--color", "--diagnostics"}:
                if command != "list":
                    self.assertEqual(self.offered(f"strikeoff {command} {option} "),
                                     choices(command, option), (command, option))
        for command in ("list", "schema"):
            message = run(command, "none-of-them").stderr
            self.assertEqual(self.offered(f"strikeoff {command} "),
                             set(re.search(r"\{(.*?)\}", message)[1].split(",")))


class Zsh(unittest.TestCase):
    TEXT = (COMPLETIONS / "_strikeoff").read_text()

    @unittest.skipUnless(shutil.which("zsh"), "zsh is not installed")
    def test_zsh_loads_it(self):
        script = f"fpath=({COMPLETIONS} $fpath); autoload -Uz compinit; compinit -D -u; " \
                 "print -r -- ${_comps[strikeoff]}; autoload +X _strikeoff && print loaded"
        with tempfile.TemporaryDirectory() as home:
            result = subprocess.run(["zsh", "-f", "-c", script], capture_output=True,
                                    encoding="utf-8", check=True, cwd=home,
                                    env={"PATH": "/usr/bin:/bin", "HOME": home})
        self.assertEqual((result.stdout, result.stderr), ("_strikeoff\nloaded\n", ""))

    def test_it_names_every_command_with_its_options(self):
        listed = re.findall(r"^    '([a-z]+):", self.TEXT, re.MULTILINE)
        self.assertEqual(sorted(listed), sorted(COMMANDS))
        groups = {"$options": {"-h", "--help"}, "$diagnostics": {"--diagnostics"},
                  "$look": {"--color", "--width"}, "$form": {"--format"}}
        for command, options in COMMANDS.items():
            case = re.search(rf"^    {command}\)(.*?);;$", self.TEXT, re.DOTALL | re.MULTILINE)[1]
            bare = re.sub(r"\[[^]]*\]", "", case)
            found = set(OPTION.findall(bare))
            for group, members in groups.items():
                if group in bare:
                    found |= members
            self.assertEqual(found, options, command)


unittest.main()
