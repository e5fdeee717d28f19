"""Turning to a handout of 2,000 pages and through its sheets, against frames of the screen: sheets
and words are read and drawn beside the window, so neither may keep it waiting.
"""

import random
import tempfile
import time
from pathlib import Path

import bench_turn
import typst
from bare import BarePair
from big_shelf import prose
from desk import laid_open
from measuring import FRAME, Row, against, once, ratios

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
    """A PDF of 2,000 pages with words on each."""
    said = [" ".join(prose(random.Random(n), 120).split()) for n in range(40)]
    pages = "#pagebreak()\n".join(f"= Sheet {n}\n{said[n % 40]}\n" for n in range(PAGES))
    return typst.compile(f"#set page(width: 148mm, height: 210mm)\n{pages}".encode(), format="pdf")


def measured(window, plain, handout):
    """Rows of ratios to frames."""
    taken, pair = [], BarePair()
    for _ in range(TURNS):
        bench_turn.turn(window, plain)
        taken.append((bench_turn.turn(window, handout), once(pair)))
    ours, bare = zip(*taken, strict=True)
    yield Row("handout of 2,000 pages opened / a bare pair painted", ratios(ours, bare), 2)
    yield against("handout of 2,000 pages opened / one frame", ours, FRAME, 1)
    page = window.cover.leaf("left")
    page.wait()
    bench_turn.settle()
    taken = [(seconds, once(pair)) for seconds in sheets(page)]
    ours, bare = zip(*taken, strict=True)
    yield Row("its sheets turned / a bare pair painted", ratios(ours, bare), 1)
    yield against("its sheets turned / one frame", ours, FRAME, 1)
    pair.end()


def sheets(page):
    """Seconds of turning to other sheets, until each is painted blank, ready to be drawn on."""
    for number in range(TURNS):
        start = time.perf_counter()
        page.turn_to((number + 1) * 70)
        page.view.repaint()
        yield time.perf_counter() - start
        page.wait()
        bench_turn.settle()
