"""Prints the map of the code: every room and file with its first sentence. Needs nothing installed.

`python3 tests/map.py` prints all of it, `python3 tests/map.py paper` what has that word in its path
or its sentence; several words must all be there.
"""

import ast
import re
import sys
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
HOUSES = ("binder", "ui")


def sentence(path: Path) -> str:
    """The first sentence of what a file says of itself."""
    said = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
    return re.split(r"(?<=[.?!])\s|\n\n", " ".join(said.split("\n\n")[0].split()))[0]


def files() -> Iterator[tuple[str, str]]:
    """Every file of the two houses, rooms as their folder, with its sentence."""
    for house in HOUSES:
        for path in sorted((ROOT / house).rglob("*.py"), key=_in_order):
            room = path.name == "__init__.py"
            place = (path.parent if room else path).relative_to(ROOT).as_posix()
            yield place + "/" * room, sentence(path)


def _in_order(path: Path) -> tuple[str, ...]:
    """A room before what is in it, and its files before the rooms in it."""
    inside = path.parent.relative_to(ROOT).parts
    return (*(f"2 {part}" for part in inside), "0" if path.name == "__init__.py" else f"1 {path}")


def main(words: list[str]) -> int:
    """Print what has all the words; 1 if nothing has."""
    found = [
        (place, said)
        for place, said in files()
        if all(word.casefold() in f"{place} {said}".casefold() for word in words)
    ]
    for place, said in found:
        print(f"{place:44} {said}")
    return 0 if found else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
