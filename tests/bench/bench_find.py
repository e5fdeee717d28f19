"""Find, against its own statement run bare, against a plain index of the textbook kind, and against
ripgrep over the leaves as files, asked for all words.
"""

import shutil
import sqlite3
import subprocess
import tempfile
from pathlib import Path

from measuring import Row, compared, ratios, turns

from binder.store.schema import Leaf
from binder.store.search import STATEMENT, match
from binder.store.shelf import Shelf
from binder.study.overview.finding import find_all

WORDS = ("quay", "quay orch", "star", '"the star"', "lantern ferry wil")
NOWHERE = "zanzibar"
"""In no leaf, so the nearest words are looked for in the whole index."""
RUNS = 9
FEW = 5_000
"""Names of files that a command line takes."""
PRAGMAS = ("journal_mode = delete", "synchronous = full", "foreign_keys = 1")
"""As every binder is opened; see binder/store/file.py."""


def rows(folder):
    """Ours over bare, over a plain index of the textbook kind, and over ripgrep where installed."""
    shelf = Shelf(folder)
    files = as_files(shelf, folder) if shutil.which("rg") else None
    book, opened = textbook(shelf, folder), [connection(binder) for binder in shelf.binders]
    try:
        for words in WORDS:
            works = {
                "ours": lambda w=words: find_all(shelf, w),
                "the same statement run bare": lambda w=words: bare(opened, w),
                "a plain index of the textbook kind": lambda w=words: plain(book, w),
            }
            if files:
                works["ripgrep for all its words"] = lambda w=words: ripgrep(files, w)
            taken = turns(works, RUNS)
            ours = taken.pop("ours")
            for (name, theirs), bound in zip(taken.items(), (1.2, 1.2, 1), strict=False):
                yield Row(f"find {words} / {name}", ratios(ours, theirs), bound)
        yield compared(
            "the nearest of a misspelt word / finding one that is there",
            lambda: find_all(shelf, NOWHERE), lambda: find_all(shelf, "star"), 20,
        )  # fmt: skip
        yield compared(
            "a query of 5,000 words / the same of 50",
            lambda: find_all(shelf, "quay star " * 2_500),
            lambda: find_all(shelf, "quay star " * 25), 1.2,
        )  # fmt: skip
    finally:
        shelf.close()
        for one in (book, *opened):
            one.close()


def connection(binder) -> sqlite3.Connection:
    """A bare connection to a binder, opened as the window opens one."""
    made = sqlite3.connect(binder.path)
    for pragma in PRAGMAS:
        made.execute(f"PRAGMA {pragma}")
    return made


def bare(opened: list[sqlite3.Connection], words: str) -> None:
    """The statement in every binder, rows fetched and nothing done with them."""
    for one in opened:
        one.execute(STATEMENT, (match(words), 60)).fetchall()


def textbook(shelf, folder: Path) -> sqlite3.Connection:
    """All leaves in one table of FTS5 as its manual shows it, with nothing else."""
    path = folder.with_name(f"{folder.name}-textbook.db")
    if path.exists() and path.stat().st_mtime > (folder / "whole").stat().st_mtime:
        return sqlite3.connect(path)
    path.unlink(missing_ok=True)
    book = sqlite3.connect(path)
    book.execute("CREATE VIRTUAL TABLE leaf USING fts5(title, body, also)")
    for binder in shelf.binders:
        rows = binder.all(Leaf.select(Leaf.title, Leaf.text, Leaf.also))
        book.executemany(
            "INSERT INTO leaf VALUES (?, ?, ?)", ((row.title, row.text, row.also) for row in rows)
        )
    book.commit()
    return book


def plain(book: sqlite3.Connection, words: str) -> None:
    """The best 60 by their rank, title and a piece of the text."""
    book.execute(
        "SELECT title, snippet(leaf, 1, '', '', '…', 12) FROM leaf WHERE leaf MATCH ?"
        " ORDER BY rank LIMIT 60",
        (match(words),),
    ).fetchall()


def as_files(shelf, folder: Path) -> Path:
    """The leaves as one text file each."""
    out = Path(tempfile.gettempdir()) / f"{folder.name}-files"
    if out.exists():
        return out
    for binder in shelf.binders:
        home = out / binder.name
        home.mkdir(parents=True)
        for row in binder.all(Leaf.select(Leaf.id, Leaf.title, Leaf.text, Leaf.also)):
            (home / f"{row.id}.md").write_text(f"{row.title}\n{row.text}\n{row.also}")
    return out


def ripgrep(files: Path, words: str) -> None:
    """Files that have every word, the last by its beginning: one search in what the last found."""
    found = [str(files)]
    for word in words.strip('"').split():
        command = ["rg", "--files-with-matches", "--ignore-case", rf"\b{word}", *found[:FEW]]
        found = subprocess.run(command, capture_output=True, text=True, check=False).stdout.split()
        if not found:
            return
