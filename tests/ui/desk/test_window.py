"""The window over the sample shelf: opening, turning, going back, by mouse, key and wheel."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.ui.driving import (
    ALT,
    CTRL,
    SHIFT,
    K,
    click,
    click_row,
    divider,
    key,
    left,
    settle,
    spine,
    titles,
)
from ui.actions.installed import actions_of
from ui.leaves.contents.contents import ContentsPage
from ui.pictures import newest_reading
from ui.session.trail import Show


def wheel(window, turn):
    cover = window.cover
    at = QPointF(cover.width() / 2, 8)
    event = QWheelEvent(
        at, cover.mapToGlobal(at), QPoint(), QPoint(0, turn), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(cover, event)
    settle()


def facing(window):
    return window.session.leaf_of(window.session.facing)


def open_reading(window):
    window.session.open_leaf(newest_reading(window.session.shelf))
    settle()


def open_majors(window):
    click(spine(window, "Foundations"))
    click(divider(window, "Major Arcana"))


class TestOpening:
    def test_a_spine_opens_its_binder(self, window):
        click(spine(window, "Practice"))
        assert window.session.binder.name == "Practice"
        assert spine(window, "Practice").isChecked()
        assert window.windowTitle() == "Practice – sample copy – Ringbound"
        assert isinstance(window.cover.leaf("left"), ContentsPage)

    def test_a_divider_opens_its_tab(self, window):
        click(divider(window, "Minor Arcana"))
        assert window.session.tab.name == "Minor Arcana"
        assert divider(window, "Minor Arcana").isChecked()
        assert facing(window).title == "Ace of Wands"

    def test_a_row_of_the_contents_opens_its_leaf(self, window):
        open_majors(window)
        page = window.cover.leaf("left")
        row = page.model.row_of(4)
        click_row(page.list, row)
        assert left(window).title == "The Emperor"

    def test_enter_on_the_contents_opens_its_leaf_and_the_keyboard_goes_along(self, window):
        open_majors(window)
        window.focus_leaf()
        key(window, K.Key_Down)
        key(window, K.Key_Return)
        assert left(window).title == "The Magician"
        page = window.cover.leaf("left")
        assert page is window.focusWidget() or page.isAncestorOf(window.focusWidget())

    def test_a_slip_opens_what_is_due_and_its_look_back(self, window):
        slip = next(s for s in window.slips.slips() if s.note.title == "Look back")
        click(slip)
        assert left(window).title == slip.note.subject
        assert window.staged("look back")

    def test_a_slip_for_the_month_begins_its_draw(self, window):
        slip = next(s for s in window.slips.slips() if s.note.title.startswith("Card for"))
        click(slip)
        assert window.staged("entry")

    def test_what_a_slip_says_is_one_sentence(self, window):
        slip = next(s for s in window.slips.slips() if s.note.title.startswith("Unit"))
        assert slip.note.note == "9 of 14 studied, until 20 December"

    def test_a_slip_for_a_unit_opens_the_plan(self, window):
        slip = next(s for s in window.slips.slips() if s.note.title.startswith("Unit"))
        click(slip)
        assert left(window).kind == "plan"


class TestTurning:
    def test_by_the_corners(self, window):
        open_majors(window)
        click(window.cover.corner_on)
        assert left(window).title == "The Fool"
        click(window.cover.corner_on)
        assert left(window).title == "The Magician"
        click(window.cover.corner_back)
        click(window.cover.corner_back)
        assert window.session.left.show is Show.CONTENTS

    def test_corners_lie_flat_where_there_is_no_leaf(self, window):
        open_majors(window)
        assert not window.cover.corner_back.isVisible()
        window.session.turn(1)
        assert window.cover.corner_back.isVisible()
        window.session.open_leaf(window.session.shelf.card_leaf("major-21")[1])
        assert not window.cover.corner_on.isVisible()

    def test_by_keys(self, window):
        open_majors(window)
        window.focus_leaf()
        key(window, K.Key_PageDown, CTRL)
        key(window, K.Key_PageDown, CTRL)
        assert left(window).title == "The Magician"
        key(window, K.Key_PageUp, CTRL)
        assert left(window).title == "The Fool"

    def test_by_arrows_where_nothing_else_wants_them(self, window):
        open_majors(window)
        window.focus_leaf()
        key(window, K.Key_Right)
        key(window, K.Key_Right)
        assert left(window).title == "The Magician"
        key(window, K.Key_Left)
        assert left(window).title == "The Fool"

    def test_arrows_in_the_find_box_turn_nothing(self, window):
        open_majors(window)
        click(window.bar.find_field)
        key(window, K.Key_Right)
        assert window.session.left.show is Show.CONTENTS

    def test_by_the_wheel(self, window, monkeypatch):
        monkeypatch.setattr("ui.desk.cover.WHEEL_PAUSE", 1e9)
        open_majors(window)
        wheel(window, -120)
        assert left(window).title == "The Fool"
        wheel(window, -120)
        assert left(window).title == "The Fool"
        monkeypatch.setattr("ui.desk.cover.WHEEL_PAUSE", 0)
        wheel(window, -120)
        assert left(window).title == "The Magician"

    def test_to_the_contents_and_from_tab_to_tab(self, window):
        open_majors(window)
        window.session.turn(3)
        key(window, K.Key_Home, ALT)
        assert window.session.left.show is Show.CONTENTS
        key(window, K.Key_Tab, CTRL)
        assert window.session.tab.name == "Minor Arcana"
        key(window, K.Key_Tab, CTRL | SHIFT)
        key(window, K.Key_Tab, CTRL | SHIFT)
        assert window.session.tab.name == "Course plan"
        key(window, K.Key_Tab, CTRL | SHIFT)
        assert window.session.tab.name == "Clippings"

    def test_the_foot_counts_the_leaves(self, window):
        open_majors(window)
        click(window.cover.corner_on)
        assert "leaf 1 of 22" in window.cover.right_foot.accessibleName()
        assert "Major Arcana" in window.cover.left_foot.accessibleName()


class TestBackAndForward:
    def test_by_key(self, window):
        open_majors(window)
        key(window, K.Key_Right)  # the keyboard is on the divider that was clicked
        click(spine(window, "Mastery"))
        key(window, K.Key_Left, ALT)
        assert left(window).title == "The Fool"
        key(window, K.Key_Left, ALT)
        assert window.session.left.show is Show.CONTENTS
        key(window, K.Key_Right, ALT)
        key(window, K.Key_Right, ALT)
        assert window.session.binder.name == "Mastery"

    def test_only_where_there_is_a_way(self, window):
        back, forward = (window.actions_by_name[name] for name in ("back", "forward"))
        assert not forward.isEnabled()
        while window.session.trail.can_back:
            window.session.back()
        assert not back.isEnabled()
        assert forward.isEnabled() == window.session.trail.can_forward


class TestFacing:
    def test_a_card_clicked_on_a_reading_faces_it_and_is_ringed(self, window):
        open_reading(window)
        page = window.cover.leaf("left")
        page.followed.emit("card:major-17")
        settle()
        assert facing(window).card == "major-17"
        assert left(window).kind == "reading"

    def test_the_foot_says_where_a_facing_leaf_is_kept(self, window):
        open_reading(window)
        window.session.face_card("major-17")
        assert (
            "Kept in Major Arcana, laid here to face what you read"
            in window.cover.right_foot.accessibleName()
        )

    def test_where_it_turned_up_lays_a_reading_open(self, window):
        open_reading(window)
        uid = window.session.left.leaf
        window.session.face_card("major-17")
        page = window.cover.leaf("right")
        page.followed.emit(f"leaf:{uid}")
        assert window.session.left.leaf == uid

    def test_the_facing_leaf_is_read_at_the_left(self, window):
        open_reading(window)
        window.session.face_card("major-17")
        key(window, K.Key_Return, CTRL)
        assert left(window).card == "major-17"

    def test_f6_gives_the_keyboard_to_the_other_leaf(self, window):
        open_reading(window)
        window.focus_leaf()
        for side in ("right", "left"):
            key(window, K.Key_F6)
            page = window.cover.leaf(side)
            assert page is window.focusWidget() or page.isAncestorOf(window.focusWidget())


class TestNarrow:
    @pytest.fixture(params=[(1100, 700), (1000, 640), (800, 600)])
    def small(self, window, request):
        window.resize(*request.param)
        settle()
        assert window.size().toTuple() == request.param
        assert window.cover.narrow
        return window

    def test_one_leaf_shows_and_the_other_is_a_flip_away(self, small):
        open_reading(small)
        one, other = small.cover.leaf("left"), small.cover.leaf("right")
        assert (one.isVisible(), other.isVisible()) == (True, False)
        click(small.cover.flip_button)
        assert (one.isVisible(), other.isVisible()) == (False, True)
        key(small, K.Key_F6)
        assert one.isVisible()
        assert one is small.focusWidget() or one.isAncestorOf(small.focusWidget())

    def test_a_card_that_is_followed_comes_into_view(self, small):
        open_reading(small)
        small.cover.leaf("left").followed.emit("card:major-17")
        settle()
        assert small.cover.side == "right"
        key(small, K.Key_PageDown, CTRL)
        assert small.cover.side == "left"

    def test_a_wide_window_shows_both_again(self, small):
        open_reading(small)
        click(small.cover.flip_button)
        small.resize(1600, 1000)
        settle()
        assert small.cover.leaf("left").isVisible()
        assert small.cover.leaf("right").isVisible()


class TestLook:
    def test_lamp_light_and_back(self, window):
        key(window, K.Key_L, CTRL | SHIFT)
        assert window.look.theme.lamp
        assert window.actions_by_name["lamp"].isChecked()
        assert window.memory.theme == "lamp"
        key(window, K.Key_L, CTRL | SHIFT)
        assert not window.look.theme.lamp
        assert not window.actions_by_name["lamp"].isChecked()

    def test_letters_grow_and_shrink_within_bounds(self, window):
        key(window, K.Key_Plus, CTRL)
        assert window.look.theme.scale == 1.1
        assert window.memory.scale == 1.1
        key(window, K.Key_Minus, CTRL)
        key(window, K.Key_Minus, CTRL)
        assert window.look.theme.scale == 1.0
        for _ in range(14):
            key(window, K.Key_Equal, CTRL)
        assert window.look.theme.scale == 2.0
        window.look.set_scale(1.0)

    def test_the_whole_screen_and_back(self, window):
        action = window.actions_by_name["full_screen"]
        action.trigger()
        assert window.isFullScreen()
        assert action.isChecked()
        action.trigger()
        assert not window.isFullScreen()
        assert not action.isChecked()


class TestSaid:
    def test_a_sentence_stands_at_the_foot_and_goes_by_a_click(self, window):
        window.say("Something short.")
        assert window.said.isVisible()
        assert window.said.geometry().bottom() < window.height()
        QTest.mouseClick(window.said, Qt.MouseButton.LeftButton)
        assert not window.said.isVisible()

    def test_escape_takes_a_sentence_away_wherever_the_keyboard_is(self, window):
        window.say("Something to know.")
        window.cover.leaf("left").focus_in()
        key(window, K.Key_Escape)
        assert not window.said.isVisible()

    def test_a_long_sentence_is_never_wider_than_the_window(self, window):
        window.resize(800, 600)
        window.say("There is a long sentence about a binder. " * 12)
        settle()
        area = window.said.geometry()
        assert window.rect().contains(area)
        assert area.height() >= window.said.heightForWidth(area.width())

    def test_what_cannot_be_done_is_said(self, window):
        click(divider(window, "Major Arcana"))
        window.guard(actions_of(window).open_view)
        assert window.said.text() == "Open a leaf first."


def test_every_tab_of_every_binder_can_be_read_from_end_to_end(window):
    """Each leaf of the sample is laid open once, as a user who turns every page would."""
    seen = 0
    for binder in window.session.shelf.binders:
        window.session.open_binder(binder.uid)
        for piece in window.cover.dividers.items():
            window.open_tab(piece.key)
            for _ in titles(window, piece.name):
                window.session.turn(1)
                settle(1)
                seen += 1
                assert window.cover.leaf("left").spot == window.session.left
    assert seen > 180
    assert not window.said.isVisible()


def test_leaves_come_back_from_behind_the_sheets(window):
    click(spine(window, "Practice"))
    click(divider(window, "Readings log"))
    actions_of(window).print()
    actions_of(window).proof.wait()
    settle()
    window.back_to_leaves()
    settle()
    assert isinstance(window.cover.leaf("left"), ContentsPage)
    open_reading(window)
    assert left(window).kind == "reading"


def test_a_small_window_writes_on_a_reading_after_a_card(window):
    window.resize(800, 600)
    open_reading(window)
    window.session.face_card("major-17")
    window.session.open_leaf(window.session.shelf.card_leaf("major-17")[1])
    settle()
    open_reading(window)
    actions_of(window).write()
    settle()
    assert window.grab().width() == 800
    assert window.staged("write")
