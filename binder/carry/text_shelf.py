"""Readable text sources of a shelf -> plain values.

A shelf is a folder with `shelf.toml` (its head describes the whole format), `decks.toml` and one
folder a binder. A binder's folder has `binder.toml` (name, colour, tabs in order) and one folder a
tab; a tab's folder has one `.md` file a leaf: a TOML block between two lines of `+++`, then
Markdown. What a leaf holds is told by its own keys: `at` and `cards` a reading, `card` a card leaf,
`unit` a unit of the course, `key` a source, `handout` a handout; anything else is a plain leaf.
Inside bodies `leaf:BINDER/TAB/FILE` and `file:NAME` stand for what the builder gives a uid.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from binder.carry.course_front import KEYS as COURSE
from binder.carry.course_front import course_of
from binder.carry.front import Front, read_leaf, read_toml
from binder.carry.leaf_fronts import holds_of
from binder.carry.texts import (
    BinderText,
    CardText,
    DeckText,
    LeafText,
    ShelfText,
    TabText,
)
from binder.page.address import Scheme
from binder.reckon.calendar import Draw
from binder.study.kinds import TAB_KINDS

_LOCAL = re.compile(rf"\(({Scheme.LEAF}|{Scheme.FILE}):([^)#\s]+)")
_TABS = tuple(key for key in TAB_KINDS if key != "plain")
_SUITS = ("major", "wands", "cups", "swords", "pentacles")


def read_shelf(folder: Path) -> ShelfText:
    """Everything in `folder`; raises `CanMend` naming the file and line of the first fault."""
    front = read_toml(folder / "shelf.toml", "shelf.toml")
    front.only("name", "binders")
    decks = tuple(map(_deck, read_toml(folder / "decks.toml", "decks.toml").parts("deck")))
    binders = tuple(read_binder(folder, name) for name in front.texts("binders"))
    return ShelfText(front.text("name"), decks, binders)


def read_binder(shelf: Path, folder: str) -> BinderText:
    """The binder in `shelf / folder`."""
    front = read_toml(shelf / folder / "binder.toml", f"{folder}/binder.toml")
    front.only("name", "colour", "draws", "tab", *COURSE)
    tabs = tuple(_tab(shelf, folder, part) for part in front.parts("tab"))
    draws = front.texts("draws", ())
    for draw in draws:
        if draw not in tuple(Draw):
            raise front.fault(f"“{draw}” is no draw; write month, week or day.", "draws")
    return BinderText(
        folder, front.text("name"), front.text("colour"), tabs, draws, course_of(front)
    )


def read_leaf_text(shelf: Path, name: str) -> LeafText:
    """The leaf `name` ('binder/tab/file' without '.md')."""
    front, body = read_leaf(shelf / f"{name}.md", f"{name}.md")
    title, at, holds = holds_of(front)
    return LeafText(name, title, at, body, holds)


def swap_links(body: str, uid_of: Callable[[str, str], str]) -> str:
    """`body` with the targets of its leaf: and file: links changed by `uid_of(scheme, name)`."""
    return _LOCAL.sub(lambda m: f"({Scheme(m[1]).to(uid_of(m[1], m[2]))}", body)


def local_links(body: str) -> list[tuple[str, str]]:
    """The (scheme, name) pairs that `swap_links` would change, in order."""
    return [(m[1], m[2]) for m in _LOCAL.finditer(body)]


def _tab(shelf: Path, binder: str, front: Front) -> TabText:
    front.only("folder", "name", "kind", "colour")
    folder, kind = front.text("folder"), front.one_of("kind", _TABS)
    if not (shelf / binder / folder).is_dir():
        raise front.fault(f"There is no folder “{folder}” beside this file; make one.", "folder")
    files = sorted((shelf / binder / folder).glob("*.md"))
    leaves = [read_leaf_text(shelf, f"{binder}/{folder}/{path.stem}") for path in files]
    return TabText(folder, front.text("name"), kind, front.text("colour"), _ordered(leaves))


def _ordered(leaves: list[LeafText]) -> tuple[LeafText, ...]:
    return tuple(sorted(leaves, key=_place))


def _place(leaf: LeafText) -> tuple[int, str]:
    if isinstance(leaf.holds, CardText):
        suit, number = leaf.holds.card.split("-")
        return _SUITS.index(suit), number
    return -1, leaf.name


def _deck(front: Front) -> DeckText:
    front.only("key", "name", "about", "titles")
    titles = front.part("titles").data
    return DeckText(front.text("key"), front.text("name"), front.text("about", ""), titles)
