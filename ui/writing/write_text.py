"""The text of a leaf as it is written: one of three fields, by what the leaf is and how long."""

from __future__ import annotations

from binder.page.markup.markdown import LONGEST
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView
from ui.look.theme import Look
from ui.writing.body_part import to_write
from ui.writing.editor.editor import Editor
from ui.writing.editor.long_editor import LongEditor, fit_to_write

LONG = (
    "This leaf is too long for headings and lists to be shown as they will look; everything else "
    "works as ever, and nothing is lost."
)
TOO_LONG_A_LINE = (
    "This leaf holds a word too long to write on here, so it can only be read; paste its text "
    "into shorter leaves to change it."
)


class TextFields:
    """The styled field in ink, the one for the student's own words, and the one for long leaves."""

    def __init__(self, look: Look) -> None:
        self.body = Editor(look, "Text of the leaf")
        self.body.setPlaceholderText("Write here")
        self.own = Editor(look, "Impressions", colour="own")
        self.own.setPlaceholderText("What you see, before you look anything up")
        self.long = LongEditor(look, "Text of the leaf")
        self.current: Editor | LongEditor = self.body

    def open(self, view: LeafView) -> str:
        """Show a leaf's text in the field that suits it, the others emptied.

        Returns what the user should know about it, or ''.
        """
        shown, said = to_write(view.text), ""
        self.current = self.own if view.kind is LeafKind.READING else self.body
        if len(view.text) > LONGEST:
            self.current = self.long
            shown, fits = fit_to_write(view.text)
            self.long.setReadOnly(not fits)
            said = LONG if fits else TOO_LONG_A_LINE
        for editor in (self.body, self.own, self.long):
            editor.setVisible(editor is self.current)
            editor.open_text(shown if editor is self.current else "")
        return said

    @property
    def is_long(self) -> bool:
        """Whether the leaf is too long for live styles."""
        return self.current is self.long
