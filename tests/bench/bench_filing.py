"""Filing 500 small PDFs as handouts, against copying the same files and hashing them; reading their
words, against PDFium reading the same pages.
"""

import hashlib
import os
import tempfile
import time
from pathlib import Path

import pypdfium2
import typst
from measuring import ROUNDS, Row, ratios

from binder.store.file import create
from binder.study.handouts import filed_words, filing
from binder.study.leaves import tabs

FILES = 500
SHEET = "#set page(width: 148mm, height: 210mm)\n= Sheet\n" + "The moon over the water. " * 60


def rows(_folder):
    """Rows of ratios."""
    with tempfile.TemporaryDirectory() as place:
        source = Path(place) / "handouts"
        source.mkdir()
        make(source)
        taken = [measured(source, Path(place) / f"round {n}") for n in range(ROUNDS)]
    filed, copied, flushed, read, bare = zip(*taken, strict=True)
    yield Row("500 handouts filed / copied and hashed, left to the cache", ratios(filed, copied), 6)
    yield Row(
        "500 handouts filed / copied, hashed, each flushed to disk", ratios(filed, flushed), 1
    )
    yield Row("words of 500 handouts read and kept / PDFium alone", ratios(read, bare), 3)


def make(source: Path) -> None:
    """500 different PDFs of one page, some 9 kB each."""
    data = typst.compile(SHEET.encode(), format="pdf")
    for number in range(FILES):
        (source / f"sheet {number}.pdf").write_bytes(data + f"\n% {number}\n".encode())


def measured(source: Path, target: Path) -> tuple[float, ...]:
    """Seconds: filing, copying, copying with a flush for each, reading words, PDFium alone."""
    target.mkdir()
    copied = copying(source, target / "copied", flush=False)
    flushed = copying(source, target / "flushed", flush=True)
    binder = create(target / "Practice.ringbound", "Practice", "spineP")
    tab = tabs.tab(binder, tabs.add_tab(binder, "Clippings", "clippings"))
    start = time.perf_counter()
    report = filing.keep_all(binder, [source], lambda _done, _of: None, lambda: False)
    leaves = filing.add_leaves(binder, tab, report.filed, "2026-11-25")
    filed = time.perf_counter() - start
    assert len(leaves) == FILES
    pairs = [(leaf, [file.uid]) for leaf, file in zip(leaves, report.filed, strict=True)]
    start = time.perf_counter()
    filed_words.read_in(binder, pairs, lambda *_far: None, lambda: False)
    read = time.perf_counter() - start
    binder.close()
    return filed, copied, flushed, read, bare(source)


def copying(source: Path, target: Path, *, flush: bool) -> float:
    """Seconds to read, hash and write every file, perhaps each on the disk before the next."""
    target.mkdir()
    start = time.perf_counter()
    for path in source.iterdir():
        data = path.read_bytes()
        hashlib.sha256(data).hexdigest()
        with (target / path.name).open("wb") as file:
            file.write(data)
            if flush:
                file.flush()
                os.fsync(file.fileno())
    return time.perf_counter() - start


def bare(source: Path) -> float:
    """Seconds for PDFium to open the same files and read the words of their pages."""
    start = time.perf_counter()
    for path in source.iterdir():
        with pypdfium2.PdfDocument(path.read_bytes()) as document:
            for page in document:
                page.get_textpage().get_text_range()
    return time.perf_counter() - start
