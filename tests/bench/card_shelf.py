"""A generated shelf of full card leaves: 20 sources and 500 appearances for each of the 78 cards.

Every leaf also has own words of several years, fields, marks on its face and pairs. Drawn from a
seeded generator, as the shelf of twenty years is.
"""

import hashlib
import json
import random
import shutil
from datetime import datetime, timedelta
from pathlib import Path

import big_shelf
from big_shelf import SPREAD_COPIES, prose, uid

from binder.cards.facts import CARDS
from binder.cards.spreads import spread
from binder.store import migrations
from binder.store.schema import (
    Expectation,
    Field,
    Imagery,
    Leaf,
    OwnWords,
    Pair,
    Placed,
    Reading,
    Source,
    SourceNote,
)
from binder.store.shelf import Shelf
from binder.study.course.course import new_course
from binder.study.leaves.tabs import first_of_kind

SOURCES, APPEARANCES = 20, 500
START = datetime(2016, 11, 25, 9, 0)
ASPECTS = ("Upright", "Reversed")


def make(folder: Path, seed: int = 11) -> Path:
    """Make the shelf in `folder` unless it is there as it would be made today; returns it."""
    done, made_by = folder / "whole", _made_by()
    if done.exists() and done.read_text() == made_by:
        return folder
    for old in (folder, folder.with_name(f"{folder.name}-files")):
        shutil.rmtree(old, ignore_errors=True)
    folder.mkdir(parents=True)
    shelf, chance = Shelf(folder), random.Random(seed)
    first, *_, last = new_course(shelf, START.date())
    with first.db.atomic():
        _card_leaves(first, chance)
    with last.db.atomic():
        _sources(last, chance)
        _readings(last, chance)
    shelf.close()
    done.write_text(made_by)
    return folder


def _made_by() -> str:
    """A fingerprint of what makes the shelf and of the tables it fills."""
    makers = [Path(__file__), Path(big_shelf.__file__)]
    code = [*makers, *sorted(Path(migrations.__file__).parent.glob("*.py"))]
    return hashlib.sha256(b"".join(path.read_bytes() for path in code)).hexdigest()


def _row(chance, **fields) -> dict:
    return {"uid": uid(chance), "changed": 1, **fields}


def _card_leaves(binder, chance: random.Random) -> None:
    homes = {row.card: row.id for row in binder.all(Leaf.select().where(Leaf.card != ""))}
    insert = big_shelf.insert
    for model, made in (
        (OwnWords, _own_words), (SourceNote, _notes), (Field, _fields), (Imagery, _marks),
        (Pair, _pairs),
    ):  # fmt: skip
        rows = (row for key, leaf in homes.items() for row in made(chance, key, leaf))
        insert(binder, model, rows)


def _own_words(chance, key, leaf):
    for year in range(2017, 2027):
        for way in ("upright", "reversed"):
            yield _row(
                chance, leaf=leaf, card=key, way=way, text=prose(chance, 36),
                at=f"{year}-03-01T20:00:00",
            )  # fmt: skip


def _notes(chance, key, leaf):
    for number in range(SOURCES):
        for aspect in ASPECTS:
            yield _row(
                chance, leaf=leaf, card=key, source=f"source-{number}", aspect=aspect,
                text=prose(chance, 24), locator=str(number + 1), place=float(number),
            )  # fmt: skip


def _fields(chance, key, leaf):
    for name, words in (
        ("keywords", 6), ("keywords reversed", 6), ("questions", 24),
    ):  # fmt: skip
        yield _row(chance, leaf=leaf, name=name, text=prose(chance, words))


def _marks(chance, key, leaf):
    for number in range(8):
        yield _row(
            chance, leaf=leaf, card=key, x=chance.random(), y=chance.random(),
            text=prose(chance, 12), place=float(number),
        )  # fmt: skip


def _pairs(chance, key, leaf):
    for other in chance.sample([card.key for card in CARDS if card.key != key], 3):
        yield _row(chance, leaf=leaf, card=key, other=other, text=prose(chance, 12))


def _sources(binder, chance: random.Random) -> None:
    tab = first_of_kind(binder, "sources")
    for number in range(SOURCES):
        key, title = f"source-{number}", f"The {big_shelf.WORDS[number]} book"
        made = _row(chance, tab=tab.row, kind="source", title=title, place=float(number))
        Leaf.insert(**made).bind(binder.db).execute()
        leaf = binder.value(Leaf.select(Leaf.id).where(Leaf.uid == made["uid"]))
        fields = json.dumps({"author": [{"family": f"Writer{number}", "given": "A."}]})
        Source.insert(**_row(chance, leaf=leaf, key=key, fields=fields)).bind(binder.db).execute()


def _readings(binder, chance: random.Random) -> None:
    """Each reading lays ten cards of a shuffled pack, so that all turn up equally often."""
    home, cross = first_of_kind(binder, "readings").row, spread("celtic-cross")
    first = binder.value(Leaf.select(Leaf.id).order_by(Leaf.id.desc()).limit(1)) + 1
    count = len(CARDS) * APPEARANCES // 10
    pack: list = []
    drawn = []
    for _ in range(count):
        if len(pack) < 10:
            pack = [*pack, *chance.sample(CARDS, len(CARDS))]
        drawn.append([pack.pop(0) for _ in range(10)])
    days = [START + timedelta(hours=22 * number) for number in range(count)]
    insert = big_shelf.insert
    insert(binder, Leaf, (
        _row(chance, id=first + n, tab=home, kind="reading", title=f"{prose(chance, 6)[:-1]}?",
             text=prose(chance, 60), place=float(n), day=at.isoformat(timespec="minutes"))
        for n, at in enumerate(days)
    ))  # fmt: skip
    insert(binder, Reading, (
        _row(chance, leaf=first + n, at=at.isoformat(timespec="minutes"), question="What now?",
             spread=cross.key, spread_copy=SPREAD_COPIES[cross.key])
        for n, at in enumerate(days)
    ))  # fmt: skip
    insert(binder, Placed, (
        _row(chance, leaf=first + n, n=place.n, label=place.label, card=card.key, title=card.title,
             reversed=chance.random() < 0.3)
        for n, cards in enumerate(drawn)
        for place, card in zip(cross.places, cards, strict=True)
    ))  # fmt: skip
    insert(binder, Expectation, (
        _row(chance, leaf=first + n, place=1.0, text=prose(chance, 12), sure=60,
             due=at.date().isoformat(), verdict=chance.choice(("came about", "did not", "")),
             judged=at.date().isoformat())
        for n, at in enumerate(days)
    ))  # fmt: skip
