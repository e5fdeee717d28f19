"""The year sheet on paper: twelve months on one page, as they lie on the leaf."""

from datetime import date

import pytest

from binder.cards.spreads import spread
from binder.paper.sheets import Sheet
from binder.paper.year import year_pdf
from binder.study.dates import MONTHS
from binder.study.leaves import tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.discretion import LeaveOut
from binder.study.readings.laying import laid_from
from binder.study.readings.readings import NewReading
from tests.paper.reading_back import bare, texts
from tests.paper.test_leaving_out import everything
from tests.paper.test_photographs import images, keep, lies

TODAY = date(2026, 11, 25)
SHEET = Sheet("a4", "3", guides=False)
DECK = "0191a4d6-2222-7000-8000-000000000000"


@pytest.fixture
def log(course_shelf):
    """A verb that draws cards for a month."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")

    def drawn(month, cards, pattern="one-card", **more):
        laid = laid_from(cards, spread(pattern), readings.STANDARD)
        made = NewReading(
            f"{month}-01T08:00", "What now?", spread(pattern), laid, purpose="month", month=month,
            **more,
        )  # fmt: skip
        return readings.log(binder, tab, made)

    return drawn


def printed(shelf, sheet=SHEET, **more):
    return year_pdf(shelf, 2026, TODAY, sheet, **more)


@pytest.mark.parametrize("paper", ["a4", "letter", "a5"])
def test_twelve_months_stand_on_one_page(course_shelf, log, paper):
    for number in range(1, 12):
        log(f"2026-{number:02}", "3w, hermit r, qc", "three-card", text="So much to tell. " * 20)
    (page,) = texts(printed(course_shelf, Sheet(paper, "none")))
    for name in MONTHS:
        assert (name[:3] if paper == "a5" else name) in page
    assert page.count(bare("Three of Wands; The Hermit, reversed; Queen of Cups")) == 11


def test_a_month_says_what_was_seen_and_what_came(course_shelf, log):
    uid = log("2026-04", "star", text="Open *water*.\n\nMore below.")
    log("2026-04", "moon")
    binder = course_shelf.binder("Practice")
    one = lookbacks.expect(binder, uid, "It rains.", 70, "2026-04-30")
    lookbacks.judge(binder, one, "came about")
    (page,) = texts(printed(course_shelf))
    for words in ("The Star", "Open water.", "1 more draw for this month", "came about",
                  "none drawn", "The year 2026"):  # fmt: skip
        assert bare(words) in page
    assert bare("More below") not in page


def test_photographs_of_the_deck_are_shown_as_the_cards_lay(course_shelf, log):
    binder = course_shelf.binder("Practice")
    keep(course_shelf, binder, DECK, "cups-13", "major-17")
    log("2026-03", "star r", deck=DECK)
    log("2026-05", "qc", deck=DECK)
    log("2026-06", "qc")
    pdf = printed(course_shelf)
    assert len(images(pdf)) == 2
    assert lies(pdf, 0, "cups-13")[1] > 5
    assert lies(pdf, 0, "major-17")[1] < -5


def test_what_is_left_out_is_not_in_the_file(course_shelf, log):
    log("2026-04", "star", text="Private: secret one.\n\nAda Quill came.", querent="Ada Quill")
    log("2026-05", "moon", title="Private: secret two", text="secret three")
    pdf = printed(course_shelf, leave_out=LeaveOut(querents=True, private=True))
    said = everything(pdf)
    assert not any(word in said for word in ("secret", "Ada", "Quill"))
    (page,) = texts(pdf)
    for words in ("The querent came.", "A private leaf", "are left out."):
        assert bare(words) in page
    assert bare("The Moon") not in page
    assert "secret" in "".join(texts(printed(course_shelf)))
