#!/usr/bin/python3 -B
"""The Debian package, by Debian's own tools: lintian finds neither an error nor a warning, its dependencies
are those that dpkg-shlibdeps finds, and it has what the Debian Policy Manual asks for in chapters 5, 10
and 12. The source tarball holds what git holds, byte by byte, and is configured without git.
"""

import os
import pathlib
import re
import tarfile
import tempfile

from common import QUOIN, ROOT, Tally, require_quoin, run

BUILD = QUOIN.parents[1]
PATIENCE = 600


def check_debian(tally, folder):
    done = run(["cpack", "-G", "DEB", "-B", folder], cwd=BUILD, text=True, timeout=PATIENCE)
    packages = [*folder.glob("quoin_*.deb")]
    if not tally.check(len(packages) == 1, "cpack -G DEB", done.stdout + done.stderr):
        return
    lint = run(["lintian", "--allow-root", "--fail-on", "error,warning", packages[0]], text=True, timeout=PATIENCE)
    tally.check(lint.returncode == 0 and not lint.stdout, "lintian", lint.stdout + lint.stderr)
    control = run(["dpkg-deb", "--field", packages[0]], text=True).stdout
    for field in ("Package: quoin", "Section: text", "Priority: optional", "Maintainer: ", "Description: "):
        tally.check(re.search(f"^{field}", control, re.M), f"the package has '{field}'", control)
    needed = set(re.search(r"^Depends: (.*)", control, re.M).group(1).split(", "))
    names = {need.split()[0] for need in needed}
    for library in ("libc6", "libharfbuzz0b", "libgit2-1.5", "poppler-utils"):
        tally.check(library in names, f"the package needs {library}", control)
    tally.check(not any(name.endswith("-dev") for name in names), "it needs nothing to build with", control)
    held = run(["dpkg-deb", "--contents", packages[0]], text=True).stdout
    for path in ("doc/quoin/copyright", "doc/quoin/changelog.gz", "man/man1/quoin-set.1.gz", "man/man5/quoin-resume.5.gz",
                 "bash-completion/completions/quoin", "quoin/fonts/licences/fonts-lato"):
        tally.check(f" ./usr/share/{path}\n" in held, f"the package holds {path}")


def of_git():
    """The files that git holds or would take, as this tree has them."""
    names = run(["git", "-c", "safe.directory=*", "-C", ROOT, "ls-files", "--cached", "--others", "--exclude-standard"],
                text=True).stdout.splitlines()
    return {name for name in names if (ROOT / name).is_file()}


def check_source(tally, folder):
    done = run(["cpack", "-G", "TGZ", "--config", "CPackSourceConfig.cmake", "-B", folder], cwd=BUILD, text=True,
               timeout=PATIENCE)
    tarballs = [*folder.glob("quoin-*.tar.gz")]
    if not tally.check(len(tarballs) == 1, "cpack of the source", done.stdout + done.stderr):
        return
    with tarfile.open(tarballs[0]) as tarball:
        tarball.extractall(folder / "source")
    tree = next((folder / "source").iterdir())
    held = {str(path.relative_to(tree)) for path in tree.rglob("*") if path.is_file()}
    wanted = of_git()
    tally.check(held - wanted == {".ci/built-from"} and wanted <= held, "the tarball holds what git holds",
                ", ".join(sorted(held ^ wanted)[:9]))
    differ = [name for name in sorted(wanted & held) if (tree / name).read_bytes() != (ROOT / name).read_bytes()]
    tally.check(not differ, "the tarball's files are the same", ", ".join(differ))

    bare = {"PATH": os.environ["PATH"], "HOME": str(folder), "GIT_DIR": str(folder / "none")}
    done = run(["cmake", "-S", tree, "-B", folder / "build", "-G", "Ninja"], env=bare, text=True, timeout=PATIENCE)
    tally.check(done.returncode == 0, "the tarball is configured", done.stderr)
    said = run([QUOIN, "--version"], text=True).stdout
    built_from = re.search(r"built from ([\w.-]+)", said)
    tally.check(built_from, "--version names what it was built from", said)
    if built_from and done.returncode == 0:
        version = (folder / "build" / "version.cpp").read_text()
        tally.check(f'"{built_from.group(1)}"' in version, "so does the tarball's", version)


def main():
    require_quoin()
    tally = Tally()
    with tempfile.TemporaryDirectory(prefix="outside-") as made:
        for name, check in (("debian", check_debian), ("source", check_source)):
            folder = pathlib.Path(made) / name
            folder.mkdir()
            check(tally, folder)
    tally.finish()


if __name__ == "__main__":
    main()
