"""Quotes on paper. What is expected is common practice of English typography, from memory."""

from html import escape

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.data import Part, PlacedCard, PrintLeaf
from binder.paper.quotes import Typographic, curled
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from tests.paper.reading_back import bare, texts
from tests.paper.sample import section


@pytest.mark.parametrize(
    ("typed", "set_so"),
    [
        ("I don't", "I don’t"),
        ("the potters' guild", "the potters’ guild"),
        ('She said "go" and went', "She said “go” and went"),
        ("'Go,' she said", "‘Go,’ she said"),
        ("\"'Go,' she said\"", "“‘Go,’ she said”"),
        ("'Tis the '90s, rock 'n' roll", "’Tis the ’90s, rock ’n’ roll"),
        ('("so")', "(“so”)"),
        ('one—"two"', "one—“two”"),
        ("Queen's leaf, 'Third'", "Queen’s leaf, ‘Third’"),
        ("“Already” it’s so", "“Already” it’s so"),
    ],
)
def test_quotes_are_curled(typed, set_so):
    assert curled(typed) == set_so


@given(st.text())
def test_nothing_but_quotes_is_changed(words):
    made = curled(words)
    assert len(made) == len(words)
    assert all(
        one == two or (one in "\"'" and two in "‘’“”") for one, two in zip(words, made, strict=True)
    )
    assert not set(made) & set("\"'")


def test_a_quote_that_closes_behind_other_letters_closes():
    told = Typographic().data(
        blocks(to_html("\"*So*\" it `isn't` **Wren**'s, *\"no\"*[^1].\n\n[^1]: 'A'"))
    )
    said = repr(told)
    assert all(part in said for part in ("“", "’s, ", "isn't", "’"))
    runs = [one["s"] for one in told[0]["c"] if one["t"] in ("text", "code")]
    assert runs[:2] == ["“", "” it "]
    assert runs[2:4] == ["isn't", " "]


def test_all_that_is_printed_has_them():
    body = blocks(to_html('It\'s "so".\n\n| It\'s |\n|---|\n| "a" |'))
    leaf = PrintLeaf(
        "a'", "reading", "Isn't it?", under="Bea's", parts=(Part("What's seen", body),),
        placed=(PlacedCard(1, "Who's here", "The Ferryman's", note="don't"),),
    )  # fmt: skip
    words = "".join(texts(typeset(section(leaf), Sheet("a4"))))
    assert not set(words) & set("\"'")
    for said in ("It’s “so”.", "Isn’t it?", "Bea’s", "What’s seen", "Who’s here", "don’t", "“a”"):
        assert bare(said) in words


def test_a_title_on_a_drawn_card_has_them():
    drawn = "".join(
        f"<text x='1'>{escape(title)}</text>" for title in ("Bea's & co", 'The "Star"', "Plain")
    )
    made = Typographic().data({"svg": f"<svg>{drawn}</svg>"})["svg"]
    assert made.count("x='1'") == 3
    for title in ("Bea’s &amp; co", "The “Star”", "Plain"):
        assert f"<text x='1'>{title}</text>" in made
