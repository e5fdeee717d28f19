"""Reads the command line and carries out what it says."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from binder.cli import carry, paper, reading, shelf
from binder.cli.common import DONE, REFUSED, Parser, TellVersion, Verb
from binder.errors import RingboundError
from binder.store.clock import Clock

SHOWN = 120
"""Letters of a path that a sentence holds."""


def main(arguments: Sequence[str] | None = None, clock: Clock | None = None) -> int:
    """Carry out one command; returns its exit code. Commands find the clock among their options."""
    _speak_utf8()
    given = argparse.Namespace(clock=clock or Clock())
    parser = _parser()
    options = parser.parse_args(arguments, given)
    for name, value in vars(options).items():
        if value == []:  # what argparse makes of '--binder=--'
            parser.error(f"“--” is no value for --{name.replace('_', '-')}.")
    try:
        return int(options.run(options))
    except RingboundError as error:
        sys.stderr.write(f"{error}\n")
        return REFUSED
    except BrokenPipeError:
        return DONE
    except OSError as error:
        where = str(error.filename or "")
        told = f"“{where if len(where) < SHOWN else where[:SHOWN] + '…'}”: " if where else ""
        sys.stderr.write(f"{told}{error.strerror or error}. Choose another name or folder.\n")
        return REFUSED


def _speak_utf8() -> None:
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(encoding="utf-8", errors="replace")


def _parser() -> argparse.ArgumentParser:
    parser = Parser(prog="ringbound", description="A three-ring binder for the study of tarot.")
    parser.add_argument("--version", action=TellVersion, nargs=0, help="tell the version")
    commands = parser.add_subparsers(metavar="COMMAND", required=True)

    def command(name: str, help_text: str, run: Verb) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=help_text, description=help_text)
        made.set_defaults(run=run)
        made.add_argument("shelf", metavar="SHELF", type=Path, help="the folder of binders")
        return made

    shelf.add_first(command)
    reading.add_to(command)
    paper.add_print(command)
    carry.add_to(command)
    paper.add_sheets(commands)
    shelf.add_last(command)
    return parser
