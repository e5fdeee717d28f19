"""Everything by keyboard alone: the way of Tab, focus that is seen, names that are heard."""

import re
from collections.abc import Iterator
from itertools import groupby

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractButton, QComboBox, QLabel, QLineEdit, QMenuBar, QWidget

from tests.ui.driving import (
    CTRL,
    SHIFT,
    K,
    answering,
    buttons,
    click,
    divider,
    key,
    keys,
    settle,
    spine,
)
from ui.actions.installed import actions_of
from ui.desk import walk
from ui.pictures import newest_reading


def contents(window):
    click(spine(window, "Practice"))
    click(divider(window, "Readings log"))


def reading(window):
    window.session.open_leaf(newest_reading(window.session.shelf))
    window.session.face_card("major-17")


def card(window):
    window.session.open_leaf(window.session.shelf.card_leaf("major-17")[1])


def source(window):
    click(spine(window, "Practice"))
    click(divider(window, "Sources"))
    window.session.turn(1)


def plan(window):
    click(spine(window, "Foundations"))
    click(divider(window, "Course plan"))
    window.session.turn(1)


def write(window):
    reading(window)
    actions_of(window).write()


def log(window):
    reading(window)
    actions_of(window).new_reading()


def look_back(window):
    reading(window)
    actions_of(window).look_back()


def sheets(window):
    reading(window)
    actions_of(window).print()
    actions_of(window).proof.wait()


def narrow(window):
    reading(window)
    window.resize(1000, 700)


def year(window):
    actions_of(window).year_sheet()


def came(window):
    actions_of(window).came()


def recall(window):
    actions_of(window).recall()


STATES = [
    contents,
    reading,
    card,
    source,
    plan,
    write,
    log,
    look_back,
    sheets,
    narrow,
    year,
    came,
    recall,
]


@pytest.fixture(params=STATES, ids=lambda state: state.__name__)
def desk(window, request):
    """The window in each of its main states."""
    request.param(window)
    settle()
    return window


def part_of(window, widget) -> int:
    """Number of the part of the window a widget is in."""
    for number, part in enumerate(walk.regions(window.desk, window.cover)):
        if part is widget or part.isAncestorOf(widget):
            return number
    return -1


def walked(window, code=Qt.Key.Key_Tab, modifiers=Qt.KeyboardModifier.NoModifier):
    """Widgets that get the keyboard one after another, until the first one has it again."""
    window.bar.find_field.setFocus()
    seen = [window.focusWidget()]
    for _ in range(400):
        key(window, code, modifiers)
        if window.focusWidget() is seen[0]:
            return seen
        seen.append(window.focusWidget())
    raise AssertionError(f"Tab never comes back; it hangs at {seen[-1]}")


def test_tab_walks_all_controls_part_after_part_and_comes_round(desk):
    forth = walked(desk)
    parts = [part for part, _ in groupby(part_of(desk, widget) for widget in forth)]
    assert parts == sorted(set(parts))
    assert -1 not in parts
    assert parts[:3] == [0, 1, 2]
    missed = {
        widget
        for widget in set(walk.stops(desk, desk.desk, desk.cover)) - set(forth)
        # Of buttons that exclude each other one is reached by Tab, the others by arrows.
        if not (isinstance(widget, QAbstractButton) and one_of_many(widget))
    }
    assert not {f"{type(widget).__name__} {heard(widget)}" for widget in missed}
    back = dict.fromkeys(walked(desk, K.Key_Backtab, SHIFT))
    first, *rest = dict.fromkeys(forth)
    assert list(back) == [first, *reversed(rest)]


def test_the_leaf_that_is_read_is_walked_from_its_head_to_its_foot(window):
    reading(window)
    settle()
    page = window.cover.leaf("left")
    stops = [
        widget
        for widget in walk.stops(window, window.desk, window.cover)
        if page.column.isAncestorOf(widget)
    ]
    tops = [widget.mapTo(page.column, widget.rect().topLeft()).y() for widget in stops]
    assert len(stops) > 4
    assert tops == sorted(tops)


def written_by_tab(window, *lines):
    """Type a line, go on with Tab, type the next, and so on."""
    for line in lines:
        keys(window, line)
        key(window, K.Key_Tab)


def test_tab_leads_from_impressions_through_the_places_to_what_is_expected(window):
    write(window)
    desk = window.cover.leaf("left")
    key(window, K.Key_End, CTRL)
    written_by_tab(window, " One.", "Two", "Three")
    assert "Two" in desk.fields.places.parts[0].field.toPlainText()
    assert "Three" in desk.fields.places.parts[1].field.toPlainText()
    for _ in desk.fields.places.parts[2:]:
        key(window, K.Key_Tab)
    stated = desk.fields.stated
    assert window.focusWidget() in (stated.add, *(row.text for row in stated.rows))


def test_a_new_statement_is_walked_before_what_stands_below_it(window):
    write(window)
    desk = window.cover.leaf("left")
    stated = desk.fields.stated
    click(stated.add)
    row = stated.rows[-1]
    written_by_tab(window, "The kiln holds.", "", "", "", "")
    assert row.text.toPlainText() == "The kiln holds."
    assert window.focusWidget() is stated.add


def test_tab_leads_from_the_verdicts_to_what_happened(window):
    look_back(window)
    page = window.cover.leaf("right")
    for statement in page.statements:
        statement.first().setFocus()
        key(window, K.Key_Space)
    key(window, K.Key_Tab)
    written_by_tab(window, "M. came, twice.")
    assert page.text.toPlainText() == "M. came, twice."
    assert window.focusWidget() is page.best


def one_of_many(button: QAbstractButton) -> bool:
    group = button.group()
    return button.autoExclusive() or (group is not None and group.exclusive())


def test_enter_presses_a_button_of_the_bar(window):
    button = next(b for b in window.bar.buttons() if b.text() == "New reading")
    walk.bring(button, Qt.FocusReason.TabFocusReason)
    key(window, K.Key_Return)
    assert window.staged("entry")


def test_enter_presses_a_button_of_a_leaf(window):
    write(window)
    desk = window.cover.leaf("left")
    walk.bring(desk.finish, Qt.FocusReason.TabFocusReason)
    key(window, K.Key_Return)
    assert not window.staged("write")


def test_enter_in_a_line_does_not_press_the_button_it_leads_to(window):
    recall(window)
    held = actions_of(window).round
    key(window, K.Key_Return)
    assert held.right.buttons[2].hasFocus()
    assert held.left.line.accessibleName().startswith("0 of")


def underlined(window) -> Iterator[tuple[str, str]]:
    """Letters that work with Alt, each with the words it is underlined in."""
    bar = window.findChild(QMenuBar)
    menus = [one.text() for one in bar.actions() if one.isVisible()] if bar else []
    widgets = [*window.findChildren(QAbstractButton), *window.findChildren(QLabel)]
    shown = [one.text() for one in widgets if one.isVisibleTo(window) and "<" not in one.text()]
    for words in (*menus, *shown):
        found = re.search("&([^& ])", words.replace("&&", ""))
        if found:
            yield found[1].upper(), words


def underlined_twice(window) -> dict[str, list[str]]:
    letters: dict[str, list[str]] = {}
    for letter, words in underlined(window):
        letters.setdefault(letter, []).append(words)
    return {letter: words for letter, words in letters.items() if len(words) > 1}


def nameless(window) -> set[str]:
    """Whatever takes the keyboard and is called nothing."""
    return {
        f"{type(widget).__name__} in {type(widget.parentWidget()).__name__}"
        for widget in focusable(window)
        if not heard(widget).strip()
    }


def test_everything_has_a_name_and_no_letter_is_underlined_twice(desk):
    assert not underlined_twice(desk)
    assert not nameless(desk)


DIALOGS = [
    "blank", "calendar", "card_faces", "decks", "draws", "drawer", "earlier", "finish_level",
    "mark_picture", "pair_card", "recall_wishes", "spreads",
]  # fmt: skip


@pytest.mark.parametrize("name", DIALOGS)
def test_no_letter_is_underlined_twice_in_a_dialog(window, name):
    card(window)
    doubles: list[dict[str, list[str]]] = []

    def look(dialog):
        doubles.append(underlined_twice(dialog))
        dialog.reject()

    answering(look)
    getattr(actions_of(window), name)()
    assert doubles == [{}]


# Names


def focusable(window: QWidget) -> Iterator[QWidget]:
    for widget in window.findChildren(QWidget):
        inner = isinstance(widget, QLineEdit) and isinstance(widget.parentWidget(), QComboBox)
        if (
            widget.focusPolicy() != Qt.FocusPolicy.NoFocus
            and widget.isVisibleTo(window)
            and widget.focusProxy() is None
            and not inner
        ):
            yield widget


def heard(widget: QWidget) -> str:
    """What a screen reader says a widget is called."""
    face = QAccessible.queryAccessibleInterface(widget)
    return face.text(QAccessible.Text.Name) if face else ""


def test_leaves_are_called_by_their_titles(window):
    reading(window)
    title = window.session.leaf_of(window.session.left).title
    assert heard(window.cover.leaf("left")) == f"Leaf: {title}"
    assert heard(window.cover.leaf("right")) == "Facing leaf: The Star"


# Focus that is seen


def test_where_the_keyboard_is_can_be_seen(desk):
    """The part of the window a widget is in looks otherwise while that widget has the keyboard."""
    parts, unseen = walk.regions(desk.desk, desk.cover), []
    for widget in walk.stops(desk, desk.desk, desk.cover):
        part = parts[part_of(desk, widget)]
        if desk.cover.isAncestorOf(part):
            part = desk.cover  # a leaf is marked on the margin of its paper
        if part is desk.bar and widget is desk.bar.find_field:
            continue  # tested below: it has the keyboard while the others are looked at without
        walk.bring(widget, Qt.FocusReason.TabFocusReason)
        settle(1)
        focused = part.grab().toImage()
        elsewhere = desk.bar.find_field if part is not desk.bar else buttons(desk.spines)[0]
        elsewhere.setFocus(Qt.FocusReason.TabFocusReason)
        settle(1)
        if part.grab().toImage() == focused:
            unseen.append(f"{type(widget).__name__} {heard(widget)}")
    assert not unseen


def test_the_find_box_shows_the_keyboard_by_its_edge(window):
    box = window.bar.find_field
    window.focus_leaf()
    settle()
    before = box.grab().toImage().pixelColor(1, box.height() // 2)
    box.setFocus()
    settle()
    assert box.grab().toImage().pixelColor(1, box.height() // 2) != before


def test_keys_alone_open_a_reading_face_a_card_and_go_back(window):
    """From the shelf to a card and back without touching the mouse."""
    key(window, K.Key_F, CTRL)
    key(window, K.Key_Tab)
    while window.focusWidget() not in buttons(window.spines):
        key(window, K.Key_Tab)
    key(window, K.Key_Right)
    key(window, K.Key_Return)
    assert window.session.binder.name == "Practice"
    while window.session.tab.name != "Readings log":
        key(window, K.Key_Tab, CTRL)
    window.focus_leaf()
    key(window, K.Key_Return)
    assert window.session.leaf_of(window.session.left).kind == "reading"
    key(window, K.Key_F6)
    page = window.cover.leaf("right")
    assert page is window.focusWidget() or page.isAncestorOf(window.focusWidget())
    key(window, K.Key_Return, CTRL)
    assert window.session.leaf_of(window.session.left).kind == "card"
