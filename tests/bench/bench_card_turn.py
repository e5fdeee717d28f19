"""Turning through 78 full card leaves, with 20 sources and 500 appearances each, against one frame.

Every turn is cold: nothing rendered before is used, and each leaf comes with what faces it. Once
each leaf is looked at for a moment, in which what is out of sight is filled and the faces of the
next cards are drawn; once they are turned as fast as can be.
"""

import os
import shutil
import tempfile
from datetime import date
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import card_shelf
from bare import BarePair
from bench_turn import settle, turn
from desk import laid_open
from measuring import FRAME, Row, against, once, ratios
from PySide6.QtTest import QTest

from binder.cards.facts import CARDS
from binder.store.shelf import Shelf
from ui.desk.window import Window

TODAY = date(2026, 11, 25)
LOOKED_MS = 120


def rows(_folder):
    """Turns through all card leaves, the first pair left out."""
    made = card_shelf.make(Path(tempfile.gettempdir()) / "ringbound-bench-cards")
    with tempfile.TemporaryDirectory() as place:
        shelf = Shelf(Path(shutil.copytree(made, Path(place) / "cards")))
        with laid_open(shelf, Path(place), TODAY) as window:
            settle()
            uids = [shelf.card_leaf(card.key)[1] for card in CARDS]
            turn(window, uids[-1])
            pair = BarePair()
            fast = [(turn(window, uid), once(pair)) for uid in uids]
            read = [(look_and_turn(window, uid), once(pair)) for uid in uids]
            pair.end()
    for taken, how in ((read, "read"), (fast, "turned at once")):
        ours, bare = zip(*taken, strict=True)
        yield Row(f"full card leaves {how}, a turn / a bare pair painted", ratios(ours, bare), 2)
        yield against(f"full card leaves {how}, a turn / one frame", ours, FRAME, 1)
        yield against(
            f"full card leaves {how}, worst turn / three frames", [max(ours)], 3 * FRAME, 1
        )


def look_and_turn(window: Window, uid: str) -> float:
    """Seconds of a turn after the leaf before was looked at for a moment."""
    QTest.qWait(LOOKED_MS)
    return turn(window, uid)
