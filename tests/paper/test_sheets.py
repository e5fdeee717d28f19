import pytest

from binder.errors import CanMend
from binder.paper.holes import PATTERNS, pattern
from binder.paper.sheets import PAPERS, Sheet


def test_every_table_row_names_its_source():
    assert all(row.source for row in (*PAPERS.values(), *PATTERNS.values()))


def test_the_gutter_lies_left_on_fronts_and_right_on_backs():
    sheet = Sheet("a4", "2", two_sided=True)
    assert [sheet.gutter_at(page) for page in (1, 2, 3)] == [25, 185, 25]
    assert [sheet.centres(page)[0][0] for page in (1, 2)] == [12, 198]


def test_one_sided_pages_are_all_fronts():
    sheet = Sheet("a4", "2")
    assert not sheet.is_back(2)
    assert sheet.gutter_at(2) == 25
    assert sheet.sheets(7) == 7


def test_two_sided_pages_share_sheets():
    assert Sheet(two_sided=True).sheets(7) == 4


@pytest.mark.parametrize(
    ("made", "sentence"),
    [
        (lambda: Sheet("a3"), "Paper can be a4, letter or a5"),
        (lambda: Sheet(holes="5"), "Holes can be none, 2, 3 or 4"),
        (lambda: Sheet("a4", "2", gutter_mm=10), "gutter must be at least 15 mm"),
        (lambda: Sheet("a5", gutter_mm=60, outside_mm=60), "leave 28 mm of A5"),
        (lambda: Sheet("a4", outside_mm=-1), "cannot be less than nothing"),
    ],
)
def test_an_impossible_sheet_says_what_to_do(made, sentence):
    with pytest.raises(CanMend, match=sentence):
        made()


def test_patterns_are_found_whatever_the_case():
    assert pattern(" NONE ").heights(297) == ()
