"""A handout as it is printed: its sheets, its words, and notes beside its pages."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from binder.page.address import Scheme
from binder.paper.data import PrintBeside, PrintLeaf
from binder.paper.leaves import plain
from binder.paper.leaves.gathering import Gathering, shown_files
from binder.study.handouts import page_notes
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView

_SHOWN = re.compile(rf"!?\[[^\]]*\]\({Scheme.FILE.prefix}[^)]*\)")


def printed(of: Gathering, view: LeafView) -> PrintLeaf:
    """The leaf with the files it shows taken out of its text and along with it."""
    handouts = shown_files(view.text)
    text = _SHOWN.sub("", view.text) if handouts else view.text
    made = plain.printed(of, replace(view, text=text))
    for uid in handouts:
        of.keep(uid)
    beside = tuple(_beside(of, view)) if handouts else ()
    return replace(made, kind=str(LeafKind.HANDOUT), handouts=handouts, beside=beside)


def _beside(of: Gathering, view: LeafView) -> Iterator[PrintBeside]:
    """Notes beside pages of a handout."""
    for note in page_notes.page_notes(view.binder, view.uid):
        text = of.discretion.text(note.text)
        if text.strip():
            yield PrintBeside(note.file, note.page, of.blocks(view, text))
