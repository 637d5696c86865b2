# SPDX-License-Identifier: MIT
"""Jobs that are hard to draw: long and hostile names, many batches and parts, small and huge
slabs, every kind of outline."""
import copy
import json
import math

MIX = {
    "name": "grey mix", "bag": "25 kg", "yield": "12.5 L",
    "water": {"least": "3.0 L", "most": "4.0 L"}, "working_time": "45 min", "at": "20 C",
}

def job(name, slabs, **more):
    one = {"format": "strikeoff-job/1", "name": name, "units": "metric", "currency": "EUR",
           "slabs": slabs, "mix": copy.deepcopy(MIX)}
    one.update(more)
    return one


def slab(name, base, thickness="45 mm", **more):
    return {"name": name, "base": base, "thickness": thickness, **more}


def rectangle(length, depth):
    return {"rectangle": {"length": length, "depth": depth}}


def corners(*points):
    return {"corners": [[f"{x} mm", f"{y} mm"] for x, y in points]}


def stair(steps):
    """2 corners to a step of 100 mm each way, up from the right, and 4 below and beside them."""
    spots = [(0, 0), (steps * 100 + 1000, 0)]
    for k in range(steps):
        x, y = (steps - k) * 100 + 1000, 600 + 100 * k
        spots += [(x, y), (x - 100, y)]
    return spots + [(1000, 600 + steps * 100), (0, 600 + steps * 100)]


def regular(number, radius):
    return [(round(radius * math.cos(2 * math.pi * k / number)) + radius,
             round(radius * math.sin(2 * math.pi * k / number)) + radius) for k in range(number)]


HOSTILE = [
    'a "quoted" <b>&amp; name</b> \'with\' ]]> --> marks',
    "\u05e9\u05d5\u05dc\u05d7\u05df \u0627\u0644\u0637\u0627\u0648\u0644\u0629 \u202eturned",
    "W" * 200,
]


def jobs():
    """By name, each as a job file's text."""
    made = {}
    for i, name in enumerate(HOSTILE):
        made[f"hostile-{i + 1}"] = job(
            name, [slab(name, rectangle("1500 mm", "600 mm"),
                        openings=[{"name": name, "circle": "150 mm",
                                   "at": ["300 mm", "200 mm"]}])])
    made["forty-batches"] = job(
        "forty batches", [slab("long", rectangle("7000 mm", "900 mm"), "80 mm", overhang="25 mm")],
        crew={"mixers": 3, "mixing": 3, "carrying": 2, "placing": 2, "finishing": 1})
    made["many-slabs"] = job(
        "many slabs", [slab(f"top {i + 1}", rectangle(f"{700 + 13 * i} mm", "500 mm"),
                            overhang="25 mm", panel="backer-850x1300") for i in range(25)])
    made["tiny"] = job("tiny", [slab("tile", rectangle("150 mm", "150 mm"), "30 mm",
                                     overhang="10 mm")])
    made["huge"] = job("huge", [slab("hall", rectangle("20000 mm", "4000 mm"), "100 mm",
                                     support="ground")])
    made["thin"] = job("thin", [slab("sill", rectangle("6000 mm", "200 mm"), "40 mm",
                                     overhang="25 mm")])
    made["l-and-t"] = job("l and t", [
        slab("ell", corners((0, 0), (2400, 0), (2400, 700), (900, 700), (900, 1600), (0, 1600)),
             overhang="30 mm", panel="backer-850x1300"),
        slab("tee", corners((0, 0), (700, 0), (700, 1000), (1400, 1000), (1400, 1600),
                            (-700, 1600), (-700, 1000), (0, 1000)), overhang="25 mm")])
    made["openings"] = job("openings", [
        slab("ring", rectangle("1800 mm", "1200 mm"), overhang="25 mm", panel="backer-850x1300",
             openings=[{"name": "fire", "rectangle": {"length": "900 mm", "depth": "500 mm"},
                        "at": ["450 mm", "350 mm"]},
                       {"name": "pipe", "circle": "60 mm", "at": ["1650 mm", "100 mm"]}])])
    us = job("apron", [slab("island", {"rectangle": {"length": "60 in", "depth": "30 in"}},
                            "1 3/4 in", overhang="2 in", apron={"depth": "6 in"})])
    us["units"] = "us"
    made["apron"] = us
    made["ground"] = job("ground", [slab("terrace", rectangle("5000 mm", "3000 mm"), "100 mm",
                                         support="ground", walls=["back"])])
    made["falling"] = job("falling", [
        slab("step", rectangle("2000 mm", "600 mm"), overhang="25 mm", panel="backer-850x1300",
             fall={"percent": "2 %", "towards": "front"},
             levels=[{"at": ["0 mm", "0 mm"], "low": "0 mm"},
                     {"at": ["2000 mm", "0 mm"], "low": "12 mm"},
                     {"at": ["0 mm", "600 mm"], "low": "3 mm"}])])
    made["stair"] = job("stair", [slab("stair", corners(*stair(19)), overhang="20 mm",
                                       panel="backer-850x1300")])
    made["round"] = job("round", [slab("sixty", corners(*regular(60, 1500)), overhang="20 mm")])
    made["leaning"] = job("leaning", [slab("leaning", corners((0, 0), (2400, 0), (2000, 700),
                                                              (200, 900)),
                                           overhang="25 mm", panel="backer-850x1300")])
    made["pool"] = job("pool", [slab("rim", rectangle("2000 mm", "1600 mm"),
                                     openings=[{"name": "pool", "circle": "900 mm",
                                                "at": ["1000 mm", "800 mm"]}])])
    return {name: json.dumps(one) for name, one in made.items()}
