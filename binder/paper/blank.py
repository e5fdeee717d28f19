"""Blank sheets to write on by hand, punched like the print."""

from __future__ import annotations

from calendar import Calendar
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from binder.cards.facts import Card
from binder.cards.spreads import Spread
from binder.errors import CanMend
from binder.page.layout.layout import layout_svg
from binder.paper.colours import print_colours
from binder.paper.handed import paper_data, shortened, svg_size
from binder.paper.sheets import Sheet
from binder.paper.typeset import count, from_template
from binder.reckon.calendar import Draw, draw_of, span
from binder.store.whole import write_whole
from binder.study.cards.card_facts import strip
from binder.study.dates import MONTHS

KINDS = {
    "reading": "Reading log sheet",
    "card": "Card study sheet",
    "month": "Month sheet",
    "ruled": "Ruled paper",
    "dotted": "Dotted paper",
    "plain": "Plain paper",
}
"""What can be had, by its key on the command line."""

MOST_COPIES = 100
LEAST_PITCH = 6.0
"""Closest, in mm, that lines to write on stand; a longer sheet goes on at the back."""
DRAWING = (165.0, 105.0)
"""Most room, in mm, for the drawn layout of a spread."""
LEAST_DRAWING = 46.0
"""Least height, in mm, of that layout; where lines would leave it less, the sheet goes on."""
LABEL = 28
"""Letters of a place's name that stand in its line."""
LINES = 8
"""Lines of a reading sheet beside those of its places."""
BESIDE_LINES = 56.0
"""What title, headings and gaps of a reading sheet take, in mm."""
_FACTS = ("Number", "Element", "Sky")


@dataclass(frozen=True, slots=True)
class Blank:
    """Which sheet; `kind` is a key of KINDS.

    A reading sheet wants a spread; a card sheet takes a card and what its deck calls it, or leaves
    them open; `month` is as 2026-12. Making an impossible one raises CanMend.
    """

    kind: str
    spread: Spread | None = None
    card: Card | None = None
    title: str = ""
    month: str = ""
    copies: int = 1

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise CanMend(f"Blank sheets can be {', '.join(KINDS)}; “{self.kind}” is none of them.")
        if self.kind == "reading" and self.spread is None:
            raise CanMend("Say for which spread the sheet is, as celtic-cross.")
        if not 1 <= self.copies <= MOST_COPIES:
            raise CanMend(f"Between one sheet and {MOST_COPIES} can be made at once.")


def blank_pdf(blank: Blank, sheet: Sheet) -> bytes:
    """The sheets as a PDF."""
    made = {
        "reading": _reading,
        "card": _card,
        "month": _month,
    }.get(blank.kind, _bare)(blank, sheet)
    given = {"kind": blank.kind, "copies": blank.copies, "name": KINDS[blank.kind]}
    paper = paper_data(sheet) | {"pitch": made.pop("pitch", _pitch(sheet))}
    return from_template("blank.typ", {"paper": paper, "blank": made | given})


def save_blank(blank: Blank, sheet: Sheet, out: Path) -> int:
    """Write the sheets into the PDF file `out`; returns the number of pages."""
    pdf = blank_pdf(blank, sheet)
    write_whole(pdf, out)
    return count(pdf)


def _bare(_blank: Blank, _sheet: Sheet) -> dict[str, Any]:
    return {"title": "", "svg": "", "alt": ""}


def _reading(blank: Blank, sheet: Sheet) -> dict[str, Any]:
    spread = blank.spread
    assert spread is not None
    room = min(DRAWING[0], sheet.text_width), _drawing_height(sheet, len(spread.places))
    svg = layout_svg(spread.places, {}, print_colours(), size=room, letter=3.2, most=24.0)
    wide, high = svg_size(svg)
    # As large as the room allows, at most 24 mm a card.
    scale = min(room[0] / wide, room[1] / high, 24.0)
    places = [
        (place.n, shortened(place.label, LABEL))
        for place in sorted(spread.places, key=lambda each: each.n)
    ]
    return {
        "title": spread.name, "svg": svg, "wide": wide * scale, "places": places,
        "alt": f"The places of {spread.name}", "pitch": _close(sheet, high * scale, len(places)),
    }  # fmt: skip


def _writing_height(sheet: Sheet) -> float:
    """What a reading sheet has, in mm, for its drawing and its lines."""
    size = sheet.size
    return size.height - size.top - size.bottom - BESIDE_LINES


def _drawing_height(sheet: Sheet, places: int) -> float:
    """What the lines leave, within bounds."""
    left = _writing_height(sheet) - (places + LINES) * LEAST_PITCH
    return min(max(left, LEAST_DRAWING), DRAWING[1])


def _pitch(sheet: Sheet) -> float:
    return 8.0 if sheet.size.height > 250 else 7.0


def _close(sheet: Sheet, drawn: float, places: int) -> float:
    """Pitch of lines, in mm, at which a reading sheet is one page, if it can be."""
    fits = (_writing_height(sheet) - drawn) / (places + LINES)
    return min(fits, _pitch(sheet)) if fits >= LEAST_PITCH else _pitch(sheet)


def _card(blank: Blank, sheet: Sheet) -> dict[str, Any]:
    known = dict(strip(blank.card)) if blank.card else {}
    svg = ""
    if blank.card:
        from binder.cards.faces import face_svg

        svg = face_svg(blank.card, print_colours(), blank.title or None)
    title = blank.title or (blank.card.title if blank.card else "")
    facts = [(name, known.get(name, "")) for name in _FACTS if not known or name in known]
    return {
        "title": title, "svg": svg, "alt": f"The face of {title}", "facts": facts,
        "pitch": _pitch(sheet) - 1,
    }  # fmt: skip


def _month(blank: Blank, _sheet: Sheet) -> dict[str, Any]:
    if draw_of(blank.month) is not Draw.MONTH:
        raise CanMend(f"“{blank.month}” is no month; write it as 2026-12.")
    first, _ = span(blank.month)
    weeks = Calendar().monthdayscalendar(first.year, first.month)
    return {
        "title": f"{MONTHS[first.month - 1]} {first.year}",
        "weeks": weeks,
        "svg": "",
        "alt": "",
    }
