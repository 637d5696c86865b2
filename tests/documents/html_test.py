# SPDX-License-Identifier: MIT
"""The print sheet is one well-formed HTML file that needs nothing beside it."""

import collections
import html.parser
import json
import re
import unittest

from documents import BENCH, HOSTILE, document, hostile_jobs
from program import EXAMPLES

VOID = {"meta", "br", "wbr", "link", "img", "hr", "input"}
SECTIONS = ["shop", "cut", "build", "gate", "card", "clock", "finish", "calendar", "air", "weights",
            "cautions", "assumptions"]


class Reader(html.parser.HTMLParser):
    """Checks that every element is closed in its turn, and keeps what the tests ask about."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.open, self.tags, self.ids = [], collections.Counter(), []
        self.references, self.sections, self.texts = [], [], []
        self.attributes, self.titles = set(), collections.Counter()
        self.feed(text)
        self.close()
        assert not self.open, self.open

    def handle_starttag(self, tag, attrs):
        values = dict(attrs)
        assert len(values) == len(attrs), attrs
        self.tags[tag] += 1
        self.attributes |= set(values)
        if "id" in values:
            self.ids.append(values["id"])
        self.references += [values[key] for key in ("href", "src", "xlink:href") if key in values]
        if tag == "section":
            self.sections.append(values["id"])
        if tag == "th":
            assert values["scope"] in ("col", "row"), attrs
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag):
        assert self.open and self.open[-1] == tag, (tag, self.open)
        self.open.pop()

    def handle_data(self, data):
        if not self.open or self.open[-1] not in ("style",):
            self.texts.append(data)

    def words(self):
        return re.sub(r"\s+", " ", "".join(self.texts))


def sheet(job):
    return document(job, "html").decode("utf-8")


class Html(unittest.TestCase):
    def assert_stands_alone(self, text, reader):
        self.assertTrue(text.startswith('<!doctype html>\n<html lang="en">\n<head>\n'
                                        '<meta charset="utf-8">'))
        self.assertFalse({"script", "link", "img", "iframe", "object"} & set(reader.tags))
        self.assertFalse([name for name in reader.attributes if name.startswith("on")])
        self.assertTrue(all(ref.startswith("#") for ref in reader.references), reader.references)
        self.assertFalse(re.findall(r"@import|url\((?!#)", text))
        self.assertEqual(len(reader.ids), len(set(reader.ids)))
        for reference in reader.references:
            self.assertIn(reference[1:], reader.ids)

    def test_every_example_is_well_formed_and_needs_nothing_beside_it(self):
        for job in EXAMPLES:
            with self.subTest(job=job.parent.name):
                text = sheet(job)
                self.assert_stands_alone(text, Reader(text))

    def test_sections_stand_in_the_order_of_the_day(self):
        for job in EXAMPLES:
            found = Reader(sheet(job)).sections
            self.assertEqual(found, [name for name in SECTIONS if name in found])
            self.assertLessEqual({"shop", "cut", "build", "card", "clock", "calendar", "cautions"},
                                 set(found))

    def test_every_drawing_task_part_and_check_of_the_plan_stands_in_it(self):
        for job in EXAMPLES:
            plan, reader = json.loads(document(job, "json")), Reader(sheet(job))
            words = reader.words()
            self.assertEqual(reader.tags["svg"], reader.tags["figure"])
            self.assertGreater(reader.tags["svg"], 3)
            for text in ([task["task"] for task in plan["schedule"]]
                         + [material["item"] for material in plan["materials"]]
                         + [check["title"] for check in plan["checks"]]
                         + [part["role"] for part in plan["cut_list"]["parts"]]
                         + [one["reason"] for one in plan["assumptions"]]):
                self.assertIn(re.sub(r"\s+", " ", text), words)

    def test_the_batch_card_has_a_row_and_two_boxes_a_batch(self):
        for job in EXAMPLES:
            plan = json.loads(document(job, "json"))
            card = re.search(r'<section id="card".*?</section>', sheet(job), re.DOTALL)[0]
            self.assertEqual(card.count("<tr>") - 1, len(plan["batches"]))
            self.assertEqual(card.count('class="box"'), 2 * len(plan["batches"]))

    def test_paper_is_letter_in_us_plans_and_a4_in_metric_ones(self):
        for job in EXAMPLES:
            us = json.loads(document(job, "json"))["job"]["units"] == "us"
            self.assertIn(f"@page {{ size: {'letter' if us else 'A4'} portrait", sheet(job))

    def test_hostile_names_are_only_text(self):
        usual = Reader(sheet(BENCH)).tags
        for name, job in zip(HOSTILE, hostile_jobs()):
            with self.subTest(name=name):
                text = sheet(job)
                reader = Reader(text)
                self.assert_stands_alone(text, reader)
                self.assertEqual(reader.tags["svg"], usual["svg"])
                self.assertEqual(reader.tags["style"], 1)
                self.assertEqual(reader.tags["b"], usual["b"])
                if "\u202e" not in name:
                    self.assertIn(re.sub(r"\s+", " ", name), reader.words())
                self.assertNotIn("\u202e", text)


if __name__ == "__main__":
    unittest.main()
