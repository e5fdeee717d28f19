"""A history of 1,000 versions: opened as a window, and what it costs in bytes.

Both of a leaf's text and of own words. Opening is measured against 100 ms, the bytes against those
of the words that really changed from version to version.
"""

import os
import random
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from big_shelf import WORDS
from measuring import FRAME, ROUNDS, Row, against, compared, once
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from binder.page.compare import packed
from binder.store.file import create
from binder.store.schema import Leaf, OwnWords, Version
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import leaves, tabs
from ui.leaves.drawer.earlier import EarlierDialog
from ui.look import theme

VERSIONS, FEW, SENTENCES, BOUND = 1000, 10, 40, 0.1


def rows(_folder):
    """Opening and reading against 100 ms; bytes against the words that changed."""
    app = QApplication.instance() or QApplication(["bench"])
    look = theme.Look(theme.load("day"))
    theme.apply(app, look.theme)
    with tempfile.TemporaryDirectory() as place:
        binder = create(Path(place) / "Years.ringbound", "Years", "spineF")
        tab = tabs.tab(binder, tabs.add_tab(binder, "Majors", "majors"))
        uid, few = (
            leaves.add_leaf(binder, tab, card, "now", kind=LeafKind.CARD, card=key)
            for card, key in (("The Star", "major-17"), ("The Moon", "major-18"))
        )
        # The find index of so many rows is no part of what is measured.
        binder.db.execute_sql("DROP TRIGGER own_words_also_insert")
        list(written(binder, few, "major-18", FEW))
        try:
            for name, kind, cost in written(binder, uid, "major-17", VERSIONS):
                yield Row(f"{name}, bytes of {VERSIONS} versions / of what changed", (cost,), 1.3)
                taken = [
                    once(lambda what=kind: opened(look, binder, uid, what, app))
                    for _ in range(ROUNDS)
                ]
                yield against(f"{name}, {VERSIONS} versions opened / 100 ms", taken, BOUND, 1)
                yield compared(
                    f"{name}, {VERSIONS} versions opened / {FEW} opened",
                    lambda what=kind: opened(look, binder, uid, what, app),
                    lambda what=kind: opened(look, binder, few, what, app), 3,
                )  # fmt: skip
            taken = [once(lambda: words.standing(binder, uid)) for _ in range(ROUNDS)]
            yield against("own words as they stand, after as many / one frame", taken, FRAME, 0.1)
        finally:
            binder.close()


def written(binder, uid, card, count):
    """Fill both histories; name, kind and share of bytes of each."""
    row = leaves.leaf(binder, uid).row
    shared = {"leaf": row, "at": "2026-11-25T20:00:00"}
    told = list(texts(count))
    with binder.change("Write for years") as change:
        for old, new, _ in told:
            change.add(Version, title="A card", text=packed(new, old), **shared)
            now = new == told[-1][1]
            change.add(
                OwnWords, card=card, way=words.UPRIGHT, text=new if now else "",
                packed=None if now else packed(new, old), **shared,
            )  # fmt: skip
        change.edit(Leaf, uid, text=told[-1][1])
    changed = sum(len(new.encode()) for _, _, new in told[1:])
    for name, kind, column in (("a leaf", "text", "version.text"),
                               ("own words", words.UPRIGHT, "own_words.packed")):  # fmt: skip
        table, _, field = column.partition(".")
        sizes = binder.sql(
            f"SELECT length({field}) FROM {table} WHERE leaf_id = {row} ORDER BY id"
        )[1:]
        yield name, kind, sum(size or 0 for (size,) in sizes) / changed


def texts(count):
    """The text before, the text, and the sentence that is new in it."""
    chance = random.Random(7)
    said = [sentence(chance) for _ in range(SENTENCES)]
    old, put = None, ""
    for _ in range(count):
        new = " ".join(said)
        yield old, new, put
        old, put = new, sentence(chance)
        said[chance.randrange(SENTENCES)] = put


def sentence(chance) -> str:
    """A sentence of a dozen words."""
    return " ".join(chance.choices(WORDS, k=12)).capitalize() + "."


def opened(look, binder, uid, kind, app) -> None:
    """The window of earlier versions, filled and painted."""
    dialog = EarlierDialog(Quiet(), look, leaves.leaf(binder, uid))
    dialog.what.setCurrentIndex(dialog.what.findData(kind))
    dialog.show()
    app.processEvents()
    dialog.grab()
    dialog.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


class Quiet:
    """A session of which nothing is asked."""
