"""Rows that several binders hold a copy of, by uid: decks and spreads go where a binder goes.

Of several copies the one changed last counts. A change is written into one binder, as a whole row,
so that undoing it there brings back what was before.
"""

from __future__ import annotations

from typing import Any

from binder.store.clock import now_ms
from binder.store.file import Binder
from binder.store.shelf import Shelf

_OF_THE_COPY = ("id", "uid", "changed")


def newest(shelf: Shelf, model: Any) -> dict[str, Any]:
    """The current row of each uid in any binder of the shelf, oldest uid first."""
    found: dict[str, Any] = {}
    for _, row in shelf.each(model.select().order_by(model.id)):
        if row.uid not in found or row.changed > found[row.uid].changed:
            found[row.uid] = row
    return dict(sorted(found.items()))


def rewrite(binder: Binder, row: Any, label: str, **fields: Any) -> None:
    """Change fields of a current row; the binder gets its own copy where it had none."""
    model = type(row)
    # Later than every other copy, even where a clock was put back.
    fields["changed"] = max(now_ms(), row.changed + 1)
    values = {name: it for name, it in row.__data__.items() if name not in _OF_THE_COPY} | fields
    with binder.change(label) as change:
        if binder.value(model.select(model.id).where(model.uid == row.uid)) is None:
            change.add(model, uid=row.uid, **values)
        else:
            change.edit(model, row.uid, **values)
