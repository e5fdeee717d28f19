"""The bibliographic facts of a source, in the words of a form and of a leaf.

Facts are kept as CSL fields (Citation Style Language 1.0.2, appendices III and IV: types and
variables), so that a bibliography can be carried in and out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.leaves import leaves
from binder.study.sources import citing, identifiers
from binder.study.sources.sources import SourceView, person, person_name, set_source, source_of

KINDS: dict[str, str] = {
    "book": "Book",
    "chapter": "Chapter of a book",
    "pamphlet": "Leaflet",
    "article-journal": "Article",
    "article-magazine": "Magazine article",
    "article-newspaper": "Newspaper article",
    "entry-encyclopedia": "Entry in a work of reference",
    "report": "Report",
    "webpage": "Web page",
    "speech": "Talk",
    "interview": "Conversation",
    "personal_communication": "Letter",
    "manuscript": "Manuscript",
    "thesis": "Thesis",
    "motion_picture": "Film",
    "broadcast": "Broadcast",
    "document": "Something else",
}
"""CSL types that a student meets, and what a leaf calls them."""

LABELS: dict[str, str] = {
    "container-title": "In",
    "event-title": "Given at",
    "event-place": "Held in",
    "editor": "Edited by",
    "translator": "Translated by",
    "director": "Directed by",
    "interviewer": "Asked by",
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

NAMES = frozenset(("author", "editor", "translator", "director", "interviewer"))
DATES = frozenset(("issued", "accessed"))
CHECKS: dict[str, Callable[[str], str]] = {"ISBN": identifiers.isbn, "DOI": identifiers.doi}
"""Numbers that tell by themselves whether they are mistyped; the checks raise CanMend."""

_ARTICLES = ("article-journal", "article-magazine", "article-newspaper")
_BOOKS = ("book", "chapter", "pamphlet")
_FILMS = ("motion_picture", "broadcast")
_MADE = (*_BOOKS, *_FILMS, "entry-encyclopedia", "report", "thesis", "manuscript", "document")
_PART = ("chapter", "entry-encyclopedia", *_ARTICLES)

ASKED: dict[str, tuple[str, tuple[str, ...]]] = {
    "author": ("&Authors", ()),
    "issued": ("&Year or day", ()),
    "container-title": ("I&n", (*_PART, "webpage")),
    "editor": ("Edited &by", _BOOKS),
    "translator": ("T&ranslated by", _BOOKS),
    "director": ("&Directed by", _FILMS),
    "interviewer": ("As&ked by", ("interview",)),
    "event-title": ("&Given at", ("speech",)),
    "event-place": ("&Held in", ("speech", "interview")),
    "publisher": ("&Publisher", _MADE),
    "publisher-place": ("P&lace", _MADE),
    "edition": ("&Edition", _BOOKS),
    "volume": ("&Volume", (*_BOOKS, *_ARTICLES)),
    "issue": ("N&umber", _ARTICLES),
    "page": ("Pa&ges", _PART),
    "ISBN": ("&ISBN", _BOOKS),
    "DOI": ("D&OI", (*_PART, "book", "thesis")),
    "URL": ("Addre&ss", ()),
    "accessed": ("Loo&ked at on", ("webpage", "document", *_FILMS)),
}
"""CSL variables the form asks, in this order: what it calls them, and for which kinds (all
for none named)."""

_SHOWN_ABOVE = {"type", "title", "author", "issued", "id", "citation-key", "title-short"}


@dataclass(frozen=True, slots=True)
class Bibliography:
    """What the form asks: `kind` a key of KINDS, `said` what is written in each field of ASKED.

    Names stand one a line, days as 1911, 1911-05 or 1911-05-12. `as_is` are those of CHECKS that
    are kept though they look mistyped.
    """

    kind: str
    title: str
    key: str
    said: Mapping[str, str] = field(default_factory=dict)
    as_is: frozenset[str] = frozenset()


def of(source: SourceView) -> Bibliography:
    """The form for a source as it is now."""
    return Bibliography(
        kind=str(source.fields.get("type", "book")),
        title=str(source.fields.get("title", "")) or source.title,
        key=source.key,
        said={name: _written(name, source.fields.get(name)) for name in ASKED},
    )


def _written(name: str, value: Any) -> str:
    if name in NAMES:
        people = value if isinstance(value, list) else []
        return "\n".join(person_name(one) for one in people if isinstance(one, dict))
    return _day(value) if name in DATES else str(value or "")


def asks(kind: str, name: str) -> bool:
    """Whether the form of a kind has a field for that variable."""
    kinds = ASKED[name][1]
    return not kinds or kind in kinds


def lacking(fields: Mapping[str, Any]) -> str:
    """'no author and no year' of a source that has neither; '' where nothing is missing."""
    who = any(fields.get(name) for name in NAMES - {"translator", "interviewer"})
    words = [word for word, has in (("author", who), ("year", fields.get("issued"))) if not has]
    return " and ".join(f"no {word}" for word in words)


def year(fields: Mapping[str, Any]) -> str:
    """The year a source came out, or ''."""
    parts = _parts(fields.get("issued"))
    return str(parts[0]) if parts else ""


def _parts(day: Any) -> list[Any]:
    """Year, month and day of a CSL date, as far as they are known; a day in words is one part."""
    if not isinstance(day, dict):
        return []
    parts = day.get("date-parts")
    if isinstance(parts, list) and parts and isinstance(parts[0], list):
        return list(parts[0])
    return [day[key] for key in ("raw", "literal") if day.get(key)][:1]


def facts(source: SourceView) -> list[tuple[str, str]]:
    """(label, value) of what a leaf says first of a source."""
    kind = str(source.fields.get("type", ""))
    known = (
        ("Kind", KINDS.get(kind, kind)), ("Year", year(source.fields)), ("Cite it as", source.key),
    )  # fmt: skip
    return [(label, value) for label, value in known if value]


def described(source: SourceView) -> list[tuple[str, str]]:
    """(label, value) of what is known beyond title, authors and year."""
    fields = {k: v for k, v in source.fields.items() if k not in _SHOWN_ABOVE and v}
    known = [(label, fields.pop(key)) for key, label in LABELS.items() if key in fields]
    rest = [(key.replace("-", " ").capitalize(), value) for key, value in fields.items()]
    return [(label, said) for label, value in [*known, *rest] if (said := _value(value))]


def _value(value: Any) -> str:
    if isinstance(value, list):
        return " and ".join(
            person_name(one) if isinstance(one, dict) else str(one) for one in value
        )
    if isinstance(value, dict):
        return _day(value)
    return str(value)


def _day(value: Any) -> str:
    return "-".join(f"{part:02}" if isinstance(part, int) else str(part) for part in _parts(value))


def write(shelf: Shelf, binder: Binder, leaf_uid: str, form: Bibliography) -> None:
    """Keep the form of a source leaf; what cites its old key cites the new one afterwards.

    Fields that the form does not ask stay as they are. A leaf that has no title of its own yet
    takes the source's, up to a colon.
    """
    form = replace(form, key=citing.checked_key(shelf, leaf_uid, form.key))
    if not form.title.strip():
        raise CanMend("A source needs a title.")
    before = source_of(binder, leaf_uid)
    with binder.change("Write source details"):
        set_source(binder, leaf_uid, form.key, _fields(form, before.fields if before else {}))
        if before is None or before.title == before.fields.get("title"):
            leaves.rename(binder, leaf_uid, form.title.partition(":")[0])
    if before is not None:
        citing.rekey(shelf, before.key, form.key)


def _fields(form: Bibliography, before: Mapping[str, Any]) -> dict[str, Any]:
    said: dict[str, Any] = {"type": form.kind, "title": " ".join(form.title.split())}
    for name, words in form.said.items():
        was = before.get(name)
        unchanged = words.strip() == _written(name, was).strip()
        said[name] = was if unchanged else _value_of(name, words, was, name in form.as_is)
    return {key: value for key, value in {**before, **said}.items() if value}


def _value_of(name: str, words: str, was: Any, as_is: bool) -> Any:
    """The CSL value of what is written in a field; CanMend where it is none."""
    if name in NAMES:
        known = {person_name(one): one for one in was or () if isinstance(one, dict)}
        people = [" ".join(line.split()) for line in words.replace(";", "\n").splitlines()]
        return [known.get(who) or person(who) for who in people if who]
    if name in DATES:
        return _dated(words.strip())
    return words.strip() if as_is or name not in CHECKS else CHECKS[name](words)


def _dated(written: str) -> dict[str, Any] | None:
    found = re.fullmatch(r"(-?\d{1,4})(?:-(\d{1,2}))?(?:-(\d{1,2}))?", written)
    if written and not found:
        raise CanMend(
            f"“{written}” is no year and no day; write it in figures, as 1911 or 1911-05-12."
        )
    return {"date-parts": [[int(part) for part in found.groups() if part]]} if found else None
