#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What a clean build costs: CPU seconds of every compiler and linker run, by target, as multiples
of one reference file compiled with the same flags. Multiples compare between machines, and CPU
seconds do not grow much when others use the machine. Two commands are measured in turn, as README
gives them: `demo`, then `test` in what it left.

  tests/bench/build_cost.py [--jobs N] [--units N] [PRESET ...]

It builds in a directory of its own, without ccache, and removes it afterwards."""

import argparse
import json
import os
import re
import resource
import shlex
import subprocess
import sys
import tempfile
from collections import defaultdict
from pathlib import Path

SOURCE = Path(__file__).resolve().parents[2]
REFERENCE = SOURCE / "tests/bench/parse_echo.cpp"
OUTPUT = re.compile(r"(?:.*/)?CMakeFiles/([^/]+)\.dir/(.*)\.(?:o|gch)")


def cpu_seconds(command):
    """Of a command that must succeed."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, check=True, stdout=sys.stderr)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def launch(log, command):
    """Runs the compiler or linker for the build, and notes what it took."""
    pid = os.posix_spawnp(command[0], command, os.environ)
    _, status, used = os.wait4(pid, 0)
    output = command[command.index("-o") + 1] if "-o" in command else command[-1]
    with open(log, "a", encoding="utf-8") as lines:  # short lines appended whole
        lines.write(f"{used.ru_utime + used.ru_stime:.2f} {output}\n")
    sys.exit(os.waitstatus_to_exitcode(status))


def reference_seconds(directory):
    """Of compiling the reference file with the flags of the library."""
    entry = next(e for e in json.loads((directory / "compile_commands.json").read_text())
                 if "strikeoff.dir" in e["command"])
    words = shlex.split(entry["command"])
    flags = words[:words.index("-o")]
    command = [*flags, "-o", os.devnull, "-c", str(REFERENCE)]
    return cpu_seconds(command)


def build(preset, directory, jobs):
    """The seconds of each run of compiler and linker by its output, of the whole build, and of the
    reference file: the mean of before and after, so that a slow moment of the machine meets both."""
    log = directory / "runs.log"
    launcher = ";".join((sys.executable, __file__, "--launch", str(log)))
    subprocess.run(["cmake", "--preset", preset, "-S", SOURCE, "-B", directory,
                    "-DCMAKE_EXPORT_COMPILE_COMMANDS=ON",
                    f"-DCMAKE_CXX_COMPILER_LAUNCHER={launcher}",
                    f"-DCMAKE_CXX_LINKER_LAUNCHER={launcher}"],
                   cwd=SOURCE, check=True, stdout=subprocess.DEVNULL)
    references = [reference_seconds(directory) for _ in range(3)]
    log.write_text("")
    total = cpu_seconds(["cmake", "--build", directory, "--parallel", str(jobs)])
    lines = log.read_text().splitlines()
    references += [reference_seconds(directory) for _ in range(3)]
    runs = [(float(seconds), output) for seconds, output in (line.split(" ", 1) for line in lines)]
    return runs, total, sum(references) / len(references)


def report(preset, runs, total, reference, units):
    """Multiples of the reference file, seconds, and what took them."""
    def line(seconds, what):
        print(f"{seconds / reference:8.1f} {seconds:8.1f} s  {what}")

    targets = defaultdict(list)
    for seconds, output in runs:
        match = OUTPUT.match(output)
        target, unit = match.groups() if match else (Path(output).name, "linked")
        targets[target].append((seconds, unit))
    print(f"{preset}: {len(runs)} runs of compiler and linker; "
          f"{REFERENCE.relative_to(SOURCE)} takes {reference:.2f} s")
    for target, found in sorted(targets.items(), key=lambda t: -sum(s for s, _ in t[1])):
        line(sum(seconds for seconds, _ in found), target)
        for seconds, unit in sorted(found, reverse=True)[:units]:
            line(seconds, "    " + unit)
    line(total - sum(seconds for seconds, _ in runs), "the rest: build tools, listing of tests")
    line(total, "in all")


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n", maxsplit=1)[0])
    parser.add_argument("presets", nargs="*", default=["demo", "test"], metavar="PRESET")
    parser.add_argument("--jobs", type=int, default=os.cpu_count(), help="at once")
    parser.add_argument("--units", type=int, default=1000, help="files of a target to list")
    arguments = parser.parse_args()
    os.environ["CCACHE_DISABLE"] = "1"
    with tempfile.TemporaryDirectory() as name:
        directory = Path(name)
        builds = [(preset, *build(preset, directory, arguments.jobs))
                  for preset in arguments.presets]
    for preset, runs, total, reference in builds:
        report(preset, runs, total, reference, arguments.units)


if __name__ == "__main__":
    if sys.argv[1:2] == ["--launch"]:
        launch(sys.argv[2], sys.argv[3:])
    main()
