"""The `ringbound` command: the same verbs as the window, for scripts and for places without one."""

from __future__ import annotations

import argparse
import json
import runpy
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

from binder.errors import CanMend, RingboundError
from binder.store.clock import Clock

if TYPE_CHECKING:
    from binder.study.readings.discretion import LeaveOut

DONE, WRONG, REFUSED = 0, 1, 2
"""Exit codes: all well; check found something; the command could not be carried out."""


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence instead of a page of usage."""

    def error(self, message: str) -> NoReturn:
        sys.stderr.write(f"{_sentence(message)} Try “{self.prog} --help”.\n")
        raise SystemExit(REFUSED)


class _Version(argparse.Action):
    """Tells the version; it is looked up only when it is asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_given: object) -> NoReturn:
        from binder.resources import version

        print(f"{parser.prog} {version()}")
        parser.exit()


def _sentence(message: str) -> str:
    return message[:1].upper() + message[1:].rstrip(".") + "."


def main(arguments: Sequence[str] | None = None, clock: Clock | None = None) -> int:
    """Carry out one command; returns its exit code. Commands find the clock among their options."""
    _speak_utf8()
    given = argparse.Namespace(clock=clock or Clock())
    options = _parser().parse_args(arguments, given)
    try:
        return int(options.run(options))
    except RingboundError as error:
        sys.stderr.write(f"{error}\n")
        return REFUSED
    except BrokenPipeError:
        return DONE


def _speak_utf8() -> None:
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure:
            reconfigure(encoding="utf-8", errors="replace")


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(prog="ringbound", description="A three-ring binder for the study of tarot.")
    parser.add_argument("--version", action=_Version, nargs=0, help="tell the version")
    commands = parser.add_subparsers(metavar="COMMAND", required=True)

    def command(name: str, help_text: str, run: Callable[[Any], int]) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=help_text, description=help_text)
        made.set_defaults(run=run)
        made.add_argument("shelf", metavar="SHELF", type=Path, help="the folder of binders")
        return made

    new = command("new", "lay out a new course of three binders", _new)
    new.add_argument("--start", metavar="DATE", default="", help="first day of the first unit")
    command("open", "open the shelf in a window", _open)
    find = command("find", "find words in all binders", _find)
    find.add_argument("words", metavar="WORDS", nargs="+")
    find.add_argument("--json", action="store_true", help="print a list of objects")
    _log_options(command("log", "write a reading into a readings log", _log))
    _print_options(command("print", "print a tab to a PDF file", _print))
    _calendar_options(command("calendar", "write what is due to a calendar file", _calendar))
    _sources_options(command("sources", "carry sources in from a file, or out to one", _sources))
    _sheets_options(commands)
    command("check", "check every file of the shelf", _check)
    pictures = command("pictures", "draw the main screens to PNG files", _pictures)
    pictures.add_argument("--out", metavar="FOLDER", type=Path, required=True)
    return parser


def _log_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--binder", metavar="B", required=True)
    parser.add_argument(
        "--tab", metavar="T", default="", help="which tab; the readings log if left out"
    )
    parser.add_argument(
        "--spread", metavar="S", required=True, help="as celtic-cross, or one of your own"
    )
    parser.add_argument("--deck", metavar="D", default="")
    parser.add_argument("--date", metavar="D", default="", help="as 2026-11-22 or 2026-11-22T19:30")
    parser.add_argument("--question", metavar="Q", required=True)
    parser.add_argument("--text", metavar="WORDS", default="", help="the impressions")
    parser.add_argument("cards", metavar="CARDS", help="shorthand, as '3w, hermit r, qc'")


def _print_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--binder", metavar="B", required=True)
    parser.add_argument("--tab", metavar="T", required=True)
    parser.add_argument("--out", metavar="FILE", type=Path, required=True)
    parser.add_argument("--paper", choices=("a4", "letter", "a5"), default="a4")
    parser.add_argument("--holes", choices=("none", "2", "3", "4"), default="3")
    parser.add_argument("--two-sided", action="store_true")
    parser.add_argument(
        "--citing", metavar="STYLE", default="house",
        help="house, author-date, harvard, notes or mhra",
    )  # fmt: skip
    _leave_out_option(parser)


def _leave_out_option(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--leave-out", choices=("querents", "private"), nargs="+", default=(),
        help="who was read for, and what is marked “Private:”; whoever gets the file can read "
        "what is left in it",
    )  # fmt: skip


def _left_out(options: Any) -> LeaveOut:
    from binder.study.readings.discretion import LeaveOut

    return LeaveOut("querents" in options.leave_out, "private" in options.leave_out)


def _calendar_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--out", metavar="FILE", type=Path, required=True, help="as due.ics")
    parser.add_argument(
        "--with-words", action="store_true", help="with titles and statements from the diary"
    )
    _leave_out_option(parser)


def _sources_options(parser: argparse.ArgumentParser) -> None:
    way = parser.add_mutually_exclusive_group(required=True)
    way.add_argument(
        "--import",
        dest="file_in",
        metavar="FILE",
        type=Path,
        help="BibTeX (.bib) or CSL-JSON (.json)",
    )
    way.add_argument("--export", dest="file_out", metavar="FILE", type=Path, help="as sources.bib")
    _leave_out_option(parser)


def _sheets_options(commands: Any) -> None:
    words = "make blank sheets to write on by hand, as a PDF file"
    parser = commands.add_parser("sheets", help=words, description=words)
    parser.set_defaults(run=_sheets)
    kinds = ("reading", "card", "month", "ruled", "dotted", "plain")
    parser.add_argument("--kind", choices=kinds, required=True)
    parser.add_argument("--out", metavar="FILE", type=Path, required=True)
    parser.add_argument("--paper", choices=("a4", "letter", "a5"), default="a4")
    parser.add_argument("--holes", choices=("none", "2", "3", "4"), default="3")
    parser.add_argument("--spread", metavar="S", default="three-card", help="for --kind reading")
    parser.add_argument("--card", metavar="CARD", default="", help="for --kind card, as hermit")
    parser.add_argument("--month", metavar="M", default="", help="as 2026-12; else this one")
    parser.add_argument("--copies", metavar="N", type=int, default=1)
    parser.add_argument("--two-sided", action="store_true")
    parser.add_argument(
        "--shelf", metavar="SHELF", type=Path,
        help="a folder of binders, for your own spreads and your deck's titles",
    )  # fmt: skip


def _shelf(path: Path) -> Any:
    """The open shelf, its broken files named on stderr."""
    from binder.store.shelf import Shelf

    shelf = Shelf(path)
    for broken in shelf.broken:
        sys.stderr.write(f"{broken.sentence}\n")
    return shelf


def _new(options: Any) -> int:
    from binder.store.shelf import Shelf
    from binder.study.course.course import begun_words, new_course, units
    from binder.study.readings.lookbacks import day_of

    today = options.clock.today()
    start = day_of(options.start) if options.start else today
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
    _look(options.shelf)
    return _run_module("ui.app", [str(options.shelf)])


def _pictures(options: Any) -> int:
    _look(options.shelf)
    return _run_module("ui.pictures", [str(options.shelf), str(options.out)])


def _look(path: Path) -> None:
    if not path.is_dir():
        raise CanMend(f"There is no shelf at “{path}”; give a folder that holds binders.")


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

    shelf = _shelf(options.shelf)
    found = find_all(shelf, " ".join(options.words))
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
    for row in rows:
        print(f"{row['binder']}, {row['tab']}: {row['title']}\n    {row['line']}")
    print(f"{len(rows)} {'leaf' if len(rows) == 1 else 'leaves'} found.")
    return DONE


def _log(options: Any) -> int:
    from binder.cards.titles import STANDARD
    from binder.study.decks import decks
    from binder.study.leaves import tabs
    from binder.study.readings import readings
    from binder.study.readings.laying import laid_from
    from binder.study.spreads.spreads import spread_called

    shelf = _shelf(options.shelf)
    binder = shelf.binder(options.binder)
    tab = tabs.tab(binder, options.tab) if options.tab else tabs.first_of_kind(binder, "readings")
    if tab is None:
        raise CanMend(f"“{binder.name}” has no readings log; add such a tab first.")
    deck = decks.deck(shelf, options.deck)
    spread = spread_called(shelf, options.spread)
    titles = deck.titles if deck else STANDARD
    made = readings.NewReading(
        at=options.date or options.clock.now().isoformat(timespec="minutes"),
        question=options.question, spread=spread, titles=titles, text=options.text,
        laid=laid_from(options.cards, spread, titles), deck=deck.uid if deck else "",
        deck_name=deck.name if deck else "",
    )  # fmt: skip
    uid = readings.log(binder, tab, made)
    cards = ", ".join(
        titles.title(one.card) + (" reversed" if one.reversed else "") for one in made.laid
    )
    print(f"Logged “{options.question}” in {binder.name}, {tab.name}: {cards}.\n{uid}")
    shelf.close()
    return DONE


def _print(options: Any) -> int:
    from binder.paper.gather import print_tab
    from binder.paper.sheets import Sheet
    from binder.study.leaves import tabs

    shelf = _shelf(options.shelf)
    binder = shelf.binder(options.binder)
    tab = tabs.tab(binder, options.tab)
    sheet = Sheet(options.paper, options.holes, options.two_sided, citing=options.citing)
    pages = print_tab(shelf, binder, tab, sheet, options.out, _left_out(options))
    print(f"Printed {tab.name} of {binder.name} to {options.out}: {pages} pages.")
    shelf.close()
    return DONE


def _sheets(options: Any) -> int:
    from binder.cards.facts import card as card_of
    from binder.cards.spreads import spread
    from binder.cards.titles import STANDARD
    from binder.paper.blank import Blank, save_blank
    from binder.paper.sheets import Sheet
    from binder.study.cards.unit_cards import from_line
    from binder.study.decks.decks import usual_titles
    from binder.study.spreads.spreads import spread_called

    found, titles = spread(options.spread) if options.shelf is None else None, STANDARD
    if options.shelf is not None:
        _look(options.shelf)
        shelf = _shelf(options.shelf)
        found, titles = spread_called(shelf, options.spread), usual_titles(shelf)
        shelf.close()
    cards = [card_of(key) for key in from_line(options.card)]
    if len(cards) > 1:
        raise CanMend(f"“{options.card}” is more than one card; a study sheet is for one.")
    title = titles.title(cards[0].key) if cards else ""
    month = options.month or f"{options.clock.today():%Y-%m}"
    card = cards[0] if cards else None
    blank = Blank(options.kind, found, card, title, month, options.copies)
    count = save_blank(blank, Sheet(options.paper, options.holes, options.two_sided), options.out)
    pages = "1 page" if count == 1 else f"{count} pages"
    print(f"Wrote {pages} to {options.out}.")
    return DONE


def _calendar(options: Any) -> int:
    from binder.carry.calendar_file import save

    _look(options.shelf)
    shelf = _shelf(options.shelf)
    count = save(
        shelf, options.out, options.clock.today(), with_words=options.with_words,
        leave_out=_left_out(options),
    )  # fmt: skip
    entries = "1 entry" if count == 1 else f"{count} entries"
    print(f"Wrote {entries} to {options.out}.")
    shelf.close()
    return DONE


def _sources(options: Any) -> int:
    from binder.carry import references

    _look(options.shelf)
    shelf = _shelf(options.shelf)
    if options.file_out:
        count = references.carry_out(shelf, options.file_out, _left_out(options))
        print(f"Wrote {_counted(count)} to {options.file_out}.")
    else:
        brought = references.bring_in(shelf, options.file_in)
        for sentence in brought.said:
            sys.stderr.write(f"{sentence}\n")
        print(f"Brought in {_counted(len(brought.keys))} from {options.file_in}.")
    shelf.close()
    return DONE


def _counted(count: int) -> str:
    return "1 source" if count == 1 else f"{count} sources"


def _check(options: Any) -> int:
    from binder.store.file import check
    from binder.store.schema import SUFFIX

    _look(options.shelf)
    files = sorted(options.shelf.glob(f"*{SUFFIX}"))
    wrong = 0
    for path in files:
        faults = check(path)
        wrong += bool(faults)
        print(f"{path.name}: {' '.join(faults) or 'sound'}")
    print(f"Looked at {len(files)} {'file' if len(files) == 1 else 'files'}, {wrong} at fault.")
    return WRONG if wrong else DONE


if __name__ == "__main__":
    raise SystemExit(main())
