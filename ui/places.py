"""Where shelves are kept: the sample that came along, and the user's own."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

import platformdirs

from binder.errors import CanMend
from binder.resources import samples
from binder.store.schema import SUFFIX
from binder.store.shelf import Shelf

_BUILT = "built"


def sample_shelf() -> Path:
    """The sample shelf, built from its text sources when it is not there yet."""
    folder = Path(platformdirs.user_data_dir("ringbound", appauthor=False)) / "Sample shelf"
    if not (folder / _BUILT).exists():
        _build(folder)
    return folder


def _build(folder: Path) -> None:
    """Build beside the final place and move there whole, so a crash leaves no half a shelf."""
    from binder.carry.building import build

    half = folder.with_name(folder.name + " being built")
    shutil.rmtree(half, ignore_errors=True)
    try:
        build(samples(), half).close()
        (half / _BUILT).touch()
        if folder.exists():
            folder.rename(_free(folder))
        half.rename(folder)
    except OSError as error:
        raise CanMend(
            f"The sample shelf could not be built in “{folder.parent}” ({error.strerror})."
        ) from error


def _free(folder: Path) -> Path:
    number = 2
    while (free := folder.with_name(f"{folder.name} {number}")).exists():
        number += 1
    return free


def own_shelf() -> Path:
    """Where a course of one's own is kept unless the user says otherwise."""
    return Path(platformdirs.user_documents_dir()) / "Ringbound"


def begin_course(folder: Path, start: date) -> None:
    """Lay out a new course in a folder that has no binders yet."""
    from binder.study.course import new_course

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
