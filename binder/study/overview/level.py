"""A level of the course at its end: what stands, what is thin, and on to the next binder."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from binder.cards.titles import DeckTitles
from binder.counting import counted
from binder.errors import CanMend
from binder.page.address import Scheme
from binder.store.clock import new_uid
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.cards.card_facts import leaf_title
from binder.study.cards.words import cards_with_words
from binder.study.course import aims, course
from binder.study.decks.decks import usual_titles
from binder.study.kinds import PLAN
from binder.study.leaves.leaves import add_leaf
from binder.study.leaves.tabs import first_of_kind, tabs
from binder.study.overview.progress import NONE, progress

_SAID = (
    ("whose facts were read", "whose facts were not read"),
    ("with what a source says", "without a source"),
    ("with own words", "without own words"),
    ("recalled", "never recalled"),
    ("met in a reading", "never met in a reading"),
)
"""Of cards that have and have not each of `progress.STEPS`."""
NAMED = 12
"""So many leaves of a line are named; the others are counted."""


@dataclass(frozen=True, slots=True)
class Tally:
    """One thing that can be counted, and the leaves it is about: (uid or '', title) each."""

    words: str
    leaves: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Level:
    """What stands in a binder, and what is thin; counts only, no judgement."""

    name: str
    stands: tuple[Tally, ...]
    thin: tuple[Tally, ...]


def level(shelf: Shelf, binder: Binder) -> Level:
    """Look through one binder; its cards are those of its units, else those with leaves in it."""
    units = course.units(binder)
    written = cards_with_words(shelf)
    open_units = [unit for unit in units if not all(course.studied(unit, written))]
    cards = _cards(binder, units, usual_titles(shelf))
    read = _counted(binder, _READINGS)
    unlooked = [(str(uid), str(title)) for uid, title in binder.sql(_UNLOOKED)]
    steps_stand, steps_thin = _steps(shelf, cards)
    reached = [aim for unit in units for aim in aims.read(unit.aims)]
    stands = (
        _line(len(units) - len(open_units), len(units), "unit", "studied"),
        _line(sum(aim.done for aim in reached), len(reached), "aim", "reached"),
        *steps_stand,
        _line(read - len(unlooked), read, "reading", "looked back on"),
    )
    thin = (
        _about([(unit.leaf, unit.name) for unit in open_units], "unit", "not done"),
        *steps_thin,
        _about(unlooked, "reading", "without a look back"),
    )
    return Level(binder.name, tuple(filter(None, stands)), tuple(filter(None, thin)))


def _cards(
    binder: Binder, units: Iterable[course.UnitView], titles: DeckTitles
) -> dict[str, tuple[str, str]]:
    """Card key -> uid and name of its leaf ('' and the card's name where it is elsewhere)."""
    named = dict.fromkeys(key for unit in units for key in unit.cards)
    leaves = {
        key: (str(uid), leaf_title(str(title), titles)) for key, uid, title in binder.sql(_CARDS)
    }
    return {key: leaves.get(key, ("", titles.called(key))) for key in named or leaves}


_CARDS = """
SELECT leaf.card, leaf.uid, leaf.title FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.kind = 'card' AND leaf.aside IS NULL AND tab.aside IS NULL ORDER BY tab.place, leaf.place
"""
_READINGS = """
SELECT count(*) FROM reading AS r JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NULL AND tab.aside IS NULL
"""
_UNLOOKED = """
SELECT leaf.uid, leaf.title FROM reading AS r
JOIN leaf ON leaf.id = r.leaf_id JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.aside IS NULL AND tab.aside IS NULL AND r.look_state = ''
  AND NOT EXISTS (SELECT 1 FROM look_back AS l WHERE l.leaf_id = r.leaf_id)
ORDER BY leaf.day DESC, leaf.id DESC
"""


def _counted(binder: Binder, statement: str) -> int:
    return int(binder.sql(statement)[0][0])


def _steps(
    shelf: Shelf, cards: dict[str, tuple[str, str]]
) -> tuple[list[Tally | None], list[Tally | None]]:
    """For each step of a card's progress: how many cards have it, and which have it not."""
    known = progress(shelf)
    stands, thin = [], []
    for number, (done, missing) in enumerate(_SAID):
        without = [leaf for key, leaf in cards.items() if not known.get(key, NONE).steps[number]]
        stands.append(_line(len(cards) - len(without), len(cards), "card", done))
        thin.append(_about(without, "card", missing))
    return stands, thin


def _line(done: int, whole: int, thing: str, how: str) -> Tally | None:
    """'3 of 7 units studied', where there is anything to count."""
    return Tally(f"{done} of {counted(whole, thing)} {how}") if whole else None


def _about(leaves: Sequence[tuple[str, str]], thing: str, how: str) -> Tally | None:
    """'12 readings without a look back', and which."""
    words = f"{counted(len(leaves), thing)} {how}"
    return Tally(words, tuple(leaves)) if leaves else None


def report(found: Level) -> str:
    """The whole as Markdown, with links to the leaves."""
    thin = [_item(line) for line in found.thin] or ["Nothing that can be counted."]
    parts = ["## What stands", *(f"- {line.words}" for line in found.stands)]
    return "\n".join([*parts, "", "## What is thin", *(f"- {item}" for item in thin), ""])


def _item(line: Tally) -> str:
    named = [
        f"[{_plain(title)}]({Scheme.LEAF.to(uid)})" if uid else _plain(title)
        for uid, title in line.leaves[:NAMED]
    ]
    more = len(line.leaves) - len(named)
    rest = f", and {more} more" if more else ""
    return f"{line.words}: {', '.join(named)}{rest}"


def _plain(title: str) -> str:
    """A title that cannot be taken for Markdown."""
    return "".join(f"\\{letter}" if letter in "\\[]*_`<" else letter for letter in title)


def file_report(binder: Binder, found: Level, today: date) -> str:
    """File the report as a leaf behind the course plan (or the first tab); returns its uid."""
    behind = first_of_kind(binder, PLAN) or next(iter(tabs(binder)), None)
    if behind is None:
        raise CanMend(f"“{binder.name}” has no tab to file the list behind; add one first.")
    title = f"{found.name} on {dates.written(today)}"
    return add_leaf(binder, behind, title, report(found), day=today.isoformat())


def finish(
    binder: Binder, today: date, found: Level | None = None, then: Binder | None = None
) -> None:
    """Finish a level; `found` is filed as a leaf, and `then` has a plan leaf afterwards.

    One step for `Shelf.undo`; nothing else changes.
    """
    if course.finished(binder):
        raise CanMend(f"“{binder.name}” is finished already.")
    both = new_uid()
    if then is not None and course.plan_leaf(then) is None:
        with then.change(f"Go on to {then.name}", both):
            course.lay_plan_leaf(then)
    with binder.change(f"Finish {binder.name}", both) as change:
        change.put_info(course.FINISHED, today.isoformat())
        if found is not None:
            file_report(binder, found, today)


def take_up_again(binder: Binder) -> None:
    """Study a finished level again."""
    with binder.change(f"Take up {binder.name} again") as change:
        change.put_info(course.FINISHED, "")


def after(shelf: Shelf, binder: Binder) -> Binder | None:
    """The next binder to the right that is not finished and has a course plan, or None."""
    binders = list(shelf.binders)
    later = binders[binders.index(binder) + 1 :]
    return next(
        (b for b in later if not course.finished(b) and first_of_kind(b, PLAN) is not None), None
    )
