"""The reader's own meaning of a card, and how it grew."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from binder.errors import CanMend
from binder.page.address import Scheme
from binder.page.compare import packed
from binder.store.change import Change
from binder.store.clock import now
from binder.store.file import Binder
from binder.store.parts import parts
from binder.store.schema import Leaf, OwnWords
from binder.store.shelf import Shelf
from binder.study import dates
from binder.study.leaves.history import whole_text
from binder.study.leaves.tabs import TabView

UPRIGHT, REVERSED = "upright", "reversed"


@dataclass(frozen=True, slots=True)
class WordsView:
    """One dated version of own words; `way` is UPRIGHT or REVERSED."""

    way: str
    text: str
    at: str


def history(binder: Binder, leaf_uid: str) -> list[WordsView]:
    """All versions of a card leaf's own words with their whole text, oldest first."""
    return [WordsView(one.way, one.text, one.at) for one in _versions(binder, leaf_uid)]


def current(versions: Iterable[WordsView]) -> dict[str, WordsView]:
    """The latest version of each way that still has words."""
    latest = {version.way: version for version in versions}
    return {way: version for way, version in latest.items() if version.text}


@dataclass(frozen=True, slots=True)
class Standing:
    """Own words as they stand, by way, and how many earlier versions have words."""

    now: Mapping[str, WordsView]
    earlier: int


def standing(binder: Binder, leaf_uid: str) -> Standing:
    """What `current` says of `history`, without reading what was written before."""
    whole = [WordsView(*row) for row in binder.sql(_WHOLE, (leaf_uid,))]
    now = current(whole)
    packed_ones = binder.sql(_PACKED, (leaf_uid, packed("", None)))[0][0]
    kept = sum(one not in now.values() and bool(one.text) for one in whole)
    return Standing(now, packed_ones + kept)


_OF = "FROM own_words AS t JOIN leaf ON leaf.id = t.leaf_id WHERE leaf.uid = ? AND t.packed IS"
_WHOLE = f"SELECT t.way, t.text, t.at {_OF} NULL ORDER BY t.at, t.id"
_PACKED = f"SELECT count(*) {_OF} NOT NULL AND t.packed <> ?"


@dataclass(frozen=True, slots=True)
class _Version:
    """A row of own words with its whole text."""

    uid: str
    way: str
    text: str
    at: str


def _versions(binder: Binder, leaf_uid: str) -> Iterator[_Version]:
    """The rows of a leaf, oldest first; files made before packing have earlier ones whole."""
    before: dict[str, str] = {}
    for row in parts(binder, OwnWords, leaf_uid, "t.at, t.id"):
        text = row.text if row.packed is None else whole_text(row.packed, before.get(row.way, ""))
        before[row.way] = text
        yield _Version(row.uid, row.way, text, row.at)


def write_words(
    binder: Binder, leaf_uid: str, way: str, text: str, *, at: str = "", sitting: str = ""
) -> str:
    """Keep a new version of own words, unless it says what the last one said.

    `sitting` is the uid that an earlier call of the same sitting returned: that version is then
    written anew instead of joined by another, and goes when the words are again as before.
    Returns the uid of the version these words are kept in; '' when none was needed.
    """
    if way not in (UPRIGHT, REVERSED):
        raise CanMend("Own words are written for a card upright or reversed.")
    row = binder.first(Leaf.select(Leaf.id, Leaf.card).where(Leaf.uid == leaf_uid))
    if row is None:
        raise CanMend("That card leaf is no longer in this binder.")
    words = text.strip()
    before = [one for one in _versions(binder, leaf_uid) if one.way == way]
    mine = before.pop() if sitting and before and before[-1].uid == sitting else None
    said = before[-1] if before else _Version("", way, "", "")
    if words == said.text:
        _take_back(binder, mine, said)
        return ""
    if mine is not None and mine.text == words:
        return sitting
    # Where the clock was set back, what is written last is still the latest.
    moment = max(at or now(), said.at)
    with binder.change("Write own words") as change:
        if mine is not None:
            change.edit(OwnWords, sitting, text=words, at=moment)
            return sitting
        uid = change.add(OwnWords, leaf=row.id, card=row.card, way=way, text=words, at=moment)
        _pack(change, before)
    return uid


def _take_back(binder: Binder, mine: _Version | None, said: _Version) -> None:
    """Remove the version of a sitting; the one before it is the latest again."""
    if mine is None:
        return
    with binder.change("Write own words") as change:
        change.remove(OwnWords, mine.uid)
        if said.uid:
            change.edit(OwnWords, said.uid, text=said.text, packed=None)


def _pack(change: Change, before: Sequence[_Version]) -> None:
    """Pack the last of these versions against the one before it."""
    if before:
        base = before[-2].text if len(before) > 1 else None
        change.edit(OwnWords, before[-1].uid, text="", packed=packed(before[-1].text, base))


def add_sentence(shelf: Shelf, card: str, way: str, sentence: str, reading: str, day: str) -> None:
    """Carry a sentence into the own words of a card, with a link to the reading it came from.

    `reading` is the uid of the reading's leaf, `day` its ISO 8601 day.
    """
    if not sentence.strip():
        raise CanMend("Write the sentence first, or mark it with the mouse.")
    if not card:
        raise CanMend("Choose the card that said it best; the sentence goes to its own words.")
    found = shelf.card_leaf(card)
    if found is None:
        raise CanMend("There is no leaf for that card on this shelf yet.")
    before = standing(*found).now.get(way)
    link = f"([reading of {dates.written(day)}]({Scheme.LEAF.to(reading)}))"
    said = f"{before.text if before else ''}\n\n{sentence.strip()} {link}"
    write_words(*found, way, said)


def cards_with_words(shelf: Shelf) -> set[str]:
    """Keys of the cards that have own words in any binder, on leaves that are not in a drawer."""
    return {row[0] for binder in shelf.binders for row in binder.sql(_SAID)}


_SAID = """
SELECT leaf.card FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.card <> '' AND leaf.aside IS NULL AND tab.aside IS NULL
  AND EXISTS (SELECT 1 FROM own_words WHERE leaf_id = leaf.id AND text <> '')
"""


def written_leaves(binder: Binder, tab: TabView) -> set[str]:
    """Uids of the leaves behind a tab that have text, own words or a source's words on them."""
    query = (
        Leaf.select(Leaf.uid)
        .where((Leaf.tab == tab.row) & Leaf.aside.is_null())
        .where((Leaf.text != "") | (Leaf.also != ""))
        .tuples()
    )
    return {row[0] for row in binder.all(query)}
