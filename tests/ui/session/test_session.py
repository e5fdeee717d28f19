"""The session: what lies open, what faces it, and what happens when leaves move or go."""

from datetime import date

import pytest

from binder.errors import CanMend
from binder.store.clock import Clock, OtherDay
from binder.store.shelf import Shelf
from binder.study.cards import links
from binder.study.leaves import leaves, tabs
from binder.study.overview import moving
from binder.study.readings import readings
from tests.ui import leaf_fixtures as made
from ui.session.session import Session
from ui.session.trail import NOWHERE, Show


@pytest.fixture
def desk(course_shelf):
    """A session on a new course, begun at its first binder, with what it says and signals."""
    session = Session(course_shelf, OtherDay(made.TODAY))
    session.heard, session.turns = [], []
    session.said.connect(session.heard.append)
    session.turned.connect(lambda: session.turns.append(session.left))
    session.open_binder(course_shelf.binders[0].uid)
    yield session
    session.close()


def tab(session, name, binder=None):
    home = session.shelf.binder(binder) if binder else session.binder
    return tabs.tab(home, name)


def go(session, name, binder=None):
    home = session.shelf.binder(binder) if binder else session.binder
    session.open_tab(home, tabs.tab(home, name))


def title(session, spot):
    view = session.leaf_of(spot)
    return view.title if view else ""


class TestOpening:
    def test_a_binder_opens_at_the_contents_of_its_first_tab(self, desk):
        assert desk.left.show is Show.CONTENTS
        assert desk.tab.name == "Course plan"

    def test_its_first_leaf_faces_the_contents(self, desk):
        go(desk, "Major Arcana")
        assert title(desk, desk.facing) == "The Fool"

    def test_nothing_faces_the_contents_of_an_empty_tab(self, desk):
        go(desk, "Clippings")
        assert desk.facing == NOWHERE

    def test_a_leaf_opens_wherever_on_the_shelf_it_is(self, desk):
        _, uid = made.plain(desk.shelf, "Glazes.")
        desk.open_leaf(uid)
        assert desk.binder.name == "Practice"
        assert desk.tab.name == "Clippings"

    def test_a_leaf_that_is_gone_is_said(self, desk):
        desk.open_leaf("no such leaf")
        desk.face_leaf("no such leaf")
        assert desk.heard == ["That leaf is no longer on this shelf; it may be in a drawer."] * 2

    def test_a_binder_without_tabs_opens_too(self, desk):
        bare = desk.shelf.add("Bare", "spineF")
        desk.open_binder(bare.uid)
        assert desk.binder is bare
        assert desk.tab is None

    def test_an_empty_shelf_has_nothing_open(self, tmp_path):
        session = Session(Shelf(tmp_path), Clock())
        session.mend()
        assert (session.left, session.binder, session.tab) == (NOWHERE, None, None)
        session.close()


class TestFacing:
    def test_the_first_card_of_a_reading_faces_it(self, desk):
        _, uid = made.log(desk.shelf)
        desk.open_leaf(uid)
        assert title(desk, desk.facing) == "Three of Pentacles"

    def test_the_last_reading_with_a_card_faces_the_card(self, desk):
        made.log(desk.shelf, at="2026-01-02T10:00", question="Old?")
        made.log(desk.shelf, at="2026-11-02T10:00", question="New?")
        star = desk.shelf.card_leaf("major-17")[1]
        desk.open_leaf(star)
        assert title(desk, desk.facing) == "New?"

    def test_a_card_that_never_turned_up_has_its_contents_facing(self, desk):
        desk.open_leaf(desk.shelf.card_leaf("cups-05")[1])
        assert desk.facing.show is Show.CONTENTS
        assert desk.facing.tab == desk.left.tab

    def test_the_first_card_named_in_a_leaf_faces_it(self, desk):
        _, uid = made.plain(desk.shelf, "We spoke of the Hermit, then of the Star.")
        desk.open_leaf(uid)
        assert title(desk, desk.facing) == "The Hermit"

    def test_a_card_without_a_leaf_is_said(self, desk):
        binder, uid = desk.shelf.card_leaf("major-17")
        leaves.set_aside(binder, uid)
        desk.face_card("major-17")
        assert desk.heard == ["There is no leaf for that card on this shelf yet."]

    def test_the_facing_leaf_can_come_to_the_left(self, desk):
        _, uid = made.log(desk.shelf)
        desk.open_leaf(uid)
        desk.face_card("major-17")
        desk.swap()
        assert title(desk, desk.left) == "The Star"


class TestTurning:
    def test_from_the_contents_to_the_last_leaf_and_no_further(self, desk):
        go(desk, "Major Arcana")
        desk.turn(-1)
        assert desk.left.show is Show.CONTENTS
        for _ in range(22):
            desk.turn(1)
        assert title(desk, desk.left) == "The World"
        turned = len(desk.turns)
        desk.turn(1)
        assert len(desk.turns) == turned

    def test_back_from_the_first_leaf_lies_the_contents(self, desk):
        go(desk, "Major Arcana")
        desk.turn(1)
        desk.turn(-1)
        assert desk.left.show is Show.CONTENTS

    def test_a_log_is_turned_from_the_newest_day(self, desk):
        made.log(desk.shelf, at="2026-01-02T10:00", question="Old?")
        made.log(desk.shelf, at="2026-11-02T10:00", question="New?")
        go(desk, "Readings log", "Practice")
        desk.turn(1)
        assert title(desk, desk.left) == "New?"
        desk.turn(1)
        assert title(desk, desk.left) == "Old?"

    def test_back_and_forward_lay_both_leaves_again(self, desk):
        _, uid = made.log(desk.shelf)
        desk.open_leaf(uid)
        desk.face_card("major-17")
        go(desk, "Major Arcana", "Foundations")
        desk.back()
        assert (title(desk, desk.left)[:6], title(desk, desk.facing)) == ("Should", "The Star")
        desk.forward()
        assert desk.left.show is Show.CONTENTS

    def test_back_passes_over_leaves_that_are_gone(self, desk):
        binder, uid = made.plain(desk.shelf, "Words.")
        go(desk, "Minor Arcana")
        desk.open_leaf(uid)
        go(desk, "Major Arcana", "Foundations")
        leaves.set_aside(binder, uid)
        desk.back()
        assert desk.tab.name == "Minor Arcana"

    def test_leaving_is_said_before_a_turn(self, desk):
        go(desk, "Major Arcana")
        seen = []
        desk.leaving.connect(lambda: seen.append(desk.left))
        before = desk.left
        desk.turn(1)
        assert seen == [before]


class TestMending:
    def test_the_next_leaf_comes_up_where_one_is_taken_away(self, desk):
        go(desk, "Major Arcana")
        desk.turn(3)
        leaves.set_aside(desk.binder, desk.left.leaf)
        assert desk.mend()
        assert title(desk, desk.left) == "The Empress"

    def test_the_one_before_comes_up_after_the_last(self, desk):
        go(desk, "Major Arcana")
        desk.turn(22)
        leaves.set_aside(desk.binder, desk.left.leaf)
        desk.mend()
        assert title(desk, desk.left) == "Judgement"

    def test_the_contents_come_up_after_the_only_leaf(self, desk):
        binder, uid = made.plain(desk.shelf, "Words.")
        desk.open_leaf(uid)
        leaves.set_aside(binder, uid)
        desk.mend()
        assert (desk.left.show, desk.tab.name) == (Show.CONTENTS, "Clippings")

    def test_a_leaf_is_followed_to_another_tab(self, desk):
        binder, uid = made.plain(desk.shelf, "Words.")
        desk.open_leaf(uid)
        moving.move_to_tab(binder, uid, tabs.tab(binder, "Methods"))
        assert desk.mend()
        assert (desk.left.leaf, desk.tab.name) == (uid, "Methods")

    def test_a_leaf_is_followed_to_another_binder_and_back_by_undo(self, desk):
        binder, uid = made.plain(desk.shelf, "Words.")
        desk.open_leaf(uid)
        mastery = desk.shelf.binder("Mastery")
        moving.move_to_binder(binder, uid, mastery, tabs.tab(mastery, "Clippings"))
        desk.mend()
        assert desk.binder is mastery
        desk.undo()
        desk.mend()
        assert (desk.binder, desk.left.leaf) == (binder, uid)
        assert desk.heard == ["Undone in Practice: Move leaf to another binder."]

    def test_another_leaf_faces_when_the_facing_one_goes(self, desk):
        _, uid = made.log(desk.shelf)
        desk.open_leaf(uid)
        desk.face_card("major-17")
        binder, star = desk.shelf.card_leaf("major-17")
        leaves.set_aside(binder, star)
        assert desk.mend()
        assert desk.left.leaf == uid
        assert title(desk, desk.facing) == "Three of Pentacles"

    def test_another_tab_opens_when_the_open_one_goes(self, desk):
        go(desk, "Minor Arcana")
        tabs.set_tab_aside(desk.binder, desk.tab.uid)
        desk.mend()
        assert desk.tab.name == "Course plan"

    def test_another_binder_opens_when_the_open_one_goes(self, desk):
        desk.shelf.remove(desk.binder)
        desk.mend()
        assert desk.binder.name == "Practice"

    def test_nothing_to_mend_turns_nothing(self, desk):
        turned = len(desk.turns)
        assert not desk.mend()
        assert len(desk.turns) == turned


class TestChanges:
    def test_undo_and_redo_are_said(self, desk):
        uid = desk.shelf.card_leaf("major-17")[1]
        leaves.rename(desk.binder, uid, "The Stars")
        desk.undo()
        desk.redo()
        assert desk.heard == ["Undone: Rename leaf.", "Done again: Rename leaf."]

    def test_nothing_to_take_back_says_nothing(self, tmp_path):
        session = Session(Shelf(tmp_path), Clock())
        heard = []
        session.said.connect(heard.append)
        session.undo()
        session.redo()
        assert heard == []
        session.close()

    def test_what_another_window_wrote_is_noticed(self, desk, qtbot):
        other = Shelf(desk.shelf.path)
        binder, _ = made.practice(other)
        with qtbot.waitSignal(desk.changed, timeout=6000) as heard:
            leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "From elsewhere")
        assert heard.args == [None]
        other.close()

    def test_another_day_is_noticed(self, course_shelf):
        session = Session(course_shelf, OtherDay(date(2026, 11, 25)))
        heard = []
        session.changed.connect(heard.append)
        session.look_outside()
        session.clock.day = date(2026, 11, 26)
        session.look_outside()
        session.look_outside()
        assert heard == [None]
        session.close()

    def test_a_chosen_word_is_linked_from_then_on(self, desk):
        binder, uid = made.plain(desk.shelf, "The world is round.")
        assert desk.linker.find("The world is round.", uid) == []
        links.set_rule(binder, "world", links.ALWAYS)
        assert [said.key for said in desk.linker.find("The world is round.", uid)] == ["major-21"]

    def test_looking_outside_ends_with_the_session(self, desk, qtbot):
        desk.close()
        assert not desk.looking

    def test_a_failing_undo_is_for_the_window_to_say(self, desk):
        binder, uid = made.plain(desk.shelf, "Mine.")
        leaves.write(binder, uid, title="A leaf", text="Mine, longer.")
        other = Shelf(desk.shelf.path)
        leaves.write(other.binder("Practice"), uid, title="A leaf", text="Theirs.")
        with pytest.raises(CanMend):
            desk.undo()
        other.close()


def test_a_session_reads_nothing_twice_between_changes(desk):
    _, uid = made.log(desk.shelf)
    desk.open_leaf(uid)
    first = desk.leaf_of(desk.left)
    assert desk.leaf_of(desk.left) is first
    readings.log(*made.practice(desk.shelf), readings.NewReading(**_given()))
    assert desk.leaf_of(desk.left) is not first


def _given():
    from binder.cards.spreads import spread
    from binder.study.readings.laying import laid_from

    return {
        "at": "2026-11-24T08:00", "question": "And now?", "spread": spread("one-card"),
        "laid": laid_from("star", spread("one-card"), readings.STANDARD), "text": "",
    }  # fmt: skip
