"""The slips of today as they are drawn."""

from __future__ import annotations

from binder.study.overview.slips import Slip, SlipKind, slips
from ui.desk.slips import SlipNote
from ui.session.session import Session


def due(session: Session) -> tuple[list[Slip], list[SlipNote]]:
    """What is due on the shelf today, and what stands on the slip of each."""
    found = slips(session.shelf, session.today)
    return found, [_note(str(number), slip) for number, slip in enumerate(found)]


def _note(key: str, slip: Slip) -> SlipNote:
    if slip.kind in (SlipKind.LOOK_BACK, SlipKind.BEGUN):
        asked = slip.kind is SlipKind.LOOK_BACK
        return SlipNote(key, slip.heading, slip.note, slip.title, due=asked)
    note = ", ".join(part for part in (slip.title, slip.note) if part)
    return SlipNote(
        key, slip.heading, note, done=sum(slip.progress), of=len(slip.progress),
        colour=slip.suit or "major",
    )  # fmt: skip
