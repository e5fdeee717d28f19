"""The reading leaf: head, layout, impressions, statements judged in place, looking back."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtWidgets import QApplication, QMenu

from binder.cards.spreads import spread
from binder.cards.titles import STANDARD
from binder.paper.leaves.reading import laid_cards
from binder.paper.photographs import Photographs
from binder.study.leaves.leaves import rename
from binder.study.readings import lookbacks, readings
from binder.study.readings.cautions import CONSENT
from binder.study.readings.laying import laid_from
from tests.ui.leaf_fixtures import LINE, expect_two, log, session_on, shown
from ui.actions.installed import Installed
from ui.desk.window import Window
from ui.leaves.reading.reading import ReadingPage
from ui.session.memory import Memory


@pytest.fixture
def session(course_shelf, qapp):
    return session_on(course_shelf)


def opened(session, qtbot, look, uid, size=(524, 850)):
    return shown(ReadingPage(session, look), qtbot, session, uid, size)


@pytest.fixture
def page(session, qtbot, look, course_shelf):
    binder, uid = log(course_shelf, deck_name="Lantern Road", topic="workshop")
    expect_two(binder, uid)
    return opened(session, qtbot, look, uid)


def statements(page):
    view = page.session.leaf_of(page.spot)
    return readings.reading(view.binder, view.uid).expectations


def test_the_head_says_when_what_and_how(page):
    assert page.heading.accessibleName() == "Should I move the workshop to the ferry quay?"
    assert page.heading.accessibleDescription() == (
        "Sunday 22 November 2026, after supper, Five-card cross, Lantern Road deck · workshop"
    )
    assert page.heading.toolTip() == "Sunday 22 November 2026, 20:15"


def test_a_title_that_says_more_than_the_question_is_shown_too(page, session):
    view = session.leaf_of(page.spot)
    rename(view.binder, view.uid, "Move to the ferry quay")
    assert "Move to" not in page.heading.accessibleDescription()
    rename(view.binder, view.uid, "The ticket shed")
    assert "The ticket shed · Five-card cross" in page.heading.accessibleDescription()


def test_the_querent_and_the_significator_stand_in_the_head(session, qtbot, look, course_shelf):
    _, uid = log(course_shelf, querent="M.", significator="cups-13", deck_name="Saltmarsh deck")
    page = opened(session, qtbot, look, uid)
    under = page.heading.accessibleDescription()
    assert under.endswith("Five-card cross, Saltmarsh deck · for M.")
    assert page.standing.text() == "Significator: Queen of Cups"
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.keyClick(page.standing, Qt.Key.Key_Return)
    assert followed.args == ["card:cups-13"]


def test_a_click_on_a_card_asks_for_its_leaf(page, qtbot):
    spot = page.cards.place_rect(5).center().toPoint()
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.mouseClick(page.cards, Qt.MouseButton.LeftButton, pos=spot)
    assert followed.args == ["card:major-17"]


def test_names_in_the_impressions_are_linked(page):
    assert {link.address for link in page.text.links()} == {"card:major-17"}


def test_the_picked_card_is_marked_in_layout_and_text(page):
    page.picked("major-17")
    assert page.cards.picked == "major-17"
    assert page.text.picked == "major-17"
    page.picked("")
    assert page.cards.picked == ""


def test_notes_stand_place_by_place(session, qtbot, look, course_shelf):
    binder, uid = log(course_shelf)
    readings.set_note(binder, uid, 3, "The purse <upside> down; The Star again.")
    page = opened(session, qtbot, look, uid)
    assert page.notes.isVisible()
    assert "3  Ground" in page.notes.toPlainText()
    assert "purse <upside> down" in page.notes.toPlainText()
    assert [link.address for link in page.notes.links()] == ["card:major-17"]


def test_what_is_not_there_takes_no_room(session, qtbot, look, course_shelf):
    _, uid = log(course_shelf, text="")
    page = opened(session, qtbot, look, uid)
    for part in (page.notes_head, page.notes, page.text_head, page.text, page.expected_head,
                 page.expected, page.looked_head, page.looked, page.caution):  # fmt: skip
        assert not part.isVisible()


def test_a_reading_after_another_shows_nothing_of_the_first(page, session, course_shelf):
    _, other = log(
        course_shelf, "one-card", "moon", question="What should I notice this week?", text=""
    )
    page.show_spot(session.spot_of(other))
    assert not page.expected.isVisible()
    assert not page.text.isVisible()
    assert len(page.cards.places()) == 1


def test_statements_are_told_with_how_sure_when_and_how_it_came_out(page):
    first, second = page.expected.rows()
    assert first.accessibleName() == (
        "The landlord asks for more than two months. 70 per cent sure, "
        "due 24 November 2026, waiting"
    )
    assert second.accessibleName().endswith("55 per cent sure, due 1 April 2027, waiting")


def open_menu(page):
    menus = [widget for widget in QApplication.topLevelWidgets() if isinstance(widget, QMenu)]
    return next(menu for menu in menus if menu.isVisible())


def choose(words, chosen):
    """Choose from the menu that opens next, as a user would with the keyboard."""

    def do():
        menu = open_menu(None)
        action = next(a for a in menu.actions() if a.text().replace("&", "") == words)
        menu.setActiveAction(action)
        chosen.append(words)
        from PySide6.QtTest import QTest

        QTest.keyClick(menu, Qt.Key.Key_Return)

    QTimer.singleShot(30, do)


@pytest.mark.parametrize(
    ("words", "verdict"),
    [
        ("Came about", "came about"),
        ("Partly", "partly"),
        ("Did not", "did not"),
        ("Can't tell", "can't tell"),
    ],
)
def test_a_statement_is_judged_in_place(page, qtbot, words, verdict):
    row = page.expected.rows()[0]
    chosen = []
    choose(words, chosen)
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: statements(page)[0].verdict == verdict)
    assert row.accessibleName().endswith(verdict)
    assert statements(page)[1].verdict == ""


def test_a_verdict_can_be_taken_back_by_key(page, qtbot):
    lookbacks.judge(page.session.binder_of(page.spot), statements(page)[1].uid, "partly")
    row = page.expected.rows()[1]
    row.setFocus()
    choose("Still waiting", [])
    qtbot.keyClick(row, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: statements(page)[1].verdict == "")


def test_up_and_down_walk_the_statements(page, qtbot):
    first, second = page.expected.rows()
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Down)
    assert second.hasFocus()
    qtbot.keyClick(second, Qt.Key.Key_Down)
    assert second.hasFocus()
    qtbot.keyClick(second, Qt.Key.Key_Up)
    assert first.hasFocus()


def test_the_menu_shows_which_verdict_stands(page, session):
    row = page.expected.rows()[0]
    assert [a.text() for a in row.menu().actions() if a.isChecked()] == ["&Still waiting"]


def test_look_backs_stand_under_their_day_and_card(page, session):
    view = session.leaf_of(page.spot)
    lookbacks.look_back(
        view.binder, view.uid, "She asked for *three*.", card="major-17", at="2026-12-21T09:00"
    )
    said = page.looked.toPlainText()
    assert said.startswith("21 December 2026, The Star said it best\nShe asked for three.")
    assert page.looked.links()[0].address == "card:major-17"


def test_a_look_back_asked_for_without_a_statement_is_told(session, qtbot, look, course_shelf):
    binder, uid = log(course_shelf, look_on="2026-12-22")
    page = opened(session, qtbot, look, uid)
    assert page.looked.isVisible()
    assert page.looked.toPlainText() == "Look back on 22 December 2026. Look back now"
    lookbacks.ask_later(binder, uid, date(2027, 1, 5))
    assert page.looked.toPlainText() == (
        "Look back on 5 January 2027, asked for again later. Look back now"
    )
    lookbacks.let_go(binder, uid)
    assert page.looked.toPlainText() == "The look back was let go. Look back now"
    lookbacks.look_back(binder, uid, "It moved.", at="2027-01-05T09:00")
    assert page.looked.toPlainText() == "5 January 2027\nIt moved."


def test_a_look_back_due_with_a_statement_is_not_told_twice(session, qtbot, look, course_shelf):
    binder, uid = log(course_shelf, look_on="2026-12-22")
    lookbacks.expect(binder, uid, "She signs.", 70, "2026-12-22")
    page = opened(session, qtbot, look, uid)
    assert not page.looked.isVisible()


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"topic": "money"}, "no financial advice"),
        ({"question": "What about the diagnosis?"}, "no diagnosis"),
        ({"querent": "M."}, CONSENT),
    ],
)
def test_a_caution_stands_at_the_foot_where_it_belongs(
    session, qtbot, look, course_shelf, fields, words
):
    _, uid = log(course_shelf, **fields)
    page = opened(session, qtbot, look, uid)
    assert page.caution.isVisible()
    assert words in page.caution.toPlainText()


def test_the_menu_of_a_card_lays_its_leaf_facing(page, session, qtbot):
    with qtbot.waitSignal(session.faced):
        QTimer.singleShot(30, lambda: open_menu(page).actions()[0].trigger())
        page.cards.menu_asked.emit("major-17", page.mapToGlobal(QPoint(50, 50)))
    for widget in QApplication.topLevelWidgets():
        if isinstance(widget, QMenu):
            widget.close()
    assert session.leaf_of(session.facing).card == "major-17"


@pytest.mark.parametrize("size", [(330, 700), (524, 850), (720, 900)])
@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_no_part_reaches_over_the_edge(session, qtbot, look, course_shelf, size, scale):
    binder, uid = log(course_shelf, querent="M.", topic="law")
    expect_two(binder, uid)
    look.set_scale(scale)
    page = opened(session, qtbot, look, uid, (round(size[0] * scale), size[1]))
    wide = page.viewport().width()
    for index in range(page.rows.count()):
        part = page.rows.itemAt(index).widget()
        if part is not None and part.isVisible():
            assert part.x() >= 0
            assert part.geometry().right() < wide
    look.set_scale(1.0)


# In the window


@pytest.fixture
def window(session, qtbot, look, tmp_path, course_shelf):
    made = Window(session, look, Memory(tmp_path / "desk.ini"))
    Installed(made)
    qtbot.addWidget(made)
    made.resize(1600, 1000)
    made.show()
    qtbot.waitExposed(made)
    return made


def test_in_the_window_a_clicked_card_faces_and_is_ringed(window, session, qtbot, course_shelf):
    _, uid = log(course_shelf)
    session.open_leaf(uid)
    page = window.cover.leaf("left")
    spot = page.cards.place_rect(4).center().toPoint()
    qtbot.mouseClick(page.cards, Qt.MouseButton.LeftButton, pos=spot)
    assert session.leaf_of(session.facing).card == "swords-06"
    assert page.cards.picked == "swords-06"


def test_in_the_window_a_judged_statement_keeps_the_keyboard(window, session, qtbot, course_shelf):
    binder, uid = log(course_shelf)
    first, _ = expect_two(binder, uid)
    session.open_leaf(uid)
    page = window.cover.leaf("left")
    row = page.expected.rows()[0]
    row.setFocus()
    lookbacks.judge(binder, first, "partly")
    assert page.expected.rows()[0] is row
    assert row.accessibleName().endswith("partly")


def test_celtic_cross_and_wheel_open_too(session, qtbot, look, course_shelf):
    for key in ("celtic-cross", "twelve-month-wheel"):
        count = len(spread(key).places)
        line = ", ".join([f"{n}w" for n in range(2, 11)] + ["2c", "3c", "4c"][: count - 9])
        _, uid = log(course_shelf, key, line)
        page = opened(session, qtbot, look, uid)
        assert len(page.cards.places()) == count


@pytest.mark.parametrize("printed", [True, False])
def test_a_key_of_no_card_is_shown_by_its_words(printed, session, qtbot, look, course_shelf):
    """As a binder written elsewhere may hold one."""
    titles = replace(STANDARD, printed=printed)
    cross = laid_from(LINE, spread("five-card-cross"), titles)
    odd = [replace(one, card="wands-99", title="wands-99") if one.n == 5 else one for one in cross]
    binder, uid = log(course_shelf, laid=odd, titles=titles)
    lookbacks.look_back(binder, uid, "It came.", card="wands-99")
    with qtbot.captureExceptions() as faults:
        page = opened(session, qtbot, look, uid)
        page.grab()
        page.picked("wands-99")
        page.grab()
        QApplication.processEvents()
    assert faults == []
    assert page.cards.places()[4].accessibleName() == "Place 5, Ahead: wands-99"
    assert "wands-99 said it best" in page.looked.toPlainText()
    drawn = laid_cards(readings.reading(binder, uid), Photographs(course_shelf, {}))[5]
    assert (drawn.card.title, drawn.title, drawn.number) == ("wands-99", "wands-99", None)


def test_danger_is_told_under_the_question_and_not_again_at_the_foot(
    session, qtbot, look, course_shelf
):
    _, uid = log(course_shelf, question="He hit me last night. What now?", querent="M.")
    page = opened(session, qtbot, look, uid)
    assert "emergency number where you are" in page.urgent.toPlainText()
    assert page.heading.y() < page.urgent.y() < page.cards.y()
    assert page.caution.toPlainText() == CONSENT


def test_what_is_not_urgent_stands_at_the_foot_alone(session, qtbot, look, course_shelf):
    _, uid = log(course_shelf, question="Should I remortgage?")
    page = opened(session, qtbot, look, uid)
    assert not page.urgent.isVisible()
    assert "no financial advice" in page.caution.toPlainText()
