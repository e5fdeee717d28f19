"""A line of shorthand as cards in the places of a spread, for the command line and text sources."""

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.errors import CanMend
from binder.study.readings.laying import laid_from

THREE = spread("three-card")


def test_cards_lie_in_their_places_and_those_beside_after_theirs():
    laid = laid_from("3w + qc r, hermit, star, 1: + 2s", THREE, STANDARD)
    assert sorted((one.n, one.card, one.reversed) for one in laid) == [
        (1, "cups-13", True),
        (1, "swords-02", False),
        (1, "wands-03", False),
        (2, "major-09", False),
        (3, "major-17", False),
    ]
    firsts = {one.n: one.card for one in reversed(laid)}
    assert firsts == {1: "wands-03", 2: "major-09", 3: "major-17"}


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("3w, hermit", "takes three cards; this line has two"),
        ("3w + qc, hermit", "takes three cards; this line has two"),
        ("3w, hermit, star, moon", "this line has four"),
        ("3w, hermit, hermitz", "“hermitz” is not understood. Did you mean hermit"),
        ("3w, hermit, zzqq", "Write a card as 3w, qc, star or 17."),
        ("3w, hermit, queen", "Did you mean qw or qc or qs"),
        ("3w, hermit, star +", "“\\+” has no card after it"),
        ("3w, hermit, 9: star", "there is no place 9"),
    ],
)
def test_what_cannot_be_laid_is_one_sentence(line, sentence):
    with pytest.raises(CanMend, match=sentence):
        laid_from(line, THREE, STANDARD)
