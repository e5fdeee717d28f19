"""One editor whose words are saved by themselves, beside the leaf's own text."""

from __future__ import annotations

from collections.abc import Callable

from binder.study.leaves.leaves import LeafView
from ui.writing.editor.editor import Editor
from ui.writing.editor.keeping import Pending


class EditorPart:
    """What is saved of one editor; how and where is said by those that derive from it."""

    def __init__(self, name: str, editor: Editor) -> None:
        """`name` heads the words where they have to be put by."""
        self.name, self.editor = name, editor
        self.view: LeafView | None = None
        self._saved = self._asked = ""

    def standing(self, view: LeafView) -> str:
        """The words as the binder holds them."""
        raise NotImplementedError

    def saving(self, view: LeafView, said: str) -> Callable[[], None]:
        """What saves these words; it may be called later, and again."""
        raise NotImplementedError

    def open(self, view: LeafView, text: str) -> None:
        """Take up a leaf; a new sitting begins."""
        self.view, self._saved = view, text.strip()
        self.editor.open_text(text)

    def pending(self) -> Pending | None:
        """The words, where they differ from those saved."""
        said = self.editor.markdown().strip()
        if self.view is None or said == self._saved:
            return None
        self._asked = said
        return Pending(self.saving(self.view, said), f"## {self.name}\n\n{said}\n")

    def kept(self) -> None:
        """The words asked for last are saved."""
        self._saved = self._asked

    def look(self) -> None:
        """Take over words written elsewhere, where nothing was changed here."""
        if self.view is None or self.editor.markdown().strip() != self._saved:
            return
        said = self.standing(self.view)
        if said != self._saved:
            self._saved = said
            self.editor.replace_all(said)
