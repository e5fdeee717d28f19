"""Sources carried in and out of a shelf: BibTeX and CSL-JSON files."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from binder.carry import bibtex
from binder.errors import CanMend
from binder.store.shelf import Shelf
from binder.store.whole import write_whole
from binder.study.bibliography import CHECKS, lacking
from binder.study.discretion import NOTHING, Discretion, LeaveOut
from binder.study.kinds import LeafKind
from binder.study.leaves import add_leaf
from binder.study.sources import set_source, sources
from binder.study.tabs import first_of_kind

SUFFIXES = {".bib": "BibTeX", ".json": "CSL-JSON"}
_NOT_IN_KEYS = re.compile(r"[\s#()\[\]<>\"']+")


@dataclass(slots=True)
class Brought:
    """What came of carrying sources in: their keys, and a sentence for all that was amiss."""

    keys: list[str] = field(default_factory=list)
    said: list[str] = field(default_factory=list)


def bring_in(shelf: Shelf, path: Path) -> Brought:
    """Make a leaf for each source of a file that is not on the shelf yet, in one step."""
    found, said = read(path)
    home = next(((b, tab) for b in shelf.binders if (tab := first_of_kind(b, "sources"))), None)
    if home is None:
        raise CanMend("No binder here has a tab for sources; add a tab of that kind first.")
    binder, tab = home
    brought, known = Brought(said=said), sources(shelf)
    with binder.change(f"Bring in sources from “{path.name}”"):
        for given, fields in found:
            key, title = _NOT_IN_KEYS.sub("-", given).strip("-"), str(fields.get("title", ""))
            if not title.strip() or not key:
                brought.said.append(f"The source “{given}” has no title and was left out.")
            elif key in known:
                brought.said.append(
                    f"“{key}” is the key of “{known[key].title}” on this shelf already; what the "
                    "file says of it was left out."
                )
            else:
                uid = add_leaf(binder, tab, title.partition(":")[0], kind=LeafKind.SOURCE)
                set_source(binder, uid, key, fields)
                brought.keys.append(key)
                brought.said += remarks(key, fields)
    return brought


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


def read(path: Path) -> tuple[list[tuple[str, dict[str, Any]]], list[str]]:
    """(key, CSL fields) of each source of a BibTeX or CSL-JSON file, and what was amiss."""
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


def _read_csl(text: str, name: str) -> tuple[list[tuple[str, dict[str, Any]]], list[str]]:
    try:
        items = json.loads(text)
    except ValueError as error:
        raise CanMend(
            f"“{name}” is no CSL-JSON file; it breaks off or is something else."
        ) from error
    found: list[tuple[str, dict[str, Any]]] = []
    said = []
    for number, item in enumerate(items if isinstance(items, list) else [items], start=1):
        if not isinstance(item, dict) or not item.get("id"):
            said.append(f"Source {number} of the file has no id and was left out.")
        elif any(str(item["id"]) == key for key, _ in found):
            said.append(f"Two sources in the file have the key “{item['id']}”; the first was read.")
        else:
            fields = {
                key: value for key, value in item.items() if key not in ("id", "citation-key")
            }
            found.append((str(item["id"]), fields))
    return found, said


def carry_out(shelf: Shelf, path: Path, leave_out: LeaveOut = NOTHING) -> int:
    """Write all sources of the shelf to a BibTeX or CSL-JSON file; returns how many."""
    kind, discretion = _kind(path), Discretion(shelf, leave_out)
    known = [
        replace(one, title=discretion.title(one.title), fields=_told(one.fields, discretion))
        for _, one in sorted(sources(shelf).items())
    ]
    if kind == ".bib":
        text = bibtex.write(known)
    else:
        items = [{"title": one.title, **one.fields, "id": one.key} for one in known]
        text = json.dumps(items, ensure_ascii=False, indent=1) + "\n"
    write_whole(text.encode(), path)
    return len(known)


def _told(fields: Mapping[str, Any], discretion: Discretion) -> dict[str, Any]:
    """CSL fields without words that are to be left out."""
    said = {
        name: discretion.text(value) if isinstance(value, str) else value
        for name, value in fields.items()
    }
    return {name: value for name, value in said.items() if value or not fields[name]}
