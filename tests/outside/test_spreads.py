"""The spreads against what is published of them, or marked as common practice."""

import calendar
import math

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

    def test_what_the_last_four_are_for(self):
        """Seventh the querent's own self, eighth his house, ninth hopes or fears, tenth the end."""
        labels = [self.cross.place(n).label for n in (7, 8, 9, 10)]
        assert labels == ["Self", "House", "Hopes and fears", "Outcome"]

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
