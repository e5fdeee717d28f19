"""What goes into the bundle and what is left out; `ringbound.spec` hands it to PyInstaller."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable, Iterable
from pathlib import Path, PurePath

ROOT = Path(__file__).resolve().parents[2]
BUILT = ROOT / "build" / "bundle"
"""Where a bundle is put together; cleared at every run."""

ICONS = BUILT / "icons"
MIGRATIONS = "binder/store/migrations"
WITHOUT = ("ui/start.py", "ui/bundle/make.py", "ui/bundle/recipe.py", MIGRATIONS)
"""Code that is of no use there; migrations are read as files, so they go in as such."""

NAMES = {"ringbound": True, "ringbound-window": False}
"""The programs of the folder, which all begin `launch.py`, and whether each one has a console."""

INSTALLERS = {"install": True, "uninstall": True}
"""The same, where the system has no way of its own to install."""

NEVER_ASKED_FOR = (
    "_hashlib", "_ssl", "ssl", "test", "tkinter", "unittest", "lxml", "numpy", "PIL", "pip",
    "setuptools", "yaml", "PySide6.QtNetwork",
)  # fmt: skip
"""Modules that libraries would use if they were there. Nothing of ours speaks over a network."""

ASKED_FOR_BY_NAME = ("tzdata",)
"""Packages that no import shows; their data goes in with them."""

LEFT_OUT = (
    r"PySide6/Qt/translations/",
    r"plugins/(egldeviceintegrations|generic|networkinformation|tls|sqldrivers|qmltooling)/",
    r"plugins/platforms/\w*(eglfs|linuxfb|minimal|minimalegl|vkkhrdisplay|vnc|direct2d)\.",
    r"plugins/platformthemes/libqgtk3",
    r"plugins/imageformats/\w*(icns|tga|wbmp|pdf)\.",
    r"plugins/platforminputcontexts/\w*virtualkeyboard",
    r"plugins/wayland-graphics-integration-client/lib(dmabuf|drm|shm|vulkan)",
    r"plugins/wayland-shell-integration/lib(fullscreen|ivi|qt-shell|wl-shell)",
    r"Qt6?Network(\.|$)",
    r"opengl32sw\.dll",
    r"icalendar/tests/",
)
"""Parts of what is fetched that this program never reaches for, as patterns of their paths."""

OF_THE_SYSTEM = (
    "libstdc++", "libgcc_s", "libX11", "libX11-xcb", "libXau", "libXdmcp", "libXext", "libXrender",
    "libdbus-1", "libcups",
)  # fmt: skip
"""Libraries that every Linux desktop has, and that must fit its drivers or its services."""

Row = tuple[str, str, str]
"""What PyInstaller notes of a file: its place in the bundle, where it lies now, and its kind."""


def modules() -> list[str]:
    """Every module of ours that the bundle holds; many are imported only when they are needed."""
    files = (path for house in ("binder", "ui") for path in sorted((ROOT / house).rglob("*.py")))
    names = (path.relative_to(ROOT).as_posix() for path in files)
    return [
        name.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
        for name in names
        if not name.startswith(WITHOUT)
    ]


def data() -> list[tuple[str, str]]:
    """Files that are no code, and the folder of the bundle each goes to."""
    folders = [MIGRATIONS, "resources", "sample_binders"]
    files = [path for one in folders for path in (ROOT / one).rglob("*") if path.is_file()]
    kept = [path.relative_to(ROOT) for path in files if path.suffix != ".pyc"]
    ours = [
        (str(ROOT / path), path.parent.as_posix())
        for path in sorted(kept)
        if not path.is_relative_to("resources/pictures")
    ]
    return [*ours, (str(ROOT / "pyproject.toml"), "."), (str(ICONS), "icons")]


def wanted(rows: Iterable[Row]) -> list[Row]:
    """The files of the bundle without those left out."""
    left_out = re.compile("|".join(LEFT_OUT))
    return [row for row in rows if not left_out.search(row[0].replace("\\", "/"))]


def reached(rows: Iterable[Row], needs: Callable[[str], set[str]]) -> list[Row]:
    """The files of a Linux bundle without libraries that nothing in it reaches for any more.

    `needs` tells the names of the libraries that a file is linked to.
    """
    rows = [row for row in rows if not _of_the_system(row[0])]
    files = [row for row in rows if row[2] != "SYMLINK"]
    libraries = {PurePath(row[0]).name: row for row in files if _only_a_library(row[0])}
    found = [row for row in files if not _only_a_library(row[0])]
    for row in found:  # which grows meanwhile
        found += [libraries.pop(name) for name in needs(row[1]) if name in libraries]
    return [*found, *(row for row in rows if row[2] == "SYMLINK")]


def unbroken(rows: Iterable[Row]) -> list[Row]:
    """The files of the bundle without links to what is not in it."""
    rows = list(rows)
    kept = {PurePath(row[0]).name for row in rows if row[2] != "SYMLINK"}
    return [row for row in rows if row[2] != "SYMLINK" or PurePath(row[0]).name in kept]


def needed(path: str) -> set[str]:
    """The names of the libraries that a file is linked to, not those that they are linked to."""
    told = subprocess.run(["objdump", "-p", path], capture_output=True, text=True, check=True)
    return set(re.findall(r"^\s*NEEDED\s+(\S+)$", told.stdout, re.MULTILINE))


def _of_the_system(place: str) -> bool:
    return PurePath(place).name.partition(".so")[0] in OF_THE_SYSTEM


def _only_a_library(place: str) -> bool:
    """Whether a file is there only for others to be linked to."""
    return place.startswith("PySide6/Qt/lib/") or (
        "/" not in place and place.startswith("lib") and not place.startswith("libpython")
    )
