"""'Where it turned up': the readings a card appeared in, on a line of months and in rows."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QMenu, QSizePolicy, QVBoxLayout, QWidget

from binder.page.address import Scheme
from binder.study import dates
from binder.study.cards import appearances
from binder.study.cards.appearances import Appearance
from binder.study.readings import ended
from ui.kit.lists.tall_list import TallList
from ui.kit.page.heads import SectionHead
from ui.leaves.card.month_line import Dot, MonthLine
from ui.leaves.card.turned_rows import TurnedUpDelegate, TurnedUpModel
from ui.look.theme import Look
from ui.session.facing import NEWEST, newest
from ui.session.session import Session


class TurnedUp(QWidget):
    """The whole section; hidden while the card has not turned up."""

    followed = Signal(str)
    """'leaf:UUID' of a reading to lay open, or 'facing:UUID'."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head = SectionHead(look, "Where it turned up")
        self.line = MonthLine(look)
        self.model = TurnedUpModel(self)
        self.list = TallList(look, "Readings this card turned up in")
        self.delegate = TurnedUpDelegate(look, self.list)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self.delegate)
        self.list.chosen.connect(self._choose)
        self.list.menu_asked.connect(self._menu)
        self.line.followed.connect(self.followed)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setSpacing(0)
        column.setContentsMargins(0, 0, 0, look.theme.px(10))
        for part in (self.head, self.line, self.list):
            column.addWidget(part)
        look.changed.connect(self._measure)

    def show_card(self, session: Session, key: str) -> None:
        """Show a card's appearances on the session's shelf, newest first."""
        shelf, today = session.shelf, session.today
        first = MonthLine.first_day(today)
        seen, times = _newest(session, key, first)
        of = session.kept("readings", lambda: appearances.readings_count(shelf)) if seen else 0
        self.head.say("Where it turned up", appearances.note(times, of))
        self.model.show(seen, times, lambda: appearances.of_card(shelf, key), today)
        span = (first.isoformat(), f"{today.isoformat()}~")
        self.line.show_dots([_dot(one) for one in seen if span[0] <= one.day <= span[1]], today)
        self.line.setVisible(not self.line.empty)
        self._measure()
        self.setVisible(bool(seen))

    def _measure(self) -> None:
        self.delegate.measure(self.model.rows)
        self.list.fit()

    def _choose(self, row: int) -> None:
        if row < len(self.model.rows):
            self.followed.emit(self.model.rows[row].address)
            return
        self.model.expand()
        self._measure()
        self.list.setCurrentIndex(self.model.index(row, 0))

    def _menu(self, row: int, at: QPoint) -> None:
        if row >= len(self.model.rows):
            return
        address = self.model.rows[row].address
        facing = address.replace(Scheme.LEAF.prefix, Scheme.FACING.prefix, 1)
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("Open").triggered.connect(lambda: self.followed.emit(address))
        menu.addAction("Lay it facing").triggered.connect(lambda: self.followed.emit(facing))
        menu.popup(at)


def _newest(session: Session, key: str, first: date) -> tuple[list[Appearance], int]:
    """The newest appearances, back to the day `first` at least, and how many there are in all.

    A card seen for twenty years has hundreds, and turning to it reads only what is shown.
    """
    seen = newest(session, key) if key else []
    if len(seen) < NEWEST:
        return seen, len(seen)
    if seen[-1].day >= first.isoformat():
        seen = appearances.since(session.shelf, key, first.isoformat(), 2 * NEWEST)
    return seen, appearances.count(session.shelf, key)


def _dot(one: Appearance) -> Dot:
    turned = ", reversed" if one.reversed else ""
    tip = f"{dates.written(one.day)}: {one.title} ({one.label}{turned})"
    day = dates.day_said(one.day)
    return Dot(day, one.reversed, ended.verdict_of(one.verdicts), Scheme.LEAF.to(one.leaf_uid), tip)
