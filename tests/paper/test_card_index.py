"""The index of cards, held against the very pages it names."""

import io
import re
from itertools import chain

import pypdf
import pytest

from binder.cards.facts import CARDS
from binder.cards.spreads import spread
from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.leaves import leaves, tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading
from tests.paper.reading_back import bare, pages_with, texts

LONG = "The kiln went up slowly and I waited. " * 60
"""More than a page, so that what follows stands on another."""


def laid(*cards, **more):
    """A reading laid in the evening: its sky is told on the leaf."""
    at = more.pop("at", "2026-07-03T21:00")
    question = more.pop("question", "What now?")
    return NewReading(
        at, question, spread("three-card"), [Laid(n, card) for n, card in enumerate(cards, 1)],
        **more,
    )  # fmt: skip


@pytest.fixture
def pages(course_shelf):
    """The words of each page of a log, and the pages in bold and in plain of each index line."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")
    first = laid(
        "wands-03", "major-09", "cups-13", text=f"{LONG}\n\nThe Tower stands behind The Hermit.",
        title="First",
    )  # fmt: skip
    second = laid(
        "wands-03", "swords-02", "pentacles-14", at="2026-08-04", title="Second",
        question="What has the King of Cups to say?",
    )  # fmt: skip
    leaf = readings.log(binder, tab, first)
    lookbacks.expect(binder, leaf, "The World comes of it.", 70, "2026-12-20")
    lookbacks.look_back(binder, leaf, "It was Temperance.", at="2026-12-20")
    readings.log(binder, tab, second)
    leaves.add_leaf(binder, tab, "Third", f"{LONG}\n\nNot a Two of Swords[^1].\n\n[^1]: Death.")
    pdf = typeset(gather(course_shelf, binder, tab), Sheet("a5", "2"))
    return texts(pdf), index_of(pdf)


def index_of(pdf):
    """Lines of the index by title: (pages in bold, pages in plain).

    Bold letters are those in which the line above the index says “bold”.
    """
    runs = []

    def seen(text, _cm, _tm, font, _size):
        if text.strip():
            runs.append((" ".join(text.split()), str((font or {}).get("/BaseFont"))))

    pypdf.PdfReader(io.BytesIO(pdf)).pages[-1].extract_text(visitor_text=seen)
    bold = next(font for text, font in runs if text == "bold")
    titles, found, title = {card.title for card in CARDS}, {}, ""
    for text, font in runs:
        title = text if text in titles else title
        if title and re.fullmatch(r"[\d,\s]+", text):
            kinds = found.setdefault(title, ([], []))
            kinds[font != bold].extend(int(n) for n in re.findall(r"\d+", text))
    return found


def test_every_card_that_is_printed_is_listed_with_its_very_pages(pages):
    words, index = pages
    standing = {card.title: pages_with(words[2:-1], card.title) for card in CARDS}
    told = {title: [n + 2 for n in on] for title, on in standing.items() if on}
    assert {title: sorted(chain(*on)) for title, on in index.items()} == told
    assert len(told) == 10


def test_cards_laid_are_told_from_cards_named(pages):
    words, index = pages
    first = pages_with(words, "1 Past Three of Wands")
    assert len(first) == 2
    assert index["Three of Wands"] == (first, [])
    assert index["Two of Swords"][0] == pages_with(words, "2 Present Two of Swords")
    assert len(index["Two of Swords"][1]) == 1
    assert index["The Tower"][0] == []


def test_cards_stand_in_the_order_of_the_deck(pages):
    words, index = pages
    assert list(index) == [card.title for card in CARDS if card.title in index]
    places = [words[-1].index(bare(title)) for title in index]
    assert places == sorted(places)


def test_the_moon_in_the_sky_is_no_card(pages):
    words, index = pages
    assert pages_with(words, "Moon, ")
    assert "The Moon" not in index
