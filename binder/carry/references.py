"""Sources carried in and out of a shelf: BibTeX and CSL-JSON files."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from pathlib import Path
from typing import Any

from binder.carry import bibtex
from binder.carry.bibtex import Read
from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import add_leaf
from binder.study.readings.discretion import NOTHING, Discretion, LeaveOut
from binder.study.sources.bibliography import CHECKS, DATES, LABELS, NAMES, lacking, year
from binder.study.sources.citing import checked_key
from binder.study.sources.sources import SourceView, free_key, home, set_source, sources

SUFFIXES = {".bib": "BibTeX", ".json": "CSL-JSON"}
_NOT_IN_KEYS = re.compile(r"[\s#()\[\]<>\"']+")


class Fate(StrEnum):
    """What is to become of a source that was read."""

    NEW = "new"
    HERE = "here already"
    CLASH = "its key is another source's"


@dataclass(slots=True)
class Offered:
    """A source of a file as it would be taken in. `key` and `wanted` are the user's to change.

    `other` is the title of the source on the shelf that is the same one, or has its key; `why`
    says by what it is the same.
    """

    where: str
    given: str
    fields: dict[str, Any]
    key: str
    fate: Fate = Fate.NEW
    other: str = ""
    why: str = ""
    wanted: bool = True
    remarks: list[str] = field(default_factory=list)

    @property
    def title(self) -> str:
        """What it is called."""
        return " ".join(str(self.fields.get("title", "")).split())


@dataclass(slots=True)
class Review:
    """A file that was read: its name, its sources, and a sentence for all that was amiss."""

    name: str
    offered: list[Offered] = field(default_factory=list)
    said: list[str] = field(default_factory=list)


@dataclass(slots=True)
class Brought:
    """What came of carrying sources in: their keys, and a sentence for all that was amiss."""

    keys: list[str] = field(default_factory=list)
    said: list[str] = field(default_factory=list)


def review(shelf: Shelf, path: Path) -> Review:
    """What a file has to offer; nothing is written. CanMend for a file that cannot be read."""
    found, said = read(path)
    made, known = Review(path.name, said=said), sources(shelf)
    taken = set(known)
    for one in found:
        offer = Offered(one.where, one.key, one.fields, _NOT_IN_KEYS.sub("-", one.key).strip("-"))
        if not offer.title:
            made.said.append(f"The source “{one.key}” ({one.where}) has no title and is left out.")
            continue
        _judge(offer, known, taken)
        offer.remarks += [one.broken] if one.broken else []
        offer.remarks += remarks(offer.key, one.fields)
        offer.wanted = offer.fate is not Fate.HERE and not one.broken
        taken.add(offer.key)
        made.offered.append(offer)
    return made


def _judge(offer: Offered, known: Mapping[str, SourceView], taken: set[str]) -> None:
    """Tell the same source from another one of the same key, which gets a key of its own."""
    alike = ((one, _alike(one.fields, offer.fields)) for one in known.values())
    same, why = next(((one, why) for one, why in alike if why), (None, ""))
    if same is not None:
        offer.fate, offer.other, offer.why = Fate.HERE, same.title, why
    if offer.key in taken or not offer.key:
        if same is None and offer.key:
            offer.fate = Fate.CLASH
            offer.other = known[offer.key].title if offer.key in known else "another in the file"
        offer.key = free_key(offer.key or offer.title, taken)


def _alike(one: Mapping[str, Any], other: Mapping[str, Any]) -> str:
    """By what two sources are the same: a number, or title, names and year; '' where not."""
    for name in ("DOI", "ISBN"):
        mine, theirs = (_plain(fields.get(name)) for fields in (one, other))
        if mine and theirs:
            return f"same {name}" if mine == theirs else ""
    same = all(
        _plain(told(one)) == _plain(told(other))
        for told in (lambda f: f.get("title"), _families, year)
    )
    return "same title, authors and year" if same else ""


def _families(fields: Mapping[str, Any]) -> str:
    people = fields.get("author") or ()
    return " ".join(str(one.get("family") or one.get("literal", "")) for one in people)


def _plain(said: Any) -> str:
    return re.sub(r"[\W_]+", "", str(said or "").casefold())


def take(shelf: Shelf, reviewed: Review) -> Brought:
    """Make a leaf for each source that is wanted, in one step that can be undone."""
    binder, tab = home(shelf)
    wanted = [one for one in reviewed.offered if one.wanted]
    _check_keys(shelf, wanted)
    with binder.change(f"Take in sources from “{reviewed.name}”"):
        for one in wanted:
            uid = add_leaf(binder, tab, one.title.partition(":")[0], kind=LeafKind.SOURCE)
            set_source(binder, uid, one.key, one.fields)
    return Brought([one.key for one in wanted])


def _check_keys(shelf: Shelf, wanted: list[Offered]) -> None:
    """CanMend where two sources would have one key."""
    seen = set()
    for one in wanted:
        one.key = checked_key(shelf, "", one.key)
        if one.key in seen:
            raise CanMend(f"Two of these sources have the key “{one.key}”; give one another key.")
        seen.add(one.key)


def bring_in(shelf: Shelf, path: Path) -> Brought:
    """Take in all that a file has and the shelf has not, and say what became of the rest."""
    reviewed = review(shelf, path)
    brought = take(shelf, reviewed)
    brought.said = [*reviewed.said, *(said for one in reviewed.offered for said in spoken(one))]
    return brought


def spoken(one: Offered) -> list[str]:
    """Sentences about a source that was read: what becomes of it, and what is odd about it."""
    fates = {
        Fate.NEW: "",
        Fate.HERE: f"“{one.given}” is here already, as “{one.other}” ({one.why}); it was left out.",
        Fate.CLASH: f"“{one.given}” is the key of “{one.other}” already; this one, “{one.title}”, "
        f"gets the key “{one.key}”.",
    }
    return [said for said in (fates[one.fate], *one.remarks) if said]


def remarks(key: str, fields: dict[str, Any]) -> list[str]:
    """A sentence for each thing about a source that its owner may want to put right."""
    missing = lacking(fields)
    found = [f"“{key}” has {missing}; it is cited by what it has."] if missing else []
    for name, check in CHECKS.items():
        try:
            check(str(fields.get(name, "")))
        except CanMend as error:
            found.append(f"“{key}”: {error}")
    return found


def read(path: Path) -> tuple[list[Read], list[str]]:
    """The sources of a BibTeX or CSL-JSON file, and what was amiss."""
    try:
        text = path.read_text(encoding="utf-8-sig")
    except OSError as error:
        raise CanMend(f"“{path}” could not be opened ({error.strerror}).") from error
    except UnicodeDecodeError:
        text = path.read_text(encoding="latin-1")
    return _read_csl(text, path.name) if _kind(path) == ".json" else bibtex.read(text)


def _kind(path: Path) -> str:
    kind = path.suffix.lower()
    if kind not in SUFFIXES:
        raise CanMend(f"“{path.name}” should end in .bib for BibTeX, or in .json for CSL-JSON.")
    return kind


def _read_csl(text: str, name: str) -> tuple[list[Read], list[str]]:
    try:
        items = json.loads(text)
    except (ValueError, RecursionError) as error:
        where = f" at line {error.lineno}" if isinstance(error, json.JSONDecodeError) else ""
        raise CanMend(
            f"“{name}” is no CSL-JSON file; it breaks off{where} or is something else."
        ) from error
    found: list[Read] = []
    said = []
    for number, item in enumerate(items if isinstance(items, list) else [items], start=1):
        if not isinstance(item, dict) or not item.get("id"):
            said.append(f"Source {number} of the file has no id and was left out.")
            continue
        fields = {key: value for key, value in item.items() if key not in ("id", "citation-key")}
        sound = {key: value for key, value in fields.items() if _is_sound(key, value)}
        odd = [key for key in fields if key not in sound]
        why = f"Its {' and '.join(odd)} could not be read." if odd else ""
        found.append(Read(f"source {number}", str(item["id"]), sound, why))
    return found, said


def _is_sound(name: str, value: Any) -> bool:
    """Whether a value has the shape that CSL-JSON gives a variable of that name."""
    if name in NAMES:
        return isinstance(value, list) and all(
            isinstance(one, dict) and all(isinstance(part, str | bool) for part in one.values())
            for one in value
        )
    if name in DATES or name == "original-date":
        return isinstance(value, dict)
    words = name in ("title", "type") or name in LABELS
    return isinstance(value, str | int | float) or not words


def carry_out(shelf: Shelf, path: Path, leave_out: LeaveOut = NOTHING) -> int:
    """Write all sources of the shelf to a BibTeX or CSL-JSON file; returns how many."""
    kind, discretion = _kind(path), Discretion(shelf, leave_out)
    known = [
        replace(one, title=discretion.title(one.title), fields=discretion.told(one.fields))
        for _, one in sorted(sources(shelf).items())
    ]
    if kind == ".bib":
        text = bibtex.write(known)
    else:
        items = [{"title": one.title, **one.fields, "id": one.key} for one in known]
        text = json.dumps(items, ensure_ascii=False, indent=1) + "\n"
    write_whole(text.encode(), path)
    return len(known)
