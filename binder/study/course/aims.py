"""Aims of a unit: one on a line, each with a box to tick."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Unit

_LINE = re.compile(r"\s*(?:[-*+]\s+)?(?:\[(?P<mark>[ xX])\]\s*)?(?P<words>.*?)\s*$")


@dataclass(frozen=True, slots=True)
class Aim:
    """One aim, without its box."""

    words: str
    done: bool = False


def read(text: str) -> tuple[Aim, ...]:
    """The aims in a unit's text; '[x] ' before the words of a line says that it is reached."""
    found = []
    for line in text.splitlines():
        said = _LINE.match(line)
        if said and said["words"]:
            found.append(Aim(said["words"], (said["mark"] or " ") in "xX"))
    return tuple(found)


def written(aims: Iterable[Aim]) -> str:
    """The text that `read` reads back."""
    return "\n".join(f"[x] {aim.words}" if aim.done else aim.words for aim in aims)


def tick(binder: Binder, unit_uid: str, index: int) -> bool:
    """Tick the aim at `index` (from 0), or take its tick away; returns whether it is ticked now."""
    row = binder.first(Unit.select().where(Unit.uid == unit_uid))
    aims = list(read(row.aims)) if row else []
    if not 0 <= index < len(aims):
        raise CanMend("That aim is no longer in the plan.")
    done = not aims[index].done
    aims[index] = replace(aims[index], done=done)
    with binder.change("Tick an aim" if done else "Take a tick away") as change:
        change.edit(Unit, unit_uid, aims=written(aims))
    return done
