# SPDX-License-Identifier: MIT
"""Where a browser puts the texts and shapes of drawings: one start of it for all of them."""
import html
import json
import pathlib
import re
import subprocess
import tempfile

# Of each drawing its texts as the four corners of their boxes, their turn counted, and the box
# round everything that is drawn; all in millimetres from the drawing's upper left corner.
SCRIPT = """
<script>addEventListener('load', () => {
  const all = [];
  for (const svg of document.querySelectorAll('body > div > svg')) {
    const page = svg.getBoundingClientRect(), back = svg.getScreenCTM().inverse();
    const texts = [], shapes = [];
    for (const e of svg.querySelectorAll('text')) {
      const b = e.getBBox(), m = back.multiply(e.getScreenCTM());
      const corner = (x, y) => { const p = new DOMPoint(x, y).matrixTransform(m); return [p.x, p.y]; };
      // Letters without the room above them that the face keeps for accents.
      const top = b.y + b.height * 0.15;
      texts.push({text: e.textContent, corners: [corner(b.x, top), corner(b.x + b.width, top),
        corner(b.x + b.width, b.y + b.height), corner(b.x, b.y + b.height)]});
    }
    for (const e of svg.querySelectorAll(
        ':scope > :not(defs) line, :scope > line, :scope > rect, g rect, polygon, polyline, ' +
        ':scope > path, g > path, circle')) {
      if (e.closest('defs')) continue;
      const b = e.getBBox(), m = back.multiply(e.getScreenCTM());
      const a = new DOMPoint(b.x, b.y).matrixTransform(m);
      const z = new DOMPoint(b.x + b.width, b.y + b.height).matrixTransform(m);
      shapes.push([a.x, a.y, z.x, z.y]);
    }
    const view = svg.viewBox.baseVal;
    all.push({width: view.width, height: view.height, page: [page.width, page.height],
              texts: texts, shapes: shapes});
  }
  const p = document.createElement('pre');
  p.id = 'found';
  p.textContent = JSON.stringify(all);
  document.body.replaceChildren(p);
});</script>
"""


def measure(chromium, svgs):
    """What the browser finds in each of these SVG texts."""
    with tempfile.TemporaryDirectory() as directory:
        page = pathlib.Path(directory, "page.html")
        body = "\n".join(f"<div>{svg}</div>" for svg in svgs)
        page.write_text("<!doctype html><html lang=en><meta charset=utf-8><title>drawings</title>"
                        f"<body>{body}{SCRIPT}</body></html>", encoding="utf-8")
        done = subprocess.run(
            [chromium, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic",
             "--no-first-run", "--disable-background-networking", "--disable-component-update",
             "--disable-sync", f"--user-data-dir={directory}/user", "--virtual-time-budget=20000",
             "--dump-dom", page.as_uri()],
            capture_output=True, timeout=240, check=True)
    found = re.search(r'<pre id="found">(.*?)</pre>', done.stdout.decode("utf-8"), re.DOTALL)
    if not found:
        raise RuntimeError("the browser says nothing: " + done.stderr.decode("utf-8", "replace"))
    return json.loads(html.unescape(found.group(1)))


def depth_of_overlap(a, b):
    """How deep two convex quadrilaterals lie in each other, in mm; 0 or less: they do not."""
    least = float("inf")
    for quad in (a, b):
        for k in range(4):
            (x0, y0), (x1, y1) = quad[k], quad[(k + 1) % 4]
            length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
            if length < 1e-9:
                continue
            across = ((y0 - y1) / length, (x1 - x0) / length)
            of_a = [x * across[0] + y * across[1] for x, y in a]
            of_b = [x * across[0] + y * across[1] for x, y in b]
            least = min(least, min(max(of_a), max(of_b)) - max(min(of_a), min(of_b)))
            if least <= 0:
                return least
    return least


def faults(found):
    """What is wrong with where things are in one drawing, one sentence each."""
    wrong = []
    texts = [text for text in found["texts"] if text["text"].strip()]
    for text in texts:
        for x, y in text["corners"]:
            if not (5 <= x <= found["width"] - 5 and 5 <= y <= found["height"] - 5):
                wrong.append(f'"{text["text"]}" stands at the rim of the page or past it')
                break
    for i, a in enumerate(texts):
        for b in texts[:i]:
            if depth_of_overlap(a["corners"], b["corners"]) > 0.1:
                wrong.append(f'"{b["text"]}" and "{a["text"]}" lie on each other')
    for left, top, right, bottom in found["shapes"]:
        if min(left, top) < -0.01 or right > found["width"] + 0.01 or \
                bottom > found["height"] + 0.01:
            wrong.append(f"a shape leaves the page: {left:.1f} {top:.1f} {right:.1f} {bottom:.1f}")
    return wrong
