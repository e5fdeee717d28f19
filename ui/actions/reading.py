"""Readings: logged, put right, looked back on."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from binder.errors import CanMend
from binder.study.kinds import LeafKind
from binder.study.readings import readings
from ui.actions.base import Base, leaving
from ui.desk.stage import Stage

if TYPE_CHECKING:
    from ui.laying.entry import Entry
    from ui.leaves.reading.look_back import LookBackPage


class ReadingActions(Base):
    """Entry and look back are made when first asked for, and used again."""

    @cached_property
    def entry(self) -> Entry:
        """The two leaves a reading is logged on."""
        from ui.laying.entry import Entry

        made = Entry(self.session, self.theme_look, self.window)
        made.kept.connect(self._kept)
        made.put_by.connect(self.window.back_to_leaves)
        made.put_by.connect(self.window.show_slips)
        made.help_asked.connect(lambda: self.others.who_helps())
        made.opened.connect(self.window.show_rest)
        return made

    @cached_property
    def looking_back(self) -> LookBackPage:
        """The leaf on which is written what came of a reading."""
        from ui.leaves.reading.look_back import LookBackPage

        made = LookBackPage(self.session, self.theme_look)
        made.done.connect(self.window.back_to_leaves)
        return made

    def new_reading(self) -> None:
        """Log a reading in this binder's log, or the first binder that has one."""
        self._begin()

    @leaving
    def another_reading(self) -> None:
        """Log one more with the spread, the deck and the day of the reading at the left."""
        view, tab = self.open_view(), self.open_tab()
        if view.kind is not LeafKind.READING:
            raise CanMend("Open a reading first; the next is laid as that one was.")
        view.binder.gate.must_be_writable()
        like = readings.reading(view.binder, view.uid)
        self._lay_entry()
        self.entry.begin(view.binder, tab, like=like)

    def draw_month(self, month: str) -> None:
        """Log the card for a month."""
        self._begin(month=month)

    @leaving
    def _begin(self, month: str = "") -> None:
        binder, tab = self.session.log()
        binder.gate.must_be_writable()
        self._lay_entry()
        self.entry.begin(binder, tab, month=month)

    def _lay_entry(self) -> None:
        entry = self.entry
        self.window.lay_stage(
            Stage.ENTRY, entry.left, entry.right, entry.edit_actions(), entry.feet
        )

    def _kept(self, uid: str) -> None:
        self.session.open_leaf(uid)
        self.others.write()

    @leaving
    def change_reading(self) -> None:
        """Open the reading at the left in the entry, to put it right."""
        view = self.open_view()
        view.binder.gate.must_be_writable()
        self._lay_entry()
        self.entry.amend(view.binder, view.uid)

    @leaving
    def look_back(self) -> None:
        """Write what came of the reading at the left."""
        view = self.open_view()
        if view.kind is not LeafKind.READING:
            raise CanMend("Open a reading first; looking back is done on its leaf.")
        view.binder.gate.must_be_writable()
        self.window.back_to_leaves()
        self.looking_back.open(self.session.left)
        self.window.lay_stage(Stage.LOOK_BACK, None, self.looking_back)
        self.looking_back.setFocus()
