"""A plain leaf: a title and running text."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from binder.study.leaves import LeafView
from ui.leaves.heads import Heading
from ui.leaves.page import Page
from ui.session import Session
from ui.theme import Look
from ui.trail import Spot


class PlainPage(Page):
    """Title, day, and the leaf's Markdown."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.text = self.prose("Text of the leaf")
        self.add(self.heading)
        self.add(self.text, gap=10)
        self.rows.addStretch(1)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the leaf's text."""
        from binder.page.markdown import to_html

        view = self.session.leaf_of(spot)
        if view is None:
            return
        self.heading.say(self.over(view), view.title)
        linked = lambda text: self.session.linker.find(text, view.uid)  # noqa: E731
        self.text.show_html(to_html(view.text, link_cards=linked), marks)

    def over(self, view: LeafView) -> str:
        """The line above the title."""
        return view.day[:10]
