"""Slips: what each asks for is done, or put off, or thrown away."""

from __future__ import annotations

from binder.study.overview.slips import Slip, SlipKind
from binder.study.readings import put_by
from ui.actions.base import Base
from ui.kit.forms import asking
from ui.kit.quoted import quoted

THROW = "Throw away what was begun of {}? It does not come back."


class SlipActions(Base):
    """Each is about one slip of the desk."""

    def open_slip(self, slip: Slip) -> None:
        """Go where what a slip asks for is done."""
        if slip.month:
            self.others.draw_month(slip.month)
        elif slip.kind is SlipKind.RECALL:
            self.others.recall()
        elif slip.leaf_uid:
            self.session.open_leaf(slip.leaf_uid)
            if slip.kind is SlipKind.LOOK_BACK:
                self.others.look_back()
            elif slip.kind is SlipKind.BEGUN:
                self.others.change_reading()
        elif slip.kind is SlipKind.BEGUN:
            self.others.new_reading()

    def throw_away(self, slip: Slip) -> None:
        """Throw away what was begun and put by; asks first, as it does not come back."""
        question = THROW.format(quoted(slip.title))
        if asking.sure(self.window, slip.heading, question, "Throw it away"):
            key = f"{put_by.AMEND} {slip.leaf_uid}" if slip.leaf_uid else put_by.NEW
            put_by.drop(self.session.shelf.path, f"{key} {slip.month}".strip())
            self.window.show_slips()
