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
from binder.study.finding import find_all

WORDS = ("quay", "quay orch", "star", '"the star"', "lantern ferry wil", "zanzibar")
RUNS = 9


def clocked(work) -> float:
    """Median seconds of a call."""
    taken = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def rows(folder):
    """Ours over bare, and ours over ripgrep where that is installed."""
    shelf = Shelf(folder)
    try:
        ours = sum(clocked(lambda w=words: find_all(shelf, w)) for words in WORDS)
        bare = sum(clocked(lambda w=words: bare_find(shelf, w)) for words in WORDS)
        yield "find / the same FTS5 statement run bare", ours / bare, "1.2"
        if shutil.which("rg"):
            files = as_files(shelf, folder)
            grep = sum(clocked(lambda w=words: ripgrep(files, w)) for words in WORDS)
            yield "find / ripgrep over the same leaves as files", ours / grep, "1.0"
    finally:
        shelf.close()


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
