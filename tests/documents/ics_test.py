# SPDX-License-Identifier: MIT
"""The calendar, read by an independent library, says what the plan's schedule says."""

import datetime
import json
import re
import unittest

import icalendar

from documents import BENCH, document, hostile_jobs
from program import EXAMPLES, run, without_comments


def job_of(path):
    return json.loads(without_comments(path.read_text()))


def events(data):
    calendar = icalendar.Calendar.from_ical(data)
    assert calendar["VERSION"] == "2.0" and calendar["PRODID"], calendar
    found = calendar.walk("VEVENT")
    for component in calendar.walk():
        assert not component.errors, component.errors
    return found


class Calendar(unittest.TestCase):
    def assert_bytes(self, data):
        self.assertTrue(data.endswith(b"END:VCALENDAR\r\n"))
        for line in data.split(b"\r\n"):
            self.assertLessEqual(len(line), 75, line)
            self.assertNotIn(b"\n", line)
            self.assertNotIn(b"\r", line)
            self.assertFalse([byte for byte in line if byte < 0x20 or byte == 0x7F], line)
            line.decode("utf-8")  # no character is split by a fold

    def assert_is_schedule(self, job):
        plan = json.loads(document(job, "json"))
        data = document(job, "ics")
        self.assert_bytes(data)
        found = events(data)
        told = "\n".join(str(event["DESCRIPTION"]) for event in found)
        for task in plan["schedule"]:
            self.assertIn(task["task"], told)
        self.assertEqual(len({event["UID"] for event in found}), len(found))
        later = [task for task in plan["schedule"]
                 if task["phase"] in ("wet cure", "later") and "start_min" in task]
        self.assertEqual(len(found), 2 + len(later))
        for task, event in zip(later, found[2:]):
            self.assert_is_task(task, event, plan["job"]["date"])

    def assert_is_task(self, task, event, start):
        self.assertTrue(str(event["DESCRIPTION"]).startswith(task["task"]))
        begins = event["DTSTART"].dt
        day = datetime.date.fromisoformat(start[:10])
        if isinstance(begins, datetime.datetime):
            self.assertIsNone(begins.tzinfo)  # local and floating
            self.assertEqual(begins, datetime.datetime.fromisoformat(task["start"]))
            if "DTEND" in event:
                self.assertEqual(event["DTEND"].dt, datetime.datetime.fromisoformat(task["end"]))
            else:
                self.assertEqual(task["start"], task["end"])
        elif "start" in task:  # a day or more away, up to the full hour
            local = datetime.datetime.fromisoformat(task["start"])
            rounded = local + datetime.timedelta(minutes=59, seconds=59)
            self.assertGreaterEqual(task["start_min"], 1440)
            self.assertEqual(begins, rounded.date())
            self.assertGreater(event["DTEND"].dt, begins)
        else:  # the start time is not known: never before its day
            self.assertGreaterEqual((begins - day).days, (task["start_min"] - 720) / 1440)
            self.assertLessEqual((begins - day).days, task["start_min"] / 1440 + 1)

    def test_every_example_with_a_date_is_its_schedule(self):
        dated = 0
        for path in EXAMPLES:
            if "date" not in job_of(path):
                continue
            dated += 1
            with self.subTest(job=path.parent.name):
                self.assert_is_schedule(path)
        self.assertGreaterEqual(dated, 2)

    def test_the_day_of_the_pour_is_one_block(self):
        found = events(document(BENCH, "ics"))
        self.assertEqual(found[0]["DTSTART"].dt, datetime.date(2026, 5, 15))
        self.assertEqual(found[1]["DTSTART"].dt, datetime.datetime(2026, 5, 16, 8, 0))

    def test_no_alarm_rings_before_its_step_may_begin(self):
        for job in (BENCH, {**job_of(BENCH), "date": "2026-05-16"}):
            plan = json.loads(document(job, "json"))
            day = datetime.datetime(2026, 5, 16, 9 if isinstance(job, dict) is False else 0)
            by_text = {task["task"]: task for task in plan["schedule"]}
            for event in events(document(job, "ics"))[2:]:
                for alarm in event.walk("VALARM"):
                    begins = event["DTSTART"].dt
                    if not isinstance(begins, datetime.datetime):
                        begins = datetime.datetime.combine(begins, datetime.time())
                    rings = begins + alarm["TRIGGER"].dt
                    task = next(by_text[text] for text in by_text
                                if str(event["DESCRIPTION"]).startswith(text))
                    earliest = day + datetime.timedelta(minutes=task["start_min"])
                    self.assertGreaterEqual(rings, earliest.replace(microsecond=0)
                                            - datetime.timedelta(seconds=1), task["task"])

    def test_a_wet_cure_rings_as_often_as_the_schedule_says(self):
        """In calm air the formulas would let a cloth wait longer than the day that is said."""
        often = json.loads(json.dumps(job_of(BENCH)))
        often["site"] = {"air": "95 F", "humidity": "20 %", "wind": "15 mph"}
        seen = 0
        for job in (*EXAMPLES, often):
            if "date" not in (job if isinstance(job, dict) else job_of(job)):
                continue
            cure = next(event for event in events(document(job, "ics"))
                        if str(event["SUMMARY"]).startswith("Keep the top wet"))
            alarm = cure.walk("VALARM")[0]
            said = re.search(r"every (?:(\d+) h)? ?(?:(\d+) min)? at the latest", cure["DESCRIPTION"])
            minutes = int(said[1] or 0) * 60 + int(said[2] or 0)
            self.assertTrue(0 < minutes <= 1440, said[0])
            task = next(task for task in json.loads(document(job, "json"))["schedule"]
                        if task["phase"] == "wet cure")
            lasts = task["end_min"] - task["start_min"]
            if "DURATION" not in alarm:  # it ends before it would ring again
                self.assertLess(lasts, minutes * 2)
                continue
            seen += 1
            asked = alarm["DURATION"].dt.total_seconds() / 60
            self.assertGreaterEqual(asked, minutes)  # what is said is rounded down
            self.assertLess(asked, minutes + 30)
            self.assertLessEqual(asked, 1440)
            self.assertEqual(int(alarm["REPEAT"]), int((lasts + 1e-6) // asked))
        self.assertGreaterEqual(seen, 3)

    def test_stripping_and_sealing_ring(self):
        rung = []
        for path in EXAMPLES:
            if "date" not in job_of(path):
                continue
            plan = json.loads(document(path, "json"))
            found = {str(event["DESCRIPTION"]): event for event in events(document(path, "ics"))}
            for task in plan["schedule"]:
                kind = re.match(r"Strip|Seal, coat", task["task"])
                if not kind or "start_min" not in task:
                    continue
                event = next(event for text, event in found.items() if text.startswith(task["task"]))
                self.assertEqual(len(event.walk("VALARM")), 1, task["task"])
                rung.append(kind[0])
        self.assertGreaterEqual(rung.count("Strip"), 2)
        self.assertGreaterEqual(rung.count("Seal, coat"), 2)

    def test_a_step_keeps_its_name_when_the_pour_moves(self):
        job = job_of(BENCH)
        before = [event["UID"] for event in events(document(job, "ics"))]
        job["date"] = "2026-06-01T07:30"
        moved = events(document(job, "ics"))
        self.assertEqual([event["UID"] for event in moved], before)
        self.assertEqual(moved[1]["DTSTART"].dt, datetime.datetime(2026, 6, 1, 6, 30))

    def test_another_job_has_other_names(self):
        job = job_of(BENCH)
        ours = {event["UID"] for event in events(document(job, "ics"))}
        job["name"] = "\u4e2d"
        theirs = {event["UID"] for event in events(document(job, "ics"))}
        job["name"] = "\u6587"
        others = {event["UID"] for event in events(document(job, "ics"))}
        self.assertFalse(ours & theirs or theirs & others)

    def test_two_jobs_without_a_name_keep_apart(self):
        def names(length):
            job = job_of(BENCH)
            del job["name"]
            job["slabs"][0]["base"]["rectangle"]["length"] = length
            return [event["UID"] for event in events(document(job, "ics"))]
        self.assertFalse(set(names("76 in")) & set(names("75 in")))
        self.assertEqual(names("76 in"), names("76 in"))

    def test_a_changed_dimension_of_a_named_job_keeps_its_names(self):
        job = job_of(BENCH)
        before = [event["UID"] for event in events(document(job, "ics"))]
        job["slabs"][0]["base"]["rectangle"]["length"] = "75 in"
        self.assertEqual([event["UID"] for event in events(document(job, "ics"))], before)

    def test_hostile_names_stay_within_their_line(self):
        for job in hostile_jobs():
            with self.subTest(name=job["name"]):
                data = document(job, "ics")
                self.assert_bytes(data)
                found = events(data)
                self.assertEqual(len(found), len(events(document(BENCH, "ics"))))
                shown = job["name"].replace("\u202e", " ").replace("\u202c", " ")
                self.assertEqual(str(found[0]["SUMMARY"]), f"Prepare the pour ({shown})")

    def test_a_job_without_a_date_has_no_calendar(self):
        job = job_of(BENCH)
        del job["date"]
        result = run("plan", "-", "--format", "ics", stdin=json.dumps(job))
        self.assertEqual((result.returncode, result.stdout), (3, ""))
        self.assertIn('"date"', result.stderr)


if __name__ == "__main__":
    unittest.main()
