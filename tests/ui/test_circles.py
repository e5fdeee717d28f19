"""No layout answers to its own size: leaves and windows of every size around the point where a bar
to scroll by comes, and no part is given another size more than a few times for each step.
"""

from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QObject, QPoint
from PySide6.QtWidgets import QApplication, QLabel, QScrollArea

import ui
from binder.study.course import course
from binder.study.leaves import leaves, tabs
from binder.study.sources import sources
from tests.ui.handouts import pdf_of, show  # noqa: F401
from tests.ui.leaf_fixtures import expect_two, log, plain
from ui.kit.scroll import ScrollArea
from ui.leaves.card.card import CardPage
from ui.leaves.contents.contents import ContentsPage
from ui.leaves.contents.plain import PlainPage
from ui.leaves.counted.came import CamePage, SurePage
from ui.leaves.counted.year import YearPage
from ui.leaves.course.plan import PlanPage
from ui.leaves.reading.reading import ReadingPage
from ui.leaves.source.source import SourcePage
from ui.session.trail import Show, Spot

MOST = 6
"""Resizes of one part in one step; each is laid out once or twice."""
AROUND = 26
"""Pixels or letters before and after the fold: more than a line is high."""
WORDS = "The ferry quay at low water, the old room above the bakery where the rain came in. " * 12


class Resizes(QObject):
    """Counts the resizes of widgets; past a hundred it holds them back, so that a circle ends."""

    def __init__(self, *parts):
        super().__init__()
        self.counts = {}
        for part in parts:
            part.installEventFilter(self)

    def eventFilter(self, watched, event):
        if event.type() is not QEvent.Type.Resize:
            return False
        self.counts[watched] = self.counts.get(watched, 0) + 1
        return self.counts[watched] > 100

    def step(self):
        """What one step took, at most, for any part."""
        for _ in range(2):
            QApplication.processEvents()
        most = max(self.counts.values(), default=0)
        self.counts.clear()
        return most


def opened(kind, session, look, lay, request):
    """A page of that kind in a window of its own, with something on it."""
    shelf = session.shelf
    foundations = shelf.binder("Foundations")
    if kind == "handout":
        return request.getfixturevalue("show")(
            ("sheet.pdf", "application/pdf", pdf_of((595, 842))), text=WORDS
        )
    if kind == "reading":
        binder, uid = log(shelf, text=WORDS)
        expect_two(binder, uid)
        return lay(ReadingPage(session, look), session.spot_of(uid))
    made = {
        "plain": lambda: (PlainPage, session.spot_of(plain(shelf, WORDS)[1])),
        "card": lambda: (CardPage, session.spot_of(shelf.card_leaf("swords-03")[1])),
        "source": lambda: (SourcePage, session.spot_of(sources.sources(shelf)["lisle"].leaf_uid)),
        "plan": lambda: (PlanPage, session.spot_of(course.plan_leaf(foundations))),
        "contents": lambda: (
            ContentsPage,
            Spot(Show.CONTENTS, foundations.uid, tabs.tab(foundations, "Major Arcana").uid),
        ),
        "year": lambda: (YearPage, Spot(Show.YEAR, leaf="2026")),
        "came": lambda: (CamePage, Spot(Show.CAME)),
        "sure": lambda: (SurePage, Spot(Show.SURE)),
    }
    page, spot = made[kind]()
    return lay(page(session, look), spot)


KINDS = ("plain", "reading", "card", "contents", "source", "handout", "plan", "year", "came",
         "sure")  # fmt: skip


def fold(page):
    """The height at which all that stands on the leaf just has room on it."""
    page.finish()
    QApplication.processEvents()
    if page.rows.hasHeightForWidth():
        return page.rows.totalHeightForWidth(page.viewport().width())
    return page.rows.totalMinimumSize().height()


@pytest.fixture
def sized(look):
    """Sets the size of letters for a test."""
    yield look.set_scale
    look.set_scale(1)


@pytest.mark.parametrize("scale", [1, 1.25])
@pytest.mark.parametrize("kind", KINDS)
def test_a_leaf_about_its_fold_is_laid_out_once(kind, scale, sized, session, look, lay, request):
    sized(scale)
    page = opened(kind, session, look, lay, request)
    page.window().setUpdatesEnabled(False)
    resizes, bar, took = Resizes(page.viewport(), page.column), page.verticalScrollBar(), {}
    for width in (524, 417):
        page.resize(width, 700)
        resizes.step()
        middle = fold(page)
        for height in range(middle - AROUND, middle + AROUND):
            page.resize(width, height)
            took[width, height] = resizes.step()
            assert bar.isVisible() is (bar.maximum() > 0)
    assert {at: many for at, many in took.items() if many > MOST} == {}


@pytest.mark.parametrize("scale", [1, 1.25])
@pytest.mark.parametrize(
    ("kind", "of"),
    [("plain", "body"), ("reading", "text"), ("handout", "notes"), ("sure", "words")],
)
def test_a_text_grows_letter_by_letter_past_the_fold(
    kind, of, scale, sized, session, look, lay, request
):
    sized(scale)
    page = opened(kind, session, look, lay, request)
    text = getattr(page, of)
    page.window().setUpdatesEnabled(False)
    resizes, took = Resizes(page.viewport(), page.column, text), {}
    text.show_html(f"<p>{WORDS[:500]}</p>")
    resizes.step()
    page.resize(524, fold(page))
    for letters in range(400, 560):
        text.show_html(f"<p>{WORDS[:letters]}</p>")
        took[letters] = resizes.step()
    assert {at: many for at, many in took.items() if many > MOST} == {}


@pytest.mark.parametrize("kind", KINDS)
def test_a_leaf_is_dragged_wider_pixel_by_pixel(kind, session, look, lay, request):
    page = opened(kind, session, look, lay, request)
    page.window().setUpdatesEnabled(False)
    page.resize(440, 700)
    middle = fold(page)
    resizes, took = Resizes(page.viewport(), page.column), {}
    for width in (*range(425, 455), *range(455, 425, -1)):
        page.resize(width, middle)
        took[width] = resizes.step()
    assert {at: many for at, many in took.items() if many > MOST} == {}


@pytest.mark.parametrize(("shown", "size"), [
    (Show.SURE, (1395, 780)), (Show.SURE, (1052, 902)), (Show.SURE, (994, 845)),
    ("handout", (1299, 1024)), ("card", (1586, 969)),
])  # fmt: skip
def test_windows_that_once_ended_the_program_are_dragged(shown, size, window):
    if shown is Show.SURE:
        window.session.open_counted(shown)
    else:
        window.session.open_leaf(leaf_of_kind(window.session, shown))
    window.setUpdatesEnabled(False)
    sides = [window.cover.leaf(side) for side in ("left", "right")]
    areas = [area for side in sides for area in (side, *side.findChildren(QScrollArea))]
    resizes, took = Resizes(*(area.viewport() for area in areas)), {}
    width, height = size
    for by in (*range(-12, 12), *range(12, -12, -1)):
        window.resize(width + by, height)
        took[by] = resizes.step()
    assert {at: many for at, many in took.items() if many > MOST} == {}


def leaf_of_kind(session, kind):
    """The first leaf of that kind on the shelf."""
    for binder in session.shelf.binders:
        for tab in session.tabs_of(binder):
            for entry in leaves.contents(binder, tab):
                if leaves.leaf(binder, entry.uid).kind == kind:
                    return entry.uid
    raise AssertionError(kind)


# What else scrolls


class Paragraph(QLabel):
    """Words that wrap, as tall as they need; what every leaf holds in the end."""

    def __init__(self):
        super().__init__(WORDS)
        self.setWordWrap(True)


@pytest.mark.parametrize("over", [True, False])
def test_an_area_is_as_wide_with_a_bar_as_without(over, qtbot, look):
    area, held = ScrollArea(over=over), Paragraph()
    qtbot.addWidget(area)
    area.hold(held)
    area.resize(300, 2000)
    with qtbot.waitExposed(area):
        area.show()
    wide, bar = held.width(), area.verticalScrollBar()
    assert wide == (300 if over else 289)
    assert not bar.isVisible()
    tall = held.heightForWidth(wide)
    for height in range(tall - AROUND, tall + AROUND):
        area.resize(300, height)
        QApplication.processEvents()
        assert held.width() == wide
        assert bar.isVisible() is (height < tall)
    area.resize(300, 100)
    QApplication.processEvents()
    assert bar.mapTo(area, QPoint()).x() == 289
    assert (bar.width(), bar.height()) == (11, 100)


def test_nothing_scrolls_in_another_area():
    """Every area that scrolls as a whole is a `ScrollArea`; lists and texts are Qt's own."""
    own = Path(ui.__file__).parent
    made = [path for path in own.rglob("*.py") if "QScrollArea(" in path.read_text("utf-8")
            or "(QScrollArea)" in path.read_text("utf-8")]  # fmt: skip
    assert [path.relative_to(own).as_posix() for path in made] == ["kit/scroll.py"]
