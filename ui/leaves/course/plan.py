"""The plan leaf: the units of the course, how far each is, and notes below."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from datetime import date, timedelta
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QPushButton, QVBoxLayout, QWidget

from binder.cards.facts import CARDS
from binder.counting import counted
from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.reckon.timetable import Rest
from binder.store.file import Binder
from binder.study.cards.words import cards_with_words
from binder.study.course import aims, course, timetable
from binder.study.course.course import UNIT_LENGTH, UnitView
from binder.study.course.timetable import Moved
from binder.study.dates import parsed
from binder.study.dates import written as written_day
from binder.study.overview.progress import FRACTION, STEPS, Progress, progress
from ui.kit.forms.hints import Hint
from ui.kit.forms.wrap_row import WrapRow
from ui.kit.lists.rows_model import RowsModel
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.leaves.course.plan_list import PlanList
from ui.leaves.course.plan_rows import UnitRow, rows_of
from ui.leaves.course.wall import Wall
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

if TYPE_CHECKING:
    from ui.kit.forms.form import FormDialog
    from ui.leaves.course.unit_dialog import UnitWords

KEYS = (
    ("open", "&Open its leaf", ""),
    ("change", "&Change…", ""),
    ("up", "Move &up", "Ctrl+Shift+Up"),
    ("down", "Move &down", "Ctrl+Shift+Down"),
    ("remove", "&Remove", "Del"),
)
"""Name, words and key of what can be done with a unit."""


LEGEND = (
    f"Each square is a card of the unit, and a {FRACTION} of it is inked for each step: "
    f"{', '.join(STEPS)}."
)
UNIT_WIDTH = 190
"""Pixels that a unit's name has on its button, at scale 1."""
FINISH, AGAIN = "Finish this level…", "Take this level up again"


class PlanPage(Page):
    """A row for every unit; a click or Enter opens its leaf, or asks for its days."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.model = RowsModel(UnitRow.spoken, parent=self)
        self.list = PlanList(look)
        self.list.setModel(self.model)
        self.list.chosen.connect(self._choose)
        self.list.selectionModel().currentChanged.connect(self._stood)
        self.list.ticked.connect(self.tick)
        self.list.dropped.connect(self.drop_unit)
        self.list.menu_asked.connect(self._menu)
        self.legend = Hint(look)
        self.quiet = self.prose("No units yet", role="label")
        self.quiet.show_html(
            "<p><small>No units yet. A unit is a portion of the course: some cards, and some "
            "weeks to study them in. Put the first one here with “Add a unit”.</small></p>"
        )
        self.notes_head, self.notes = self.head("Notes"), self.prose("Notes")
        self.wall_head, self.wall = self.head("How far each card is"), Wall(look)
        self.wall.chosen.connect(lambda key: self.followed.emit(Scheme.CARD.to(key)))
        self.dialog: FormDialog | None = None
        self._make_actions()
        self.add(self.heading)
        self.add(self.legend, gap=6)
        self.add(self.list, gap=8)
        self.add(self.quiet, self._buttons(), self.wall_head, self.wall)
        self.add(self.notes_head, self.notes, gap=12)
        self.rows.addStretch(1)

    def _make_actions(self) -> None:
        self._actions: dict[str, QAction] = {}
        verbs = {
            "open": self.open_leaf, "change": self.change, "up": lambda: self.move_unit(-1),
            "down": lambda: self.move_unit(1), "remove": self.remove,
        }  # fmt: skip
        for name, words, key in KEYS:
            action = QAction(words, self.list)
            action.setShortcut(QKeySequence(key))
            action.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            action.triggered.connect(verbs[name])
            self.list.addAction(action)
            self._actions[name] = action

    def unit_actions(self) -> list[QAction]:
        """What can be done with the unit the keyboard is on."""
        return list(self._actions.values())

    def _buttons(self) -> QWidget:
        self.add_button = QPushButton("Add a unit…")
        self.unit_button = QPushButton()
        self.unit_menu = QMenu(self.unit_button)
        self.unit_menu.addActions(self.unit_actions())
        self.aims_menu = QMenu("&Aims", self.unit_button)
        self.unit_menu.addMenu(self.aims_menu)
        self.aims_menu.aboutToShow.connect(self._fill_aims)
        self.unit_button.setMenu(self.unit_menu)
        self.move_button = QPushButton("Move the timetable…")
        self.finish_button = QPushButton(FINISH)
        self.add_button.clicked.connect(self.add_unit)
        self.move_button.clicked.connect(self.move_timetable)
        self.finish_button.clicked.connect(lambda: self.followed.emit(Scheme.LEVEL.prefix))
        box = QWidget()
        column = QVBoxLayout(box)
        column.setContentsMargins(2, self.look.theme.px(12), 2, self.look.theme.px(14))
        row = self._verbs = WrapRow()
        for button in (
            self.add_button, self.unit_button, self.move_button, self.finish_button,
        ):  # fmt: skip
            row.add(button)
        column.addWidget(row)
        return box

    # Filling

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the units of the leaf's binder, and the words on the leaf itself."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        at = self.list.currentIndex().row()
        units = course.units(view.binder)
        written = cards_with_words(self.session.shelf)
        found = course.unit_now(self.session.shelf, self.session.today)
        today, shelf = self.session.today, self.session.shelf
        known = self.session.kept("progress", lambda: progress(shelf))
        rows = rows_of(units, written, found[1].uid if found else "", today, known)
        self.model.show(rows)
        self.list.fit()
        self._stand_at(at)
        ended = course.finished(view.binder)
        said = (f"finished on {written_day(ended)}" if ended else "", summed(rows))
        self.heading.say(view.binder.name, view.title, ", ".join(filter(None, said)))
        self.list.setVisible(bool(rows))
        self.quiet.setVisible(not rows)
        self.unit_button.setVisible(bool(rows))
        self.move_button.setVisible(bool(rows))
        self.finish_button.setText(AGAIN if ended else FINISH)
        self._verbs.fit()
        carded = any(row.unit.cards for row in rows)
        self.legend.say(LEGEND if carded else "")
        self._fill_wall(known, shown=carded)
        noted = bool(view.text.strip())
        for part in (self.notes_head, self.notes):
            part.setVisible(noted)
        self.notes.show_html(self.rendered(view) if noted else "", marks)

    def _fill_wall(self, known: Mapping[str, Progress], *, shown: bool) -> None:
        for part in (self.wall_head, self.wall):
            part.setVisible(shown)
        if not shown:
            return
        self.list.titles = self.session.titles
        self.wall.show_progress(known, self.list.titles)
        self.wall_head.say("How far each card is", f"{len(known)} of {len(CARDS)} begun")

    def _stand_at(self, row: int) -> None:
        last = self.model.rowCount() - 1
        self.list.setCurrentIndex(self.model.index(min(max(row, 0), last), 0))
        self._stood()

    def _stood(self) -> None:
        """Another unit has the keyboard, or none: the verbs are about that one."""
        unit = self._unit()
        self.unit_button.setEnabled(unit is not None)
        self._name_unit()
        self._actions["open"].setEnabled(bool(unit and unit.leaf))
        self.aims_menu.setEnabled(bool(unit and unit.aims))

    def _name_unit(self) -> None:
        """Say on the button which unit it is about."""
        at = self.list.currentIndex().row()
        title = self.model.rows[at].title if 0 <= at < len(self.model.rows) else "No unit"
        metrics = self.unit_button.fontMetrics()
        room = self.look.theme.px(UNIT_WIDTH)
        shown = metrics.elidedText(title, Qt.TextElideMode.ElideRight, room)
        self.unit_button.setText(shown.replace("&", "&&"))
        self.unit_button.setToolTip(f"What can be done with {title}")
        self.unit_button.setAccessibleName(title)

    def focus_in(self) -> None:
        """The keyboard on the units."""
        (self.list if self.model.rows else self.add_button).setFocus()

    # Verbs

    def _binder(self) -> Binder | None:
        return self.session.binder_of(self.spot) if self.spot else None

    def _unit(self) -> UnitView | None:
        row = self.list.currentIndex().row()
        return self.model.rows[row].unit if 0 <= row < len(self.model.rows) else None

    def _choose(self, row: int) -> None:
        self._stand_at(row)
        unit = self._unit()
        if unit is not None and unit.leaf:
            self.open_leaf()
        elif unit is not None:
            self.change()

    def _menu(self, row: int, at: QPoint) -> None:
        self._stand_at(row)
        self.unit_menu.popup(at)

    def open_leaf(self) -> None:
        """Lay the unit's own leaf open."""
        unit = self._unit()
        if unit is not None and unit.leaf:
            self.followed.emit(Scheme.LEAF.to(unit.leaf))

    def add_unit(self) -> None:
        """Ask for a new unit, beginning when the last one ends."""
        binder = self._binder()
        if binder is None:
            return
        starts = _after(course.units(binder), self.session.today)
        ends = starts + UNIT_LENGTH - timedelta(days=1)

        from ui.leaves.course.unit_dialog import UnitWords

        def keep(said: UnitWords) -> None:
            begins, until = (date.fromisoformat(day) if day else None for day in said[1:3])
            course.add_unit(binder, said.name, said.cards, begins, until, said.aims)
            self._say_begun(said)

        self._ask("Add a unit", UnitWords("", starts.isoformat(), ends.isoformat(), (), ""), keep)

    def change(self) -> None:
        """Ask for other words and days for a unit."""
        binder, unit = self._binder(), self._unit()
        if binder is None or unit is None:
            return

        from ui.leaves.course.unit_dialog import UnitWords

        def keep(said: UnitWords) -> None:
            words = said._asdict()
            along = words.pop("along")
            with binder.change("Change unit"):
                course.change_unit(binder, unit.uid, **words)
                timetable.move(binder, along)
            if (said.starts, said.ends) != (unit.starts, unit.ends):
                self._say_begun(said)

        self._ask(
            "Change the unit",
            UnitWords(unit.name, unit.starts, unit.ends, unit.cards, unit.aims),
            keep,
            follow=lambda ends: timetable.follow(binder, unit.uid, ends, self.session.today),
        )

    def _say_begun(self, said: UnitWords) -> None:
        words = course.begun_words(said.name, said.starts, said.ends, self.session.today)
        if words:
            self.session.said.emit(words)

    def _ask(
        self, title: str, words: UnitWords, keep: Callable[[UnitWords], None],
        follow: Callable[[str], Sequence[Moved]] | None = None,
    ) -> None:  # fmt: skip
        from ui.leaves.course.unit_dialog import UnitDialog

        binder = self._binder()
        rest = timetable.rest(binder) if binder else Rest()
        self._open(
            UnitDialog(
                self.look, title, words, keep, self.session.today, self.window(),
                study=lambda first, last: timetable.study_days(rest, first, last), follow=follow,
            )
        )  # fmt: skip

    def _open(self, dialog: FormDialog) -> None:
        self.dialog = dialog
        self.dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.dialog.finished.connect(self._answered)
        self.dialog.open()

    def _answered(self) -> None:
        self.dialog = None

    def move_timetable(self) -> None:
        """Ask how the days of all units move, and show it before it is done."""
        from ui.leaves.course.timetable_dialog import TimetableDialog

        binder = self._binder()
        if binder is not None:
            self._open(TimetableDialog(self.look, binder, self.session.today, self.window()))

    def move_unit(self, step: int) -> None:
        """Move the unit up or down among the others."""
        binder, unit, row = self._binder(), self._unit(), self.list.currentIndex().row()
        if binder is None or unit is None or not 0 <= row + step < len(self.model.rows):
            return
        if self._try(lambda: course.move_unit(binder, unit.uid, row + step)):
            self._stand_at(row + step)

    def drop_unit(self, row: int, index: int) -> None:
        """A unit was dragged to another place among the others."""
        binder, unit = self._binder(), self.model.rows[row].unit
        if binder and self._try(lambda: course.move_unit(binder, unit.uid, index)):
            self._stand_at(index)

    # Aims

    def tick(self, row: int, aim: int) -> None:
        """Tick an aim of the unit in a row, or take its tick away."""
        binder, unit = self._binder(), self.model.rows[row].unit
        self._stand_at(row)
        if binder is not None:
            self._try(lambda: aims.tick(binder, unit.uid, aim))

    def _fill_aims(self) -> None:
        """The aims of the unit the keyboard is on, each to be ticked."""
        self.aims_menu.clear()
        row = self.list.currentIndex().row()
        for number, aim in enumerate(self.model.rows[row].aims):
            action = self.aims_menu.addAction(aim.words.replace("&", "&&"))
            action.setCheckable(True)
            action.setChecked(aim.done)
            action.triggered.connect(partial(self.tick, row, number))

    def remove(self) -> None:
        """Take the unit out of the plan."""
        binder, unit = self._binder(), self._unit()
        if binder is None or unit is None:
            return
        if self._try(lambda: course.remove_unit(binder, unit.uid)):
            self.session.said.emit(f"“{unit.name}” is out of the plan; Undo brings it back.")

    def _try(self, verb: Callable[[], object]) -> bool:
        try:
            verb()
        except RingboundError as error:
            self.session.said.emit(str(error))
            return False
        return True


def summed(rows: list[UnitRow]) -> str:
    """'3 of 7 units studied, 43 of 78 cards'."""
    if not rows:
        return ""
    done = sum(bool(row.marks) and all(row.marks) for row in rows)
    cards = {key: mark for row in rows for key, mark in zip(row.unit.cards, row.marks, strict=True)}
    units = f"{done} of {counted(len(rows), 'unit')} studied"
    return f"{units}, {sum(cards.values())} of {len(cards)} cards" if cards else units


def _after(units: list[UnitView], today: date) -> date:
    """The day after the last unit ends; today when that is past, or there is none."""
    ends = [end.date() for unit in units if (end := parsed(unit.ends))]
    return max([today, *(end + timedelta(days=1) for end in ends)])
