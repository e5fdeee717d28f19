"""Where pages end: each leaf begins one line lower, so that breaks fall anywhere behind."""

import re

import pytest

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.data import Part, PrintLeaf, TurnedUp
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from tests.paper.reading_back import texts
from tests.paper.sample import section

LINES = range(18, 34)
"""Numbers of paragraphs before what is broken, about a page of A5."""


def pages(made):
    """The words of each page; `made(n)` gives a leaf with n paragraphs before what is broken."""
    return texts(typeset(section(*(made(n) for n in LINES)), Sheet("a5", "2")))


def leaf(n, text, **more):
    above = "\n\n".join(["Filling."] * n)
    body = Part("", blocks(to_html(f"{above}\n\n{text}".replace("NN", f"N{n}N"))))
    return PrintLeaf(f"leaf{n}", "plain", f"Leaf {n}", parts=(body,), **more)


def parts_of(printed, n, pattern):
    """How often a pattern stands on each page that has it at all."""
    found = [len(re.findall(pattern.replace("NN", f"N{n}N"), page)) for page in printed]
    return [count for count in found if count]


@pytest.mark.parametrize("rows", [2, 3, 7])
def test_no_row_of_a_table_stands_alone(rows):
    table = "|a|b|\n|-|-|\n" + "".join(f"|rowNN|{n}|\n" for n in range(rows))
    printed = pages(lambda n: leaf(n, table))
    counts = [parts_of(printed, n, "rowNN") for n in LINES]
    assert all(sum(each) == rows and min(each) > 1 for each in counts)
    assert rows < 4 or any(len(each) > 1 for each in counts)


@pytest.mark.parametrize("mark", ["-", "1.", "- [ ]"])
@pytest.mark.parametrize("items", [2, 3, 7])
def test_no_item_of_a_list_stands_alone(mark, items):
    listed = "\n".join(f"{mark} itemNN" for _ in range(items))
    printed = pages(lambda n: leaf(n, f"## HeadNN\n\n{listed}"))
    for n in LINES:
        counts = parts_of(printed, n, "itemNN")
        assert sum(counts) == items
        assert min(counts) > 1
    numbers = "".join(printed)
    assert mark != "1." or all(f"{n}.item" in numbers for n in range(1, items + 1))


def test_no_reading_in_which_a_card_turned_up_stands_alone():
    def made(n):
        seen = tuple(TurnedUp("1 Jul", f"rowN{n}N", "Past") for _ in range(6))
        return leaf(n, "So.", turned_up=seen)

    printed = pages(made)
    counts = [parts_of(printed, n, "rowNN") for n in LINES]
    assert all(sum(each) == 6 and min(each) > 1 for each in counts)
    assert any(len(each) > 1 for each in counts)


def test_a_quotation_stays_with_its_source():
    quote = "> One wordNN and\\\n> another\\\n> and more.\n\n— the old book NN"
    printed = pages(lambda n: leaf(n, quote))
    for n in LINES:
        (page,) = (page for page in printed if f"wordN{n}N" in page)
        assert f"theoldbookN{n}N" in page


def test_a_heading_is_never_last_on_a_page():
    printed = pages(lambda n: leaf(n, "## HeadNN\n\nwordNN follows.\n\nAnd more."))
    for n in LINES:
        (page,) = (page for page in printed if f"HeadN{n}N" in page)
        assert f"wordN{n}N" in page


def test_no_line_of_a_paragraph_stands_alone():
    words = " ".join(["wordNN"] * 60)
    printed = pages(lambda n: leaf(n, words))
    for n in LINES:
        counts = parts_of(printed, n, "wordNN")
        assert sum(counts) == 60
        assert min(counts) > 6  # more than one line holds
