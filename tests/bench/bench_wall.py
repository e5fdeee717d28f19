"""The wall of 78 where every card has 20 things said by sources and was laid 500 times.

Opening the plan with its wall, from rows to paint, against 100 ms; what is counted for it against
its own SQL run bare, rows fetched and nothing done with them.
"""

import os
import random
import tempfile
from datetime import date, timedelta
from itertools import cycle
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from bare import BarePair
from big_shelf import SPREAD_COPIES, prose, uid
from measuring import FRAME, Row, against, ratios, turns
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication

from binder.cards.facts import CARDS
from binder.store.clock import OtherDay
from binder.store.schema import Leaf, OwnWords, Placed, Reading, SourceNote
from binder.store.shelf import Shelf
from binder.study.course import course
from binder.study.leaves import tabs
from binder.study.overview.progress import progress
from ui.leaves.card.card import CardPage
from ui.leaves.course.plan import PlanPage
from ui.look import theme
from ui.session.session import Session

SOURCES, TIMES, BOUND = 20, 500, 0.1
START, YEARS = date(2006, 12, 1), 20
BARE = (
    "SELECT DISTINCT card FROM leaf WHERE kind = 'card' AND text <> '' AND aside IS NULL",
    "SELECT DISTINCT card FROM source_note WHERE text <> ''",
    "SELECT DISTINCT card FROM own_words WHERE text <> ''",
    "SELECT card, max(at), answer FROM recall_answer WHERE direction = 'meaning' GROUP BY card",
    "SELECT DISTINCT card FROM placed",
)
"""The five counts in the plainest words; ours also leave out what lies in the drawer."""


def rows(_folder):
    """Ours against 100 ms and against the bare statements."""
    app = QApplication.instance() or QApplication(["bench"])
    look = theme.Look(theme.load("day"))
    theme.apply(app, look.theme)
    with tempfile.TemporaryDirectory() as place:
        shelf = Shelf(Path(place))
        course.new_course(shelf, date(2026, 3, 2))
        fill(shelf)
        session = Session(shelf, OtherDay(date(2026, 11, 25)))
        page = PlanPage(session, look)
        page.resize(524, 1600)
        page.show()
        try:
            pair, cards, turned = BarePair(), CardPage(session, look), cycle(CARDS)
            cards.resize(524, 850)
            cards.show()
            taken = turns({
                "opened": lambda: show(session, page), "counted": lambda: progress(shelf),
                "bare": lambda: run_bare(shelf), "pair": pair,
                "turn": lambda: turn_to(session, cards, next(turned).key),
            })  # fmt: skip
            pair.end()
        finally:
            page.close()
            session.close()
    yield against("plan and wall of 78 opened / 100 ms", taken["opened"], BOUND, 1)
    yield Row(
        "plan and wall of 78 opened / a bare pair painted", ratios(taken["opened"], taken["pair"])
    )
    card = "card leaf with 20 sources, laid 500 times, turned"
    yield Row(f"{card} / a bare pair painted", ratios(taken["turn"], taken["pair"]), 1)
    yield against(f"{card} / one frame", taken["turn"], FRAME, 1)
    yield Row(
        "progress of 78 cards / five plain counts in bare SQL",
        ratios(taken["counted"], taken["bare"]),
        1.5,
    )


def show(session, page) -> None:
    """Fill the page as for the first time since a change, and paint it."""
    session._kept.clear()
    page.show_spot(session.spot_of(course.plan_leaf(session.shelf.binder("Foundations"))))
    page.wall.repaint()
    page.grab()
    QCoreApplication.processEvents()


def day(share: float) -> str:
    """The day after that share of all the years."""
    return (START + timedelta(days=round(share * YEARS * 365))).isoformat()


def turn_to(session, page, card) -> None:
    """Show the leaf of a card that was not open before, and paint it."""
    page.show_spot(session.spot_of(session.shelf.card_leaf(card)[1]))
    page.viewport().repaint()
    QCoreApplication.processEvents()


def run_bare(shelf) -> None:
    """The plain statements in every binder."""
    for binder in shelf.binders:
        for statement in BARE:
            binder.db.connection().execute(statement).fetchall()


def fill(shelf) -> None:
    """What sources say, own words, and readings of one spread of ten cards at a time."""
    chance = random.Random(7)
    home, log = shelf.binder("Foundations"), shelf.binder("Practice")
    leaves = {row.card: row.id for row in home.all(Leaf.select().where(Leaf.kind == "card"))}
    home.db.execute_sql("DROP TRIGGER source_note_also_insert")
    with home.db.atomic():
        for card in CARDS:
            shared = {"leaf": leaves[card.key], "card": card.key, "changed": 1}
            notes = [
                {"uid": uid(chance), "source": f"s{n}", "aspect": "Upright",
                 "text": prose(chance, 12), **shared}
                for n in range(SOURCES)
            ]  # fmt: skip
            SourceNote.insert_many(notes).bind(home.db).execute()
            OwnWords.insert(
                uid=uid(chance), way="upright", text=prose(chance, 60),
                at="2026-05-01T10:00:00", **shared,
            ).bind(home.db).execute()  # fmt: skip
    readings(log, chance)


def readings(binder, chance) -> None:
    """So many that every card lies in TIMES of them."""
    tab = tabs.first_of_kind(binder, "readings")
    for table in ("placed", "reading"):
        binder.db.execute_sql(f"DROP TRIGGER {table}_also_insert")
    first, drawn = 100_000, [card for _ in range(TIMES) for card in CARDS]
    count = len(drawn) // 10
    shared = {"changed": 1}
    with binder.db.atomic():
        for start in range(0, count, 200):
            ids = range(first + start, first + min(start + 200, count))
            Leaf.insert_many(
                {"id": n, "uid": uid(chance), "tab": tab.row, "kind": "reading", "title": "What?",
                 "place": float(n), "day": day((n - first) / count), **shared}
                for n in ids
            ).bind(binder.db).execute()  # fmt: skip
            Reading.insert_many(
                {"uid": uid(chance), "leaf": n, "at": "2026-05-02", "question": "What?",
                 "spread": "celtic-cross", "spread_copy": SPREAD_COPIES["celtic-cross"], **shared}
                for n in ids
            ).bind(binder.db).execute()  # fmt: skip
            Placed.insert_many(
                {"uid": uid(chance), "leaf": n, "n": k + 1, "card": card.key, "title": card.title,
                 **shared}
                for n in ids
                for k, card in enumerate(drawn[(n - first) * 10 : (n - first) * 10 + 10])
            ).bind(binder.db).execute()  # fmt: skip
