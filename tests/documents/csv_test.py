# SPDX-License-Identifier: MIT
"""The CSV tables, read by Python's csv module, say what the plan's JSON says."""

import csv
import io
import json
import re
import unittest

from documents import BENCH, document, hostile_jobs
from program import EXAMPLES

TABLES = ("parts", "boards", "materials", "batches", "schedule")
UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]")


def rows(job, table):
    text = document(job, "csv", "--table", table).decode("utf-8")
    lines = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    return [dict(zip(lines[0], line)) for line in lines[1:]], lines, text


def as_cell(value):
    """How a text stands in a cell: what begins like a formula has an apostrophe before it."""
    value = UNSEEN.sub(" ", value)
    return "'" + value if value.lstrip(" ")[:1] in tuple("=+-@") else value


def expected(plan, table):
    cut = plan["cut_list"]
    if table == "boards":
        for number, board in enumerate(cut["boards"], 1):
            for strip_number, strip in enumerate(board["strips"], 1):
                for order, piece in enumerate(strip["pieces"], 1):
                    yield {"kind": "board", "number": number, "stock": board["stock"],
                           "on_hand": "yes" if board["on_hand"] else "no",
                           "stock_length_mm": board["length_mm"],
                           "stock_width_mm": board["width_mm"], "strip": strip_number,
                           "strip_width_mm": strip["width_mm"], "order": order,
                           "mark": piece["mark"], "length_mm": piece["length_mm"],
                           "width_mm": piece.get("width_mm", strip["width_mm"])}
        for number, sheet in enumerate(cut["sheets"], 1):
            for order, piece in enumerate(sheet["pieces"], 1):
                yield {"kind": "sheet", "number": number, "stock": sheet["stock"],
                       "on_hand": "yes" if sheet["on_hand"] else "no",
                       "stock_length_mm": sheet["length_mm"],
                       "stock_width_mm": sheet["width_mm"], "order": order,
                       "mark": piece["mark"], "x_mm": piece["x_mm"], "y_mm": piece["y_mm"],
                       "length_mm": piece["width_mm"], "width_mm": piece["height_mm"]}
        return
    source = cut["parts"] if table == "parts" else plan[table]
    yield from source


def cell_of(key, value):
    if key == "neighbours":
        return " ".join(map(str, value))
    if key == "after":
        return as_cell(" | ".join(value))
    if key == "doses":
        return as_cell("; ".join(f"{dose['name']}: {dose['doses']:g}" for dose in value))
    return "" if value is None else as_cell(value) if isinstance(value, str) else value


class Csv(unittest.TestCase):
    def assert_equal_to_json(self, job):
        plan = json.loads(document(job, "json"))
        for table in TABLES:
            found, _, _ = rows(job, table)
            wanted = list(expected(plan, table))
            self.assertEqual(len(found), len(wanted), table)
            for row, item in zip(found, wanted):
                for key, value in item.items():
                    if key not in row:
                        self.assertIn(key, ("zones", "front_mm", "advance_mm", "longer_min"))
                        continue
                    cell = cell_of(key, value)
                    if isinstance(cell, str):
                        self.assertEqual(row[key], cell, key)
                    else:
                        self.assertEqual(float(row[key]), float(cell), key)
                for key in row.keys() - item.keys() - {"height_mm"}:
                    without = {"currency": plan["job"]["currency"], "ice_kg": "0"}.get(key, "")
                    self.assertEqual(row[key], without, key)

    def test_every_table_of_every_example_is_the_plan(self):
        for job in EXAMPLES:
            with self.subTest(job=job.parent.name):
                self.assert_equal_to_json(job)

    def test_hostile_names_come_back_and_are_no_formulas(self):
        for job in hostile_jobs():
            with self.subTest(name=job["name"]):
                self.assert_equal_to_json(job)
                for row in rows(job, "parts")[0]:
                    self.assertNotRegex(row["slab"], r"^\s*[=+\-@]")

    def test_the_bytes_are_those_of_rfc_4180(self):
        for table in TABLES:
            _, lines, text = rows(BENCH, table)
            self.assertTrue(text.endswith("\r\n"))
            self.assertNotIn("\n", text.replace("\r\n", ""))
            self.assertEqual({len(line) for line in lines}, {len(lines[0])})
            self.assertGreater(len(lines), 1)


if __name__ == "__main__":
    unittest.main()
