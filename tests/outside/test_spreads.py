"""The spreads against what is published of them, or marked as common practice."""

import calendar
import math
import re

import pytest

from binder.cards.spreads import spread


def spots(key):
    return {place.n: (place.x, place.y) for place in spread(key).places}


class TestTenCards:
    """A. E. Waite, The Pictorial Key to the Tarot (1911), part III, section 7.

    The first card covers, the second crosses, the third crowns (above), the fourth is beneath,
    the fifth is behind, the sixth before; the last four stand one above the other at the right,
    the seventh lowest. Behind is the side the significator looks away from; in the diagram it
    faces left.
    """

    cross = spread("celtic-cross")

    def test_ten_places(self):
        assert len(self.cross.places) == 10

    def test_first_covers_and_second_crosses(self):
        one, two = self.cross.place(1), self.cross.place(2)
        assert (one.x, one.y) == (two.x, two.y)
        assert (one.rotation, two.rotation) == (0, 90)

    def test_third_crowns_and_fourth_is_beneath(self):
        assert spots("celtic-cross")[3] == (0, 1)
        assert spots("celtic-cross")[4] == (0, -1)

    def test_fifth_behind_and_sixth_before_a_figure_that_faces_left(self):
        assert spots("celtic-cross")[5] == (1, 0)
        assert spots("celtic-cross")[6] == (-1, 0)

    def test_seventh_to_tenth_rise_in_one_column_at_the_right(self):
        column = [spots("celtic-cross")[n] for n in (7, 8, 9, 10)]
        assert len({x for x, _ in column}) == 1
        assert [y for _, y in column] == sorted(y for _, y in column)
        assert column[0][0] > max(spots("celtic-cross")[n][0] for n in range(1, 7))

    @pytest.mark.parametrize(
        ("n", "label", "asks"),
        [
            (1, "matter", r"surround"),  # the air in which all the rest moves
            (2, "cross", r"in the way"),  # what kind of thing opposes
            (3, "above", r"\baim.* or .*\bbest\b"),  # an aim, or what can at best be reached
            (4, "ground", r"already"),  # what has become fact and is stood upon
            (5, "behind", r"passing"),  # an influence gone by or going
            (6, "ahead", r"coming"),  # one that will act in the near future
            (7, "self", r"the querent"),  # how the querent stands to it
            (8, "house", r"home and friends"),  # what acts on it from around
            (9, "hopes and fears", r"wished .*or.* dreaded"),
            (10, "outcome", r"lead"),  # the end that the others come to
        ],
    )
    def test_what_each_place_is_called_and_asks(self, n, label, asks):
        """The matter of each of the ten in that section, in other words."""
        place = self.cross.place(n)
        assert label in place.label.lower()
        assert re.search(asks, place.asks)

    def test_no_two_places_ask_the_same(self):
        assert len({place.asks for place in self.cross.places}) == 10

    def test_names_its_source(self):
        assert "Waite 1911" in self.cross.source


class TestCommonPractice:
    """Common practice, written from memory; authors differ in labels and order."""

    def test_three_cards_lie_in_a_row(self):
        assert spots("three-card") == {1: (-1, 0), 2: (0, 0), 3: (1, 0)}

    def test_short_cross_is_the_heart_of_the_ten_card_one(self):
        assert spots("five-card-cross") == {1: (0, 0), 2: (0, 0), 3: (0, -1), 4: (-1, 0), 5: (1, 0)}
        assert spread("five-card-cross").place(2).rotation == 90

    def test_horseshoe_is_seven_cards_open_below(self):
        laid = spots("horseshoe")
        assert len(laid) == 7
        assert [laid[n][0] for n in range(1, 8)] == [-3, -2, -1, 0, 1, 2, 3]
        assert all(laid[n][1] == laid[8 - n][1] for n in range(1, 8))
        assert max(laid, key=lambda n: laid[n][1]) == 4

    def test_twelve_months_run_clockwise_from_one_oclock(self):
        for n, (x, y) in spots("twelve-month-wheel").items():
            clock = math.degrees(math.atan2(x, y)) % 360 / 30
            assert round(clock, 2) % 12 == n % 12
            assert math.isclose(math.hypot(x, y), 3, abs_tol=1e-3)

    def test_months_are_in_order(self):
        labels = [place.label for place in spread("twelve-month-wheel").places]
        assert labels == list(calendar.month_name)[1:]

    def test_each_of_these_says_so(self):
        for key in ("one-card", "three-card", "five-card-cross", "horseshoe", "twelve-month-wheel"):
            assert spread(key).source.startswith("common practice")
