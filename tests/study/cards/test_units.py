"""Units of the course: moved, changed, removed, overdue; their cards in one line."""

from contextlib import suppress
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.errors import CanMend
from binder.study.cards import unit_cards
from binder.study.course import course


@pytest.fixture
def plan(course_shelf):
    return course_shelf.binder("Foundations")


def names(binder):
    return [unit.name for unit in course.units(binder)]


def uid_of(binder, name):
    return next(unit.uid for unit in course.units(binder) if unit.name == name)


def test_a_unit_moves_among_the_others_and_back_with_undo(plan):
    before = names(plan)
    course.move_unit(plan, uid_of(plan, "Wands"), 0)
    assert names(plan) == ["Wands", *[name for name in before if name != "Wands"]]
    course.move_unit(plan, uid_of(plan, "Wands"), 99)
    assert names(plan)[-1] == "Wands"
    plan.gate.undo()
    plan.gate.undo()
    assert names(plan) == before


def test_moving_a_unit_that_is_gone_says_so(plan):
    with pytest.raises(CanMend, match="no longer in the plan"):
        course.move_unit(plan, "no-such-uid", 1)


def test_a_removed_unit_comes_back_with_undo_and_a_new_one_stands_last(plan):
    course.remove_unit(plan, uid_of(plan, "Cups"))
    assert "Cups" not in names(plan)
    course.add_unit(plan, "Courts", ["wands-11"])
    assert names(plan)[-1] == "Courts"
    plan.gate.undo()
    plan.gate.undo()
    assert names(plan)[4] == "Cups"


def test_change_keeps_cards_and_aims_unless_they_are_given(plan):
    uid = uid_of(plan, "Wands")
    course.change_unit(plan, uid, name=" Rods ", starts="2026-05-01", ends="", aims="By heart.")
    unit = course.units(plan)[3]
    assert (unit.name, unit.starts, unit.ends, unit.aims) == ("Rods", "2026-05-01", "", "By heart.")
    assert len(unit.cards) == 14
    course.change_unit(plan, uid, name="Rods", starts="", ends="", cards=["wands-01"])
    assert course.units(plan)[3].cards == ("wands-01",)
    with pytest.raises(CanMend, match="needs a name"):
        course.change_unit(plan, uid, name=" ", starts="", ends="")


def test_overdue_only_with_cards_left_after_its_last_day(plan):
    unit = course.units(plan)[0]
    assert unit.ends == "2026-03-29"
    none, every = [False] * 8, [True] * 8
    assert not course.overdue(unit, none, date(2026, 3, 29))
    assert course.overdue(unit, none, date(2026, 3, 30))
    assert not course.overdue(unit, every, date(2026, 3, 30))


@pytest.mark.parametrize(
    ("starts", "ends", "left", "said"),
    [
        ("2026-11-28", "2026-12-20", 2, "begins in 3 days"),
        ("2026-11-26", "", 2, "begins in 1 day"),
        ("2026-10-05", "2026-12-20", 2, "25 days left"),
        ("2026-10-05", "2026-11-25", 2, "ends today"),
        ("2026-10-05", "2026-11-24", 1, "ended 1 day ago with 1 card left"),
        ("2026-10-05", "2026-11-20", 2, "ended 5 days ago with 2 cards left"),
        ("2026-10-05", "2026-11-20", 0, "all studied"),
        ("2026-10-05", "", 2, ""),
        ("", "never", 2, ""),
    ],
)
def test_where_a_unit_stands(starts, ends, left, said):
    unit = course.UnitView("u", "Wands", ("a", "b"), starts, ends, "")
    marks = [True] * (2 - left) + [False] * left
    assert course.state_words(unit, marks, date(2026, 11, 25)) == said


def test_a_past_unit_without_cards_is_only_past():
    unit = course.UnitView("u", "Rest", (), "", "2026-11-20", "")
    assert course.state_words(unit, [], date(2026, 11, 25)) == "ended 5 days ago"
    assert not course.overdue(unit, [], date(2026, 11, 25))


@pytest.mark.parametrize(
    ("line", "keys"),
    [
        ("", []),
        ("star, 3w", ["major-17", "wands-03"]),
        ("3w; 3w,\nhermit", ["wands-03", "major-09"]),
        ("3w hermit", ["wands-03", "major-09"]),
        ("Wands", [f"wands-{n:02}" for n in range(1, 15)]),
        ("first septenary", [f"major-{n:02}" for n in range(8)]),
    ],
)
def test_cards_from_a_line(line, keys):
    assert unit_cards.from_line(line) == keys


@pytest.mark.parametrize("line", ["3w, kettle", "kettle", "3w hermit kettle"])
def test_a_word_that_names_no_card_is_said(line):
    with pytest.raises(CanMend, match="names no card"):
        unit_cards.from_line(line)


def test_whole_groups_are_written_by_name():
    keys = [*unit_cards.GROUPS["Third septenary"], "wands-03", *unit_cards.GROUPS["Cups"]]
    assert unit_cards.to_line(keys) == "third septenary, 3w, cups"


@given(st.lists(st.sampled_from([card.key for card in CARDS]), unique=True, max_size=30))
def test_a_line_reads_back_to_its_cards(keys):
    assert unit_cards.from_line(unit_cards.to_line(keys)) == keys


@given(st.text(max_size=60))
def test_any_text_gives_cards_or_a_sentence(line):
    with suppress(CanMend):
        assert set(unit_cards.from_line(line)) <= {card.key for card in CARDS}
