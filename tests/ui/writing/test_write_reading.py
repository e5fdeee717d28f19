"""Writing on a reading's leaf: impressions, places, and what is expected."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from binder.cards.spreads import spread
from binder.study.leaves import leaves, tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading
from tests.ui.writing_desk import desk, own_data  # noqa: F401

K = Qt.Key
THREE = NewReading(
    at="2026-11-22T19:30",
    question="Should I move the workshop?",
    spread=spread("three-card"),
    laid=[Laid(1, "wands-03"), Laid(2, "major-09", reversed=True), Laid(3, "cups-13", note="Her.")],
)


@pytest.fixture
def reading(desk):
    """A reading with a judged statement and one that waits, open for writing."""
    binder = desk.shelf.binder("Practice")
    uid = readings.log(binder, tabs.first_of_kind(binder, "readings"), THREE)
    judged = lookbacks.expect(binder, uid, "The kiln holds.", 80, "2026-11-24")
    lookbacks.judge(binder, judged, "came about")
    lookbacks.expect(binder, uid, "The rent is asked for.", 55, "2026-12-20")
    desk.open(uid)
    return binder, uid


def stated(reading):
    return [(e.text, e.sure, e.due, e.verdict) for e in readings.reading(*reading).expectations]


def test_impressions_come_first_and_are_the_leafs_text(desk, reading):
    assert desk.page.texts.own.hasFocus()
    desk.type("Open water.")
    desk.until(lambda: leaves.leaf(*reading).text == "Open water.")


def test_the_title_is_the_readings_short_name(desk, reading):
    desk.page.title.selectAll()
    desk.type("The workshop", desk.page.title)
    assert desk.page.save()
    assert leaves.leaf(*reading).title == "The workshop"
    assert readings.reading(*reading).question == "Should I move the workshop?"


def test_a_line_about_each_place(desk, reading):
    parts = desk.page.fields.places.parts
    assert [part.label.text() for part in parts[:2]] == [
        f"1  {THREE.spread.place(1).label}: Three of Wands",
        f"2  {THREE.spread.place(2).label}: The Hermit, reversed",
    ]
    assert parts[2].field.toPlainText() == "Her."
    desk.type("A ship.", parts[0].field)
    desk.until(lambda: readings.reading(*reading).laid[0].note == "A ship.")
    assert readings.reading(*reading).laid[2].note == "Her."


def test_another_reading_shows_its_own_places(desk, reading):
    binder = reading[0]
    one = NewReading(
        at="2026-11-23T08:00", question="And now?", spread=spread("one-card"),
        laid=[Laid(1, "cups-02")],
    )  # fmt: skip
    desk.open(readings.log(binder, tabs.first_of_kind(binder, "readings"), one))
    shown = [part for part in desk.page.fields.places.parts if part.field.isVisible()]
    assert len(shown) == 1
    desk.open(reading[1])
    assert len([part for part in desk.page.fields.places.parts if part.field.isVisible()]) == 3


def test_what_was_judged_stands_as_it_was_said(desk, reading):
    assert desk.page.fields.stated.judged.text() == (
        "The kiln holds. (80%, due 24 Nov 2026: came about.)"
    )
    assert len(desk.page.fields.stated.rows) == 1


def test_a_statement_is_changed(desk, reading):
    row = desk.page.fields.stated.rows[0]
    assert row.said.text() == "55%, even"
    row.slider.setFocus()
    desk.press(K.Key_Right, into=row.slider)
    assert row.said.text() == "60%, likely"
    row.due.setFocus()
    row.due.selectAll()
    desk.type("month's end", row.due)
    desk.press(K.Key_Tab, into=row.due)
    assert row.due.text() == "30 Nov 2026"
    desk.press(K.Key_Up, into=row.due)
    assert row.due.text() == "1 Dec 2026"
    desk.until(lambda: stated(reading)[1] == ("The rent is asked for.", 60, "2026-12-01", ""))


def test_a_statement_is_added_by_keyboard(desk, reading):
    stated_fields = desk.page.fields.stated
    stated_fields.add.setFocus()
    desk.press(K.Key_Space, into=stated_fields.add)
    row = stated_fields.rows[1]
    assert row.text.hasFocus()
    assert desk.page.save()
    assert len(stated(reading)) == 2
    desk.type("By spring I still have the old room.", row.text)
    desk.press(K.Key_Return, into=row.text)
    assert row.slider.hasFocus()
    assert desk.page.save()
    assert stated(reading)[2] == ("By spring I still have the old room.", 60, "2026-12-22", "")
    desk.type(" Truly.", row.text)
    assert desk.page.save()
    assert len(stated(reading)) == 3


def test_the_menu_chooses_a_day_counted_from_that_of_the_reading(desk, reading):
    row = desk.page.fields.stated.rows[0]
    action = next(a for a in row.choose.menu().actions() if a.text() == "In 3 days")
    action.trigger()
    assert row.due.text() == "25 Nov 2026"
    assert desk.page.save()
    assert stated(reading)[1][2] == "2026-11-25"


@pytest.mark.parametrize(
    ("typed", "said"),
    [("31 feb", "There is no day"), ("soonish", "is no day"), ("1 Nov 2026", "after its reading")],
)
def test_a_day_that_cannot_be_is_said_beside_its_field(desk, reading, typed, said):
    row = desk.page.fields.stated.rows[0]
    row.due.setFocus()
    row.due.selectAll()
    desk.type(typed, row.due)
    desk.press(K.Key_Tab, into=row.due)
    assert said in row.hint.text()
    assert desk.page.save()
    assert stated(reading)[1][2] == "2026-12-20"
    row.due.setFocus()
    row.due.selectAll()
    desk.type("tomorrow", row.due)
    assert row.hint.text() == "Thursday 26 November 2026"


def test_a_statement_is_removed_and_undo_brings_it_back(desk, reading):
    row = desk.page.fields.stated.rows[0]
    row.remove.setFocus()
    desk.press(K.Key_Space, into=row.remove)
    assert len(stated(reading)) == 1
    assert desk.page.fields.stated.rows == []
    assert desk.page.fields.stated.add.hasFocus()
    desk.session.undo()
    assert len(stated(reading)) == 2


def test_the_wheel_scrolls_the_leaf_and_not_the_slider(desk, reading):
    slider = desk.page.fields.stated.rows[0].slider
    event = QWheelEvent(
        QPointF(5, 5), QPointF(5, 5), QPoint(0, 0), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(slider, event)
    assert slider.value() == 55


def test_all_of_it_is_put_by_when_it_cannot_be_saved(desk, reading):
    from ui.writing.editor import rescue

    desk.type("Open water.")
    desk.type("A ship.", desk.page.fields.places.parts[0].field)
    desk.type(" Twice.", desk.page.fields.stated.rows[0].text)
    reading[0].writable = False
    desk.session.turn(0)
    put_by = rescue.found(reading[1]).read_text()
    assert "Open water." in put_by
    assert "A ship." in put_by
    assert "The rent is asked for. Twice. (55%, by 2026-12-20)" in put_by
    reading[0].writable = True
