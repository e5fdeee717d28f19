"""A text field whose lines are dressed: what its painting and its margins go by."""

from PySide6.QtWidgets import QTextEdit

from ui.writing.editor.previews import Previews
from ui.writing.editor.styles import Highlighter


class StyledField(QTextEdit):
    """Its lines have live styles, and small views of pictures below them."""

    highlighter: Highlighter
    previews: Previews
