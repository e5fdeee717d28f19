"""The year sheet."""

from datetime import date

import pytest

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.study.leaves import leaves, tabs
from binder.study.overview import months
from binder.study.overview.months import MonthCard, State
from binder.study.readings import lookbacks, readings
from binder.study.readings.discretion import Discretion, LeaveOut
from binder.study.readings.readings import Laid, NewReading

TODAY = date(2026, 11, 25)


@pytest.fixture
def draw(course_shelf):
    """A verb that logs the card for a month."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def drawn(month, text="", at="2026-10-31T20:00", laid=None, name="one-card"):
        cards = laid or [Laid(1, "pentacles-11", reversed=True)]
        made = NewReading(
            at, "For the month", spread(name), cards, text=text, month=month, purpose="month",
        )  # fmt: skip
        return binder, readings.log(binder, tab, made)

    return drawn


def line(shelf, month, today=TODAY):
    return months.year_sheet(shelf, int(month[:4]), today)[int(month[5:]) - 1]


def test_an_empty_year(course_shelf):
    sheet = months.year_sheet(course_shelf, 2026, TODAY)
    assert [each.name for each in sheet][::11] == ["January", "December"]
    assert [each.state for each in sheet] == [State.MISSED] * 11 + [State.OFFERED]
    ahead = months.year_sheet(course_shelf, 2027, TODAY)
    assert {each.state for each in ahead} == {State.AHEAD}
    assert months.years(course_shelf) == []


def test_a_card_that_only_its_deck_has_shows_its_title():
    titles = DeckTitles.from_dict({"extras": {"extra-01": "The Tide"}})
    assert MonthCard("extra-01", "The Tide", False).face == titles.card("extra-01")
    assert MonthCard("major-17", "The Pole Star", False).face.title == "The Star"


def test_what_is_kept_back_is_not_in_the_sheet(course_shelf, draw):
    draw("2026-04", "Private: secret.\n\nAnn came.")
    discretion = Discretion(course_shelf, LeaveOut(private=True))
    sheet = months.year_sheet(course_shelf, 2026, TODAY, discretion)
    assert (sheet[3].line, sheet[3].title) == ("Ann came.", "For the month")
    assert line(course_shelf, "2026-04").line == "Private: secret."


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (1, "Ace of Wands"),
        (3, "Ace of Wands; Two of Wands, reversed; Three of Wands"),
        (4, "Ace of Wands, Two of Wands, reversed and 2 more"),
        (6, "Ace of Wands, Two of Wands, reversed and 4 more"),
    ],
)
def test_of_several_cards_the_first_are_named(course_shelf, draw, count, said):
    spread_of = {1: "one-card", 3: "three-card", 4: "", 6: ""}[count]
    cards = [Laid(n, f"wands-{n:02}", reversed=n == 2) for n in range(1, count + 1)]
    if spread_of:
        draw("2026-11", laid=cards, name=spread_of)
        assert line(course_shelf, "2026-11").titled == said
    titles = [MonthCard(one.card, STANDARD.title(one.card), one.reversed) for one in cards]
    assert months.MonthLine("2026-11", "November", State.DRAWN, cards=tuple(titles)).titled == said


def test_a_month_shows_card_line_and_verdict(course_shelf, draw):
    binder, uid = draw(
        "2026-11", "Page of *Pentacles*, and he’s dropped it.\n\nFour times this year."
    )
    found = line(course_shelf, "2026-11")
    assert (found.state, found.binder_uid, found.leaf_uid) == (State.DRAWN, binder.uid, uid)
    assert found.cards == (MonthCard("pentacles-11", "Page of Pentacles", True),)
    assert found.line == "Page of Pentacles, and he’s dropped it."
    assert (found.verdict, found.looked_back) == ("", False)
    rain = lookbacks.expect(binder, uid, "It rains.", 55, "2026-11-30")
    assert line(course_shelf, "2026-11").verdict == "waiting"
    lookbacks.judge(binder, rain, "came about")
    lookbacks.look_back(binder, uid, "It did.")
    found = line(course_shelf, "2026-11")
    assert (found.verdict, found.looked_back) == ("came about", True)
    sun = lookbacks.expect(binder, uid, "The sun shines.", 55, "2026-11-30")
    assert line(course_shelf, "2026-11").ended == "one of two, one waiting"
    lookbacks.judge(binder, sun, "did not")
    assert line(course_shelf, "2026-11").ended == "one of two"


def test_a_spread_for_the_month_shows_its_cards_in_order(course_shelf, draw):
    laid = [Laid(3, "major-09"), Laid(1, "cups-13"), Laid(2, "wands-03")]
    draw("2026-11", laid=laid, name="three-card")
    cards = line(course_shelf, "2026-11").cards
    assert [card.card for card in cards] == ["cups-13", "wands-03", "major-09"]


def test_the_first_of_several_draws_is_shown(course_shelf, draw):
    draw("2026-11", "Second.", at="2026-11-02T08:00")
    draw("2026-11", "First.", at="2026-10-31T08:00")
    found = line(course_shelf, "2026-11")
    assert (found.line, found.others) == ("First.", 1)


def test_weeks_days_and_the_drawer_are_left_out(course_shelf, draw):
    draw("2026-11-05")
    draw("2026-W47")
    binder, uid = draw("2026-11")
    leaves.set_aside(binder, uid)
    assert line(course_shelf, "2026-11").state is State.MISSED
    assert months.years(course_shelf) == [2026]


def test_a_long_impression_is_cut_after_a_word():
    said = months.first_line("Clay and water " * 20)
    assert len(said) <= months.LINE
    assert said.endswith(("Clay…", "and…", "water…"))
    assert months.first_line("\n\n") == ""
