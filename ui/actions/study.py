"""Study: recall rounds, and blank sheets to write on by hand."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from ui.actions.base import Base, leaving
from ui.desk.stage import Stage

if TYPE_CHECKING:
    from ui.recall.recall import RecallRound


class StudyActions(Base):
    """The leaves of a round are made when first asked for, and used again."""

    @cached_property
    def round(self) -> RecallRound:
        """The two leaves on which a recall round is held."""
        from ui.recall.recall import RecallRound

        made = RecallRound(self.session, self.theme_look, self.window)
        made.done.connect(self._put_by)
        made.followed.connect(self._follow_on)
        made.wishing.connect(self.recall_wishes)
        made.side.connect(self.window.cover.show_side)
        return made

    @leaving
    def recall(self) -> None:
        """Ask for what was studied; the same again stops it."""
        if self.window.staged(Stage.RECALL):
            self.round.stop()
            return
        self.round.begin()
        self.window.lay_stage(Stage.RECALL, self.round.left, self.round.right)
        self.round.show()

    def _put_by(self) -> None:
        """Bring the read leaves back, and count the slips anew."""
        self.window.back_to_leaves()
        self.window.show_slips()

    def _follow_on(self, address: str) -> None:
        page = self.window.cover.leaf("left")
        self.window.guard(self.others.follow, page, address)

    def recall_wishes(self) -> None:
        """Choose what recall asks; a round that is open begins again by it."""
        from ui.recall.recall_wishes import WishesDialog

        self.ask(WishesDialog(self.session, self.theme_look, self._begin_again, self.window))

    def _begin_again(self) -> None:
        if self.window.staged(Stage.RECALL):
            if self.window.guard(self.round.begin):
                self.round.show()
            else:
                self.round.stop()

    def blank(self) -> None:
        """Blank sheets, punched like the print."""
        from ui.proof.blank_dialog import BlankDialog

        self.ask(BlankDialog(self.session, self.theme_look, self.window))
