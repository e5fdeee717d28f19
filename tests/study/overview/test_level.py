"""A level at its end: what stands, what is thin; finished, undone, and on to the next."""

from datetime import date

import pytest

from binder.cards.spreads import spread
from binder.errors import CanMend
from binder.study.cards import appearances, words
from binder.study.course import course
from binder.study.leaves import leaves, tabs
from binder.study.overview import level
from binder.study.overview.progress import STEPS
from binder.study.readings import lookbacks, readings
from binder.study.readings.laying import laid_from

TODAY = date(2026, 11, 25)


@pytest.fixture
def foundations(course_shelf):
    return course_shelf.binder("Foundations")


def log(shelf, binder, line="star", at="2026-03-02"):
    laid = laid_from(line, spread("one-card"), readings.STANDARD)
    made = readings.NewReading(at, "What now?", spread("one-card"), laid)
    return readings.log(binder, tabs.first_of_kind(binder, "readings"), made)


def said(lines):
    return [line.words for line in lines]


def test_a_level_not_begun(course_shelf, foundations):
    found = level.level(course_shelf, foundations)
    assert said(found.stands)[:2] == ["0 of 7 units studied", "0 of 78 cards whose facts were read"]
    assert said(found.thin)[0] == "7 units not done"
    assert "78 cards never recalled" in said(found.thin)
    counted = [line for line in said(found.stands) if line.startswith("0 of 78 cards")]
    assert len(counted) == len(STEPS)


def test_what_is_done_is_counted_once_it_stands(course_shelf, foundations):
    septenary = course.units(foundations)[2]
    for key in septenary.cards:
        words.write_words(*course_shelf.card_leaf(key), "upright", f"Of {key}.")
    kept, open_one = (log(course_shelf, foundations, at=f"2026-03-0{n}") for n in (2, 3))
    lookbacks.look_back(foundations, kept, "So it was.")
    found = level.level(course_shelf, foundations)
    for line in ("1 of 7 units studied", "7 of 78 cards with own words",
                 "1 of 78 cards met in a reading", "1 of 2 readings looked back on"):  # fmt: skip
        assert line in said(found.stands)
    thin = {line.words: line.leaves for line in found.thin}
    assert [uid for uid, _ in thin["1 reading without a look back"]] == [open_one]
    assert len(thin["71 cards without own words"]) == 71


def test_a_look_back_let_go_is_not_thin(course_shelf, foundations):
    lookbacks.let_go(foundations, log(course_shelf, foundations))
    assert "look back" not in " ".join(said(level.level(course_shelf, foundations).thin))


def test_a_binder_without_units_and_cards_says_only_what_it_has(course_shelf):
    found = level.level(course_shelf, course_shelf.binder("Practice"))
    assert (found.stands, found.thin) == ((), ())
    assert "Nothing that can be counted." in level.report(found)


def test_aims_are_counted(course_shelf):
    practice = course_shelf.binder("Practice")
    course.add_unit(practice, "Pairs", [], aims="[x] one\ntwo")
    assert "1 of 2 aims reached" in said(level.level(course_shelf, practice).stands)


def test_the_report_links_and_counts_the_rest(course_shelf, foundations):
    told = level.report(level.level(course_shelf, foundations))
    fool = course_shelf.card_leaf("major-00")[1]
    assert f"- 78 cards without own words: [The Fool](leaf:{fool}), " in told
    assert f", and {78 - level.NAMED} more" in told


def test_a_title_with_marks_is_no_link(course_shelf, foundations):
    leaves.rename(*course_shelf.card_leaf("major-00"), "Fool [x](y) *")
    assert r"[Fool \[x\](y) \*](leaf:" in level.report(level.level(course_shelf, foundations))


def test_finishing_is_one_step_with_the_list_filed(course_shelf, foundations):
    found = level.level(course_shelf, foundations)
    level.finish(foundations, TODAY, found)
    assert course.finished(foundations) == "2026-11-25"
    plan = leaves.contents(foundations, tabs.first_of_kind(foundations, "plan"))
    assert [entry.title for entry in plan] == ["The seven units", "Foundations on 25 November 2026"]
    with pytest.raises(CanMend, match="finished already"):
        level.finish(foundations, TODAY)
    foundations.gate.undo()
    assert course.finished(foundations) == ""
    assert len(leaves.contents(foundations, tabs.first_of_kind(foundations, "plan"))) == 1


def test_with_no_tab_left_there_is_nothing_to_file_the_list_behind(course_shelf, foundations):
    found = level.level(course_shelf, foundations)
    for each in tabs.tabs(foundations):
        tabs.set_tab_aside(foundations, each.uid)
    with pytest.raises(CanMend, match="has no tab to file the list behind; add one first"):
        level.file_report(foundations, found, TODAY)


def test_a_level_without_a_plan_gets_one_when_it_is_gone_on_to(course_shelf, foundations):
    mastery = course_shelf.binder("Mastery")
    leaves.set_aside(mastery, course.plan_leaf(mastery))
    assert course.plan_leaf(mastery) is None
    level.finish(foundations, TODAY, None, mastery)
    assert course.plan_leaf(mastery) is not None
    course_shelf.undo()
    assert course.finished(foundations) == ""
    assert course.plan_leaf(mastery) is None


def test_the_next_level_is_the_next_with_a_plan(course_shelf, foundations):
    practice, mastery = course_shelf.binder("Practice"), course_shelf.binder("Mastery")
    assert level.after(course_shelf, foundations) is practice
    level.finish(practice, TODAY)
    assert level.after(course_shelf, foundations) is mastery
    assert level.after(course_shelf, mastery) is None


def test_a_finished_level_has_no_unit_now_until_it_is_taken_up_again(course_shelf, foundations):
    assert course.unit_now(course_shelf, TODAY)[1].name == "First septenary"
    level.finish(foundations, TODAY)
    assert course.unit_now(course_shelf, TODAY) is None
    level.take_up_again(foundations)
    assert course.unit_now(course_shelf, TODAY)[0] is foundations


def test_card_leaves_stay_and_are_found_for_readings_of_every_level(course_shelf, foundations):
    home = course_shelf.card_leaf("major-17")
    level.finish(foundations, TODAY, level.level(course_shelf, foundations))
    assert course_shelf.card_leaf("major-17") == home
    uid = log(course_shelf, course_shelf.binder("Mastery"))
    seen = appearances.of_card(course_shelf, "major-17")
    assert [one.leaf_uid for one in seen] == [uid]
