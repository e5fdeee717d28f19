"""The menu Turn: from leaf to leaf, tab to tab, and back the way one came."""

from __future__ import annotations

from binder.study.leaves import tabs
from ui.actions.base import Base
from ui.session.trail import Show


class TurnActions(Base):
    """Where the reader goes next."""

    def next_leaf(self) -> None:
        """The next leaf behind this tab."""
        self.session.turn(1)

    def last_leaf(self) -> None:
        """The leaf before."""
        self.session.turn(-1)

    def contents(self) -> None:
        """The contents leaf of the open tab."""
        self.session.open_tab(self.open_binder(), self.open_tab())

    def back(self) -> None:
        """To where the reader was before."""
        self.session.back()

    def forward(self) -> None:
        """Forward again."""
        self.session.forward()

    def next_tab(self) -> None:
        """The tab below; after the last comes the first."""
        self._step_tab(1)

    def last_tab(self) -> None:
        """The tab above."""
        self._step_tab(-1)

    def _step_tab(self, step: int) -> None:
        binder = self.open_binder()
        standing = tabs.tabs(binder)
        at = [tab.uid for tab in standing].index(self.open_tab().uid)
        self.session.open_tab(binder, standing[(at + step) % len(standing)])

    def flip(self) -> None:
        """The other leaf: shown where only one has room, and given the keyboard."""
        cover = self.window.cover
        if cover.narrow:
            cover.flip()
            self.window.focus_leaf(cover.side)
        else:
            other = "left" if self.window.side_with_keyboard() == "right" else "right"
            self.window.focus_leaf(other)

    def read_facing(self) -> None:
        """The facing leaf comes to the left."""
        if self.session.facing.show is Show.CONTENTS:
            self.contents()
        else:
            self.session.swap()
