# SPDX-License-Identifier: MIT
"""What the tests of the built program share. CTest sets STRIKEOFF and STRIKEOFF_SOURCE_DIR."""

import os
import pathlib
import re
import subprocess

PROGRAM = os.environ["STRIKEOFF"]
SOURCE = pathlib.Path(os.environ["STRIKEOFF_SOURCE_DIR"])
EXAMPLES = sorted((SOURCE / "examples").glob("*/job.json"))
assert EXAMPLES, "no examples found"


def run(*arguments, stdin="", **options):
    """Runs the program; stdout and stderr as text unless `options` send them elsewhere."""
    options.setdefault("stdout", subprocess.PIPE)
    options.setdefault("stderr", subprocess.PIPE)
    return subprocess.run([PROGRAM, *map(str, arguments)], input=stdin, encoding="utf-8",
                          timeout=60, check=False, **options)


def plan(job, form="text"):
    """The plan of a job file that can be planned."""
    result = run("plan", job, "--format", form)
    assert result.returncode in (0, 1), f"{job}: status {result.returncode}\n{result.stderr}"
    return result.stdout


def without_comments(text):
    """JSON text without // and /* */ comments; strings are left alone."""
    token = re.compile(r'"(?:\\.|[^"\\])*"|//[^\n]*|/\*.*?\*/', re.DOTALL)
    return token.sub(lambda match: match[0] if match[0][0] == '"' else " ", text)
