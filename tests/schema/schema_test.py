# SPDX-License-Identifier: MIT
"""Holds the published JSON Schemas and the program together, with an independent validator."""

import copy
import json
import unittest

from jsonschema import Draft202012Validator

from program import EXAMPLES, SOURCE, plan, run, without_comments


def schema(name):
    return json.loads(run("schema", name).stdout)


def read(text):
    return json.loads(without_comments(text))


def problems(name, value):
    return [f"{error.json_path}: {error.message}"
            for error in Draft202012Validator(schema(name)).iter_errors(value)]


def everything():
    """A job that uses the keys of a slab, its base and its forms which no example needs."""
    return {
        "units": "metric",
        "slabs": [{
            "base": {
                "rectangle": {"length": "2000 mm", "depth": "600 mm"},
                "partitions": ["600 mm", {"from": ["1.4 m", "0 mm"], "to": ["1.4 m", "600 mm"]}],
                "legs": [["50 mm", "50 mm"], ["1.95 m", "550 mm"]],
                "gaps": [{"rectangle": {"length": "300 mm", "depth": "600 mm"},
                          "at": ["800 mm", "0 mm"]}],
            },
            "overhang": {"all": "60 mm", "back": "0 mm"},
            "thickness": "40 mm",
            "openings": [{"circle": "300 mm", "at": ["500 mm", "300 mm"]},
                         {"rectangle": {"length": "300 mm", "depth": "200 mm"},
                          "at": ["1.2 m", "200 mm"], "corner_radius": "20 mm"}],
            "levels": [{"at": ["0 mm", "0 mm"], "low": "3 mm"},
                       {"at": ["2 m", "0 mm"], "low": "0 mm"},
                       {"at": ["2 m", "600 mm"], "low": "5 mm"}],
            "fall": {"percent": "1 %", "towards": "front"},
            "apron": {"depth": "80 mm", "sides": ["front"]},
            "reinforcement": {"kind": "bar", "diameter": "6 mm", "spacing": "150 mm",
                              "cover": "15 mm", "brackets": ["left"]},
            "brackets": ["right"],
        }],
        "mix": "fine-20kg",
        "limits": {"support_load": "200 kg"},
        "forms": {"bend_stock": {"name": "thin sheet", "length": "2 m", "width": "1 m",
                                 "thickness": "2 mm", "bends_to": "50 mm"}},
    }


class Schemas(unittest.TestCase):
    def test_all_are_valid_2020_12_schemas(self):
        for name in ("job", "plan", "log"):
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

    def test_schema_and_program_take_a_job_with_everything_a_slab_may_hold(self):
        job = everything()
        self.assertEqual(problems("job", job), [])
        self.assertIn(run("plan", "-", stdin=json.dumps(job)).returncode, (0, 1))

    def test_schema_and_program_refuse_the_same_broken_jobs(self):
        whole = everything()
        breaks = {
            "unknown key": lambda job: job.update(lenght="1 in"),
            "unknown key in a slab": lambda job: job["slabs"][0].update(thicknes="1 in"),
            "number without a unit": lambda job: job["slabs"][0].update(thickness=40),
            "text that is no length": lambda job: job["slabs"][0].update(thickness="forty"),
            "no slabs": lambda job: job.pop("slabs"),
            "no mix": lambda job: job.pop("mix"),
            "slabs is not a list": lambda job: job.update(slabs={}),
            "units of neither kind": lambda job: job.update(units="imperial"),
            "two level readings": lambda job: job["slabs"][0]["levels"].pop(),
            "a reading without its place": lambda job: job["slabs"][0]["levels"][0].pop("at"),
            "a fall without its side": lambda job: job["slabs"][0]["fall"].pop("towards"),
            "an apron without its depth": lambda job: job["slabs"][0]["apron"].pop("depth"),
            "an apron of no sides": lambda job: job["slabs"][0]["apron"].update(sides=[]),
            "a circle that is a rectangle too": lambda job: job["slabs"][0]["openings"][0].update(
                rectangle={"length": "300 mm", "depth": "200 mm"}),
            "a partition without its end": lambda job: job["slabs"][0]["base"]["partitions"].append(
                {"from": ["0 mm", "0 mm"]}),
            "a gap without its place": lambda job: job["slabs"][0]["base"]["gaps"][0].pop("at"),
            "brackets by themselves": lambda job: job["slabs"][0].update(brackets=True),
            "a board that bends by a number": lambda job: job["forms"]["bend_stock"].update(
                bends_to=100),
        }
        for name, spoil in breaks.items():
            with self.subTest(name):
                job = copy.deepcopy(whole)
                spoil(job)
                self.assertNotEqual(problems("job", job), [])
                result = run("plan", "-", stdin=json.dumps(job))
                self.assertEqual((result.returncode, result.stdout), (3, ""))


class Logs(unittest.TestCase):
    JOB = SOURCE / "examples" / "bakery-table" / "job.json"
    LOG = read((SOURCE / "examples" / "bakery-table" / "log.json").read_text())

    def test_the_example_fits(self):
        self.assertEqual(problems("log", self.LOG), [])
        self.assertIn(run("resume", self.JOB, "-", stdin=json.dumps(self.LOG)).returncode, (0, 1))

    def test_schema_and_program_refuse_the_same_broken_logs(self):
        breaks = {
            "unknown key": lambda log: log.update(bag_left=3),
            "unknown key in a batch": lambda log: log["batches"][0].update(place="9 min"),
            "no batches": lambda log: log.pop("batches"),
            "an empty list": lambda log: log.update(batches=[]),
            "a batch without its contact": lambda log: log["batches"][0].pop("contact"),
            "a time without a unit": lambda log: log["batches"][0].update(contact=0),
            "a text that is no time": lambda log: log.update(now="soon"),
            "a number of no batch": lambda log: log["batches"][0].update(number=0),
            "a depth without its place": lambda log: log["depths"][0].pop("at"),
            "a depth that is a number": lambda log: log["depths"][0].update(depth=40),
            "bags in words": lambda log: log.update(bags_left="three"),
        }
        for name, spoil in breaks.items():
            with self.subTest(name):
                log = copy.deepcopy(self.LOG)
                spoil(log)
                self.assertNotEqual(problems("log", log), [])
                result = run("resume", self.JOB, "-", stdin=json.dumps(log))
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
