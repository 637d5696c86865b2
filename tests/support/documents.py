# SPDX-License-Identifier: MIT
"""What the tests of printed documents share: bytes as they are, and jobs with hostile names."""

import json
import subprocess

from program import PROGRAM, SOURCE, without_comments

BENCH = SOURCE / "examples/potting-bench/job.json"

# Control characters are refused by the reader of jobs; the unit tests put those into plans.
HOSTILE = [
    'say "cheese", <b>bold</b> & <script>alert(1)</script>',
    "a semicolon; a \\ backslash, a comma",
    "=1+1", "+1", "-1", "@sum", "  =1+1",
    "\u202eright to left\u202c \u05e9\u05dc\u05d5\u05dd",
    "x" * 200, "long words " * 18,
    "\u00e9\u4e2d\U0001f600" * 40,
    "]]> --> </style></title></svg>",
]


def document(job, form, *options):
    """The bytes of a document; `job` is a path or a job."""
    path, stdin = (job, b"") if not isinstance(job, dict) else ("-", json.dumps(job).encode())
    result = subprocess.run([PROGRAM, "plan", str(path), "--format", form, *options], input=stdin,
                            capture_output=True, timeout=60, check=False)
    assert result.returncode in (0, 1), (result.returncode, result.stderr.decode())
    return result.stdout


def hostile_jobs():
    """The bench with each hostile name, as the job's and as the slab's."""
    for name in HOSTILE:
        job = json.loads(without_comments(BENCH.read_text()))
        job["name"] = name
        job["slabs"][0]["name"] = name
        yield job
