"""What is left out of what leaves the binder: who was read for, and what is marked private."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from binder.page.private import is_private, without_private
from binder.store.schema import Reading
from binder.store.shelf import Shelf
from binder.study.leaves.leaves import LeafView
from binder.study.readings.cautions import for_another
from binder.study.readings.readings import ReadingView

QUERENT = "the querent"
"""What stands in the place of a name."""

PRIVATE_TITLE = "A private leaf"
_ENDS_BEFORE = re.compile(r"(?:^|[.!?:]\s+|\n\s*)[\s>#*_“\"‘-]*$")


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """What the owner chose to leave out.

    `querents`: whoever stands as querent in any reading of the shelf is not named, neither by the
    whole entry nor, where it is a name, by its parts; initials are taken as they are written.
    `private`: leaves, passages, notes and statements marked “Private:” (see
    `binder.page.private`). Pictures and handouts are printed as they are.
    """

    querents: bool = False
    private: bool = False

    def words(self) -> str:
        """A sentence for the divider sheet, or ''."""
        said = [
            words
            for chosen, words in ((self.querents, "Querents"), (self.private, "Private passages"))
            if chosen
        ]
        if not said:
            return ""
        return f"{' and '.join(said).capitalize()} are left out."


NOTHING = LeaveOut()


class Discretion:
    """Takes out of words what is to be left out. Cheap where nothing is."""

    def __init__(self, shelf: Shelf, leave_out: LeaveOut = NOTHING) -> None:
        self.leave_out = leave_out
        self._names = _pattern(_querents(shelf)) if leave_out.querents else None

    def withheld(self, title: str) -> bool:
        """Whether a leaf of that title is private as a whole."""
        return self.leave_out.private and is_private(title)

    def line(self, words: str) -> str:
        """A title, note or statement; '' where it is private as a whole."""
        return "" if self.withheld(words) else self._unnamed(words)

    def title(self, words: str) -> str:
        """A title to show; PRIVATE_TITLE for one that may not be shown."""
        return self.line(words) or (PRIVATE_TITLE if words else "")

    def text(self, markdown: str) -> str:
        """A leaf's Markdown."""
        return self._unnamed(without_private(markdown) if self.leave_out.private else markdown)

    def told(self, thing: Any) -> Any:
        """Plain data, such as the fields of a source, with all words in it put right."""
        if isinstance(thing, str):
            return self.text(thing)
        if isinstance(thing, Mapping):
            return {name: self.told(part) for name, part in thing.items()}
        return [self.told(part) for part in thing] if isinstance(thing, list | tuple) else thing

    def leaf(self, view: LeafView) -> LeafView:
        """A leaf with what it says put right."""
        return replace(view, title=self.title(view.title), text=self.text(view.text))

    def reading(self, view: ReadingView) -> ReadingView:
        """A reading with all that was written put right; private statements are gone."""
        stated = (replace(e, text=self.line(e.text)) for e in view.expectations)
        looked = (replace(b, text=self.text(b.text)) for b in view.look_backs)
        return replace(
            view,
            question=self.title(view.question),
            topic=self.line(view.topic),
            mood=self.line(view.mood),
            venue=self.line(view.venue),
            querent="" if self.leave_out.querents else view.querent,
            laid=tuple(replace(one, note=self.text(one.note)) for one in view.laid),
            expectations=tuple(one for one in stated if one.text),
            look_backs=tuple(one for one in looked if one.text.strip()),
        )

    def _unnamed(self, words: str) -> str:
        if self._names is None:
            return words
        words = unicodedata.normalize("NFC", words)
        return self._names.sub(partial(_instead, words), words)


def _instead(words: str, match: re.Match[str]) -> str:
    """QUERENT, with a capital where a sentence begins."""
    begins = _ENDS_BEFORE.search(words[max(0, match.start() - 40) : match.start()])
    return QUERENT.capitalize() if begins else QUERENT


def _querents(shelf: Shelf) -> set[str]:
    query = Reading.select(Reading.querent).where(Reading.querent != "").distinct()
    named = {row.querent for _, row in shelf.each(query)}
    return {" ".join(each.split()) for each in named if for_another(each)}


def _pattern(querents: set[str]) -> re.Pattern[str] | None:
    """Finds each of them as whole words, the longest first; None of none."""
    forms = {form for each in querents for form in _forms(unicodedata.normalize("NFC", each))}
    if not forms:
        return None
    joined = "|".join(sorted(forms, key=len, reverse=True))
    return re.compile(rf"(?<![\w.])(?:{joined})(?!\w)")


def _forms(querent: str) -> Iterator[str]:
    """A querent as it may stand in a text, as patterns."""
    words = [word.strip(".,;") for word in querent.split()]
    names = [word for word in words if len(word) > 2 and word[0].isupper()]
    whole = r"\s*".join(re.escape(word) for word in querent.split())
    if names or len(querent.strip(".")) > 1:
        yield whole
    elif querent.endswith("."):
        yield re.escape(querent)
    elif querent not in "AIO":
        yield rf"{re.escape(querent)}(?!\.\w)\.?"
    else:
        yield re.escape(f"{querent}.")
    for name in names:
        yield re.escape(name)
        yield re.escape(name.upper())
