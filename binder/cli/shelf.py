"""Commands on a whole shelf: laid out, looked through, looked over, or opened in a window."""

from __future__ import annotations

import json
import runpy
import sys
from pathlib import Path
from typing import Any

from binder.cli.common import DONE, WRONG, Command, must_be_there, open_shelf
from binder.counting import counted
from binder.errors import CanMend


def add_first(command: Command) -> None:
    """Add `new`, `open` and `find`."""
    new = command("new", "lay out a new course of three binders", _new)
    new.add_argument("--start", metavar="DATE", default="", help="first day of the first unit")
    command("open", "open the shelf in a window", _open)
    find = command("find", "find words in all binders", _find)
    find.add_argument("words", metavar="WORDS", nargs="+")
    find.add_argument("--most", metavar="N", type=int, help="so many at most; else all of them")
    find.add_argument("--json", action="store_true", help="print a list of objects")


def add_last(command: Command) -> None:
    """Add `check` and `pictures`."""
    command("check", "check every file of the shelf", _check)
    pictures = command("pictures", "draw the main screens to PNG files", _pictures)
    pictures.add_argument("--out", metavar="FOLDER", type=Path, required=True)


def _new(options: Any) -> int:
    from binder.reckon.written_day import Asked, read_day
    from binder.store.shelf import Shelf
    from binder.study.course.course import begun_words, new_course, units

    today = options.clock.today()
    start = read_day(options.start, Asked(today)) if options.start else today
    _make_folder(options.shelf)
    shelf = Shelf(options.shelf)
    if shelf.binders or shelf.broken:
        shelf.close()
        raise CanMend(f"There are binders in “{options.shelf}” already; choose another folder.")
    binders = new_course(shelf, start)
    for binder in binders:
        print(f"Laid out “{binder.name}” in {binder.path}")
    first = units(binders[0])[0]
    begun = begun_words(first.name, first.starts, first.ends, today)
    if begun:
        print(begun)
    shelf.close()
    return DONE


def _make_folder(path: Path) -> None:
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CanMend(f"The folder “{path}” could not be made ({error.strerror}).") from error


def _open(options: Any) -> int:
    must_be_there(options.shelf)
    return _run_module("ui.app", [str(options.shelf)])


def _pictures(options: Any) -> int:
    must_be_there(options.shelf)
    return _run_module("ui.pictures", [str(options.shelf), str(options.out)])


def _run_module(name: str, arguments: list[str]) -> int:
    """Run a module of the screen by its name, since this layer may not import it."""
    sys.argv = [name, *arguments]
    try:
        runpy.run_module(name, run_name="__main__", alter_sys=True)
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else DONE
    return DONE


def _find(options: Any) -> int:
    from binder.study.overview.finding import find_all, plain_line, tidy

    shelf = open_shelf(options.shelf)
    most = options.most
    if most is not None and most < 1:
        raise CanMend("--most takes a number from 1 on; leave it out for all.")
    found = find_all(shelf, " ".join(options.words), -1 if most is None else most)
    for failed in found.failed:
        sys.stderr.write(f"{failed}\n")
    hits = [hit for group in found.groups for hit in group.hits]
    rows = [
        {
            "binder": hit.binder, "tab": hit.tab, "kind": hit.kind, "uid": hit.uid,
            "title": plain_line(hit.title), "line": plain_line(tidy(hit.line)),
        }
        for hit in hits
    ]  # fmt: skip
    shelf.close()
    if options.json:
        print(json.dumps(rows, ensure_ascii=False, indent=1))
        return DONE
    if found.read_as:
        print(f"Read as {found.read_as}.")
    for slip in found.slips:
        print(slip.said)
    for row in rows:
        print(f"{row['binder']}, {row['tab']}: {row['title']}\n    {row['line']}")
    more = " There are more." if found.more else ""
    print(f"{counted(len(rows), 'leaf')} found.{more}")
    return DONE


def _check(options: Any) -> int:
    from binder.store.file import check
    from binder.store.schema import SUFFIX

    must_be_there(options.shelf)
    files = sorted(options.shelf.glob(f"*{SUFFIX}"))
    wrong = 0
    for path in files:
        faults = check(path)
        wrong += bool(faults)
        print(f"{path.name}: {' '.join(faults) or 'sound'}")
    print(f"Looked at {counted(len(files), 'file')}, {wrong} at fault.")
    return WRONG if wrong else DONE
