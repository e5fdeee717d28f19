"""Contents leaves: rows, headings, what opens, what moves; with real clicks and keys."""

import pytest
from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QMenu

from binder.cards.spreads import spread
from binder.study.leaves import leaves, tabs
from binder.study.readings import readings
from ui.kit.strip.strip import LEAF_MIME
from ui.leaves.contents.contents import ContentsPage
from ui.leaves.contents.contents_rows import STRETCH, ContentsModel
from ui.session.trail import Show, Spot

MOVE = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


def spot_of(shelf, binder, tab):
    home = shelf.binder(binder)
    return Spot(Show.CONTENTS, home.uid, tabs.tab(home, tab).uid)


@pytest.fixture
def show(session, look, lay):
    def shown(binder, tab, width=524, height=850):
        page = lay(ContentsPage(session, look), spot_of(session.shelf, binder, tab), width, height)
        session.changed.connect(lambda _notice: page.show_spot(page.spot))
        return page

    return shown


def words(page):
    return [page.model.index(row, 0).data() for row in range(page.model.rowCount())]


def titles(page):
    binder = page.session.binder_of(page.spot)
    return [e.title for e in leaves.contents(binder, page.session.tab_of(page.spot))]


def click(qtbot, page, row, button=Qt.MouseButton.LeftButton):
    at = page.list.visualRect(page.model.index(row, 0)).center()
    qtbot.mouseClick(page.list.viewport(), button, pos=at)


def test_majors_stand_in_three_septenaries(show):
    page = show("Foundations", "Major Arcana")
    assert page.heading.accessibleDescription() == "Foundations, 22 leaves, 22 written"
    said = words(page)
    assert said[0] == "First septenary, 8 of 8 written"
    assert [said[1], said[8], said[9], said[10]] == [
        "The Fool", "The Chariot", "Second septenary, 7 of 7 written", "Strength",
    ]  # fmt: skip
    assert said[17] == "Third septenary, 7 of 7 written"
    assert len(said) == 25


def test_minors_stand_by_suit_and_say_what_is_written(show):
    page = show("Foundations", "Minor Arcana")
    heads = [word for word in words(page) if word.endswith(" written")]
    assert [head.split(",")[0] for head in heads] == ["Wands", "Cups", "Swords", "Pentacles"]
    assert heads[0] == "Wands, 9 of 14 written"
    role = Qt.ItemDataRole.AccessibleTextRole
    said = [page.model.index(row, 0).data(role) for row in (1, 10)]
    assert said == ["Leaf 1, Ace of Wands, written", "Leaf 10, Ten of Wands, not written yet"]


def test_a_log_of_one_year_needs_no_headings(show):
    page = show("Practice", "Readings log")
    assert words(page)[0] == "Pruett's letter"
    assert page.heading.accessibleDescription().endswith("readings, newest first")
    assert not page.model.headed


def test_a_log_of_years_has_a_heading_for_each(session, show):
    practice = session.shelf.binder("Practice")
    log = tabs.first_of_kind(practice, "readings")
    recent = len(leaves.contents(practice, log))
    with practice.change("Log many"):
        for number in range(STRETCH + 30):
            at = f"2024-{number % 12 + 1:02}-{number % 28 + 1:02}T09:00"
            one = readings.Laid(1, "major-17")
            made = readings.NewReading(at, f"Question {number}?", spread("one-card"), [one])
            readings.log(practice, log, made)
    page = show("Practice", "Readings log")
    said = words(page)
    assert said[0] == f"2026, {recent} readings"
    assert said[recent + 1] == f"2024, {STRETCH + 30} readings"
    every = [row for row in range(page.model.rowCount()) if page.model.entry(row)]
    assert [page.model.entry(row).title for row in every] == titles(page)
    assert [page.model.index_at(row) for row in every] == list(range(len(every)))
    assert [page.model.row_of(index) for index in range(len(every))] == every


def test_a_long_tab_is_read_a_stretch_at_a_time(session, show):
    practice = session.shelf.binder("Practice")
    home = tabs.tab(practice, "Clippings")
    before = tabs.leaves_behind(practice, home.row)
    with practice.change("Many leaves"):
        for number in range(1000):
            leaves.add_leaf(practice, home, f"Clipping {number}")
    page = show("Practice", "Clippings")
    assert page.model.rowCount() == before + 1000
    assert page.model.stretches == 1
    page.list.setFocus()
    page.list.scrollToBottom()
    assert page.model.index(before + 999, 0).data() == "Clipping 999"
    assert page.model.stretches < 4


def test_a_click_opens_the_leaf(show, qtbot):
    page = show("Foundations", "Major Arcana")
    with qtbot.waitSignal(page.followed) as followed:
        click(qtbot, page, 1)
    uid = page.session.shelf.card_leaf("major-00")[1]
    assert followed.args == [f"leaf:{uid}"]


def test_a_heading_does_nothing(show, qtbot):
    page = show("Foundations", "Major Arcana")
    with qtbot.assertNotEmitted(page.followed):
        click(qtbot, page, 0)


def test_keys_walk_over_headings_and_enter_opens(show, qtbot):
    page = show("Foundations", "Major Arcana")
    page.focus_in()
    for _ in range(8):
        qtbot.keyClick(page.list, Qt.Key.Key_Down)
    assert page.list.currentIndex().data() == "Strength"
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.keyClick(page.list, Qt.Key.Key_Return)
    assert followed.args == [f"leaf:{page.session.shelf.card_leaf('major-08')[1]}"]


def test_a_leaf_is_moved_by_key_and_moved_back_by_undo(show, qtbot):
    page = show("Practice", "Methods")
    before = titles(page)
    page.focus_in()
    qtbot.keyClick(page.list, Qt.Key.Key_Down, MOVE)
    qtbot.keyClick(page.list, Qt.Key.Key_Down, MOVE)
    assert titles(page) == [before[1], before[2], before[0], *before[3:]]
    assert page.list.currentIndex().row() == 2
    qtbot.keyClick(page.list, Qt.Key.Key_Up, MOVE)
    assert titles(page)[1] == before[0]
    page.session.shelf.binder("Practice").gate.undo()
    page.session.shelf.binder("Practice").gate.undo()
    page.session.shelf.binder("Practice").gate.undo()
    assert titles(page) == before


def test_a_log_keeps_the_order_of_its_days(show, qtbot):
    page = show("Practice", "Readings log")
    before = titles(page)
    page.focus_in()
    qtbot.keyClick(page.list, Qt.Key.Key_Down, MOVE)
    assert titles(page) == before


def drop(page, uid, row):
    """Drop a leaf above a row, as the view does after a drag."""
    data = QMimeData()
    data.setData(LEAF_MIME, uid.encode())
    rect = page.list.visualRect(page.model.index(row, 0))
    event = QDropEvent(
        QPointF(rect.center().x(), rect.top() + 1), Qt.DropAction.MoveAction, data,
        Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QEvent.Type.Drop,
    )  # fmt: skip
    page.list.dropEvent(event)


def test_a_leaf_is_dropped_in_another_place(show):
    page = show("Practice", "Methods")
    before = titles(page)
    drop(page, page.model.entry(3).uid, 1)
    assert titles(page) == [before[0], before[3], before[1], before[2], before[4]]
    drop(page, page.model.entry(0).uid, 4)
    assert titles(page)[3] == before[0]


def test_a_dragged_leaf_says_which_it_is(show):
    page = show("Foundations", "Major Arcana")
    data = page.model.mimeData([page.model.index(1, 0)])
    uid = page.session.shelf.card_leaf("major-00")[1]
    assert bytes(data.data(LEAF_MIME).data()).decode() == uid
    assert page.model.canDropMimeData(data, Qt.DropAction.MoveAction, 1, 0, page.model.index(-1, 0))


def test_the_menu_of_a_row(show, qtbot):
    page = show("Practice", "Methods")
    viewport = page.list.viewport()
    at = page.list.visualRect(page.model.index(2, 0)).center()
    event = QContextMenuEvent(
        QContextMenuEvent.Reason.Mouse, at, viewport.mapToGlobal(at), Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(viewport, event)
    menu = page.findChild(QMenu)
    actions = {action.text(): action for action in menu.actions()}
    assert list(actions) == ["Open", "Lay it facing", "Move up", "Move down", "Set aside"]
    uid = page.model.entry(2).uid
    with qtbot.waitSignal(page.followed) as followed:
        actions["Lay it facing"].trigger()
    assert followed.args == [f"facing:{uid}"]
    title = page.model.entry(2).title
    actions["Set aside"].trigger()
    assert title not in titles(page)
    menu.close()


def test_delete_puts_a_leaf_into_the_drawer(show, qtbot):
    page = show("Practice", "Methods")
    title = page.model.entry(0).title
    page.focus_in()
    with qtbot.waitSignal(page.session.said) as said:
        qtbot.keyClick(page.list, Qt.Key.Key_Delete)
    assert said.args == [f"“{title}” lies in the drawer now; Undo brings it back."]
    assert title not in titles(page)


def test_a_read_only_binder_says_why_nothing_moves(show, qtbot):
    page = show("Practice", "Methods")
    page.session.shelf.binder("Practice").writable = False
    before = titles(page)
    page.focus_in()
    with qtbot.waitSignal(page.session.said) as said:
        qtbot.keyClick(page.list, Qt.Key.Key_Down, MOVE)
    assert "read-only" in said.args[0]
    assert titles(page) == before


def test_an_empty_tab(session, show):
    practice = session.shelf.binder("Practice")
    tabs.add_tab(practice, "Nothing yet", "clippings")
    page = show("Practice", "Nothing yet")
    assert page.heading.accessibleDescription() == "Practice, 0 leaves"
    assert page.model.rowCount() == 0
    tabs.add_tab(practice, "Cards", "majors")
    page.show_spot(spot_of(session.shelf, "Practice", "Cards"))
    assert page.model.rowCount() == 0
    tabs.add_tab(practice, "Log", "readings")
    page.show_spot(spot_of(session.shelf, "Practice", "Log"))
    assert page.heading.accessibleDescription() == "Practice, 0 readings, newest first"


def test_a_model_without_a_tab_is_empty(qapp):
    assert ContentsModel().rowCount() == 0


def test_every_row_is_painted_at_any_size(show, qtbot):
    for width, height in ((314, 300), (524, 850)):
        page = show("Foundations", "Minor Arcana", width, height)
        picture = page.grab()
        assert picture.width() == width
        assert page.list.indexAt(QPoint(20, 40)).isValid()
