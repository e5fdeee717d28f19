"""Tables at the writing desk: made, walked through cell by cell, grown and shrunk."""

import re
from typing import NamedTuple

from binder.page.editing.edit import Change, Edit, line_span
from binder.page.editing.spans import TABLE, TABLE_RULE

_CELL = re.compile(r"(?:\\.|[^|\\])*")
_RULE = "---"


class Cell(NamedTuple):
    """Where the words of a cell start and end in the text; `row` 0 is the head."""

    row: int
    column: int
    start: int
    end: int


class Table(NamedTuple):
    """A table: where it starts and ends in the text, its cells row by row, where its rule is."""

    start: int
    end: int
    rows: tuple[tuple[Cell, ...], ...]
    rule: int


def new_table(columns: int = 3, rows: int = 2) -> str:
    """An empty table with a head."""
    row = "|" + "   |" * columns
    return "\n".join([row, "|" + f" {_RULE} |" * columns, *[row] * rows])


def table_at(text: str, at: int) -> Table | None:
    """The table around a place, or None; a table's lines begin with an upright stroke."""
    first, last = line_span(text, at)
    if not TABLE.match(text[first:last]):
        return None
    while first and TABLE.match(text[line_span(text, first - 1)[0] : first]):
        first = line_span(text, first - 1)[0]
    rows: list[tuple[Cell, ...]] = []
    place, rule = first, -1
    for line in text[first:].split("\n"):
        if not TABLE.match(line):
            break
        if rule < 0 and len(rows) == 1 and TABLE_RULE.fullmatch(line):
            rule = place
        else:
            rows.append(_cells(line, place, len(rows)))
        place += len(line) + 1
    return Table(first, place - 1, tuple(rows), rule) if rows and rows[0] else None


def _cells(line: str, place: int, row: int) -> tuple[Cell, ...]:
    """The cells of one line that starts at `place`."""
    at = line.index("|") + 1
    cells: list[Cell] = []
    while at <= len(line):
        match = _CELL.match(line, at)
        end = match.end() if match else len(line)
        words = line[at:end]
        if end == len(line) and not words.strip():
            break
        lead = len(words) - len(words.lstrip()) if words.strip() else min(1, len(words))
        start = at + lead
        cells.append(Cell(row, len(cells), place + start, place + start + len(words.strip())))
        at = end + 1
    return tuple(cells)


def _cell_at(table: Table, at: int) -> Cell:
    """The cell around a place, or the nearest one before it."""
    cells = [cell for row in table.rows for cell in row]
    return next((cell for cell in reversed(cells) if cell.start <= at), cells[0])


def step(text: str, at: int, by: int) -> Edit | None:
    """What Tab (1) and Shift+Tab (-1) do in a table: the next cell is selected, and after the last
    one comes a new row. None outside a table, and before its first cell.
    """
    table = table_at(text, at)
    if table is None:
        return None
    cells = [cell for row in table.rows for cell in row]
    goal = cells.index(_cell_at(table, at)) + by
    if goal < 0:
        return None
    if goal == len(cells):
        return add_row(text, cells[-1].start)
    return Edit((), cells[goal].start, cells[goal].end)


def down(text: str, at: int) -> Edit | None:
    """What Enter does in a table: the cell below is selected; below the last row, the table ends.
    None outside a table.
    """
    table = table_at(text, at)
    if table is None:
        return None
    cell = _cell_at(table, at)
    below = next((row for row in table.rows[cell.row + 1 :] if row), None)
    if below is not None:
        goal = below[min(cell.column, len(below) - 1)]
        return Edit((), goal.start, goal.end)
    if text[table.end : table.end + 2] == "\n\n":
        return Edit((), table.end + 2, table.end + 2)
    more = "\n\n" if text[table.end : table.end + 1] != "\n" else "\n"
    place = table.end + 2
    return Edit((Change(table.end, table.end, more),), place, place)


def _row(columns: int) -> str:
    return "|" + "   |" * columns


def add_row(text: str, at: int) -> Edit | None:
    """A new row below the one around a place, its first cell ready for words."""
    table = table_at(text, at)
    if table is None:
        return None
    cell = _cell_at(table, at)
    after = table.rule if cell.row == 0 and table.rule >= 0 else cell.start
    end = line_span(text, after)[1]
    made = "\n" + _row(max(len(row) for row in table.rows))
    return Edit((Change(end, end, made),), end + 3, end + 3)


def remove_row(text: str, at: int) -> Edit | None:
    """The table without the row around a place; the head stays. None where that cannot be."""
    table = table_at(text, at)
    if table is None:
        return None
    cell = _cell_at(table, at)
    if cell.row == 0:
        return None
    first, last = line_span(text, cell.start)
    above = table.rows[cell.row - 1][0].start
    return Edit((Change(first - 1, last, ""),), above, above)


def add_column(text: str, at: int) -> Edit | None:
    """A new column right of the one around a place, its head ready for words."""
    table = table_at(text, at)
    if table is None:
        return None
    column = _cell_at(table, at).column
    changes = []
    for first, line, cells in _lines(text, table):
        end = _after(text, cells[min(column, len(cells) - 1)]) if cells else first + len(line)
        rule = first == table.rule
        changes.append(Change(end, end, f" {_RULE} |" if rule else "   |"))
    place = changes[0].start + 1
    return Edit(tuple(changes), place, place)


def remove_column(text: str, at: int) -> Edit | None:
    """The table without the column around a place; the last one stays. None outside a table."""
    table = table_at(text, at)
    if table is None or len(table.rows[0]) < 2:
        return None
    column = _cell_at(table, at).column
    changes = []
    for _first, _line, cells in _lines(text, table):
        if column < len(cells):
            cell = cells[column]
            before = text.rindex("|", 0, cell.start) + 1
            changes.append(Change(before, _after(text, cell), ""))
    place = table.rows[0][0].start if column else changes[0].start + 1
    return Edit(tuple(changes), min(place, table.end), min(place, table.end))


def _lines(text: str, table: Table) -> list[tuple[int, str, tuple[Cell, ...]]]:
    """Every line of the table with its cells, the rule's too."""
    found, place = [], table.start
    for line in text[table.start : table.end].split("\n"):
        found.append((place, line, _cells(line, place, 0)))
        place += len(line) + 1
    return found


def _after(text: str, cell: Cell) -> int:
    """The place behind the stroke that closes a cell, or behind its line where none does."""
    last = line_span(text, cell.start)[1]
    match = _CELL.match(text, cell.end, last)
    end = match.end() if match else last
    return min(end + 1, last)
