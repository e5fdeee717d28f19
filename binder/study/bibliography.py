"""The bibliographic facts of a source, in the words of a form and of a leaf.

Facts are kept as CSL fields (Citation Style Language 1.0.2, appendices III and IV: types and
variables), so that a bibliography can be carried in and out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study import citing, identifiers, leaves
from binder.study.sources import SourceView, set_source, source_of

KINDS: dict[str, str] = {
    "book": "Book",
    "chapter": "Chapter of a book",
    "pamphlet": "Leaflet",
    "article-journal": "Article",
    "article-magazine": "Magazine article",
    "article-newspaper": "Newspaper article",
    "webpage": "Web page",
    "speech": "Talk",
    "interview": "Conversation",
    "personal_communication": "Letter",
    "manuscript": "Manuscript",
    "thesis": "Thesis",
    "motion_picture": "Film",
    "document": "Something else",
}
"""CSL types that a student meets, and what a leaf calls them."""

LABELS: dict[str, str] = {
    "container-title": "In",
    "editor": "Edited by",
    "translator": "Translated by",
    "publisher": "Publisher",
    "publisher-place": "Place",
    "edition": "Edition",
    "volume": "Volume",
    "issue": "Number",
    "page": "Pages",
    "number-of-pages": "Pages",
    "original-date": "First published",
    "accessed": "Looked at on",
    "ISBN": "ISBN",
    "DOI": "DOI",
    "URL": "Address",
    "note": "Note",
}
"""CSL variables a leaf shows below its title, in this order, by what it calls them."""

_SHOWN_ABOVE = {"type", "title", "author", "issued", "id", "citation-key", "title-short"}


@dataclass(frozen=True, slots=True)
class Bibliography:
    """What the form asks: `kind` a key of KINDS, `authors` one a line, `year` digits or ''."""

    kind: str
    title: str
    authors: str
    year: str
    publisher: str
    place: str
    key: str
    isbn: str = ""
    doi: str = ""


def of(source: SourceView) -> Bibliography:
    """The form for a source as it is now."""
    fields = source.fields
    return Bibliography(
        kind=str(fields.get("type", "book")),
        title=str(fields.get("title", "")) or source.title,
        authors="\n".join(_name(name) for name in fields.get("author", [])),
        year=year(fields),
        publisher=str(fields.get("publisher", "")),
        place=str(fields.get("publisher-place", "")),
        key=source.key,
        isbn=str(fields.get("ISBN", "")),
        doi=str(fields.get("DOI", "")),
    )


def year(fields: Mapping[str, Any]) -> str:
    """The year a source came out, or ''."""
    parts = _parts(fields.get("issued"))
    return str(parts[0]) if parts else ""


def _parts(day: Any) -> list[Any]:
    """Year, month and day of a CSL date, as far as they are known; a day in words is one part."""
    if not isinstance(day, dict):
        return []
    parts = day.get("date-parts")
    if parts and isinstance(parts[0], list):
        return list(parts[0])
    return [day[key] for key in ("raw", "literal") if day.get(key)][:1]


def _name(name: Mapping[str, str]) -> str:
    parts = (name.get("given", ""), name.get("family", ""))
    return " ".join(part for part in parts if part) or name.get("literal", "")


def described(source: SourceView) -> list[tuple[str, str]]:
    """(label, value) of what is known beyond title, authors and year."""
    fields = {k: v for k, v in source.fields.items() if k not in _SHOWN_ABOVE and v}
    known = [(label, fields.pop(key)) for key, label in LABELS.items() if key in fields]
    rest = [(key.replace("-", " ").capitalize(), value) for key, value in fields.items()]
    return [(label, said) for label, value in [*known, *rest] if (said := _value(value))]


def _value(value: Any) -> str:
    if isinstance(value, list):
        return " and ".join(_name(one) if isinstance(one, dict) else str(one) for one in value)
    if isinstance(value, dict):
        return "-".join(f"{part:02}" if isinstance(part, int) else part for part in _parts(value))
    return str(value)


def write(shelf: Shelf, binder: Binder, leaf_uid: str, form: Bibliography) -> None:
    """Keep the form of a source leaf; what cites its old key cites the new one afterwards.

    Fields that the form does not ask stay as they are. A leaf that has no title of its own yet
    takes the source's, up to a colon.
    """
    form = replace(form, key=citing.checked_key(shelf, leaf_uid, form.key))
    if not form.title.strip():
        raise CanMend("A source needs a title.")
    before = source_of(binder, leaf_uid)
    with binder.change("Write bibliography"):
        set_source(binder, leaf_uid, form.key, _fields(form, before.fields if before else {}))
        if before is None or before.title == before.fields.get("title"):
            leaves.rename(binder, leaf_uid, form.title.partition(":")[0])
    if before is not None:
        citing.rekey(shelf, before.key, form.key)


def _fields(form: Bibliography, before: Mapping[str, Any]) -> dict[str, Any]:
    known = {_name(name): name for name in before.get("author", [])}
    names = [" ".join(line.split()) for line in form.authors.splitlines()]
    said = {
        "type": form.kind,
        "title": " ".join(form.title.split()),
        "author": [known.get(name) or _parsed(name) for name in names if name],
        "issued": _issued(form.year.strip(), before),
        "publisher": form.publisher.strip(),
        "publisher-place": form.place.strip(),
        "ISBN": _checked(form.isbn, before.get("ISBN"), identifiers.isbn),
        "DOI": _checked(form.doi, before.get("DOI"), identifiers.doi),
    }
    return {key: value for key, value in {**before, **said}.items() if value}


def _checked(said: str, before: Any, check: Callable[[str], str]) -> str:
    """A number as `check` gives it; one that was kept before is not looked at again."""
    return said.strip() if said.strip() == str(before or "") else check(said)


def _issued(written: str, before: Mapping[str, Any]) -> Any:
    if written == year(before):
        return before.get("issued")
    if written and not re.fullmatch(r"-?\d{1,4}", written):
        raise CanMend(f"“{written}” is no year; write it in figures, as 1911.")
    return {"date-parts": [[int(written)]]} if written else None


def _parsed(name: str) -> dict[str, str]:
    """'Lisle, Perpetua' or 'Perpetua Lisle'; a single word is taken as it is."""
    family, comma, given = (part.strip() for part in name.partition(","))
    if comma:
        return {"family": family, "given": given} if given else {"literal": family}
    given, _, family = name.rpartition(" ")
    return {"family": family, "given": given} if given else {"literal": name}
