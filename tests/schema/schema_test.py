# SPDX-License-Identifier: MIT
"""Holds the published JSON Schemas and the program together, with an independent validator."""

import copy
import json
import unittest

from jsonschema import Draft202012Validator

from program import EXAMPLES, plan, run, without_comments


def schema(name):
    return json.loads(run("schema", name).stdout)


def read(text):
    return json.loads(without_comments(text))


def problems(name, value):
    return [f"{error.json_path}: {error.message}"
            for error in Draft202012Validator(schema(name)).iter_errors(value)]


class Schemas(unittest.TestCase):
    def test_both_are_valid_2020_12_schemas(self):
        for name in ("job", "plan"):
            with self.subTest(name):
                self.assertEqual(schema(name)["$schema"],
                                 "https://json-schema.org/draft/2020-12/schema")
                Draft202012Validator.check_schema(schema(name))


class Jobs(unittest.TestCase):
    def test_every_example_fits(self):
        for path in EXAMPLES:
            with self.subTest(str(path)):
                self.assertEqual(problems("job", read(path.read_text())), [])

    def test_the_starter_job_fits(self):
        self.assertEqual(problems("job", read(run("new").stdout)), [])

    def test_schema_and_program_refuse_the_same_broken_jobs(self):
        whole = read(EXAMPLES[0].read_text())
        breaks = {
            "unknown key": lambda job: job.update(lenght="1 in"),
            "unknown key in a slab": lambda job: job["slabs"][0].update(thicknes="1 in"),
            "number without a unit": lambda job: job["slabs"][0].update(thickness=40),
            "text that is no length": lambda job: job["slabs"][0].update(thickness="forty"),
            "no slabs": lambda job: job.pop("slabs"),
            "no mix": lambda job: job.pop("mix"),
            "slabs is not a list": lambda job: job.update(slabs={}),
            "units of neither kind": lambda job: job.update(units="imperial"),
        }
        for name, spoil in breaks.items():
            with self.subTest(name):
                job = copy.deepcopy(whole)
                spoil(job)
                self.assertNotEqual(problems("job", job), [])
                result = run("plan", "-", stdin=json.dumps(job))
                self.assertEqual((result.returncode, result.stdout), (3, ""))


class Plans(unittest.TestCase):
    def test_every_plan_fits(self):
        for path in EXAMPLES:
            with self.subTest(str(path)):
                self.assertEqual(problems("plan", json.loads(plan(path, "json"))), [])

    def test_a_plan_with_a_key_missing_or_added_does_not_fit(self):
        whole = json.loads(plan(EXAMPLES[0], "json"))
        for key in whole:
            with self.subTest(key):
                self.assertNotEqual(
                    problems("plan", {k: v for k, v in whole.items() if k != key}), [])
        self.assertNotEqual(problems("plan", whole | {"surprise": 1}), [])


unittest.main()
