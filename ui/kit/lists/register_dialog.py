"""A dialog over a list of things the owner has: the list at the left, what is chosen beside it."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QBoxLayout, QDialog, QFormLayout, QHBoxLayout, QWidget

from binder.errors import CanMend, RingboundError
from binder.store.change import Notice
from binder.store.file import Binder
from ui.kit.forms.hints import Hint
from ui.kit.lists.register import Register
from ui.look.theme import Look
from ui.session.session import Session


class RegisterDialog(QDialog):
    """What decks and spreads have in common; every change is written at once."""

    touched: tuple[str, ...] = ()
    """Tables whose changes are shown."""
    no_binder = ""
    """What is said where there is no binder to keep the thing in."""

    def __init__(
        self, session: Session, look: Look, title: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._columns: Sequence[QBoxLayout | QFormLayout] = ()
        self.setWindowTitle(title)
        self.list = Register(look, title)
        self.wrong = Hint(look)
        self._both = QHBoxLayout(self)
        session.changed.connect(self._changed)
        look.changed.connect(self.restyle)

    def refresh(self, key: str = "") -> None:
        """List everything anew; `key` is to be shown then, else what was shown before."""
        raise NotImplementedError

    def restyle(self) -> None:
        """Take up the theme of now."""
        px = self._look.theme.px
        self._both.setContentsMargins(*[px(16)] * 4)
        for column in (*self._columns, self._both):
            column.setSpacing(px(10))

    def guard(self, verb: Callable[..., None], *values: object) -> None:
        """Do something; a failure is said, and the fields show what is true."""
        try:
            verb(*values)
        except RingboundError as error:
            self.wrong.say(str(error), wrong=True)

    def binder(self) -> Binder:
        """Where changes are written: the binder that lies open, else the first."""
        binders = self._session.shelf.binders
        if not binders:
            raise CanMend(self.no_binder)
        return self._session.binder or binders[0]

    def _changed(self, notice: Notice | None) -> None:
        if notice is None or notice.touches(*self.touched):
            self.refresh()
