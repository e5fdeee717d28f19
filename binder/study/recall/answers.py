"""What was answered in recall rounds, and how well each thing is known since."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.reckon import memory as reckoned
from binder.reckon.memory import Answer, Memory, Ways
from binder.store.clock import new_uid
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import Recall, RecallAnswer
from binder.store.shelf import Shelf
from binder.study.recall.questions import Key, Question

LABEL = "Recall answer"


@dataclass(frozen=True, slots=True)
class Kept:
    """A memory and the row it stands in."""

    binder: Binder
    uid: str
    memory: Memory


def day_of(moment: datetime) -> date:
    """The local day of a moment."""
    return moment.astimezone().date()


def memories(shelf: Shelf, now: datetime) -> dict[Key, Kept]:
    """All memories; one whose last answer lies ahead of the clock is reckoned from now."""
    found = {}
    for binder, row in shelf.each(Recall.select()):
        with suppress(ValueError):  # a damaged row: the card is asked as if for the first time
            memory = reckoned.set_right(_memory(row), now.astimezone(UTC))
            found[Key(row.card, row.direction, row.way)] = Kept(binder, row.uid, memory)
    return found


def _memory(row: Any) -> Memory:
    last, due = datetime.fromisoformat(row.last), datetime.fromisoformat(row.due)
    return Memory(row.stability, row.difficulty, row.state, row.step, last, due)


def _fields(memory: Memory) -> dict[str, Any]:
    return {
        "stability": memory.stability, "difficulty": memory.difficulty, "state": memory.state,
        "step": memory.step, "last": _written(memory.last), "due": _written(memory.due),
    }  # fmt: skip


def _written(moment: datetime) -> str:
    return moment.astimezone(UTC).isoformat(timespec="seconds")


def get_ready(ways: Ways) -> None:
    """Load what is slow to load, so that the first answer takes no longer than the next."""
    reckoned.get_ready(ways)
    new_uid()


def answer(question: Question, given: Answer, now: datetime, ways: Ways | None = None) -> str:
    """Keep an answer and when to ask again; returns the uid of the answer's row.

    `ways` as from `recall_fit.kept_ways`, read once for a round.
    """
    binder, key = question.binder, question.key
    leaf = leaf_row(binder, question.leaf_uid)
    if leaf is None:
        raise CanMend("The leaf of that card is no longer in its binder; stop and begin again.")
    row = binder.first(Recall.select().where((Recall.leaf == leaf) & _is(key)))
    was = reckoned.set_right(_memory(row), now.astimezone(UTC)) if row else None
    fields = _fields(reckoned.after(was, given, now, ways))
    with binder.change(LABEL) as change:
        if row:
            change.edit(Recall, row.uid, **fields)
        else:
            change.add(Recall, leaf=leaf, **key._asdict(), **fields)
        at = _written(now)
        return change.add(RecallAnswer, leaf=leaf, **key._asdict(), answer=int(given), at=at)


def _is(key: Key) -> Any:
    same: Any = (Recall.card == key.card) & (Recall.direction == key.direction)
    return same & (Recall.way == key.way)


def stands(binder: Binder, uid: str) -> bool:
    """Whether an answer is still there, and was not taken back."""
    query = RecallAnswer.select(RecallAnswer.id).where(RecallAnswer.uid == uid)
    return binder.value(query) is not None


def times_asked(shelf: Shelf) -> dict[Key, int]:
    """How often each thing was asked for so far."""
    thing = (RecallAnswer.card, RecallAnswer.direction, RecallAnswer.way)
    query = RecallAnswer.select(*thing, fn.COUNT(RecallAnswer.id)).group_by(*thing).tuples()
    found: dict[Key, int] = {}
    for _, (*key, count) in shelf.each(query):
        found[Key(*key)] = found.get(Key(*key), 0) + count
    return found


def begun_on(shelf: Shelf, day: date) -> int:
    """How many things were asked for the first time on a day."""
    thing = (RecallAnswer.leaf, RecallAnswer.direction, RecallAnswer.way)
    query = RecallAnswer.select(fn.MIN(RecallAnswer.at)).group_by(*thing).tuples()
    return sum(day_of(datetime.fromisoformat(row[0])) == day for _, row in shelf.each(query))


def recalled(shelf: Shelf) -> set[str]:
    """Keys of the cards whose meaning was known when it was last asked for."""
    newest = fn.MAX(fn.PRINTF("%s %012d", RecallAnswer.at, RecallAnswer.id))
    query = (
        RecallAnswer.select(RecallAnswer.card, RecallAnswer.answer, newest)
        .where(RecallAnswer.direction == "meaning")
        .group_by(RecallAnswer.card)
        .tuples()
    )
    return {row[0] for _, row in shelf.each(query) if row[1] >= Answer.KNEW_IT}


def put_clock_right(shelf: Shelf, now: datetime) -> str:
    """Reckon from now what was answered ahead of the clock; a sentence when there was any, or ''.

    A clock that ran ahead and was set back would otherwise keep cards away for as long. A binder
    that cannot be written is left as it is; `memories` reckons from now all the same.
    """
    today, moved = now.astimezone(UTC), 0
    for binder in (one for one in shelf.binders if one.writable):
        ahead = [row for row in binder.all(Recall.select()) if _memory(row).last > today]
        moved += len(ahead)
        if ahead:
            with binder.change("Set recall by the clock") as change:
                for row in ahead:
                    change.edit(Recall, row.uid, **_fields(reckoned.set_right(_memory(row), today)))
    if not moved:
        return ""
    cards = "one answer is" if moved == 1 else f"{moved} answers are"
    return f"The clock was set back since the last round; {cards} reckoned from today."
