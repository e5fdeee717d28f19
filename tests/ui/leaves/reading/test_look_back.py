"""Looking back: judging, writing, asking again later; nothing typed is lost."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QRadioButton

from binder.study.cards import words
from binder.study.readings import lookbacks, readings
from binder.study.sources import sources
from tests.ui.leaf_fixtures import TODAY, expect_two, log, session_on
from ui.leaves.reading.look_back import LookBackPage


@pytest.fixture
def session(course_shelf, qapp):
    return session_on(course_shelf)


@pytest.fixture
def logged(course_shelf):
    binder, uid = log(course_shelf, look_on="2026-11-25")
    expect_two(binder, uid)
    return binder, uid


@pytest.fixture
def soon(monkeypatch):
    """A pause is shorter than in the program; to be asked for before the page."""
    monkeypatch.setattr("ui.leaves.reading.look_back.PAUSE_MS", 10)


@pytest.fixture
def page(session, qtbot, look, logged):
    made = LookBackPage(session, look)
    qtbot.addWidget(made)
    made.resize(524, 850)
    made.open(session.spot_of(logged[1]))
    made.show()
    qtbot.waitExposed(made)
    return made


def reading(logged):
    return readings.reading(*logged)


def kept(logged):
    return reading(logged).look_backs


def radio(page, statement, verdict):
    choices = page.statements[statement].findChildren(QRadioButton)
    return next(one for one in choices if one.property("verdict") == verdict)


def click(qtbot, button):
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton, pos=button.rect().center() / 2)


def later(page, words):
    action = next(a for a in page.later.menu().actions() if a.text().replace("&", "") == words)
    action.trigger()


def test_it_says_today_and_what_was_asked(page):
    told = page.heading.accessibleDescription()
    assert told.startswith("Wednesday 25 November 2026")
    assert "Should I move the workshop to the ferry quay? Asked 3 days ago." in told


def test_words_card_and_verdicts_are_kept_together(page, qtbot, logged):
    click(qtbot, radio(page, 0, "did not"))
    page.text.setFocus()
    qtbot.keyClicks(page.text, "She asked for one.")
    page.best.setCurrentIndex(page.best.findData("major-17"))
    with qtbot.waitSignal(page.done):
        click(qtbot, page.keep)
    view = reading(logged)
    assert [one.verdict for one in view.expectations] == ["did not", ""]
    assert [(one.text, one.card) for one in view.look_backs] == [("She asked for one.", "major-17")]
    assert view.look_state == lookbacks.DONE


def test_one_undo_takes_all_of_it_back(page, qtbot, logged):
    click(qtbot, radio(page, 0, "partly"))
    page.text.setPlainText("Partly.")
    click(qtbot, page.keep)
    logged[0].gate.undo()
    view = reading(logged)
    assert view.look_backs == ()
    assert view.expectations[0].verdict == ""


def test_the_verdicts_are_chosen_by_key(page, qtbot, logged):
    page.setFocus()
    first = QApplication.focusWidget()
    assert first is radio(page, 0, "came about")
    qtbot.keyClick(first, Qt.Key.Key_Space)
    qtbot.keyClick(first, Qt.Key.Key_Right)
    qtbot.keyClick(
        QApplication.focusWidget(), Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier
    )
    assert reading(logged).expectations[0].verdict == "partly"


def test_verdicts_alone_can_be_kept(page, qtbot, logged):
    click(qtbot, radio(page, 0, "came about"))
    click(qtbot, radio(page, 1, "can't tell"))
    with qtbot.waitSignal(page.done):
        click(qtbot, page.keep)
    view = reading(logged)
    assert view.look_backs == ()
    assert view.look_state == lookbacks.DONE


def test_nothing_said_is_not_kept_and_says_what_to_do(page, qtbot, logged):
    with qtbot.assertNotEmitted(page.done):
        click(qtbot, page.keep)
    assert page.said.text() == "Write a line about what happened, or mark a statement."
    assert reading(logged).look_backs == ()


@pytest.mark.parametrize(
    ("words", "day"), [("In a week", date(2026, 12, 2)), ("In a month", date(2026, 12, 25))]
)
def test_it_asks_again_later(page, qtbot, logged, words, day):
    with qtbot.waitSignal(page.done):
        later(page, words)
    view = reading(logged)
    assert view.look_on == day.isoformat()
    assert view.expectations[0].due == day.isoformat()
    assert lookbacks.due_readings(logged[0], TODAY) == []


def test_it_asks_again_on_a_day_of_ones_own(page, qtbot, logged):
    later(page, "On a day…")
    assert page.on.hasFocus()
    qtbot.keyClicks(page.on, "20 Dec")
    with qtbot.waitSignal(page.done):
        qtbot.keyClick(page.on, Qt.Key.Key_Return)
    assert reading(logged).look_on == "2026-12-20"


@pytest.mark.parametrize(("typed", "words"), [("soon", "is no day"), ("today", "after today")])
def test_a_day_that_will_not_do_is_said(page, qtbot, logged, typed, words):
    later(page, "On a day…")
    qtbot.keyClicks(page.on, typed)
    with qtbot.assertNotEmitted(page.done):
        qtbot.keyClick(page.on, Qt.Key.Key_Return)
    assert words in page.said.text()
    assert reading(logged).look_on == "2026-11-25"


def test_what_was_typed_is_kept_when_it_is_put_off(page, qtbot, logged):
    page.text.setPlainText("Not yet, but the post came.")
    later(page, "In a week")
    view = reading(logged)
    assert view.look_backs[0].text == "Not yet, but the post came."
    assert view.look_state == ""


def test_let_it_go(page, qtbot, logged):
    click(qtbot, radio(page, 1, "came about"))
    with qtbot.waitSignal(page.done):
        click(qtbot, page.let_go)
    view = reading(logged)
    assert view.look_state == lookbacks.LET_GO
    assert [one.verdict for one in view.expectations] == ["can't tell", "came about"]


def test_leaving_keeps_what_was_typed_and_marked(page, session, logged):
    page.text.setPlainText("Half a sentence")
    radio(page, 0, "partly").setChecked(True)
    session.leaving.emit()
    view = reading(logged)
    assert view.look_backs[0].text == "Half a sentence"
    assert view.expectations[0].verdict == "partly"


def test_leaving_with_nothing_typed_writes_nothing(page, session, logged):
    session.leaving.emit()
    assert reading(logged).look_backs == ()
    assert logged[0].gate.undo_label() != "Look back"


def test_a_pause_keeps_the_words_and_later_words_change_the_same_entry(soon, page, qtbot, logged):
    page.text.setFocus()
    qtbot.keyClicks(page.text, "She asked")
    qtbot.waitUntil(lambda: len(reading(logged).look_backs) == 1)
    qtbot.keyClicks(page.text, " for two.")
    click(qtbot, page.keep)
    assert [one.text for one in reading(logged).look_backs] == ["She asked for two."]


def test_words_taken_away_again_leave_no_entry(soon, page, qtbot, logged):
    page.text.setPlainText("A mistake")
    qtbot.waitUntil(lambda: len(reading(logged).look_backs) == 1)
    page.text.clear()
    qtbot.waitUntil(lambda: reading(logged).look_backs == ())


def test_opening_another_reading_keeps_the_words_for_the_first(page, session, logged, course_shelf):
    _, other = log(course_shelf, "one-card", "moon", question="What else?")
    page.text.setPlainText("For the first.")
    page.open(session.spot_of(other))
    assert page.text.toPlainText() == ""
    assert page.statements == []
    assert reading(logged).look_backs[0].text == "For the first."


def test_opening_the_same_reading_again_keeps_what_is_being_typed(page, session, logged):
    page.text.setPlainText("Being typed")
    page.open(session.spot_of(logged[1]))
    assert page.text.toPlainText() == "Being typed"


def test_escape_keeps_and_goes_back(page, qtbot, logged):
    page.text.setFocus()
    qtbot.keyClicks(page.text, "Enough.")
    with qtbot.waitSignal(page.done):
        qtbot.keyClick(page.text, Qt.Key.Key_Escape)
    assert reading(logged).look_backs[0].text == "Enough."


def test_a_failure_stands_beside_the_field_and_the_words_stay(page, qtbot, logged):
    logged[0].writable = False
    page.text.setPlainText("Kept in the field.")
    with qtbot.assertNotEmitted(page.done):
        click(qtbot, page.keep)
    assert "can be read but not written" in page.said.text()
    assert page.text.toPlainText() == "Kept in the field."
    logged[0].writable = True


@pytest.mark.parametrize("width", [314, 524])
def test_every_control_stays_on_the_leaf(page, qtbot, width):
    page.resize(width, 850)
    QApplication.processEvents()
    for part in (page.keep, page.later, page.let_go, page.best, page.text,
                 *page.statements[0].findChildren(QRadioButton)):  # fmt: skip
        right = part.mapTo(page.viewport(), part.rect().topRight()).x()
        assert right < page.viewport().width()


def test_what_was_learned_goes_to_own_words_with_its_reading(page, qtbot, logged, course_shelf):
    page.text.setPlainText("She asked. Open water, not harbour.")
    click(qtbot, page.to_words)
    assert "Choose the card" in page.said.text()
    page.best.setCurrentIndex(page.best.findData("major-17"))
    cursor = page.text.textCursor()
    cursor.setPosition(11)
    cursor.movePosition(cursor.MoveOperation.End, cursor.MoveMode.KeepAnchor)
    page.text.setTextCursor(cursor)
    click(qtbot, page.to_words)
    said = words.current(words.history(*course_shelf.card_leaf("major-17")))["upright"].text
    assert said == f"Open water, not harbour. ([reading of 22 November 2026](leaf:{logged[1]}))"
    assert reading(logged).look_backs[0].card == "major-17"


def test_a_card_that_lay_reversed_grows_in_its_reversed_words(page, qtbot, course_shelf):
    page.text.setPlainText("Held too tight.")
    page.best.setCurrentIndex(page.best.findData("pentacles-04"))
    click(qtbot, page.to_words)
    said = words.current(words.history(*course_shelf.card_leaf("pentacles-04")))
    assert list(said) == ["reversed"]


def test_a_reading_of_a_day_to_come_says_its_day(session, qtbot, look, course_shelf):
    _, uid = log(course_shelf, at="2027-03-01T10:00")
    made = LookBackPage(session, look)
    qtbot.addWidget(made)
    made.open(session.spot_of(uid))
    assert made.heading.accessibleDescription().endswith("quay? Dated 1 March 2027.")


def test_a_source_is_cited_by_key(page, qtbot, session):
    sources.new_source(session.shelf, "Perpetua Lisle", "Upside Down")
    page.text.setPlainText("As \U0001f0bd she says.")
    page.text.setFocus()
    qtbot.keyClick(page.text, Qt.Key.Key_End)
    ctrl_shift = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    for key, place in ((Qt.Key.Key_S, "12"), (Qt.Key.Key_G, "note 4")):
        qtbot.keyClick(page.text, key, ctrl_shift)
        found = page.citing.asking.picker
        qtbot.keyClicks(found.filter, "lis")
        qtbot.keyClick(found.filter, Qt.Key.Key_Return)
        qtbot.keyClicks(found.locator, place)
        qtbot.keyClick(found.locator, Qt.Key.Key_Return)
    assert page.text.toPlainText() == (
        "> As \U0001f0bd she says.[p. 12](source:lisle#p12)\n>\n"
        "> Perpetua Lisle, [note 4](source:lisle#note4)"
    )


def test_a_card_chosen_is_kept_after_a_pause_as_words_are(soon, page, qtbot, logged):
    for number in (2, 1):
        page.text.setPlainText("It moved.")
        page.best.setCurrentIndex(number)
        card = page.best.currentData()
        qtbot.waitUntil(lambda card=card: [one.card for one in kept(logged)][-1:] == [card])
        page.open(page.session.spot_of(logged[1]))
