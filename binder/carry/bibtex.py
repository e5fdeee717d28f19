"""BibTeX in and out, through pybtex: what can be read is read, the rest is said.

Fields and their CSL counterparts are common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import accumulate, pairwise
from typing import Any

from binder.study.sources.bibliography import year
from binder.study.sources.sources import SourceView

TYPES = {
    "book": "book", "article": "article-journal", "inbook": "chapter", "incollection": "chapter",
    "inproceedings": "chapter", "conference": "chapter", "proceedings": "book", "manual": "book",
    "booklet": "pamphlet", "phdthesis": "thesis", "mastersthesis": "thesis", "thesis": "thesis",
    "unpublished": "manuscript", "online": "webpage", "electronic": "webpage", "www": "webpage",
    "inreference": "entry-encyclopedia", "techreport": "report", "report": "report",
    "video": "motion_picture", "movie": "motion_picture", "misc": "document", "letter":
    "personal_communication",
}  # fmt: skip
"""Kind of a BibTeX entry -> CSL type."""

_BACK = {
    "book": "book", "chapter": "incollection", "pamphlet": "booklet", "thesis": "phdthesis",
    "article-journal": "article", "article-magazine": "article", "article-newspaper": "article",
    "manuscript": "unpublished", "webpage": "online", "report": "techreport",
}  # fmt: skip

FIELDS = {
    "title": "title", "journal": "container-title", "journaltitle": "container-title",
    "booktitle": "container-title", "publisher": "publisher", "school": "publisher",
    "institution": "publisher", "howpublished": "publisher", "address": "publisher-place",
    "location": "publisher-place", "edition": "edition", "volume": "volume", "number": "issue",
    "issue": "issue", "pages": "page", "isbn": "ISBN", "doi": "DOI", "url": "URL", "note": "note",
    "pagetotal": "number-of-pages", "origdate": "original-date",
}  # fmt: skip
"""Field of a BibTeX entry -> CSL variable."""

_START = re.compile(r"^[ \t]*@\w+\s*[{(]", re.MULTILINE)
"""An entry that begins a line."""
_NEXT = " @comment{}"
"""Stands for the next entry behind a piece: an entry without its end is given up there."""
_BRACE = re.compile("[{}]")
_ODD = re.compile(r"\\([$&%#_{}~^\\])")
_COMMAND = re.compile(r"\\(?:emph|textit|textbf|textsc|mathrm)\b ?")
_ADDRESS = re.compile(
    r"(?:\w+ at:?\s+|online:?\s+)?\{*(?:\\(?:url|path)\s*|\\href\s*)?\{*(https?://[^{}\s]+)\}*"
    r"(?:\s*\{[^{}]*\}+)?",
    re.IGNORECASE,
)
"""An address alone, bare, in braces or in the commands that print one."""
_ESCAPES = str.maketrans(
    {**{letter: f"\\{letter}" for letter in "&%#_$"}, "\\": r"\textbackslash{}", "{": "(",
     "}": ")", "~": r"\textasciitilde{}", "^": r"\textasciicircum{}"}
)  # fmt: skip
"""Braces become brackets, since BibTeX counts even those that are escaped."""


@dataclass(frozen=True, slots=True)
class Read:
    """A source as a file has it: where it stands there, its key, and its CSL fields.

    `broken` says why it could be read in part only.
    """

    where: str
    key: str
    fields: dict[str, Any]
    broken: str = ""


def read(text: str) -> tuple[list[Read], list[str]]:
    """The sources of a BibTeX file, and a sentence for each thing amiss."""
    from pybtex import errors
    from pybtex.database.input.bibtex import month_names
    from pybtex.utils import CaseInsensitiveDict

    macros = CaseInsensitiveDict(month_names)
    with errors.capture() as caught:
        found = [one for piece in _pieces(text) for one in _entries(piece, macros, caught)]
    return found, list(dict.fromkeys(_said(error) for error in caught))


def _pieces(text: str) -> Iterator[str]:
    """The text cut behind each entry that is never closed, so that it does not swallow the rest.

    Empty lines before a piece keep the numbers of its lines.
    """
    starts = [*(found.start() for found in _START.finditer(text)), len(text)]
    cuts, lowest = [len(text)], 0
    for start, end in reversed(list(pairwise(starts))):
        braces = _BRACE.findall(text, start, end)
        depths = list(accumulate(1 if brace == "{" else -1 for brace in braces)) or [0]
        lowest = min(*depths, depths[-1] + lowest)
        if lowest > 0:
            cuts.append(end)
    for start, end in pairwise([0, *reversed(cuts)]):
        yield "\n" * text.count("\n", 0, start) + text[start:end].rstrip() + _NEXT


def _entries(text: str, macros: Any, caught: list[Exception]) -> Iterator[Read]:
    from pybtex.database.input.bibtex import LowLevelParser, UndefinedMacro

    parser = LowLevelParser(text, handle_error=caught.append, macros=macros)
    seen = len(caught)
    for kind, said in parser:
        fresh, seen = caught[seen:], len(caught)
        if kind.lower() in ("string", "preamble") or said[0] is None:
            continue
        line = text.count("\n", 0, parser.command_start) + 1
        amiss = [error for error in fresh if (_line(error) or 0) >= line]
        broken = [error for error in amiss if not isinstance(error, UndefinedMacro)]
        why = f"A part of it could not be read (line {_line(broken[0])})." if broken else ""
        key, fields = said
        yield Read(f"line {line}", key, _fields(_entry_of(kind, fields)), why)


def _entry_of(kind: str, fields: Iterable[tuple[str, list[str]]]) -> Any:
    """An entry as pybtex makes it, but with one of several fields of a name."""
    from pybtex.bibtex.utils import split_name_list
    from pybtex.database import Entry, Person

    entry = Entry(kind)
    for name, parts in fields:
        value = " ".join("".join(parts).split())
        if name.lower() in Person.valid_roles:
            for each in split_name_list(value):
                entry.add_person(Person(each), name.lower())
        elif name not in entry.fields:
            entry.fields[name] = value
    return entry


def _line(error: Exception) -> int | None:
    return getattr(error, "lineno", None)


def _said(error: Exception) -> str:
    where = f"Line {_line(error)}" if _line(error) else "A line"
    return f"{where} of the file could not be read; look at the source that stands there."


def _fields(entry: Any) -> dict[str, Any]:
    found: dict[str, Any] = {"type": TYPES.get(entry.type.lower(), "document")}
    for name, said in entry.fields.items():
        variable, words = _value_of(name.lower(), said)
        if words and variable not in found:
            found[variable] = words.replace("--", "–") if variable == "page" else words
    for role in ("author", "editor", "translator"):
        people = [person for one in entry.persons.get(role, ()) if (person := _person(one))]
        if people:
            found[role] = people
    when = re.match(
        r"\s*(\d{1,4})\b", plain(entry.fields.get("year") or entry.fields.get("date") or "")
    )
    if when:
        found["issued"] = {"date-parts": [[int(when[1])]]}
    return found


def _value_of(name: str, said: str) -> tuple[str, str]:
    """The CSL variable of a field and its value: what is published at an address has that."""
    address = _ADDRESS.fullmatch(said.strip()) if name == "howpublished" else None
    if address:
        return "URL", _ODD.sub(r"\1", address[1])
    variable = FIELDS.get(name, "")
    return variable, plain(said) if variable else ""


def _person(one: Any) -> dict[str, str]:
    given = plain(" ".join((*one.first_names, *one.middle_names)))
    family = plain(" ".join((*one.prelast_names, *one.last_names, *one.lineage_names)))
    if family and not given:
        return {"literal": family}
    return {"family": family, "given": given} if family else {"literal": given} if given else {}


_CIRCUMFLEX = re.compile(r"\\textasciicircum(?![A-Za-z])(?:\{\}| )?")
_HELD = "\ue000"
"""Stands for a circumflex while the rest is read; a character that no font and no text has."""


@cache
def _plaintext() -> Any:
    """Made once: looking a plugin up by its name reads what is installed, each time anew."""
    from pybtex.backends.plaintext import Backend

    return Backend()


def plain(latex: str) -> str:
    """Words out of LaTeX: accents as letters, braces gone; left as it is where it is no LaTeX."""
    from pybtex.exceptions import PybtexError
    from pybtex.richtext import Text

    latex = _CIRCUMFLEX.sub(_HELD, latex)  # which the library leaves as it stands
    try:
        words = str(Text.from_latex(latex).render(_plaintext()))
    except (PybtexError, ValueError):
        words = latex
    words = words.replace(_HELD, "^")
    return " ".join(_ODD.sub(r"\1", _COMMAND.sub("", words)).replace("\u00a0", " ").split())


def write(sources: Iterable[SourceView]) -> str:
    """The sources as a BibTeX file in UTF-8."""
    return "\n".join(_entry(one) for one in sources)


def _entry(source: SourceView) -> str:
    fields = source.fields
    kind = _BACK.get(str(fields.get("type", "book")), "misc")
    said = {role: _people(fields[role]) for role in ("author", "editor", "translator")
            if fields.get(role)}  # fmt: skip
    said |= {"title": escaped(fields.get("title") or source.title), "year": year(fields)}
    said |= _others(kind, fields)
    lines = "".join(f"  {name} = {{{words}}},\n" for name, words in said.items() if words)
    return f"@{kind}{{{source.key},\n{lines}}}\n"


def _others(kind: str, fields: Mapping[str, Any]) -> dict[str, str]:
    within = "journal" if kind == "article" else "booktitle"
    names = {"container-title": within, "publisher": "publisher", "publisher-place": "address",
             "edition": "edition", "volume": "volume", "issue": "number", "page": "pages",
             "ISBN": "isbn", "DOI": "doi", "URL": "url", "note": "note"}  # fmt: skip
    return {name: escaped(fields[key]) for key, name in names.items() if fields.get(key)}


def _people(people: Iterable[Mapping[str, str]]) -> str:
    return " and ".join(
        f"{escaped(one['family'])}, {escaped(one['given'])}"
        if one.get("family") and one.get("given")
        else f"{{{escaped(one.get('literal') or one.get('family') or one.get('given', ''))}}}"
        for one in people
    )


def escaped(words: Any) -> str:
    """Words as LaTeX takes them."""
    return " ".join(str(words).split()).translate(_ESCAPES)
