"""The menus Look and Help."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from ui.actions.base import Base, leaving
from ui.desk.stage import Stage
from ui.kit.forms import asking

if TYPE_CHECKING:
    from ui.leaves.handbook.handbook import Handbook

STEP = 0.1
PEOPLE_HELP = "People help now"
"""The title of that leaf."""


class LookActions(Base):
    """How things look, and what the program says about itself."""

    def lamp(self) -> None:
        """The dark theme, or the light one."""
        name = "day" if self.theme_look.theme.lamp else "lamp"
        self.theme_look.set_name(name)
        self.window.memory.theme = name

    def larger(self) -> None:
        """Larger letters."""
        self._scale(STEP)

    def smaller(self) -> None:
        """Smaller letters."""
        self._scale(-STEP)

    def _scale(self, step: float) -> None:
        self.theme_look.set_scale(round(self.theme_look.theme.scale + step, 2))
        self.window.memory.scale = self.theme_look.theme.scale

    def full_screen(self) -> None:
        """The whole screen, or back."""
        if self.window.isFullScreen():
            self.window.showNormal()
        else:
            self.window.showFullScreen()

    def link_choices(self) -> None:
        """The words the user chose to link or not."""
        from ui.dialogs.choices import LinkChoices

        self.ask(LinkChoices(self.session, self.theme_look, self.window))

    @cached_property
    def book(self) -> Handbook:
        """The leaves of the handbook."""
        from ui.leaves.handbook.handbook import Handbook

        made = Handbook(self.session, self.theme_look, self.window)
        made.done.connect(self.window.back_to_leaves)
        made.side.connect(self.window.cover.show_side)
        return made

    @leaving
    def handbook(self) -> None:
        """How things are done; the same again puts the handbook away."""
        if self.window.staged(Stage.HANDBOOK):
            self.window.back_to_leaves()
            return
        self._lay_book()

    @leaving
    def who_helps(self) -> None:
        """The leaf of the handbook on who helps now."""
        self._lay_book(PEOPLE_HELP)

    def _lay_book(self, title: str = "") -> None:
        book = self.book
        self.window.lay_stage(Stage.HANDBOOK, book.left, book.right)
        book.show(title)

    def keys(self) -> None:
        """All keys."""
        from ui.dialogs.help import KeysDialog

        self.ask(KeysDialog(self.window, self.theme_look))

    def about(self) -> None:
        """Version and places."""
        from ui.dialogs.help import about_words

        asking.tell(self.window, "About Ringbound", about_words(self.session.shelf))
