# SPDX-License-Identifier: MIT
"""The print sheet of every example, printed by headless Chromium: pages, paper and clipped text."""

import concurrent.futures
import os
import pathlib
import re
import subprocess
import tempfile
import unittest

from documents import HOSTILE, document, hostile_jobs
from program import EXAMPLES

# Pages of words; another font may move one line to the next page. Each drawing adds one.
WORD_PAGES = {
    "bakery-table": 13, "greenhouse-step": 10, "market-counter": 14, "potting-bench": 11,
    "potting-bench-metric": 11, "tasting-bar": 16, "workshop-hearth": 11,
}
A4, LETTER = (595, 842), (612, 792)  # points


class Page:
    def __init__(self, width, height, words):
        self.width, self.height, self.words = float(width), float(height), words


def printed(name, html):
    """The pages that Chromium prints: the size of each and its words with their boxes."""
    with tempfile.TemporaryDirectory() as directory:
        folder = pathlib.Path(directory)
        (folder / "sheet.html").write_bytes(html)
        subprocess.run(
            [os.environ["STRIKEOFF_CHROMIUM"], "--headless", "--no-sandbox", "--disable-gpu",
             "--no-pdf-header-footer", f"--user-data-dir={folder / 'profile'}",
             f"--print-to-pdf={folder / 'sheet.pdf'}", (folder / "sheet.html").as_uri()],
            check=True, capture_output=True, timeout=240)
        boxes = subprocess.run([os.environ["STRIKEOFF_PDFTOTEXT"], "-bbox", folder / "sheet.pdf",
                                "-"], check=True, capture_output=True, timeout=60).stdout.decode()
    pages = []
    for page in re.finditer(r'<page width="(\S+)" height="(\S+)">(.*?)</page>', boxes, re.DOTALL):
        words = [(tuple(map(float, word.groups()[:4])), word[5]) for word in re.finditer(
            r'<word xMin="(\S+)" yMin="(\S+)" xMax="(\S+)" yMax="(\S+)">(.*?)</word>', page[3])]
        pages.append(Page(page[1], page[2], words))
    return name, html.count(b"<figure>"), pages


class Pages(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        jobs = {job.parent.name: document(job, "html") for job in EXAMPLES}
        longest = HOSTILE.index("x" * 200)
        jobs["long name"] = document(list(hostile_jobs())[longest], "html")
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            cls.sheets = list(pool.map(lambda item: printed(*item), jobs.items()))

    def test_every_drawing_has_a_lying_page_of_its_own(self):
        for name, figures, pages in self.sheets:
            with self.subTest(name):
                self.assertEqual(sum(page.width > page.height for page in pages), figures)

    def test_words_take_the_pages_expected(self):
        for name, _, pages in self.sheets:
            if name in WORD_PAGES:
                with self.subTest(name):
                    standing = sum(page.width < page.height for page in pages)
                    self.assertAlmostEqual(standing, WORD_PAGES[name], delta=1)

    def test_no_page_is_empty_and_paper_is_one_size(self):
        for name, _, pages in self.sheets:
            with self.subTest(name):
                sizes = {tuple(sorted((round(page.width), round(page.height)))) for page in pages}
                self.assertEqual(len(sizes), 1)
                self.assertIn(sizes.pop(), (A4, LETTER))
                self.assertTrue(all(page.words for page in pages))

    def test_no_word_is_cut_off_at_an_edge(self):
        least = 5 / 25.4 * 72  # 5 mm, in points: no printer needs more (common practice, no source)
        for name, _, pages in self.sheets:
            for number, page in enumerate(pages, 1):
                for (left, top, right, bottom), word in page.words:
                    with self.subTest(name, page=number, word=word):
                        self.assertGreaterEqual(left, least)
                        self.assertGreaterEqual(top, least)
                        self.assertLessEqual(right, page.width - least)
                        self.assertLessEqual(bottom, page.height - least)


if __name__ == "__main__":
    unittest.main()
