"""Sources as they are cited on paper: the styles there are, and what the typesetter is told.

Notes and bibliography are formatted by the typesetter's own processor for the Citation Style
Language, from a Hayagriva file beside the data file. In that format braces and dollar signs in a
title would be read as markup; they are escaped, so that what a student wrote stays words.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import Any

from binder.page.address import Scheme, leads_to
from binder.paper.quotes import curled

HOUSE = "house"
STYLES: dict[str, tuple[str, str]] = {
    HOUSE: ("Ringbound", "csl/ringbound.csl"),
    "author-date": ("Author and year", "chicago-author-date"),
    "harvard": ("Harvard", "harvard-cite-them-right"),
    "notes": ("Full notes", "chicago-notes"),
    "mhra": ("Full notes, MHRA", "modern-humanities-research-association-notes"),
}
"""What each style is called, and how the typesetter knows it (CSL styles it brings along)."""

_KINDS = {
    "book": "book", "chapter": "chapter", "pamphlet": "book", "article-journal": "article",
    "article-magazine": "article", "article-newspaper": "article", "webpage": "web",
    "thesis": "thesis", "motion_picture": "video", "broadcast": "video", "speech": "performance",
    "entry-encyclopedia": "chapter", "manuscript": "manuscript", "report": "report",
}  # fmt: skip
_WITHIN = {"chapter": "book", "article-newspaper": "newspaper", "entry-encyclopedia": "reference",
           "speech": "conference"}  # fmt: skip
_MARKUP = re.compile(r"([\\${}])")


def keys(parts: Any) -> Iterator[str]:
    """The keys of the sources that blocks, or anything holding blocks, link to."""
    if isinstance(parts, Mapping):
        to = parts.get("to", "")
        if isinstance(to, str) and to.startswith(Scheme.SOURCE.prefix):
            yield leads_to(to, Scheme.SOURCE)
        parts = parts.values()
    elif not isinstance(parts, list | tuple):
        return
    for part in parts:
        yield from keys(part)


def names(wanted: Iterable[str]) -> dict[str, str]:
    """For each key a name that every file format takes: s1, s2 and so on."""
    return {key: f"s{number}" for number, key in enumerate(dict.fromkeys(wanted), start=1)}


def entries(sources: Mapping[str, Mapping[str, Any]]) -> dict[str, Any]:
    """The Hayagriva file, as a dictionary, for CSL fields by name."""
    return {name: entry(fields) for name, fields in sources.items()}


def entry(csl: Mapping[str, Any]) -> dict[str, Any]:
    """One source. What its format would refuse, such as a year in words, is left out."""
    kind = str(csl.get("type", "book"))
    made: dict[str, Any] = {
        "type": _KINDS.get(kind, "misc"),
        "title": _words(csl.get("title")) or "Untitled",
        "author": _people(csl.get("author") or csl.get("director")),
        "editor": _people(csl.get("editor")),
        "date": _date(csl.get("issued")),
        "publisher": _publisher(csl),
        "affiliated": _others(csl),
        "serial-number": _numbers(csl),
        "url": _address(csl),
        "page-range": _pages(csl.get("page")),
        "note": _words(csl.get("note")),
        "parent": _parent(kind, csl),
    }
    if not made["parent"]:
        made |= {"volume": _number(csl, "volume"), "issue": _number(csl, "issue")}
    made["edition"] = _number(csl, "edition")
    return {name: value for name, value in made.items() if value}


def _parent(kind: str, csl: Mapping[str, Any]) -> dict[str, Any] | None:
    title = _words(csl.get("container-title") or csl.get("event-title"))
    if not title:
        return None
    made = {
        "type": _WITHIN.get(kind, "web" if kind == "webpage" else "periodical"),
        "title": title,
        "volume": _number(csl, "volume"),
        "issue": _number(csl, "issue"),
    }
    return {name: value for name, value in made.items() if value}


def _words(said: Any) -> str:
    """Words with what could be markup escaped."""
    return _MARKUP.sub(r"\\\1", _line(said))


def _line(said: Any) -> str:
    """One line without the characters that YAML refuses."""
    line = curled(" ".join(str(said or "").split()))
    return "".join(letter for letter in line if letter.isprintable())


def _people(said: Any) -> list[dict[str, str]]:
    people = [name for name in said if isinstance(name, dict)] if isinstance(said, list) else []
    found = []
    for name in people:
        family = _line(name.get("family") or name.get("literal"))
        given = _line(name.get("given"))
        if family or given:
            found.append({"name": family or given, "given-name": given if family else ""})
    return [{part: it for part, it in name.items() if it} for name in found]


def _others(csl: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Who else had a part in it."""
    people = _people(csl.get("translator"))
    return [{"role": "translator", "names": people}] if people else []


def _numbers(csl: Mapping[str, Any]) -> dict[str, str]:
    said = {"doi": _line(csl.get("DOI")), "isbn": _line(csl.get("ISBN"))}
    return {name: words for name, words in said.items() if words}


def _date(day: Any) -> str:
    """As much of a date as is a date: 2019, 2019-03 or 2019-03-08; '' for words."""
    parts = day.get("date-parts") if isinstance(day, dict) else None
    first = parts[0] if isinstance(parts, list) and parts else None
    numbers = [str(part) for part in first[:3]] if isinstance(first, list) else []
    if not numbers or not all(re.fullmatch(r"\d{1,4}", part, re.ASCII) for part in numbers):
        return ""
    year, *rest = (int(part) for part in numbers)
    try:
        date(year, *[*rest, 1, 1][:2])
    except ValueError:
        rest = []
    return "-".join([f"{year:04}", *(f"{part:02}" for part in rest)])


def _publisher(csl: Mapping[str, Any]) -> dict[str, str]:
    said = {"name": _words(csl.get("publisher")), "location": _words(csl.get("publisher-place"))}
    return {part: words for part, words in said.items() if words}


def _address(csl: Mapping[str, Any]) -> str | dict[str, str]:
    """The address, and when it was looked at."""
    url = str(csl.get("URL") or "").strip()
    if not re.fullmatch(r"https?://[\w.-]+(?:/[\w./?&=%~+-]*)?", url, re.ASCII):
        return ""
    seen = _date(csl.get("accessed"))
    return {"value": url, "date": seen} if seen else url


def _pages(said: Any) -> str:
    pages = str(said or "").replace("–", "-").strip()
    return pages if re.fullmatch(r"\d{1,6}(?:-\d{1,6})?", pages) else ""


def _number(csl: Mapping[str, Any], name: str) -> str | int:
    said = str(csl.get(name) or "").strip()
    return int(said) if re.fullmatch(r"\d{1,6}", said) else ""
