"""Turning to a handout of 2,000 pages and through its sheets, against frames of the screen: sheets
and words are read and drawn beside the window, so neither may keep it waiting.
"""

import io
import statistics
import tempfile
import time
from pathlib import Path

import bench_turn
from desk import laid_open
from pypdf import PdfWriter

from binder.carry.building import build
from binder.resources import samples
from binder.study.handouts import filing
from binder.study.leaves import files, leaves, tabs

PAGES, TURNS = 2000, 25


def rows(_folder):
    """Rows of ratios."""
    with tempfile.TemporaryDirectory() as place:
        shelf = build(samples(), Path(place) / "sample")
        with laid_open(shelf, Path(place)) as window:
            yield from measured(window, *two_leaves(shelf.binder("Practice")))


def two_leaves(binder):
    """Uids of a plain leaf and of a new handout with very many pages."""
    tab = tabs.first_of_kind(binder, "clippings")
    plain = next(one.uid for one in leaves.contents(binder, tab) if one.kind == "plain")
    file = files.keep_bytes(binder, "long.pdf", files.PDF, long_pdf())
    filed = filing.Filed(file, "long.pdf", "Long", files.PDF)
    return plain, filing.add_leaves(binder, tab, [filed], "2026-11-25")[0]


def long_pdf():
    """A PDF of 2,000 pages."""
    writer = PdfWriter()
    for _ in range(PAGES):
        writer.add_blank_page(300, 400)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def measured(window, plain, handout):
    """Rows of ratios to frames."""
    taken = []
    for _ in range(TURNS):
        bench_turn.turn(window, plain)
        taken.append(bench_turn.turn(window, handout))
    frame = bench_turn.FRAME
    yield (
        "handout of 2,000 pages opened, median / one frame",
        statistics.median(taken) / frame,
        "1.0",
    )
    page = window.cover.leaf("left")
    page.wait()
    bench_turn.settle()
    yield "its sheets turned, median / one frame", statistics.median(sheets(page)) / frame, "1.0"


def sheets(page):
    """Seconds of turning to other sheets, until each is painted blank, ready to be drawn on."""
    for number in range(TURNS):
        start = time.perf_counter()
        page.turn_to((number + 1) * 70)
        page.view.repaint()
        yield time.perf_counter() - start
        page.wait()
        bench_turn.settle()
