"""The year sheet: a card for each month, what was seen in it, and what came of it."""

from __future__ import annotations

from datetime import date

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu, QWidget

from binder.counting import counted
from binder.page.address import Scheme
from binder.study.overview import months
from binder.study.overview.months import MonthLine, State
from ui.kit.faces.faces import FaceCache
from ui.kit.forms.link_row import LinkRow
from ui.kit.lists.rows_model import RowsModel
from ui.kit.lists.tall_list import TallList
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.leaves.counted.year_rows import YearDelegate, address, spoken
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

FIRST, LAST = 1900, 2200
"""Years a sheet can be turned to."""


def year_of(spot: Spot, today: date) -> int:
    """The year a spot names, the year of today where it names none."""
    return int(spot.leaf) if spot.leaf.isdigit() else today.year


def sheet(session: Session, year: int) -> tuple[MonthLine, ...]:
    """The months of a year, read once between changes."""
    shelf, today = session.shelf, session.today
    return session.kept(("year", year, today), lambda: months.year_sheet(shelf, year, today))


class YearPage(Page):
    """Twelve months under each other."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading, self.links = Heading(look), LinkRow(look)
        self.model = RowsModel(spoken, lambda line: line.line, self)
        self.list = TallList(look, "Months")
        self.delegate = YearDelegate(look, FaceCache(session.photos), self.list)
        self.list.setModel(self.model)
        self.list.setItemDelegate(self.delegate)
        self.add(self.heading)
        self.add(self.links, gap=2)
        self.add(self.list, gap=8)
        self.rows.addStretch(1)
        self.links.followed.connect(self.followed)
        self.list.chosen.connect(self._choose)
        self.list.menu_asked.connect(self._menu)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the months of the year the spot names."""
        year = year_of(spot, self.session.today)
        rows = sheet(self.session, year)
        self.heading.say("A card for each month", f"The year {year}", _counted(rows))
        links = [
            (f"← {year - 1}", Scheme.YEAR.to(year - 1) if year > FIRST else ""),
            (f"{year + 1} →", Scheme.YEAR.to(year + 1) if year < LAST else ""),
            ("Regular draws…", Scheme.DRAWS.prefix),
            ("Print…", Scheme.PRINT_YEAR.to(year)),
        ]
        self.links.show_links(links)
        at = self.list.currentIndex().row()
        self.delegate.ratio = self.devicePixelRatioF()
        self.model.show(rows)
        self.list.fit()
        now = self.session.today.month - 1 if year == self.session.today.year else 0
        self.list.setCurrentIndex(self.model.index(at if at >= 0 else now, 0))

    def _choose(self, row: int) -> None:
        where = address(self.model.rows[row])
        if where:
            self.followed.emit(where)

    def _menu(self, row: int, at: QPoint) -> None:
        line = self.model.rows[row]
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        ways = [("Print this year…", Scheme.PRINT_YEAR.to(line.month[:4]))]
        if line.leaf_uid:
            ways[:0] = [("Open", address(line)), ("Lay it facing", Scheme.FACING.to(line.leaf_uid))]
        elif address(line):
            ways.insert(0, ("Draw it now", address(line)))
        for words, where in ways:
            menu.addAction(words).triggered.connect(
                lambda _checked=False, where=where: self.followed.emit(where)
            )
        menu.popup(at)

    def focus_in(self) -> None:
        """The keyboard on the months."""
        self.list.setFocus()


def _counted(rows: tuple[MonthLine, ...]) -> str:
    """'9 months drawn, 2 missed'."""
    drawn = sum(line.state is State.DRAWN for line in rows)
    missed = sum(line.state is State.MISSED for line in rows)
    said = f"{counted(drawn, 'month')} drawn"
    return f"{said}, {missed} without a card" if drawn and missed else said
