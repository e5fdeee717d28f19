"""Where shelves are kept: the sample that came along, and the user's own."""

from __future__ import annotations

import shutil
from datetime import date, datetime
from pathlib import Path
from tempfile import mkdtemp

import platformdirs

from binder.errors import CanMend
from binder.resources import samples
from binder.store.schema import SUFFIX
from binder.store.shelf import Shelf

PROGRAM = "Ringbound"
COURSE = "My course"
"""What a course is called until its owner says another name."""
_NOT_IN_FOLDERS = '<>:"/\\|?*'
_BUILT = "built"
_HALF = "Sample shelf being built "
_LEFT_LYING = 3600
"""Seconds after which a half-built shelf was left by a crash."""


def sample_shelf(now: datetime) -> Path:
    """The sample shelf, built from its text sources when it is not there yet."""
    folder = Path(platformdirs.user_data_dir("ringbound", appauthor=False)) / "Sample shelf"
    if not (folder / _BUILT).exists():
        try:
            _build(folder, now)
        except OSError as error:
            raise CanMend(
                f"The sample shelf could not be built in “{folder.parent}” ({error.strerror}); "
                "open a shelf of your own by giving its folder."
            ) from error
    return folder


def _build(folder: Path, now: datetime) -> None:
    """Build in a place of its own and move it there whole.

    So neither a crash nor a second start of the program meets half a shelf.
    """
    from binder.carry.building import build

    folder.parent.mkdir(parents=True, exist_ok=True)
    _sweep(folder.parent, now.timestamp() - _LEFT_LYING)
    half = Path(mkdtemp(prefix=_HALF, dir=folder.parent))
    try:
        build(samples(), half / folder.name).close()
        (half / folder.name / _BUILT).touch()
        if not (folder / _BUILT).exists():
            if folder.exists():
                folder.rename(_free(folder))
            (half / folder.name).rename(folder)
    except OSError:
        if not (folder / _BUILT).exists():  # else another start was quicker, and that will do
            raise
    finally:
        shutil.rmtree(half, ignore_errors=True)


def _sweep(parent: Path, before: float) -> None:
    for half in parent.glob(f"{_HALF}*"):
        if half.stat().st_mtime < before:
            shutil.rmtree(half, ignore_errors=True)


def _free(folder: Path) -> Path:
    number = 2
    while (free := folder.with_name(f"{folder.name} {number}")).exists():
        number += 1
    return free


def own_shelf(name: str = COURSE) -> Path:
    """Where a course of that name is kept unless the user says otherwise.

    A character no folder may hold is left out, and a name of nothing else gives way to COURSE.
    """
    kept = "".join(c if c.isprintable() and c not in _NOT_IN_FOLDERS else " " for c in name)
    folder = " ".join(kept.split()).strip(". ")[:80].rstrip(". ")
    return Path(platformdirs.user_documents_dir()) / PROGRAM / (folder or COURSE)


def shelf_name(folder: Path) -> str:
    """What the shelf in a folder is called; '' where the folder has the name of the program."""
    return "" if folder.name == PROGRAM else folder.name


def begin_course(folder: Path, start: date) -> Path:
    """Lay out a new course in a folder that has no binders yet; gives back the folder."""
    from binder.study.course.course import new_course

    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CanMend(f"The folder “{folder}” could not be made ({error.strerror}).") from error
    if any(folder.glob(f"*{SUFFIX}")):
        raise CanMend(
            f"There are binders in “{folder}” already; open that shelf, or choose another folder."
        )
    shelf = Shelf(folder)
    try:
        new_course(shelf, start)
    finally:
        shelf.close()
    return folder
