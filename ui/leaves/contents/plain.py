"""A plain leaf: a title and running text."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from binder.study import dates
from binder.study.leaves.leaves import LeafView
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot


class PlainPage(Page):
    """Title, day, and the leaf's Markdown."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.body = self.text = self.prose("Text of the leaf")
        self.add(self.heading)
        self.add(self.text, gap=10)
        self.rows.addStretch(1)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the leaf's text."""
        view = self.session.leaf_of(spot)
        if view is None:
            return
        self.heading.say(self.over(view), view.title)
        self.text.show_html(self.rendered(view), marks)

    def over(self, view: LeafView) -> str:
        """The line above the title: the day it was written, in words."""
        moment = dates.parsed(view.day)
        return dates.full(moment.date()) if moment else ""
