"""The named fields of a card leaf: keywords of each way, and the questions still open.

Each is Markdown. A field that is empty has no row.
"""

from __future__ import annotations

import re

from binder.errors import CanMend
from binder.page.lines import tick
from binder.store.file import Binder
from binder.store.parts import leaf_row, parts
from binder.store.schema import Field

KEYWORDS, KEYWORDS_REVERSED, QUESTIONS = "keywords", "keywords reversed", "questions"
NAMES = (KEYWORDS, KEYWORDS_REVERSED, QUESTIONS)

_NO_QUESTION = re.compile(r"\s|[-*+>#|]|\d+[.)]\s|```|~~~|$")
"""How a line begins that is no plain line of words."""
_APART = re.compile(r"(?<=\S)\n[ \t]*\n+(?=- \[[ xX]\] )")
"""What stands before a question that was written as a paragraph."""


def fields(binder: Binder, leaf_uid: str) -> dict[str, str]:
    """Name -> Markdown of the fields of a leaf that have something in them."""
    return {row.name: row.text for row in parts(binder, Field, leaf_uid)}


def write_field(binder: Binder, leaf_uid: str, name: str, text: str, *, sitting: str = "") -> None:
    """Write a field, or take it away with an empty text; one `sitting` is undone together."""
    if name not in NAMES:
        raise CanMend(f"A card leaf has no field “{name}”; it has {', '.join(NAMES)}.")
    leaf = leaf_row(binder, leaf_uid)
    if leaf is None:
        raise CanMend("That card leaf is no longer in this binder.")
    row = binder.first(Field.select().where((Field.leaf == leaf) & (Field.name == name)))
    said = text.strip()
    if said == (row.text if row else ""):
        return
    with binder.change(f"Write {name}", sitting) as change:
        change.say(Field, row, said, leaf=leaf, name=name)


def as_questions(text: str) -> str:
    """The questions with a tick box before each that was written as a line or paragraph."""
    if "```" in text or "~~~" in text:
        return text
    boxed = "\n".join(
        line if _NO_QUESTION.match(line) else f"- [ ] {line}" for line in text.splitlines()
    )
    return _APART.sub("\n", boxed).rstrip("\n")


def tick_question(binder: Binder, leaf_uid: str, number: int) -> None:
    """Tick the question with that box, from 0, as settled, or open it again."""
    text = as_questions(fields(binder, leaf_uid).get(QUESTIONS, ""))
    write_field(binder, leaf_uid, QUESTIONS, tick(text, number))


def open_count(text: str) -> int:
    """How many of the questions are not ticked yet."""
    return as_questions(text).count("[ ] ")
