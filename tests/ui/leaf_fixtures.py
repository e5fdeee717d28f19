"""Readings and leaves for the tests of the read leaves, on real shelves."""

from datetime import date

from PySide6.QtWidgets import QApplication

from binder.cards.spreads import spread
from binder.store.clock import OtherDay
from binder.study.leaves import tabs
from binder.study.leaves.leaves import add_leaf
from binder.study.readings import lookbacks, readings
from binder.study.readings.laying import laid_from
from ui.session.session import Session

TODAY = date(2026, 11, 25)
LINE = "3p, 5w, 4p r, 6sw, star"
TEXT = "The purse upside down. The Star is open water, not harbour; the star again."


def practice(shelf):
    """The binder of the second level and its readings log."""
    binder = shelf.binder("Practice")
    return binder, tabs.first_of_kind(binder, "readings")


def log(shelf, key="five-card-cross", line=LINE, **fields):
    """Log a reading; returns its binder and its leaf's uid."""
    binder, tab = practice(shelf)
    titles = readings.STANDARD
    given = {
        "at": "2026-11-22T20:15",
        "question": "Should I move the workshop to the ferry quay?",
        "spread": spread(key),
        "laid": laid_from(line, spread(key), titles),
        "text": TEXT,
    }
    return binder, readings.log(binder, tab, readings.NewReading(**(given | fields)))


def expect_two(binder, uid):
    """Two statements on a reading; returns their uids."""
    return [
        lookbacks.expect(
            binder, uid, "The landlord asks for more than two months.", 70, "2026-11-24"
        ),
        lookbacks.expect(binder, uid, "I still have the old room.", 55, "2027-04-01"),
    ]


def plain(shelf, text, title="A leaf", **fields):
    """A plain leaf behind the clippings; returns its binder and uid."""
    binder, _ = practice(shelf)
    tab = tabs.first_of_kind(binder, "clippings")
    return binder, add_leaf(binder, tab, title, text, **fields)


def session_on(shelf):
    """A session on a shelf, on the day of the tests."""
    return Session(shelf, OtherDay(TODAY))


def shown(page, qtbot, session, uid, size=(524, 850), marks=()):
    """Show a leaf on a page in a window of its own, refilled when its binder changes."""
    qtbot.addWidget(page)
    page.resize(*size)
    spot = session.spot_of(uid)
    page.show()
    qtbot.waitExposed(page)
    page.show_spot(spot, marks)
    session.changed.connect(lambda _notice: page.show_spot(spot))
    QApplication.processEvents()
    return page
