# SPDX-License-Identifier: MIT
"""Holds the order of the modules by reading their #include lines."""

import re
import unittest

from program import SOURCE

# A module may include itself and the modules before it.
ORDER = ["core", "basis", "job", "slab", "cutting", "mix", "site", "pour", "hardening", "loads",
         "checks", "plan", "odds", "resume", "why", "draw", "render", "cli"]
# Independent of each other.
APART = {("slab", "job")}
READS_JSON = {"core", "job", "why", "render", "cli"}
# They take seconds to compile: one file includes each.
HEAVY = {"nlohmann/json.hpp": "core/json.cpp", "CLI/CLI.hpp": "cli/command_line.cpp"}
LIBRARIES = ("nlohmann/", "fmt/", "CLI/")
INCLUDE = re.compile(r'^\s*#\s*include\s+[<"]([^>"]+)[>"]', re.MULTILINE)


def complaints(module, text):
    """What is wrong with the includes of a source file of this module."""
    found = []
    for target in INCLUDE.findall(text):
        other = target.split("/")[0]
        if module == "include":
            if target.startswith(LIBRARIES):
                found.append(f"a public header includes {target}")
            if other in ORDER:
                found.append(f"a public header includes the private {target}")
            continue
        if target == "core/json.h" and module not in READS_JSON:
            found.append(f"{module} reads or writes JSON")
        if other in ORDER and "/" in target:
            if ORDER.index(other) > ORDER.index(module) or (module, other) in APART:
                found.append(f"{module} includes {target}")
    return found


TYPE = re.compile(r"^(?:struct|class|enum class) ([\w:]+)[^;]*$", re.MULTILINE)


def shared_names(headers):
    """The types that more than one header defines; two of one name in a program are no error of
    the compiler's, and what then happens is undefined ([basic.def.odr])."""
    places = {}
    for path, text in headers:
        for name in TYPE.findall(text):
            places.setdefault(name, []).append(path)
    return {name: paths for name, paths in places.items() if len(paths) > 1}


class Layers(unittest.TestCase):
    def test_every_module_has_its_place(self):
        modules = {path.parent.name for path in SOURCE.glob("src/*/*.[ch]*") if
                   path.suffix in (".h", ".cpp")}
        self.assertEqual(modules - set(ORDER), set())
        self.assertIn("core", modules)

    def test_no_file_includes_a_later_module_or_a_library_it_may_not(self):
        paths = [*SOURCE.glob("src/*/*.h"), *SOURCE.glob("src/*/*.cpp"),
                 *SOURCE.glob("include/strikeoff/*.h")]
        self.assertGreater(len(paths), 10)
        found = []
        for path in paths:
            inside = path.relative_to(SOURCE).parts
            module = "include" if inside[0] == "include" else inside[1]
            found += [f"{path}: {what}" for what in complaints(module, path.read_text())]
        self.assertEqual(found, [])

    def test_one_file_includes_each_heavy_header(self):
        found = {}
        for path in SOURCE.glob("src/*/*.[ch]*"):
            for target in INCLUDE.findall(path.read_text()):
                if target.startswith(("nlohmann/", "CLI/")):
                    found.setdefault(target, []).append(str(path.relative_to(SOURCE / "src")))
        self.assertEqual(found, {header: [file] for header, file in HEAVY.items()})

    def test_no_two_headers_define_types_of_one_name(self):
        paths = [*SOURCE.glob("src/*/*.h"), *SOURCE.glob("include/strikeoff/*.h")]
        self.assertEqual(shared_names((path, path.read_text()) for path in paths), {})
        self.assertTrue(shared_names([("a", "struct Place {\n"), ("b", "class Place {\n")]))

    def test_a_wrong_include_is_noticed(self):
        self.assertTrue(complaints("slab", '#include "plan/materials.h"\n'))
        self.assertTrue(complaints("slab", '#include "job/reader.h"\n'))
        self.assertTrue(complaints("pour", '# include "core/json.h"\n'))
        self.assertTrue(complaints("include", "#include <fmt/core.h>\n"))
        self.assertTrue(complaints("include", '#include "core/format.h"\n'))
        self.assertFalse(complaints("plan", '#include "slab/measure.h"\n#include <vector>\n'))


unittest.main()
