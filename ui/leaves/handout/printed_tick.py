"""A box to tick once a handout is printed and filed on paper."""

from __future__ import annotations

from PySide6.QtWidgets import QCheckBox, QWidget

from binder.errors import RingboundError
from binder.study import dates
from binder.study.handouts import on_paper
from binder.study.leaves.leaves import LeafView
from ui.look.theme import Look
from ui.session.session import Session

OPEN = "Printed and filed on paper"


class PrintedTick(QCheckBox):
    """Says when it was ticked; a click ticks it or takes the tick away."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(OPEN, parent)
        self._session, self._look = session, look
        self._view: LeafView | None = None
        self.clicked.connect(self._change)
        look.changed.connect(self._dress)
        self._dress()

    def show_leaf(self, view: LeafView) -> None:
        """Show whether this leaf is ticked off."""
        self._view = view
        at = on_paper.ticked(view.binder, view.uid)
        self.setChecked(bool(at))
        self.setText(f"{OPEN}, {dates.written(at[:10])}" if at else OPEN)

    def _change(self, on: bool) -> None:
        if self._view is None:
            return
        binder, uid = self._view.binder, self._view.uid
        try:
            (on_paper.tick_off if on else on_paper.untick)(binder, [uid])
        except RingboundError as error:
            self._session.said.emit(str(error))
            self.setChecked(not on)

    def _dress(self) -> None:
        theme = self._look.theme
        self.setFont(theme.font("label"))
        self.setStyleSheet(f"QCheckBox {{ color: {theme['inksoft'].name()}; }}")
