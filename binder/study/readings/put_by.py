"""Readings begun and not kept yet, a small file each beside the shelf.

They lie in a folder of the shelf, for the user's own eyes, so that neither a crash nor the end of
the program loses what was typed. A reading that is kept, or begun afresh, takes its file away.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from binder.errors import CanMend
from binder.store.whole import write_own

if TYPE_CHECKING:
    from binder.study.readings.draft import Draft

FOLDER = "Put by"
NEW, AMEND = "new", "amend"
"""Keys begin so: 'new', 'new 2026-12' for the card of a month, 'amend UID' for a logged reading."""
_SUFFIX, _DAMAGED = ".json", ".damaged"
_WORDS = ("at", "question", "line", "querent", "topic", "look_on", "purpose", "month")


@dataclass(frozen=True, slots=True)
class Begun:
    """A reading put by, as a slip tells of it: its key, question, and the day it was written."""

    key: str
    question: str
    day: str


def save(shelf: Path, key: str, draft: Draft, fresh: Draft, today: date) -> None:
    """Write a draft down under its key, with the draft it was begun from; CanMend if that fails."""
    folder = shelf / FOLDER
    try:
        folder.mkdir(mode=0o700, exist_ok=True)
    except OSError as error:
        raise CanMend(f"“{folder}” could not be made ({error.strerror}).") from error
    said = {
        "day": today.isoformat(),
        "draft": _plain(draft),
        "fresh": _plain(fresh),
    }
    write_own(json.dumps(said, indent=1).encode(), _file(shelf, key))


def load(shelf: Path, key: str) -> tuple[Draft, Draft] | None:
    """The draft put by under a key and the one it was begun from; None where there is none.

    A file that cannot be read is set aside under another name, and CanMend says so.
    """
    file = _file(shelf, key)
    if not file.exists():
        return None
    try:
        said = json.loads(file.read_text(encoding="utf-8"))
        return _draft(said["draft"]), _draft(said["fresh"])
    except (
        OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError, CanMend
    ) as error:  # fmt: skip
        aside = file.with_suffix(_DAMAGED)
        file.replace(aside)
        raise CanMend(
            f"The reading put by could not be read; its file was kept as “{aside.name}”."
        ) from error


def drop(shelf: Path, key: str) -> None:
    """Take a draft away, now that it is kept or begun afresh."""
    file = _file(shelf, key)
    try:
        file.unlink(missing_ok=True)
    except OSError as error:
        raise CanMend(f"“{file}” could not be removed ({error.strerror}).") from error


def begun(shelf: Path) -> list[Begun]:
    """Every reading put by on a shelf, the one written last first; what is no draft is left out."""
    files = [file for file in (shelf / FOLDER).glob(f"*{_SUFFIX}") if file.is_file()]
    return list(_told(sorted(files, key=lambda file: file.stat().st_mtime, reverse=True)))


def _told(files: list[Path]) -> Iterator[Begun]:
    for file in files:
        try:
            said = json.loads(file.read_text(encoding="utf-8"))
            day = date.fromisoformat(said["day"]).isoformat()
            yield Begun(file.stem, str(said["draft"]["question"]), day)
        except (OSError, ValueError, KeyError, TypeError, RecursionError):
            continue  # `load` says so when it is taken up


def _file(shelf: Path, key: str) -> Path:
    return shelf / FOLDER / f"{key}{_SUFFIX}"


def _plain(draft: Draft) -> dict[str, Any]:
    return {name: getattr(draft, name) for name in _WORDS} | {
        "on_screen": draft.on_screen,
        "spread": draft.spread.to_dict(),
        "deck": draft.deck.uid,
        "deck_name": draft.deck.name,
        "titles": draft.deck.titles.to_dict(),
    }


def _draft(said: dict[str, Any]) -> Draft:
    from binder.cards.spreads import Spread
    from binder.cards.titles import DeckTitles
    from binder.study.readings.draft import DeckChoice, Draft

    words = {name: str(said[name]) for name in _WORDS}
    titles = DeckTitles.from_dict(said["titles"])
    return Draft(
        **words,
        spread=Spread.from_dict(said["spread"]),
        deck=DeckChoice(str(said["deck"]), str(said["deck_name"]), titles),
        on_screen=bool(said["on_screen"]),
    )
