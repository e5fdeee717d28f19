"""Draws the handouts of a shelf's text sources: a sheet to print and two pictures."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Literal

from binder.cards.facts import CARDS
from binder.carry.texts import HandoutText
from binder.errors import CanMend, OwnFault
from binder.resources import resource

_FORMATS: dict[str, Literal["pdf", "png"]] = {
    "log-sheet": "pdf",
    "septenary-map": "png",
    "suit-wheel": "png",
    "leaflet": "pdf",
}
_MEDIA = {"pdf": "application/pdf", "png": "image/png"}

PIXELS_PER_INCH = 120
"""Of the pictures: a map of 300 mm comes to about 1400 pixels across."""


def draw(handout: HandoutText) -> tuple[str, bytes]:
    """Media type and bytes, the same bytes for the same words.

    `CanMend` if there is no drawing of that kind or a word it needs is missing.
    """
    import typst

    made_as = _FORMATS.get(handout.kind)
    if made_as is None:
        known = ", ".join(_FORMATS)
        raise CanMend(f"There is no handout “{handout.kind}”; write one of {known}.")
    _check(handout)
    try:
        made = typst.compile(
            str(resource("typst", "handouts.typ")),
            root=str(resource("typst")),
            font_paths=fonts(),
            ignore_system_fonts=True,
            format=made_as,
            ppi=PIXELS_PER_INCH,
            sys_inputs={"data": json.dumps(_data(handout), ensure_ascii=False)},
        )
    except typst.TypstError as error:
        raise OwnFault(
            f"The handout “{handout.file}” could not be drawn ({error.diagnostic}). "
            "The rest of the shelf is not touched by it."
        ) from error
    return _MEDIA[made_as], made


_WORDS = {
    "log-sheet": (
        *("title", "heads", "question", "cards", "columns", "rows", "impressions"),
        *("expect", "expect_columns", "foot"),
    ),
    "septenary-map": ("title", "note", "rows", "beside"),
    "suit-wheel": ("title", "note", "wands", "cups", "swords", "pentacles"),
    "leaflet": ("title", "by", "pages", "lines"),
}


def _check(handout: HandoutText) -> None:
    missing = [word for word in _WORDS[handout.kind] if word not in handout.words]
    if missing:
        raise CanMend(f"“{handout.file}” needs “{missing[0]}” among its words; write it in.")


def _data(handout: HandoutText) -> dict[str, object]:
    majors = [{"roman": card.roman, "title": card.title} for card in CARDS[:22]]
    return {
        "kind": handout.kind,
        "words": dict(handout.words),
        "colours": day_colours(),
        "majors": majors,
    }


def day_colours() -> dict[str, str]:
    """The palette of the day."""
    palette = tomllib.loads(resource("palette.toml").read_text(encoding="utf-8"))
    return dict(palette["day"]["colours"])


def fonts() -> list[str]:
    """The folder of our own letters, for the typesetter."""
    import fontpkg_vollkorn

    return [str(Path(fontpkg_vollkorn.__file__).parent / "files")]
