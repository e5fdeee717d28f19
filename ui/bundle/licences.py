"""Gathers the licences of what is handed on with the program, once that is put together:
`python -m ui.bundle.licences FOLDER`.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import sysconfig
from collections.abc import Iterator
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

from binder.resources import ROOT

LICENCE = re.compile(r"(^|/)(licen[cs]es?/|(licen[cs]e|copying|notice)[^/]*$)", re.IGNORECASE)
DOCUMENTS = Path("/usr/share/doc")
"""Where Debian and its relatives keep the licence of each of their packages."""


def gather(bundle: Path) -> None:
    """Fill the folder `licences` of a bundle with a folder for each library."""
    folder = bundle / "licences"
    for found in libraries():
        keep(found, folder / found.name)
    own = Path(sysconfig.get_path("stdlib")) / "LICENSE.txt"
    if own.is_file():
        (folder / "python").mkdir(parents=True)
        shutil.copy(own, folder / "python")
    for package in packages(bundle):
        place = folder / package
        place.mkdir(parents=True, exist_ok=True)
        shutil.copy(DOCUMENTS / package / "copyright", place)


def libraries() -> Iterator[Distribution]:
    """The libraries of the lock file that are installed on this system."""
    lock = (ROOT / "requirements.lock").read_text(encoding="utf-8")
    for name in re.findall(r"^([\w.-]+)==", lock, re.MULTILINE):
        try:
            yield distribution(name)
        except PackageNotFoundError:
            continue  # meant for another system


def keep(found: Distribution, folder: Path) -> None:
    """Keep a library's licences in a folder, and what it says of itself."""
    folder.mkdir(parents=True)
    (folder / "METADATA").write_text(found.read_text("METADATA") or "", encoding="utf-8")
    for file in found.files or ():
        if LICENCE.search(file.as_posix()) and file.suffix not in (".py", ".pyc"):
            shutil.copy(str(found.locate_file(file)), folder)


def packages(bundle: Path) -> list[str]:
    """The packages of Debian's kin that libraries of a bundle were taken from, sorted."""
    if not shutil.which("dpkg"):
        return []
    names = [f"*/{path.name}" for path in bundle.glob("_internal/lib*.so*") if path.is_file()]
    asked = subprocess.run(["dpkg", "-S", *names], capture_output=True, text=True)
    found = {line.partition(":")[0] for line in asked.stdout.splitlines()}
    return sorted(name for name in found if (DOCUMENTS / name / "copyright").is_file())


if __name__ == "__main__":
    gather(Path(sys.argv[1]))
