"""Both leaves in every width, theme and scale; and in the window."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from binder.store.clock import Clock
from binder.study.leaves import tabs
from ui.actions.installed import actions_of

CTRL = Qt.KeyboardModifier.ControlModifier
TEN = "3w, hermit r, qc, 7p r, 2s, star, 10c, knw, "


def shown_parts(page):
    return [
        part
        for part in page.column.findChildren(QWidget)
        if part.isVisible() and part.parent() is page.column and part.height() > 0
    ]


def room(part, page):
    return QRect(part.mapTo(page.column, QPoint()), part.size())


@pytest.mark.parametrize("picking", [False, True])
@pytest.mark.parametrize(
    ("width", "height", "scale", "name"),
    [
        (1120, 820, 1, "day"), (720, 620, 1, "lamp"), (720, 900, 1, "day"),
        (1120, 820, 1.5, "lamp"), (1360, 820, 2, "day"),
    ],
)  # fmt: skip
def test_nothing_overlaps_and_nothing_is_wider_than_the_leaf(
    desk, look, width, height, scale, name, picking
):
    desk.entry.show_example()
    desk.head.querent.setText("Ada Quillfeather")
    look.set_name(name)
    look.set_scale(scale)
    desk.host.resize(width, height)
    desk.entry.left.pick_faces(picking)
    QApplication.processEvents()
    QApplication.processEvents()
    page = desk.entry.left
    parts = [part for part in shown_parts(page) if part is not desk.line.choices]
    parts.sort(key=lambda part: part.y())
    for one, other in pairwise(parts):
        assert room(one, page).bottom() <= room(other, page).top() + 1
    edge = page.scroller.viewport().width()
    assert [(p, room(p, page)) for p in parts if room(p, page).right() > edge] == []
    fields = (desk.head.spread, desk.head.deck, desk.head.querent, desk.head.topic,
              desk.head.looks, desk.head.look_on)  # fmt: skip
    rooms = [room(field, page) for field in fields]
    for number, one in enumerate(rooms):
        assert one.right() <= page.scroller.viewport().width()
        assert not any(one.intersects(other) for other in rooms[number + 1 :])
    assert not desk.host.grab().isNull()
    look.set_scale(1)
    look.set_name("day")


def test_the_slip_of_choices_stays_on_the_leaf(desk):
    desk.host.resize(720, 620)
    desk.entry.left.to_cards()
    desk.type("3w, hermit r, qc, 7p r, 2s, staar")
    slip = desk.line.choices
    assert slip.isVisible()
    assert slip.geometry().right() <= desk.entry.left.column.width() + 8
    assert slip.geometry().top() >= desk.line.geometry().bottom() - 8


def test_every_control_has_a_name(desk):
    desk.entry.left.pick_faces()
    for leaf in (desk.entry.left, desk.entry.right):
        for part in leaf.findChildren(QWidget):
            if part.focusPolicy() != Qt.FocusPolicy.NoFocus and part.isVisible():
                text = part.text() if isinstance(part, QAbstractButton) else ""
                own = part.parentWidget()
                named = part.accessibleName() or text or (own and own.accessibleName())
                assert named, part


def test_tab_walks_from_the_question_to_the_way_out_and_on(desk):
    desk.head.looks.click()
    desk.head.question.setFocus()
    seen = []
    for _ in range(16):
        seen.append(desk.host.focusWidget())
        desk.key(Qt.Key.Key_Tab)
    for wanted in (
        desk.head.spread, desk.head.deck, desk.head.querent, desk.head.topic, desk.head.looks,
        desk.head.look_on, desk.line, desk.entry.right.view, desk.entry.right.keep_row.keep,
    ):  # fmt: skip
        assert wanted in seen


def test_where_one_leaf_has_room_the_ways_out_are_on_it(desk):
    assert not desk.entry.left.keep_row.isVisible()
    desk.entry.right.hide()
    assert desk.entry.left.keep_row.isVisible()
    desk.entry.right.show()
    assert not desk.entry.left.keep_row.isVisible()


def test_arrows_that_no_field_uses_turn_no_leaf(desk):
    desk.entry.right.keep_row.keep.setFocus()
    heard = []
    desk.host.keyPressEvent = lambda event: heard.append(event.key())
    desk.key(Qt.Key.Key_Right)
    assert heard == []


def test_in_the_window_ctrl_return_keeps_and_opens_the_reading(qtbot, course_shelf, tmp_path, qapp):
    from ui.app import Program
    from ui.session.memory import Memory

    memory = Memory(tmp_path / "desk.ini")
    memory.welcomed = True
    path = course_shelf.path
    program = Program(qapp, memory, Clock())
    window = program.open(path)
    qtbot.addWidget(window)
    qtbot.waitExposed(window)
    window.activateWindow()
    actions_of(window).new_reading()
    entry = actions_of(window).entry
    kept = []
    entry.kept.connect(kept.append)
    entry.left.head.question.setFocus()
    QTest.keyClicks(window.focusWidget(), "In the window?")
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Return)
    QTest.keyClicks(window.focusWidget(), "3w, hermit r, qc")
    entry.right.view.setFocus()
    entry.kept.disconnect()
    entry.kept.connect(kept.append)
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Return, CTRL)
    assert len(kept) == 1
    home = window.session.shelf.home_of(kept[0])
    assert home is not None
    assert tabs.first_of_kind(home, "readings") is not None
    window.close()
    window.session.shelf.close()


def test_nothing_of_the_head_reaches_over_the_edge_at_the_largest_letters(desk, look):
    look.set_scale(2.0)
    head = desk.head
    assert head.minimumSizeHint().width() < 480
    look.set_scale(1.0)
