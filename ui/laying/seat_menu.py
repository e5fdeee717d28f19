"""What can be done with one place of a layout being laid, as a menu."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from binder.study.readings.hand import Hand, Seat


def seat_menu(hand: Hand, n: int, parent: QWidget) -> QMenu:
    """The menu of seat `n`, from 1; it goes when it is shut."""
    menu = QMenu(parent)
    menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    seat = hand.seat(n)
    turned = "Turn upright" if seat.reversed else "Turn reversed"
    verbs: tuple[tuple[str, str, Callable[[], None], bool], ...] = (
        (turned, "R", partial(hand.turn, n), seat.card is not None),
        ("Take up", "Del", partial(hand.take_up, n), seat.part is not None),
        ("Next card goes here", "", partial(hand.aim_at, n), seat.part is None and n != hand.aim),
        ("Next card goes beside it", "+", partial(hand.aim_beside, n), seat.card is not None),
    )
    for words, key, verb, possible in (*verbs, *_beside(hand, seat)):
        action = menu.addAction(words)
        if key:
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.setShortcutVisibleInContextMenu(True)
        action.setEnabled(possible)
        action.triggered.connect(lambda _checked=False, verb=verb: verb())
    return menu


def _beside(hand: Hand, seat: Seat) -> Iterator[tuple[str, str, Callable[[], None], bool]]:
    """The same for every card that lies beside the one of the seat."""
    for part in seat.beside:
        if part.card is not None:
            key, way = part.card.key, "upright" if part.reversed else "reversed"
            title = hand.titles.title(key)
            yield f"Turn {title} {way}", "", partial(hand.turn_card, key), True
            yield f"Take {title} up", "", partial(hand.take_card_up, key), True


def pop_up(hand: Hand, n: int, at: QPoint, parent: QWidget) -> None:
    """Show the menu of a seat at a place on the screen."""
    seat_menu(hand, n, parent).popup(at)
