"""Writes a file anew, so that nothing of what was removed stays in it."""

from __future__ import annotations

from binder.store.file import Binder
from binder.store.sentences import spoken

WIPE = "wipe"
"""Key of the info row that says what is still to be wiped: uids of kept files, as JSON."""

_STEPS = (
    "PRAGMA temp_store = MEMORY",  # what is wiped must not come to lie in a file elsewhere
    "DELETE FROM shared WHERE NOT EXISTS (SELECT 1 FROM reading"
    " WHERE spread_copy = shared.id OR titles = shared.id)",
    # The find index keeps removed words until its parts are made one.
    "INSERT INTO leaf_find (leaf_find) VALUES ('optimize')",
    "VACUUM",
    "PRAGMA temp_store = DEFAULT",
)


def wipe(binder: Binder) -> None:
    """Give back the room of what was removed, with every word of it.

    Nothing done before can be undone afterwards: the steps held what is gone. Raises CanMend
    where the file cannot be written now.
    """
    binder.gate.must_be_writable()
    binder.gate.forget()
    with spoken(binder.path):
        for statement in _STEPS:
            binder.db.execute_sql(statement)
