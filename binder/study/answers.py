"""What was answered in recall rounds, and how well each thing is known since."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any

from peewee import fn

from binder.errors import CanMend
from binder.reckon import memory as reckoned
from binder.reckon.memory import Answer, Given, Memory, Ways
from binder.store.file import Binder
from binder.store.schema import Leaf, Recall, RecallAnswer
from binder.store.shelf import Shelf
from binder.study.questions import Key, Question

SINCE_FIT = 200
"""Answers after which the parameters are fitted again."""
FITTED = "recall_fit"
"""Key of the info row with the parameters, and how many answers they were fitted to."""
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


def answer(question: Question, given: Answer, now: datetime, ways: Ways | None = None) -> str:
    """Keep an answer and when to ask again; returns the uid of the answer's row.

    `ways` as from `kept_ways`, read once for a round.
    """
    binder, key = question.binder, question.key
    leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == question.leaf_uid))
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

    A clock that ran ahead and was set back would otherwise keep cards away for as long.
    """
    today, moved = now.astimezone(UTC), 0
    for binder in shelf.binders:
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


# Parameters fitted to the student


def kept_ways(shelf: Shelf) -> Ways:
    """How the algorithm is set for this student."""
    return Ways(tuple(float(value) for value in _fit(shelf).get("parameters", ())))


def _fit(shelf: Shelf) -> dict[str, Any]:
    said = next((b.info[FITTED] for b in shelf.binders if b.info.get(FITTED)), "{}")
    kept: dict[str, Any] = json.loads(said)
    return kept


def fit(shelf: Shelf) -> bool:
    """Fit the parameters to all answers, when enough came since the last time; True if done."""
    histories: dict[Key, list[Given]] = {}
    query = RecallAnswer.select().order_by(RecallAnswer.at, RecallAnswer.id)
    for _, row in shelf.each(query):
        given = (datetime.fromisoformat(row.at), Answer(row.answer))
        histories.setdefault(Key(row.card, row.direction, row.way), []).append(given)
    count = reckoned.counted(histories.values())
    if count < max(reckoned.ENOUGH, int(_fit(shelf).get("answers", 0)) + SINCE_FIT):
        return False
    parameters = reckoned.fitted(histories.values())
    home = next((b for b in shelf.binders if b.info.get(FITTED)), shelf.binders[0])
    if not parameters or not home.writable:
        return False
    with home.change("Fit recall to your answers") as change:
        change.put_info(FITTED, json.dumps({"parameters": parameters, "answers": count}))
    return True
