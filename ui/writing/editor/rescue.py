"""Where words go that are not saved yet: a file of the user's own, gone as soon as they are."""

from __future__ import annotations

from pathlib import Path

import platformdirs

from binder.errors import CanMend
from binder.store.whole import write_own

SUFFIX = ".unsaved.md"
_TAIL = 8
"""Figures of the leaf's uid in the name of its file, so that it is found again."""


def folder() -> Path:
    """The folder these files lie in."""
    return Path(platformdirs.user_data_dir("ringbound", appauthor=False)) / "Unsaved"


def put_by(leaf_uid: str, title: str, words: str) -> Path | None:
    """Write the words into a file named after their leaf; None where not even that can be done."""
    path = _path(leaf_uid, title)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_own(words.encode("utf-8", errors="replace"), path)
    except (OSError, CanMend):
        return None
    return path


def found(leaf_uid: str) -> Path | None:
    """The file with words of that leaf, or None."""
    try:
        return next(folder().glob(f"*{leaf_uid[-_TAIL:]}{SUFFIX}"), None)
    except OSError:
        return None


def words(leaf_uid: str, title: str) -> str:
    """What was put by of a leaf, without the title it has; '' where there is nothing."""
    path = found(leaf_uid)
    text = path.read_text(encoding="utf-8", errors="replace") if path else ""
    return text.removeprefix(f"# {title}").strip()


def forget(leaf_uid: str) -> None:
    """Remove the file of a leaf, now that its words are saved."""
    path = found(leaf_uid)
    if path is not None:
        path.unlink(missing_ok=True)


def _path(leaf_uid: str, title: str) -> Path:
    kept = "".join(letter if letter.isalnum() or letter in " -_" else " " for letter in title)
    name = " ".join(kept.split())[:60] or "Leaf"
    return folder() / f"{name} {leaf_uid[-_TAIL:]}{SUFFIX}"
