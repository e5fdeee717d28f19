"""The whole log: its year sheet, what came of it, which draws are offered."""

from __future__ import annotations

from ui.actions.base import Base, leaving
from ui.session.trail import Show


class LogActions(Base):
    """What is counted from all readings."""

    def year_sheet(self, year: str = "") -> None:
        """Twelve months with the card drawn for each."""
        self.session.open_counted(Show.YEAR, year)

    def came(self) -> None:
        """How everything stated came out."""
        self.session.open_counted(Show.CAME)

    def sure(self, group: str = "") -> None:
        """Said against came for a group of statements, facing what is read."""
        self.session.face_counted(Show.SURE, group)

    @leaving
    def calendar(self) -> None:
        """What is due, as a file that any calendar opens."""
        from ui.dialogs.calendar_dialog import CalendarDialog

        self.ask(CalendarDialog(self.session, self.theme_look, self.window))

    def draws(self) -> None:
        """Which draws are offered on slips."""
        from ui.dialogs.draws import DrawsDialog

        self.ask(DrawsDialog(self.session, self.theme_look, self.window))
