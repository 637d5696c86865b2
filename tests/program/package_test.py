# SPDX-License-Identifier: MIT
"""The Debian package: what it says, what it holds, and that its program plans from where it lies."""

import gzip
import os
import pathlib
import re
import shutil
import subprocess
import tempfile
import unittest

from program import PROGRAM, SOURCE, plan

BENCH = SOURCE / "examples" / "potting-bench" / "job.json"
CPACK = os.environ["STRIKEOFF_CPACK"]
HOLDS = {
    "usr/bin/strikeoff",
    "usr/share/bash-completion/completions/strikeoff",
    "usr/share/doc/strikeoff/copyright",
    "usr/share/fish/vendor_completions.d/strikeoff.fish",
    "usr/share/man/man1/strikeoff.1.gz",
    "usr/share/strikeoff/schema/job.schema.json",
    "usr/share/strikeoff/schema/log.schema.json",
    "usr/share/strikeoff/schema/plan.schema.json",
    "usr/share/zsh/vendor-completions/_strikeoff",
}


def output(*command):
    return subprocess.run(command, capture_output=True, encoding="utf-8", check=True).stdout


def needed(packages):
    """These installed packages and all that they need, by what dpkg knows."""
    found, left = set(), list(packages)
    while left:
        name = left.pop()
        if name in found:
            continue
        found.add(name)
        lines = output("dpkg-query", "-W", "-f", "${Pre-Depends}, ${Depends}", name)
        for choice in filter(None, (part.strip() for part in lines.split(","))):
            names = [re.match(r"[^ :(]+", one.strip())[0] for one in choice.split("|")]
            left += [name for name in names if is_installed(name)][:1]
    return found


def is_installed(name):
    done = subprocess.run(["dpkg-query", "-W", "-f", "${db:Status-Status}", name],
                          capture_output=True, encoding="utf-8", check=False)
    return done.stdout == "installed"


def make_root(root, packages):
    """A system of nothing but these packages, as far as a program needs one."""
    for folder in ("usr/lib", "usr/lib64", "usr/bin", "var/lib/dpkg/info", "var/lib/dpkg/updates",
                   "var/lib/dpkg/triggers", "var/log"):
        (root / folder).mkdir(parents=True)
    for folder in ("lib", "lib64", "bin"):
        (root / folder).symlink_to("usr/" + folder)  # as Debian lays them
    for name in packages:
        for path in map(pathlib.Path, output("dpkg-query", "-L", name).splitlines()):
            if not path.exists() or path.is_dir():
                continue
            target = root / path.relative_to("/")
            target.parent.mkdir(parents=True, exist_ok=True)
            if not target.exists():
                shutil.copy2(path, target)  # what a link leads to is as good here
    (root / "var/lib/dpkg/status").write_text(output("dpkg-query", "-s", *packages))


class Package(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        place = tempfile.TemporaryDirectory()
        cls.addClassCleanup(place.cleanup)
        cls.root = pathlib.Path(place.name, "root")
        build = pathlib.Path(PROGRAM).parent
        output(CPACK, "-G", "DEB", "--config", build / "CPackConfig.cmake",
               "-B", pathlib.Path(place.name, "packages"))
        cls.package, = pathlib.Path(place.name, "packages").glob("*.deb")
        output("dpkg-deb", "-x", cls.package, cls.root)

    def field(self, name):
        return output("dpkg-deb", "-f", self.package, name).rstrip("\n")

    def test_its_name_has_the_version(self):
        version = output(PROGRAM, "--version").split()[1]
        architecture = output("dpkg", "--print-architecture").strip()
        self.assertEqual(self.package.name, f"strikeoff_{version}_{architecture}.deb")
        self.assertEqual((self.field("Package"), self.field("Version")), ("strikeoff", version))

    def test_it_depends_on_the_libraries_the_program_loads(self):
        loaded = set(re.findall(r"NEEDED +(\S+)", output("objdump", "-p", PROGRAM)))
        names = {name.split()[0] for name in self.field("Depends").split(", ")}
        self.assertIn("libc6", names)
        self.assertEqual(any(name.startswith("libfmt") for name in loaded),
                         any(name.startswith("libfmt") for name in names))
        self.assertLessEqual(names, {"libc6", "libfmt9", "libgcc-s1", "libstdc++6"})

    def test_it_says_what_it_is_in_lines_that_fit(self):
        first, *rest = self.field("Description").splitlines()
        self.assertLessEqual(len(first), 80)
        self.assertGreater(len(rest), 2)
        for line in rest:
            self.assertLessEqual(len(line), 80)

    def test_it_holds_the_program_and_what_belongs_to_it_and_no_more(self):
        listed = {line.split("./", 1)[1] for line in
                  output("dpkg-deb", "-c", self.package).splitlines() if line.startswith("-")}
        self.assertEqual(listed, HOLDS)

    def test_everything_is_root_s_and_nobody_else_s_to_write(self):
        for line in output("dpkg-deb", "-c", self.package).splitlines():
            mode, owner = line.split()[:2]
            self.assertEqual(owner, "root/root")
            self.assertIn(mode, ("drwxr-xr-x", "-rwxr-xr-x", "-rw-r--r--"))

    def test_its_program_plans_from_where_it_lies(self):
        program = self.root / "usr/bin/strikeoff"
        text = subprocess.run([program, "plan", BENCH], capture_output=True, encoding="utf-8",
                              check=True, env={}, cwd="/").stdout
        self.assertEqual(text, plan(BENCH))

    @unittest.skipUnless(os.geteuid() == 0, "to change the root takes the superuser")
    def test_a_root_of_its_dependencies_alone_takes_it_and_plans(self):
        depends = [one.split()[0] for one in self.field("Depends").split(", ")]
        with tempfile.TemporaryDirectory() as place:
            root = pathlib.Path(place, "root")
            make_root(root, sorted(needed(depends)))
            self.assertFalse((root / "usr/bin/cmake").exists())
            output("dpkg", f"--root={root}", "--force-bad-path", "--force-script-chrootless",
                   "-i", self.package)
            shutil.copy(BENCH, root / "job.json")
            text = output("chroot", root, "/usr/bin/strikeoff", "plan", "/job.json")
            self.assertEqual(text, plan(BENCH))
            for library in sorted((root / "usr/lib").rglob("libfmt.so*")):
                library.unlink()  # without one of them it does not run: the root is no wider
            alone = subprocess.run(["chroot", root, "/usr/bin/strikeoff", "--version"],
                                   capture_output=True, check=False)
            self.assertEqual(alone.returncode, 127)

    def test_its_manual_is_this_version_s(self):
        text = gzip.open(self.root / "usr/share/man/man1/strikeoff.1.gz", "rt").read()
        self.assertIn(f'"strikeoff {self.field("Version")}"', text)
        self.assertNotIn("@", text)

    def test_its_copyright_names_the_libraries_inside(self):
        text = (self.root / "usr/share/doc/strikeoff/copyright").read_text()
        for words in ("the strikeoff authors", "libcli11-dev", "nlohmann-json3-dev"):
            self.assertIn(words, text)


unittest.main()
