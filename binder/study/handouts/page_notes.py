"""Notes a reader writes beside single pages of a handout."""

from __future__ import annotations

from dataclasses import dataclass

from binder.errors import CanMend
from binder.store.file import Binder
from binder.store.parts import leaf_row
from binder.store.schema import PageNote

# Asked at every turn, so written out: building it would take longer than running it.
_NOTES = """
SELECT note.uid, note.file, note.page, note.text FROM page_note AS note
JOIN leaf ON leaf.id = note.leaf_id WHERE leaf.uid = ? ORDER BY note.file, note.page, note.id
"""


@dataclass(frozen=True, slots=True)
class PageNoteView:
    """A note beside page `page`, from 1, of the kept file `file`; `text` is Markdown."""

    uid: str
    file: str
    page: int
    text: str


def page_notes(binder: Binder, leaf_uid: str) -> list[PageNoteView]:
    """All notes beside pages of a leaf, those of one file together, in the order of its pages."""
    return [PageNoteView(*row) for row in binder.sql(_NOTES, (leaf_uid,))]


def write_beside(
    binder: Binder, leaf_uid: str, file: str, page: int, text: str, sitting: str = ""
) -> None:
    """Write the note beside a page anew; '' takes it away.

    Savings with one `sitting`, a new uid, are undone together.
    """
    row = leaf_row(binder, leaf_uid)
    if row is None:
        raise CanMend("This leaf was removed elsewhere; copy your note to another leaf.")
    here = (PageNote.leaf == row) & (PageNote.file == file) & (PageNote.page == page)
    known = binder.first(PageNote.select().where(here))
    text = text.rstrip()
    if (known.text if known else "") == text:
        return
    with binder.change(f"Write beside page {page}", sitting) as change:
        change.say(PageNote, known, text, leaf=row, file=file, page=page)
