"""One subject of the handbook, on a leaf."""

from __future__ import annotations

import re

from PySide6.QtGui import QKeySequence

from binder.page.markup.markdown import to_html
from ui.kit.page.heads import Heading
from ui.leaves.handbook.leaf import HandbookLeaf
from ui.leaves.handbook.subjects import Subject, marks, subjects
from ui.look.theme import Look
from ui.session.session import Session

KEYS = re.compile(r"\b(?:(?:Ctrl|Shift|Alt)\+)+(?:\w+|[-+=])")
"""Keys as the handbook writes them."""


class SubjectPage(HandbookLeaf):
    """Its title and its text, with the words that are sought marked."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__(session, look)
        self.setAccessibleName("Leaf of the handbook")
        self.heading = Heading(look)
        self.text = self.prose("Text of the leaf")
        self.add(self.heading)
        self.add(self.text, gap=10)
        self.rows.addStretch(1)

    def foot(self) -> str:
        """How to go on."""
        return "Left and Right turn these leaves"

    def show_subject(self, subject: Subject, sought: str) -> None:
        """Lay a subject open, at its head or at the first word that is sought."""
        found = marks(sought, subject) if sought.strip() else ()
        self.setUpdatesEnabled(False)
        self.heading.say(f"Handbook, leaf {subject.number} of {len(subjects())}", subject.title)
        self.text.show_html(to_html(with_native_keys(subject.text)), found)
        self.settle()
        self.verticalScrollBar().setValue(self._first_mark() if found else 0)
        self.setUpdatesEnabled(True)


def with_native_keys(text: str) -> str:
    """A text with its keys written as on this system, as ⌘L for Ctrl+L on a Mac."""
    native = QKeySequence.SequenceFormat.NativeText
    return KEYS.sub(lambda found: QKeySequence(found[0]).toString(native) or found[0], text)
