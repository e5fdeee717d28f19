"""What can be done with one place of a layout being laid, as a menu."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from binder.study.hand import Hand


def seat_menu(hand: Hand, n: int, parent: QWidget) -> QMenu:
    """The menu of seat `n`, from 1; it goes when it is shut."""
    menu = QMenu(parent)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    seat = hand.seat(n)
    turned = "Turn upright" if seat.reversed else "Turn reversed"
    verbs = (
        (turned, "R", hand.turn, seat.card is not None),
        ("Take up", "Del", hand.take_up, seat.part is not None),
        ("Next card goes here", "", hand.aim_at, seat.part is None and n != hand.aim),
    )
    for words, key, verb, possible in verbs:
        action = menu.addAction(words)
        if key:
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.setShortcutVisibleInContextMenu(True)
        action.setEnabled(possible)
        action.triggered.connect(lambda _checked=False, verb=verb: verb(n))
    return menu


def pop_up(hand: Hand, n: int, at: QPoint, parent: QWidget) -> None:
    """Show the menu of a seat at a place on the screen."""
    seat_menu(hand, n, parent).popup(at)
