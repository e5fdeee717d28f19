"""What every command of the program shares: how it refuses, and how it opens the shelf."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from binder.errors import CanMend
from binder.paper.holes import PATTERNS
from binder.paper.sheets import PAPERS, Sheet, usual_holes
from binder.store.whole import OR_REPLACE, must_be_free

if TYPE_CHECKING:
    from binder.store.shelf import Shelf
    from binder.study.readings.discretion import LeaveOut

DONE, WRONG, REFUSED = 0, 1, 2
"""Exit codes: all well; check found something; the command could not be carried out."""

Verb = Callable[[Any], int]
"""Carries out a command with the options given, and the clock among them; returns an exit code."""
Command = Callable[[str, str, Verb], argparse.ArgumentParser]
"""Adds a command that works on a shelf: name, help, what it does."""


def out_option(parser: argparse.ArgumentParser, *, example: str = "") -> None:
    """Where a command writes, and whether over what is there."""
    parser.add_argument("--out", metavar="FILE", type=Path, required=True, help=example or None)
    replace_option(parser)


def replace_option(parser: argparse.ArgumentParser) -> None:
    """Whether a file of the same kind may be written over."""
    parser.add_argument("--replace", action="store_true", help="write over a file of the same kind")


def must_be_free_for(out: Path, options: Any) -> None:
    """CanMend, before anything is done, where the command may not write to `out`."""
    must_be_free(out, replace=options.replace, or_else=OR_REPLACE)


class Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence instead of a page of usage."""

    def error(self, message: str) -> NoReturn:
        """Say it, and end."""
        sys.stderr.write(f"{_sentence(message)} Try “{self.prog} --help”.\n")
        raise SystemExit(REFUSED)


class TellVersion(argparse.Action):
    """Tells the version; it is looked up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_given: object) -> NoReturn:
        """Say it, and end."""
        from binder.resources import version

        print(f"{parser.prog} {version()}")
        parser.exit()


def _sentence(message: str) -> str:
    return message[:1].upper() + message[1:].rstrip(".") + "."


def leave_out_option(parser: argparse.ArgumentParser) -> None:
    """Let the command leave out what is not for others."""
    parser.add_argument(
        "--leave-out", choices=("querents", "private"), nargs="+", default=(),
        help="who was read for, and what is marked “Private:”; whoever gets the file can read "
        "what is left in it",
    )  # fmt: skip


def left_out(options: Any) -> LeaveOut:
    """What the options of `leave_out_option` leave out."""
    from binder.study.readings.discretion import LeaveOut

    return LeaveOut("querents" in options.leave_out, "private" in options.leave_out)


def paper_options(parser: argparse.ArgumentParser) -> None:
    """Let the command choose paper and holes."""
    parser.add_argument("--paper", choices=tuple(PAPERS), default="a4")
    parser.add_argument(
        "--holes", choices=tuple(PATTERNS), help="else three, or two where three do not fit"
    )


def sheet_of(options: Any, **more: Any) -> Sheet:
    """The sheet that the options of `paper_options` and `--two-sided` choose; CanMend for an
    impossible one."""
    holes = options.holes or usual_holes(options.paper)
    return Sheet(options.paper, holes, options.two_sided, **more)


def open_shelf(path: Path) -> Shelf:
    """The open shelf, its broken files named on stderr."""
    from binder.store.shelf import Shelf

    shelf = Shelf(path)
    for broken in shelf.broken:
        sys.stderr.write(f"{broken.sentence}\n")
    return shelf


def must_be_there(path: Path) -> None:
    """Raise CanMend where there is no such folder."""
    if not path.is_dir():
        raise CanMend(f"There is no shelf at “{path}”; give a folder that holds binders.")
