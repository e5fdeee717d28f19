"""Words found whatever their case, accents, ligatures and line ends."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page import spotting


@pytest.mark.parametrize(
    ("text", "words", "found"),
    [
        ("The Hermit, the hermit.", ["hermit"], ["Hermit", "hermit"]),
        ("Éclair and eclair", ["ECLAIR"], ["Éclair", "eclair"]),
        ("an oﬃce by the sea", ["office"], ["oﬃce"]),
        ("at low\r\n  water", ["low water"], ["low\r\n  water"]),
        ("rehabili\x02tation", ["rehabilitation"], ["rehabili\x02tation"]),
        ("Straße", ["strasse"], ["Straße"]),
        ("moon, moonlight", ["moonlight", "moon"], ["moon", "moonlight"]),
        ("nothing", ["zebra"], []),
        ("nothing", [""], []),
        ("", ["x"], []),
    ],
)
def test_words_are_found(text, words, found):
    spans = spotting.spans(text, words)
    assert [text[a:b] for a, b in spans] == found
    assert spotting.count(text.replace("\x02", ""), words) == len(found)


def test_whole_words_only():
    text = "moon, moonlight, half-moon"
    assert [text[a:b] for a, b in spotting.spans(text, ["moon"], whole=True)] == ["moon", "moon"]
    assert spotting.count(text, ["moon"], whole=True) == 2


@given(st.text(max_size=60), st.text(min_size=1, max_size=4))
def test_spans_lie_within_the_text_in_order(text, word):
    spans = spotting.spans(text, [word])
    assert all(0 <= a < b <= len(text) for a, b in spans)
    assert all(one[0] < two[0] for one, two in itertools.pairwise(spans))


@given(st.text(alphabet="abcdeé \n", max_size=40), st.text(alphabet="abé", min_size=1, max_size=3))
def test_counting_and_marking_agree(text, word):
    assert len(spotting.spans(text, [word])) == spotting.count(text, [word])
