# SPDX-License-Identifier: MIT
"""What every plan has in common, whatever the job."""

import json
import os
import unittest

from program import EXAMPLES, PROGRAM, plan, run, without_comments


def reversed_keys(value):
    if isinstance(value, dict):
        return {key: reversed_keys(value[key]) for key in reversed(list(value))}
    if isinstance(value, list):
        return [reversed_keys(item) for item in value]
    return value


class Output(unittest.TestCase):
    def test_text_is_at_most_100_columns_wide(self):
        for job in EXAMPLES:
            for line in plan(job).splitlines():
                self.assertLessEqual(len(line), 100, line)

    def test_text_has_no_control_characters_and_ends_with_one_newline(self):
        for job in EXAMPLES:
            text = plan(job)
            self.assertTrue(text.replace("\n", "").isprintable())
            self.assertEqual(text, text.rstrip("\n") + "\n")

    def test_the_order_of_keys_in_the_job_does_not_matter(self):
        for job in EXAMPLES:
            value = json.loads(without_comments(job.read_text()))
            for form in ("text", "json"):
                result = run("plan", "-", "--format", form, stdin=json.dumps(reversed_keys(value)))
                self.assertEqual(result.stdout, plan(job, form))

    def test_place_clock_zone_and_locale_do_not_matter(self):
        for job in EXAMPLES:
            elsewhere = run("plan", job, "--format", "json", cwd="/",
                            env={"TZ": "Asia/Tokyo", "LC_ALL": "de_DE.UTF-8", "HOME": "/"})
            self.assertEqual(elsewhere.stdout, plan(job, "json"))

    def test_a_job_from_standard_input_is_the_same_job(self):
        for job in EXAMPLES:
            self.assertEqual(run("plan", "-", stdin=job.read_text()).stdout, plan(job))

    def test_json_has_no_number_that_is_not_one(self):
        def refuse(name):
            raise AssertionError(name)
        for job in EXAMPLES:
            json.loads(plan(job, "json"), parse_constant=refuse)

    def test_the_program_needs_nothing_beside_it(self):
        self.assertTrue(os.path.isabs(PROGRAM))
        self.assertEqual(run("list", "mixes", cwd="/", env={}).returncode, 0)


unittest.main()
