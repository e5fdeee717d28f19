"""The TOML block at the head of a text source, asked for by type, its faults told by line."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import cast

from binder.errors import CanMend

FENCE = "+++"
"""The line above and below the TOML block of a leaf."""


@dataclass(frozen=True)
class Front:
    """One table of a TOML text; knows which file and line each of its keys stands in."""

    file: str
    lines: tuple[str, ...]
    data: Mapping[str, object]
    table: str = ""
    nth: int = 0
    above: int = 0

    def line(self, key: str = "") -> int:
        """Line number in the file where `key` stands, or where this table begins."""
        start = self._start()
        pattern = re.compile(rf'\s*(\[+)?\s*"?{re.escape(key)}"?\s*[\]=]')
        inside = range(start, len(self.lines)) if key else range(0)
        found = next((i for i in inside if pattern.match(self.lines[i])), start)
        return self.above + found + 1

    def _start(self) -> int:
        heads = [i for i, line in enumerate(self.lines) if _is_head(line, self.table)]
        return heads[self.nth] if self.table and self.nth < len(heads) else 0

    def fault(self, sentence: str, key: str = "") -> CanMend:
        """An error to raise: `sentence` with the file and line of `key` before it."""
        return CanMend(f"{self.file}, line {self.line(key)}: {sentence}")

    def only(self, *known: str) -> None:
        """Refuse keys that are not `known`, so that a slip of the pen is not passed over."""
        for key in self.data:
            if key not in known:
                raise self.fault(f"“{key}” is not used here; write {_either(known)}.", key)

    def text(self, key: str, default: str | None = None) -> str:
        """The words under `key`; without a default they must be there and not be empty."""
        value = self.data.get(key, default)
        if not isinstance(value, str):
            raise self.fault(f"“{key}” must be given, as words in quotes.", key)
        if default is None and not value.strip():
            raise self.fault(f"“{key}” must not be empty.", key)
        return value.strip()

    def one_of(self, key: str, choices: tuple[str, ...], default: str | None = None) -> str:
        """The word under `key`, which must be one of `choices`."""
        value = self.text(key, default)
        if value not in choices:
            raise self.fault(f"“{key}” must be {_either(choices)}, not “{value}”.", key)
        return value

    def number(self, key: str, low: int, high: int) -> int:
        """The whole number under `key`, `low` to `high` at most."""
        value = self.data.get(key)
        if isinstance(value, int) and not isinstance(value, bool) and low <= value <= high:
            return value
        raise self.fault(f"“{key}” must be a whole number from {low} to {high}.", key)

    def yes(self, key: str) -> bool:
        """Whether `true` stands under `key`; left out it is no."""
        value = self.data.get(key, False)
        if isinstance(value, bool):
            return value
        raise self.fault(f"“{key}” must be true or false, without quotes.", key)

    def share(self, key: str) -> float:
        """The number from 0 to 1 under `key`."""
        value = self.data.get(key)
        if isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value <= 1:
            return float(value)
        raise self.fault(f"“{key}” must be a number from 0 to 1, as 0.25.", key)

    def moment(self, key: str) -> datetime:
        """The local date and time under `key`."""
        value = self.data.get(key)
        if isinstance(value, datetime) and value.tzinfo is None:
            return value
        raise self.fault(f"“{key}” must be a date and time, as 2026-11-22T20:15:00.", key)

    def when(self, key: str) -> date:
        """The local date and time under `key`, or a date alone where no hour is known."""
        return self.day(key) if type(self.data.get(key)) is date else self.moment(key)

    def day(self, key: str) -> date:
        """The date under `key`."""
        value = self.data.get(key)
        if isinstance(value, date) and not isinstance(value, datetime):
            return value
        raise self.fault(f"“{key}” must be a date, as 2026-12-20.", key)

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """The list of words under `key`."""
        value = self.data.get(key, list(default) if default is not None else None)
        if isinstance(value, list) and all(isinstance(item, str) for item in value):
            return tuple(cast("list[str]", value))
        raise self.fault(f"“{key}” must be a list of words in quotes.", key)

    def part(self, key: str) -> Front:
        """The table `[key]`; empty when it is not there."""
        value = self.data.get(key, {})
        if isinstance(value, dict):
            return self._inner(key, 0, value)
        raise self.fault(f"“{key}” must be a table, begun with [{key}].", key)

    def parts(self, key: str) -> list[Front]:
        """The tables `[[key]]` in their order."""
        value = self.data.get(key, [])
        if isinstance(value, list) and all(isinstance(item, dict) for item in value):
            return [self._inner(key, nth, item) for nth, item in enumerate(value)]
        raise self.fault(f"“{key}” must be tables, each begun with [[{key}]].", key)

    def _inner(self, key: str, nth: int, data: Mapping[str, object]) -> Front:
        return Front(self.file, self.lines, data, key, nth, self.above)


def read_leaf(path: Path, file: str) -> tuple[Front, str]:
    """The front block of a leaf and the Markdown below it; `file` is how errors name the leaf."""
    lines = _read(path, file).splitlines()
    if not lines or lines[0].strip() != FENCE:
        raise CanMend(f"{file}, line 1: A leaf begins with a line of {FENCE}.")
    ends = [i for i, line in enumerate(lines) if i and line.strip() == FENCE]
    if not ends:
        raise CanMend(f"{file}, line {len(lines)}: Close the block at the head with {FENCE}.")
    front = _parse(file, lines[1 : ends[0]], above=1)
    return front, "\n".join(lines[ends[0] + 1 :]).strip() + "\n"


def read_toml(path: Path, file: str) -> Front:
    """A whole TOML file; `file` is how errors name it."""
    return _parse(file, _read(path, file).splitlines(), above=0)


def _parse(file: str, lines: list[str], above: int) -> Front:
    try:
        data = tomllib.loads("\n".join(lines) + "\n")
    except tomllib.TOMLDecodeError as error:
        place = re.search(r"line (\d+)", str(error))
        line = int(place[1]) if place else len(lines)
        what = str(error).split(" (at")[0].rstrip(".")
        raise CanMend(f"{file}, line {line + above}: This is not valid TOML: {what}.") from error
    return Front(file, tuple(lines), data, above=above)


def _read(path: Path, file: str) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        raise CanMend(f"{file}: This file is not UTF-8 text; save it again as UTF-8.") from error
    except OSError as error:
        raise CanMend(f"{file}: This file cannot be read: {error.strerror}.") from error


def _is_head(line: str, table: str) -> bool:
    return line.strip().strip("[]").strip() == table and line.lstrip().startswith("[")


def _either(words: tuple[str, ...]) -> str:
    quoted = [f"“{word}”" for word in words]
    return " or ".join([", ".join(quoted[:-1]), quoted[-1]] if quoted[1:] else quoted)
