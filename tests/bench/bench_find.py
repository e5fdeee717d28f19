"""Find, against the same FTS5 statement run bare and against ripgrep over the leaves as files."""

import shutil
import statistics
import subprocess
import tempfile
import time
from pathlib import Path

from binder.store.schema import Leaf
from binder.store.search import STATEMENT, match
from binder.store.shelf import Shelf
from binder.study.overview.finding import find_all

WORDS = ("quay", "quay orch", "star", '"the star"', "lantern ferry wil")
NOWHERE = "zanzibar"
"""In no leaf, so the nearest words are looked for in the whole index."""
RUNS = 9


def clocked(*works) -> list[float]:
    """Median seconds of each call; they take turns, so that all meet the same machine."""
    taken: list[list[float]] = [[] for _ in works]
    for _ in range(RUNS):
        for work, times in zip(works, taken, strict=True):
            start = time.perf_counter()
            work()
            times.append(time.perf_counter() - start)
    return [statistics.median(times) for times in taken]


def rows(folder):
    """Ours over bare, and ours over ripgrep where that is installed."""
    shelf = Shelf(folder)
    files = as_files(shelf, folder) if shutil.which("rg") else None
    totals = [0.0, 0.0, 0.0]
    try:
        for words in WORDS:
            works = [lambda w=words: find_all(shelf, w), lambda w=words: bare_find(shelf, w)]
            works += [lambda w=words: ripgrep(files, w)] if files else []
            for number, seconds in enumerate(clocked(*works)):
                totals[number] += seconds
        nearest, nothing = clocked(
            lambda: find_all(shelf, NOWHERE), lambda: bare_find(shelf, "star")
        )
        long, short = clocked(
            lambda: find_all(shelf, "quay star " * 2_500),
            lambda: find_all(shelf, "quay star " * 25),
        )
    finally:
        shelf.close()
    ours, bare, grep = totals
    yield "find / the same FTS5 statement run bare", ours / bare, "1.2"
    yield "the nearest of a misspelt word / finding one that is there", nearest / nothing, "20"
    yield "a query of 5,000 words / the same of 50", long / short, "1.2"
    if files:
        yield "find / ripgrep over the same leaves as files", ours / grep, "1.0"


def bare_find(shelf, words: str) -> None:
    """The statement on the driver's own connection, rows fetched and nothing done with them."""
    for binder in shelf.binders:
        binder.db.connection().execute(STATEMENT, (match(words), 60)).fetchall()


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
    """The nearest a plain search comes: files with the last word's beginning."""
    last = words.strip('"').split()[-1]
    command = ["rg", "--files-with-matches", "--ignore-case", rf"\b{last}", str(files)]
    subprocess.run(command, stdout=subprocess.DEVNULL, check=False)
