"""What the templates in resources/typst are handed: the section and all they cannot reckon."""

import json
import re
import textwrap
from itertools import groupby
from typing import Any

from binder.paper import citations
from binder.paper.data import PlacedCard, PrintLeaf, Section, plain
from binder.paper.files import Files
from binder.paper.sheets import Sheet
from binder.paper.tables import handed_table
from binder.paper.tame import tame, tame_words

SHORT_PART = 700
"""A first part of at most so many characters of JSON stands beside the face on a card leaf."""
VIEW_BOX = re.compile(r'viewBox="\s*[-\d.]+[\s,]+[-\d.]+[\s,]+([\d.]+)[\s,]+([\d.]+)')
LETTERS_A_MM = 6.6
"""How many letters of type one point high stand in a millimetre, on average."""
_GROUPS = {
    "major": "Major Arcana", "wands": "Wands", "cups": "Cups", "swords": "Swords",
    "pentacles": "Pentacles", "extra": "Of one deck only",
}  # fmt: skip
"""Headings of the index of cards, by the first half of a card's key."""
CONTINUED = 14
"""Letters kept free for ', continued' and a space before it."""


def handed(section: Section, sheet: Sheet, blank_lines: bool, files: Files) -> dict[str, Any]:
    """The data file as a dictionary; dataclasses in it are made plain by `data.plain`."""
    letters = int(sheet.text_width * LETTERS_A_MM / (sheet.size.type_pt * 0.84))
    where = shortened(f"{section.binder}, {section.tab}", letters // 2)
    room = letters - len(where) - CONTINUED
    return {
        "section": plain(section)
        | {"leaves": [_leaf(leaf, room, sheet) for leaf in section.leaves]},
        "card_index": _card_index(section),
        "where": where,
        "paper": paper_data(sheet),
        "blank_lines": blank_lines,
        "files": files,
        "cites": citations.names(section.bibliography),
        "citing": citations.STYLES[sheet.citing][1],
    }


def shortened(words: str, letters: int) -> str:
    """Words cut to so many letters, at a space where there is one."""
    if len(words) <= letters:
        return words
    short = textwrap.shorten(words, letters, placeholder="…")
    return short if len(short) > 1 else words[: letters - 1] + "…"


def paper_data(sheet: Sheet) -> dict[str, Any]:
    """The sheet as the templates want it, in mm and points."""
    size, punched = sheet.size, sheet.pattern
    return {
        "width": size.width,
        "height": size.height,
        "top": size.top,
        "bottom": size.bottom,
        "type": size.type_pt,
        "gutter": sheet.gutter_mm,
        "outside": sheet.outside_mm,
        "two_sided": sheet.two_sided,
        "apart": sheet.apart and sheet.two_sided,
        "edge": punched.edge,
        "hole": punched.diameter,
        "marks": punched.heights(size.height) if sheet.guides else (),
    }


def _leaf(leaf: PrintLeaf, room: int, sheet: Sheet) -> dict[str, Any]:
    """A leaf, its title cut to the room in the running head, and the size of its drawing."""
    wide, high = svg_size(leaf.svg) if leaf.svg else (0.0, 0.0)
    face = leaf.svg is not None and not leaf.placed
    return plain(leaf) | {
        "title": tame_words(leaf.title),
        "parts": [{**plain(part), "blocks": tame(part.blocks)} for part in leaf.parts],
        "expectations": [{**plain(it), "text": tame_words(it.text)} for it in leaf.expectations],
        "side_by_side": handed_table(leaf.side_by_side, sheet) if leaf.side_by_side else None,
        "look_backs": [{**plain(it), "blocks": tame(it.blocks)} for it in leaf.look_backs],
        "beside": [{**plain(it), "blocks": tame(it.blocks)} for it in leaf.beside],
        "short": shortened(leaf.title, max(room, 12)),
        "wide": wide,
        "high": high,
        "alt": ", ".join(map(_said, leaf.placed)) or leaf.title,
        "first_beside": face and bool(leaf.parts) and _is_short(leaf),
    }


def _said(it: PlacedCard) -> str:
    return f"beside it: {it.card}" if it.beside else f"{it.label}: {it.card}"


def _card_index(section: Section) -> list[tuple[str, list[tuple[str, str]]]]:
    """The cards an index may list, as (heading, [(key, title)]): Majors, then suit by suit."""
    groups = groupby(section.card_index, key=lambda card: card[0].rpartition("-")[0])
    return [(_GROUPS.get(group, ""), list(cards)) for group, cards in groups]


def _is_short(leaf: PrintLeaf) -> bool:
    """Whether the first part is short enough to stand beside the face of the card."""
    return len(json.dumps(leaf.parts[0].blocks, ensure_ascii=False)) <= SHORT_PART


def svg_size(svg: str) -> tuple[float, float]:
    """Width and height of a drawing, counted in widths of a card; one card if it does not say."""
    found = VIEW_BOX.search(svg)
    wide, high = (float(found[1]) / 100, float(found[2]) / 100) if found else (0.0, 0.0)
    return (wide, high) if wide and high else (1.0, 1.68)
