"""One leaf's own row, and the rows that belong to it, read by a statement built once a table."""

from __future__ import annotations

from collections import namedtuple
from functools import lru_cache
from typing import Any

from binder.store.connection import Connection


@lru_cache(maxsize=64)
def _statement(model: Any, order: str) -> tuple[str, Any]:
    table, columns = (
        model._meta.table_name,
        [field.column_name for field in model._meta.sorted_fields],
    )
    names = ", ".join(f't."{column}"' for column in columns)
    return (
        f"SELECT {names} FROM {table} AS t JOIN leaf ON leaf.id = t.leaf_id "
        f"WHERE leaf.uid = ? ORDER BY {order}",
        namedtuple(model.__name__, columns),
    )


def parts(binder: Connection, model: Any, leaf_uid: str, order: str = "t.id") -> list[Any]:
    """Rows of a model of schema.py that belong to the leaf, in `order` (columns of the table `t`).

    They have the table's columns as attributes and cannot be saved.
    """
    statement, made = _statement(model, order)
    return [made(*row) for row in binder.sql(statement, (leaf_uid,))]


def leaf_row(binder: Connection, leaf_uid: str) -> int | None:
    """The row number of a leaf in its file, for rows that belong to it; None where it is gone."""
    found = binder.sql("SELECT id FROM leaf WHERE uid = ?", (leaf_uid,))
    return int(found[0][0]) if found else None
