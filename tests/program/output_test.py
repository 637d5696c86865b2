# SPDX-License-Identifier: MIT
"""What every plan has in common, whatever the job."""

import collections
import json
import os
import unittest

from program import EXAMPLES, PROGRAM, SOURCE, plan, run, without_comments


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


class CutList(unittest.TestCase):
    def plans(self):
        for job in EXAMPLES:
            yield job.parent.name, json.loads(plan(job, "json"))

    def test_the_shop_list_buys_the_boards_and_sheets_that_are_cut(self):
        for name, example in self.plans():
            cut = example["cut_list"]
            bought = collections.Counter(
                item["stock"] for item in cut["boards"] + cut["sheets"] if not item["on_hand"])
            rows = {row["stock"]: row for row in example["materials"]}
            for total in cut["totals"]:
                with self.subTest(example=name, stock=total["stock"]):
                    self.assertEqual(rows[total["stock"]]["packs"], bought[total["stock"]])
                    self.assertEqual(total["buy"], bought[total["stock"]])

    def test_what_is_on_hand_is_cut_first(self):
        for name, example in self.plans():
            by_stock = collections.defaultdict(list)
            for board in example["cut_list"]["boards"]:
                by_stock[board["stock"]].append(board["on_hand"])
            for order in by_stock.values():
                self.assertEqual(order, sorted(order, reverse=True), name)

    def test_the_offcuts_of_the_hearth_save_a_board(self):
        job = json.loads(without_comments(
            (SOURCE / "examples" / "workshop-hearth" / "job.json").read_text()))
        bought = []
        for on_hand in (job["on_hand"], []):
            text = json.dumps(job | {"on_hand": on_hand})
            result = run("plan", "-", "--format", "json", stdin=text)
            totals = json.loads(result.stdout)["cut_list"]["totals"]
            bought.append([t["buy"] for t in totals if t["stock"] == "shelf board"])
        self.assertEqual(bought, [[1], [2]])


unittest.main()
