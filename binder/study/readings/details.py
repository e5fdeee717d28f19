"""What else a reading leaf says: the cards beside its places, mood and venue, photographs."""

from __future__ import annotations

import json
from dataclasses import astuple
from typing import Any

from binder.cards.facts import card
from binder.cards.shorthand import example, read
from binder.cards.titles import DeckTitles
from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.schema import Leaf, Placed, Reading
from binder.study.readings.readings import Photo, ReadingView, reading

SHOWN = {"": "diagram and list", "layout": "diagram", "list": "list"}
"""The ways to show a layout, and their words."""


def card_in(text: str, titles: DeckTitles) -> tuple[str, bool]:
    """The one card that shorthand or a title names: its key, and whether reversed."""
    parts = read(text, titles).parts
    if len(parts) != 1 or parts[0].card is None:
        problem = parts[0].problem if len(parts) == 1 else ""
        three, star = example("wands-03", titles), example("major-17", titles)
        queen = titles.title("cups-13")
        raise CanMend(problem or f"Write one card, as {three}, {star} or {queen} r.")
    return parts[0].card.key, parts[0].reversed


def clarify(binder: Binder, leaf_uid: str, n: int, text: str) -> None:
    """Lay a card, written in shorthand, beside place `n` to clarify the card that lies there."""
    view, row = reading(binder, leaf_uid), _row(binder, leaf_uid)
    key, turned = card_in(text, view.titles)
    if any(one.card == key for one in view.laid):
        raise CanMend(f"{view.titles.title(key)} lies in this reading already.")
    first = next((one for one in view.laid if one.n == n), None)
    if first is None:
        raise CanMend(f"There is no card in place {n} to clarify.")
    with binder.change("Lay a clarifying card") as change:
        change.add(
            Placed, leaf=row.leaf_id, n=n, card=key, reversed=turned, label=first.label,
            title=view.titles.title(key),
        )  # fmt: skip


def clarifying(view: ReadingView) -> frozenset[str]:
    """Keys of the cards that lie beside others."""
    firsts = {one.n: one.card for one in reversed(view.laid)}
    return frozenset(one.card for one in view.laid if firsts[one.n] != one.card)


def take_beside(binder: Binder, leaf_uid: str, key: str) -> None:
    """Take a clarifying card away again."""
    view, row = reading(binder, leaf_uid), _row(binder, leaf_uid)
    if key not in clarifying(view):
        raise CanMend("That card lies in its own place; put the reading right to change it.")
    of = (Placed.leaf == row.leaf_id) & (Placed.card == key)
    with binder.change("Take a clarifying card away") as change:
        for placed in binder.all(Placed.select(Placed.uid).where(of)):
            change.remove(Placed, placed.uid)


def describe(binder: Binder, leaf_uid: str, **fields: str) -> None:
    """Write down topic, mood, venue, querent or significator (a card key or '') of a reading."""
    unknown = set(fields) - {"topic", "mood", "venue", "querent", "significator"}
    if unknown:
        raise ValueError(f"no such detail: {unknown}")
    if fields.get("significator"):
        card(fields["significator"])
    row = _row(binder, leaf_uid)
    told = {name: " ".join(text.split()) for name, text in fields.items()}
    changed = {name: text for name, text in told.items() if getattr(row, name) != text}
    if changed:
        with binder.change("Describe a reading") as change:
            change.edit(Reading, row.uid, **changed)


def show_as(binder: Binder, leaf_uid: str, shown: str) -> None:
    """Show the layout of a reading in one of the ways of SHOWN, on screen and on paper."""
    if shown not in SHOWN:
        raise ValueError(f"no such way: {shown}")
    row = _row(binder, leaf_uid)
    if row.shown != shown:
        with binder.change(f"Show the layout as {SHOWN[shown]}") as change:
            change.edit(Reading, row.uid, shown=shown)


def add_photo(binder: Binder, leaf_uid: str, photo: Photo) -> None:
    """Put a kept photograph of the table on a reading's leaf; one that is there stays once."""
    photos = [one for one in reading(binder, leaf_uid).photos if one.file != photo.file]
    _keep_photos(binder, leaf_uid, [*photos, photo], "Add a photograph")


def remove_photo(binder: Binder, leaf_uid: str, file: str) -> None:
    """Take a photograph off a reading's leaf; the file stays in the binder."""
    photos = [one for one in reading(binder, leaf_uid).photos if one.file != file]
    _keep_photos(binder, leaf_uid, photos, "Take a photograph away")


def _keep_photos(binder: Binder, leaf_uid: str, photos: list[Photo], label: str) -> None:
    row = _row(binder, leaf_uid)
    said = json.dumps([astuple(photo) for photo in photos]) if photos else ""
    with binder.change(label) as change:
        change.edit(Reading, row.uid, photos=said)


def _row(binder: Binder, leaf_uid: str) -> Any:
    row = binder.first(Reading.select().join(Leaf).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That reading is no longer in this binder.")
    return row
