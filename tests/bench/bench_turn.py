"""Turning a leaf: what is read, rendered and painted, against one frame and against the bare
libraries doing the same to the same leaf. Every turn is cold: nothing rendered before is used. The
window has fetched what it fetches by itself in the first second after its start.
"""

import os
import statistics
import tempfile
import time
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from bare import BarePair
from desk import laid_open
from measuring import FRAME, Row, against, once, ratios
from PySide6.QtCore import QEvent, QEventLoop, QObject
from PySide6.QtWidgets import QApplication, QTextBrowser

from binder.carry.building import build
from binder.page.markup.markdown import to_html
from binder.resources import samples
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from ui.desk.window import Window
from ui.kit.prose.rendering import RENDERED
from ui.leaves.contents.plain import PlainPage
from ui.warm import Warm

WORDS = 3000
TURNS = 25
EXTENSIONS = ["tables", "footnotes", "sane_lists"]


def rows(_folder):
    """Turns through the sample shelf, and to a leaf of 3,000 words."""
    with tempfile.TemporaryDirectory() as place:
        shelf = build(samples(), Path(place) / "sample")
        long = long_leaf(shelf)
        with laid_open(shelf, Path(place)) as window:
            fetch(window)
            yield from measured(window, long)


def fetch(window: Window) -> None:
    """Wait for what the program fetches while nothing else is done."""
    loop = QEventLoop()
    Warm(window.session, window).destroyed.connect(loop.quit)
    loop.exec()


def measured(window: Window, long: str):
    """Ours against a bare pair painted in the same round, and against frames."""
    pair = BarePair()
    taken = [(turn(window, uid), once(pair)) for uid in every_leaf(window.session.shelf)]
    ours, bare = zip(*taken, strict=True)
    rounds = ratios(ours, bare)
    yield Row("leaf turn on the sample shelf / a bare pair painted", rounds, 1)
    worst = sorted(rounds)[round(len(rounds) * 0.99)]
    yield Row("its slowest of a hundred / its median", (worst / statistics.median(rounds),), 2)
    yield against("leaf turn on the sample shelf / one frame", ours, FRAME, 1)
    binder = window.session.shelf.home_of(long)
    short = leaves.contents(binder, tabs.first_of_kind(binder, "readings"))[0].uid
    whole = []
    for _ in range(TURNS):
        turn(window, short)
        whole.append(turn(window, long))
    yield against("a leaf of 3,000 words turned to / one frame", whole, FRAME, 3)
    ours, bare = text_alone(window, short, long)
    yield Row("3,000 words set / bare markdown and setHtml", ratios(ours, bare), 1.5)
    pair.end()


def text_alone(window: Window, short: str, long: str) -> tuple[list[float], list[float]]:
    """Seconds of the text alone, without what faces it: ours, and the bare libraries'."""
    import markdown

    session = window.session
    text = leaves.leaf(session.shelf.home_of(long), long).text
    html, maker = to_html(text), markdown.Markdown(extensions=EXTENSIONS)
    page, browser = PlainPage(session, window.look), QTextBrowser()
    for widget in (page, browser):
        widget.resize(524, 850)
        widget.show()
    ours, bare = [], []
    for _ in range(TURNS):
        RENDERED.forget()
        page.show_spot(session.spot_of(short))
        browser.setHtml("")
        settle()
        start = time.perf_counter()
        page.show_spot(session.spot_of(long))
        page.text.viewport().repaint()
        ours.append(time.perf_counter() - start)
        start = time.perf_counter()
        maker.reset().convert(text)
        browser.setHtml(html)
        browser.viewport().repaint()
        bare.append(time.perf_counter() - start)
    return ours, bare


class Painted(QObject):
    """Notes when widgets have been painted."""

    def __init__(self, widgets) -> None:
        super().__init__()
        self.waiting = set(widgets)
        for widget in widgets:
            widget.installEventFilter(self)

    def eventFilter(self, watched, event) -> bool:
        if event.type() is QEvent.Type.Paint:
            self.waiting.discard(watched)
        return False


def turn(window: Window, uid: str) -> float:
    """Seconds from asking for a leaf until both leaves are painted."""
    RENDERED.forget()
    settle()
    start = time.perf_counter()
    window.session.open_leaf(uid)
    sides = [window.cover.leaf(side) for side in ("left", "right")]
    painted = Painted([side.viewport() for side in sides if side is not None])
    while painted.waiting and time.perf_counter() - start < 2:
        QApplication.processEvents()
    return time.perf_counter() - start


def settle() -> None:
    """Let everything happen that was put off."""
    for _ in range(4):
        QApplication.processEvents()


def every_leaf(shelf: Shelf) -> list[str]:
    """Uids of all leaves in the order of the shelf."""
    return [
        entry.uid
        for binder in shelf.binders
        for tab in tabs.tabs(binder)
        for entry in leaves.contents(binder, tab)
    ]


def long_leaf(shelf: Shelf) -> str:
    """Uid of a new leaf made of the sample's own words."""
    said: list[str] = []
    for uid in every_leaf(shelf):
        text = leaves.leaf(shelf.home_of(uid), uid).text
        said += [*text.split(" "), "\n\n"] if text else []
    binder = shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "clippings")
    return leaves.add_leaf(binder, tab, "A long leaf", " ".join(said[:WORDS]), day="2026-11-22")
