"""A generated shelf of twenty years: 100,000 leaves, 20,000 of them readings.

Rows go in through the models in a few large statements, since logging them one by one would
measure the generator. Everything is drawn from a seeded generator, so the shelf is the same
each time.
"""

import hashlib
import json
import random
import shutil
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from uuid import UUID

import natural

from binder.cards.facts import CARDS
from binder.cards.spreads import SPREADS
from binder.store import migrations
from binder.store.schema import Expectation, Leaf, LookBack, Placed, Reading
from binder.store.shelf import Shelf
from binder.study.course.course import new_course
from binder.study.leaves.tabs import tabs

WORDS = natural.OWN
SPREAD_COPIES = {spread.key: json.dumps(spread.to_dict()) for spread in SPREADS}
TOPICS = ("work", "family", "money", "home", "health", "")
DECKS = ("Lantern Road deck", "Saltmarsh deck", "")
CHUNK = 500


def make(folder: Path, leaves: int = 100_000, readings: int = 20_000, seed: int = 7) -> Path:
    """Make the shelf in `folder` unless it is there as it would be made today; returns it."""
    done = folder / "whole"
    made_by = _made_by()
    if done.exists() and done.read_text() == made_by:
        return folder
    for old in (folder, folder.with_name(f"{folder.name}-files")):
        shutil.rmtree(old, ignore_errors=True)
    folder.mkdir(parents=True, exist_ok=True)
    shelf = Shelf(folder)
    chance = random.Random(seed)
    start = datetime(2006, 11, 25, 9, 0)
    binders = new_course(shelf, start.date())
    for binder in binders:
        plain = (leaves - readings) // 3
        with binder.db.atomic():
            _plain(binder, chance, start, plain)
            _readings(
                binder, chance, start, readings // 3 + (binder is binders[0]) * (readings % 3)
            )
    shelf.close()
    done.write_text(made_by)
    return folder


def _made_by() -> str:
    """A fingerprint of this file and of the tables it fills."""
    code = [
        Path(__file__),
        Path(natural.__file__),
        *sorted(Path(migrations.__file__).parent.glob("*.py")),
    ]
    return hashlib.sha256(b"".join(path.read_bytes() for path in code)).hexdigest()


def uid(chance: random.Random) -> str:
    """A uid from the seeded generator."""
    return str(UUID(int=chance.getrandbits(128), version=4))


def prose(chance: random.Random, words: int) -> str:
    """Words in lines and paragraphs, a card's name in some of them."""
    lines = []
    while words > 0:
        line = natural.words(chance, 12)
        if chance.random() < 0.4:
            line.insert(6, chance.choice(CARDS).title)
        lines.append(" ".join(line).capitalize() + ".")
        words -= 12
    return "\n\n".join(" ".join(lines[n : n + 4]) for n in range(0, len(lines), 4))


def insert(binder, model, rows: Iterator[dict]) -> None:
    batch: list[dict] = []
    for row in rows:
        batch.append(row)
        if len(batch) == CHUNK:
            model.insert_many(batch).bind(binder.db).execute()
            batch = []
    if batch:
        model.insert_many(batch).bind(binder.db).execute()


def _plain(binder, chance: random.Random, start: datetime, count: int) -> None:
    homes = [tab.row for tab in tabs(binder) if not tab.kind.by_day]

    def rows():
        for number in range(count):
            yield {
                "uid": uid(chance), "changed": 1, "tab": homes[number % len(homes)],
                "kind": "plain", "title": " ".join(natural.words(chance, 4)).capitalize(),
                "text": prose(chance, 120), "place": 1000.0 + number,
            }  # fmt: skip

    insert(binder, Leaf, rows())


def _readings(binder, chance: random.Random, start: datetime, count: int) -> None:
    home = next(tab.row for tab in tabs(binder) if tab.kind.by_day)
    first = (binder.value(Leaf.select(Leaf.id).order_by(Leaf.id.desc()).limit(1)) or 0) + 1
    moments = [start + timedelta(hours=chance.randrange(20 * 365 * 24)) for _ in range(count)]
    kept = [
        (first + n, at.isoformat(timespec="minutes"), chance.choice(SPREADS), chance.random() < 0.4)
        for n, at in enumerate(moments)
    ]
    insert(binder, Leaf, (_reading_leaf(chance, home, *one) for one in kept))
    insert(binder, Reading, (_reading(chance, *one) for one in kept))
    insert(binder, Placed, (row for one in kept for row in _placed(chance, *one)))
    insert(binder, Expectation, (_expectation(chance, *one) for one in kept if one[3]))
    insert(binder, LookBack, _look_backs(binder, chance))


def _reading_leaf(chance, home, row, at, spread, expects) -> dict:
    return {
        "id": row, "uid": uid(chance), "changed": 1, "tab": home, "kind": "reading",
        "title": " ".join(natural.words(chance, 5)).capitalize() + "?",
        "text": prose(chance, 80), "place": float(row), "day": at,
    }  # fmt: skip


def _reading(chance, row, at, spread, expects) -> dict:
    return {
        "uid": uid(chance), "changed": 1, "leaf": row, "at": at, "question": "What now?",
        "spread": spread.key, "spread_copy": SPREAD_COPIES[spread.key],
        "topic": chance.choice(TOPICS), "deck_name": chance.choice(DECKS),
        "month": at[:7] if spread.key == "one-card" and at[8:10] == "01" else "",
    }  # fmt: skip


def _placed(chance, row, at, spread, expects) -> Iterator[dict]:
    drawn = chance.sample(CARDS, len(spread.places))
    for place, card in zip(spread.places, drawn, strict=True):
        yield {
            "uid": uid(chance), "changed": 1, "leaf": row, "n": place.n, "label": place.label,
            "card": card.key, "title": card.title, "reversed": chance.random() < 0.3,
        }  # fmt: skip


def _expectation(chance, row, at, spread, expects) -> dict:
    due = (datetime.fromisoformat(at) + timedelta(days=30)).date().isoformat()
    verdict = chance.choice(("came about", "partly", "did not", "can't tell"))
    return {
        "uid": uid(chance), "changed": 1, "leaf": row, "place": 1.0, "text": prose(chance, 12),
        "sure": chance.randrange(50, 100, 5), "due": due, "verdict": verdict, "judged": due,
    }  # fmt: skip


def _look_backs(binder, chance) -> Iterator[dict]:
    """One for every reading that expects something, with the card that said it best."""
    for placed in binder.all(
        Placed.select(Placed.leaf, Placed.card)
        .join(Expectation, on=Expectation.leaf == Placed.leaf)
        .where(Placed.n == 1)
    ):
        yield {
            "uid": uid(chance), "changed": 1, "leaf": placed.leaf_id, "at": "2026-11-22T19:30:00",
            "text": prose(chance, 24), "card": placed.card,
        }  # fmt: skip
