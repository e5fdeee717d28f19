"""Commands that carry something in or out: what is due, and sources."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from binder.cli.common import (
    DONE,
    Command,
    leave_out_option,
    left_out,
    must_be_free_for,
    must_be_there,
    open_shelf,
    out_option,
    replace_option,
)
from binder.counting import counted


def add_to(command: Command) -> None:
    """Add `calendar` and `sources`."""
    calendar = command("calendar", "write what is due to a calendar file", _calendar)
    out_option(calendar, example="as due.ics")
    calendar.add_argument(
        "--with-words", action="store_true", help="with titles and statements from the diary"
    )
    leave_out_option(calendar)
    sources = command("sources", "carry sources in from a file, or out to one", _sources)
    way = sources.add_mutually_exclusive_group(required=True)
    way.add_argument(
        "--import",
        dest="file_in",
        metavar="FILE",
        type=Path,
        help="BibTeX (.bib) or CSL-JSON (.json)",
    )
    way.add_argument("--export", dest="file_out", metavar="FILE", type=Path, help="as sources.bib")
    replace_option(sources)
    leave_out_option(sources)


def _calendar(options: Any) -> int:
    from binder.carry.calendar_file import save

    must_be_there(options.shelf)
    must_be_free_for(options.out, options)
    shelf = open_shelf(options.shelf)
    count = save(
        shelf, options.out, options.clock.today(), with_words=options.with_words,
        leave_out=left_out(options),
    )  # fmt: skip
    print(f"Wrote {counted(count, 'entry')} to {options.out}.")
    shelf.close()
    return DONE


def _sources(options: Any) -> int:
    from binder.carry import references

    must_be_there(options.shelf)
    if options.file_out:
        must_be_free_for(options.file_out, options)
    shelf = open_shelf(options.shelf)
    if options.file_out:
        count = references.carry_out(shelf, options.file_out, left_out(options))
        print(f"Wrote {counted(count, 'source')} to {options.file_out}.")
    else:
        brought = references.bring_in(shelf, options.file_in)
        for sentence in brought.said:
            sys.stderr.write(f"{sentence}\n")
        print(f"Brought in {counted(len(brought.keys), 'source')} from {options.file_in}.")
    shelf.close()
    return DONE
