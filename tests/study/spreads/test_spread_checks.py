"""Places of a spread that hide each other."""

import pytest

from binder.cards.spreads import Place
from binder.study.spreads.spread_checks import upon


def place(n, x=0.0, y=0.0, rotation=0.0):
    return Place(n, f"Place {n}", "What?", x, y, rotation)


@pytest.mark.parametrize(
    ("turn", "hides"), [(0, True), (44, True), (45, False), (90, False), (135, False), (136, True)]
)
def test_a_card_across_another_is_no_fault(turn, hides):
    """Across is from half of a right angle on, either way round."""
    one, two = place(1), place(2, rotation=turn)
    assert upon([one, two]) == ((one, two) if hides else None)


def test_across_beside_the_middle_hides_and_a_third_on_one_spot_does():
    one, beside = place(1), place(2, x=0.1, rotation=90)
    assert upon([one, beside]) == (one, beside)
    assert upon([one, place(2, x=1.0)]) is None
    pile = [place(1), place(2, rotation=60), place(3, rotation=120)]
    assert upon(pile) == (pile[0], pile[2])
