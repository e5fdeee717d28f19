"""Notes and bibliography against published examples.

The Chicago Manual of Style, 18th edition (2024), as its Citation Quick Guide gives them for a book
(Charles Yu, *Interior Chinatown*): note, bibliography, author and date. From memory.

The house style is set by another processor for the Citation Style Language as well, citeproc-py
(test suite and all its own), from the same style file and the same sources.
"""

import warnings

import pytest
from citeproc import (
    Citation,
    CitationItem,
    CitationStylesBibliography,
    CitationStylesStyle,
    Locator,
    formatter,
)
from citeproc.source.json import CiteProcJSON

from binder.resources import resource
from tests.paper.reading_back import bare
from tests.paper.test_citations import last_page

YU = {
    "type": "book", "title": "Interior Chinatown", "publisher": "Pantheon Books",
    "author": [{"family": "Yu", "given": "Charles"}], "issued": {"date-parts": [[2020]]},
}  # fmt: skip


@pytest.mark.parametrize(
    ("style", "said"),
    [
        ("notes", "Charles Yu, Interior Chinatown (Pantheon Books, 2020), 45."),
        ("notes", "Yu, Charles. Interior Chinatown. Pantheon Books, 2020."),
        ("author-date", "(Yu 2020, 45)"),
        ("author-date", "Yu, Charles. 2020. Interior Chinatown. Pantheon Books."),
    ],
)
def test_a_book_is_cited_as_the_manual_shows(style, said):
    assert bare(said) in last_page("See [him](source:yu#45).", {"yu": YU}, style)


SOURCES = {
    "book": {
        "type": "book", "title": "Upside Down", "publisher": "Marchbank",
        "author": [{"family": "Lisle", "given": "Perpetua"}], "publisher-place": "Hallow",
        "issued": {"date-parts": [[2019]]},
    },
    "article": {
        "type": "article-journal", "title": "Small Hours", "container-title": "Quarterly of Pips",
        "volume": "3", "issue": "2", "page": "12-18", "issued": {"date-parts": [[1931]]},
        "author": [{"family": "Orme", "given": "Tess"}, {"family": "Bede", "given": "Ann"}],
    },
    "chapter": {
        "type": "chapter", "title": "On Pips", "container-title": "The Long Table",
        "author": [{"family": "Orme", "given": "Tess"}], "publisher": "Quay",
        "editor": [{"family": "Wren", "given": "Bo"}], "issued": {"date-parts": [[1950]]},
        "page": "40-52",
    },
    "site": {
        "type": "webpage", "title": "Tides", "URL": "https://example.org/t",
        "issued": {"date-parts": [[2024]]},
    },
    "talk": {
        "type": "speech", "title": "Cards aloud", "event-title": "Reading Room evening",
        "author": [{"family": "Orme", "given": "Tess"}], "issued": {"date-parts": [[2026, 2, 14]]},
    },
    "entry": {
        "type": "entry-encyclopedia", "title": "Pips", "container-title": "Cyclopaedia",
        "issued": {"date-parts": [[1901]]}, "page": "3",
    },
    "report": {"type": "report", "title": "On Cards", "author": [{"literal": "Quay Council"}],
               "issued": {"date-parts": [[1970]]}},
    "bare": {"type": "book", "title": "Nothing Known"},
    "named": {"type": "book", "title": "A Leaflet", "author": [{"literal": "The Reading Room"}]},
    "edited": {"type": "book", "title": "Many Hands", "issued": {"date-parts": [[1988]]},
               "editor": [{"family": "Wren", "given": "Bo"}]},
    "rendered": {
        "type": "book", "title": "The Long Night", "issued": {"date-parts": [[1990]]},
        "author": [{"family": "Orme", "given": "Tess"}],
        "editor": [{"family": "Wren", "given": "Bo"}, {"family": "Bede", "given": "Ann"}],
        "translator": [{"family": "Lisle", "given": "Perpetua"}],
    },
}  # fmt: skip


def by_the_other(key):
    """Note and entry of a source as citeproc-py sets them in the house style."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        source = CiteProcJSON([{**SOURCES[key], "id": key}])
        style = CitationStylesStyle(str(resource("csl") / "ringbound.csl"), validate=False)
        made = CitationStylesBibliography(style, source, formatter.plain)
        cited = Citation([CitationItem(key, locator=Locator("page", "112"))])
        made.register(cited)
        return str(made.cite(cited, lambda _item: None)), str(made.bibliography()[0])


@pytest.mark.parametrize("key", SOURCES)
def test_the_house_style_is_set_as_another_processor_sets_it(key):
    note, entry = by_the_other(key)
    page = last_page(f"See [it](source:{key}#112).", {key: SOURCES[key]}, "house")
    notes, _, entries = page.partition("Sources")
    assert bare(note) in notes
    assert bare(entry) in entries


def test_editors_and_translators_are_printed():
    page = last_page("See [it](source:rendered).", {"rendered": SOURCES["rendered"]}, "house")
    said = "The Long Night. ed. by Bo Wren and Ann Bede, trans. by Perpetua Lisle. 1990."
    assert bare(said) in page.partition("Sources")[2]


def test_an_editor_in_the_author_s_place_is_named_once():
    page = last_page("See [it](source:edited).", {"edited": SOURCES["edited"]}, "house")
    assert page.partition("Sources")[2].count(bare("Wren")) == 1
