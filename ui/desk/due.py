"""The slips of today as they are drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

from binder.study.overview.slips import Slip, SlipKind, slips
from binder.study.readings import put_by
from ui.desk.slips import SlipNote
from ui.kit.forms import asking
from ui.session.session import Session

if TYPE_CHECKING:
    from ui.desk.window import Window

THROW = "Throw away what was begun of “{}”? It does not come back."


def due(session: Session) -> tuple[list[Slip], list[SlipNote]]:
    """What is due on the shelf today, and what stands on the slip of each."""
    found = slips(session.shelf, session.today)
    return found, [_note(str(number), slip) for number, slip in enumerate(found)]


def follow(window: Window, slip: Slip) -> None:
    """Go where what a slip asks for is done."""
    deeds = window.deeds
    if slip.month:
        deeds.draw_month(slip.month)
    elif slip.kind is SlipKind.RECALL:
        deeds.recall()
    elif slip.leaf_uid:
        window.session.open_leaf(slip.leaf_uid)
        if slip.kind is SlipKind.LOOK_BACK:
            deeds.look_back()
        elif slip.kind is SlipKind.BEGUN:
            deeds.change_reading()
    elif slip.kind is SlipKind.BEGUN:
        deeds.new_reading()


def throw_away(window: Window, slip: Slip) -> None:
    """Throw away what was begun and put by; asks first, as it does not come back."""
    if asking.sure(window, slip.heading, THROW.format(slip.title), "Throw it away"):
        key = f"{put_by.AMEND} {slip.leaf_uid}" if slip.leaf_uid else put_by.NEW
        put_by.drop(window.session.shelf.path, f"{key} {slip.month}".strip())
        window.show_slips()


def _note(key: str, slip: Slip) -> SlipNote:
    if slip.kind in (SlipKind.LOOK_BACK, SlipKind.BEGUN):
        asked = slip.kind is SlipKind.LOOK_BACK
        return SlipNote(key, slip.heading, slip.note, slip.title, due=asked)
    note = ", ".join(part for part in (slip.title, slip.note) if part)
    return SlipNote(
        key, slip.heading, note, done=sum(slip.progress), of=len(slip.progress),
        colour=slip.suit or "major",
    )  # fmt: skip
