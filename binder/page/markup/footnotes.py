"""Footnotes numbered in the order of their calls, with plain numbers in their links.

The markdown package's own footnotes with a few parts replaced: ids that need no escaping, labels
of bounded length, and no step that grows with the square of the number of notes.
"""
# mypy: disable-error-code="misc"
# (the package's classes are untyped here, and extending it means deriving from them)

import re
import xml.etree.ElementTree as Tree

from markdown import Markdown
from markdown.extensions.footnotes import FootnoteExtension
from markdown.treeprocessors import Treeprocessor

_LABEL = r"\[\^([^\[\]\n]{1,200})\]"
_CALLED = re.compile(_LABEL)
_DEFINED = re.compile(rf"^[ ]{{0,3}}{_LABEL}:[ ]*(.*)$", re.MULTILINE)


class Footnotes(FootnoteExtension):
    """The extension to give to Markdown."""

    def __init__(self) -> None:
        super().__init__(
            USE_DEFINITION_ORDER=False,
            BACKLINK_TEXT="&#8593;",  # an arrow up, which our own letters have
            BACKLINK_TITLE="Back to the text",
            PLACE_MARKER="\x02nowhere\x03",
        )

    def extendMarkdown(self, md: Markdown) -> None:
        """Register everything as the package does, then put our own parts in place."""
        super().extendMarkdown(md)
        md.treeprocessors.register(_Order(self), "footnote-reorder", 19)
        md.parser.blockprocessors["footnote"].RE = _DEFINED
        md.inlinePatterns["footnote"].compiled_re = _CALLED

    def reset(self) -> None:
        """Forget the notes of the leaf before."""
        super().reset()
        self.slots: dict[str, int] = {}

    def makeFootnoteId(self, id: str) -> str:
        """The id of a note's own words."""
        return f"fn:{self._slot(id)}"

    def makeFootnoteRefId(self, id: str, found: bool = False) -> str:
        """The id of a call of a note; every later call of the same note has its own."""
        return self.unique_ref(f"fnref:{self._slot(id)}", found)

    def unique_ref(self, reference: str, found: bool = False) -> str:
        """The same in one step, where the package tries all earlier ones."""
        if not found:
            return reference
        count = self.found_refs[reference] = self.found_refs.get(reference, 0) + 1
        return reference if count == 1 else reference.replace("fnref", f"fnref{count}")

    def _slot(self, label: str) -> int:
        return self.slots.setdefault(label, len(self.slots) + 1)


class _Order(Treeprocessor):
    """Puts the notes in the order they are called; those never called stay last."""

    def __init__(self, notes: Footnotes) -> None:
        super().__init__()
        self.notes = notes

    def run(self, root: Tree.Element) -> None:
        if not self.notes.footnotes:
            return
        called = self.notes.footnote_order
        order = {self.notes.makeFootnoteId(label): n for n, label in enumerate(called)}
        listed = root[-1].find("ol")
        if listed is not None:
            listed[:] = sorted(listed, key=lambda item: order.get(item.get("id", ""), len(order)))
