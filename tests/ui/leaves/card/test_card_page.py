"""The leaf of a card, with real clicks and keys on the sample shelf."""

from datetime import date, datetime, timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget

from binder.cards.spreads import spread
from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.readings import readings
from binder.study.sources import sources
from tests.ui.driving import click_row, follow, settle
from ui.kit.prose.side_by_side import cited_at, columns_fit
from ui.leaves.card import grown
from ui.leaves.card.card import CardPage
from ui.leaves.card.month_line import MonthLine
from ui.leaves.card.turned_rows import NEWEST

STAR = "major-17"
TODAY = date(2026, 11, 25)


def spot_of(session, key):
    return session.spot_of(session.shelf.card_leaf(key)[1])


@pytest.fixture
def star(session, look, lay):
    return lay(CardPage(session, look), spot_of(session, STAR))


@pytest.fixture
def laid_often(session):
    """The Star laid 40 times more, one reading a day up to a year ago."""
    log_daily(session.shelf, 40, datetime(2024, 1, 1, 9))


def log_daily(shelf, count, first):
    """Log a reading of one card, the Star, on so many days."""
    practice = shelf.binder("Practice")
    log = tabs.first_of_kind(practice, "readings")
    with practice.change("Log many"):
        for number in range(count):
            at = (first + timedelta(days=number)).isoformat()
            one = readings.Laid(1, STAR, number % 2 == 0)
            made = readings.NewReading(at, f"Question {number}?", spread("one-card"), [one])
            readings.log(practice, log, made)


def row_words(page):
    model = page.turned_up.model
    return [model.index(row, 0).data() for row in range(model.rowCount())]


def middle_of(page, row):
    rows = page.turned_up.list
    return rows.visualRect(rows.model().index(row, 0)).center()


def test_it_says_what_the_card_is(star):
    assert star.heading.accessibleName() == "The Star"
    assert star.heading.accessibleDescription() == "XVII, Major Arcana"
    assert star.facts.accessibleName() == "Element: Air; Number: 17 (1 + 7 = 8); Sky: Aquarius"
    assert star.top.faces.faces[0].accessibleName() == "The face of The Star"


def test_own_words_with_those_reversed_below(star):
    assert star.own.toPlainText().startswith("Clear weather after damage.")
    assert star.turned.toPlainText().startswith("Steering by a light")
    assert star.turned.mapTo(star, QPoint()).y() > star.own.mapTo(star, QPoint()).y()


def test_earlier_own_words_open_and_shut(star, qtbot):
    assert "2 earlier versions" in star.grown.toPlainText()
    star.grown.setFocus()
    qtbot.keyClick(star.grown, Qt.Key.Key_Tab)
    qtbot.keyClick(star.grown, Qt.Key.Key_Return)
    assert "23 August 2026: Hope. A rest after the Tower." in star.grown.toPlainText()
    assert "Clear weather" not in star.grown.toPlainText()
    qtbot.keyClick(star.grown, Qt.Key.Key_Tab)
    qtbot.keyClick(star.grown, Qt.Key.Key_Return)
    assert "Hope run thin" not in star.grown.toPlainText()


def test_the_readings_between_two_versions_stand_between_them(star, qtbot):
    star.grown.setFocus()
    qtbot.keyClick(star.grown, Qt.Key.Key_Tab)
    qtbot.keyClick(star.grown, Qt.Key.Key_Return)
    told = star.grown.toPlainText()
    assert "18 October 2026: the words above" in told
    links = [link.address for link in star.grown.links() if link.address.startswith("leaf:")]
    assert links
    with qtbot.waitSignal(star.followed) as went:
        star.grown.anchorClicked.emit(links[0])
    assert went.args == [links[0]]


def test_sources_stand_side_by_side_and_lead_to_their_leaves(star, qtbot):
    said = star.side.toPlainText()
    assert said.index("Orla Tenpenny") < said.index("Bram Vesterholt") < said.index("Upright")
    assert "pp. 204–205" in said
    star.side.setFocus()
    qtbot.keyClick(star.side, Qt.Key.Key_Tab)
    with qtbot.waitSignal(star.followed) as followed:
        qtbot.keyClick(star.side, Qt.Key.Key_Return)
    assert followed.args == ["source:tenpenny"]


def test_on_a_narrow_leaf_sources_stand_one_under_the_other(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, STAR), 330, 700)
    said = page.side.toPlainText()
    assert said.index("Upright") < said.index("Orla Tenpenny") < said.index("Bram Vesterholt")
    assert page.own.width() > 300
    assert page.horizontalScrollBar().maximum() == 0


def test_many_sources_are_folded_until_asked_for(session, look, lay, qtbot):
    binder, uid = session.shelf.card_leaf(STAR)
    for number in range(18):
        sources.note(binder, uid, f"key-{number}", "Upright", f"Says {number}.")
    page = lay(CardPage(session, look), spot_of(session, STAR))
    assert "and 14 more sources" in page.side.toPlainText()
    link = next(one for one in page.side.links() if one.address == "side:all")
    follow(page.side, link)
    assert "Says 17." in page.side.toPlainText()


def test_a_source_that_is_not_on_the_shelf_shows_its_key(session, look, lay):
    binder, uid = session.shelf.card_leaf("major-16")
    sources.note(binder, uid, "nobody-1911", "Upright", "A fall.")
    page = lay(CardPage(session, look), spot_of(session, "major-16"))
    assert "nobody-1911" in page.side.toPlainText()
    assert all("nobody" not in link.address for link in page.side.links())


def test_where_it_turned_up_is_one_click_from_the_reading(star, qtbot):
    rows = row_words(star)
    assert len(rows) == 9
    assert rows[0].endswith("Three cards, counted and paired, Future, reversed")
    assert rows[1] == "22 November 2026, Move the workshop to the quay?, Ahead, upright, waiting"
    with qtbot.waitSignal(star.followed) as followed:
        qtbot.mouseClick(
            star.turned_up.list.viewport(), Qt.MouseButton.LeftButton, pos=middle_of(star, 1)
        )
    scheme, _, uid = followed.args[0].partition(":")
    assert scheme == "leaf"
    practice = star.session.shelf.binder("Practice")
    assert leaves.leaf(practice, uid).title == "Move the workshop to the quay?"


def test_rows_are_walked_and_opened_by_key_and_come_into_sight(star, qtbot):
    rows = star.turned_up.list
    rows.setFocus()
    for _ in range(8):
        qtbot.keyClick(rows, Qt.Key.Key_Down)
    assert rows.currentIndex().row() == 8
    seen = rows.viewport().mapTo(star.viewport(), middle_of(star, 8))
    assert star.viewport().rect().contains(seen)
    with qtbot.waitSignal(star.followed) as followed:
        qtbot.keyClick(rows, Qt.Key.Key_Return)
    assert followed.args[0] == star.turned_up.model.rows[8].address


def test_left_and_right_are_left_to_the_window(star, qtbot):
    seen = []

    class Around(QWidget):
        def keyPressEvent(self, event):
            seen.append(event.key())

    around = Around()
    qtbot.addWidget(around)
    star.setParent(around)
    star.turned_up.list.setFocus()
    qtbot.keyClick(star.turned_up.list, Qt.Key.Key_Right)
    assert seen == [Qt.Key.Key_Right]


def test_earlier_readings_wait_until_asked_for(session, look, lay, qtbot, laid_often):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    assert len(row_words(page)) == NEWEST + 1
    assert row_words(page)[-1] == "and 37 earlier ones"
    rows = page.turned_up.list
    rows.setFocus()
    qtbot.keyClick(rows, Qt.Key.Key_End)
    qtbot.keyClick(rows, Qt.Key.Key_Return)
    assert len(row_words(page)) == 49
    assert rows.currentIndex().row() == NEWEST
    assert rows.height() >= 49 * 20
    assert page.turned_up.model.rows[-1].day == "1 Jan ’24"
    assert page.turned_up.head.accessibleName() == "Where it turned up, 49 times in 111 readings"


def test_a_card_seen_daily_is_read_back_for_the_whole_year(session, look, lay):
    log_daily(session.shelf, 100, datetime(2026, 8, 1, 9))
    page = lay(CardPage(session, look), spot_of(session, STAR))
    assert page.turned_up.line.accessibleName() == "The last twelve months: 109 times"


def test_a_dot_says_which_reading_it_is_and_leads_there(star, qtbot):
    line = star.turned_up.line
    dot, middle = next(one for one in line.dots() if one[0].day == date(2026, 10, 14))
    assert dot.tip == "14 October 2026: The glaze order (The matter)"
    with qtbot.waitSignal(star.followed) as followed:
        qtbot.mouseClick(line, Qt.MouseButton.LeftButton, pos=middle.toPoint())
    assert followed.args == [dot.address]
    with qtbot.assertNotEmitted(star.followed):
        qtbot.mouseClick(line, Qt.MouseButton.LeftButton, pos=QPoint(2, 2))


@pytest.mark.parametrize(
    ("today", "first"),
    [
        (date(2026, 11, 25), date(2025, 12, 1)),
        (date(2026, 12, 31), date(2026, 1, 1)),
        (date(2027, 1, 1), date(2026, 2, 1)),
    ],
)
def test_the_line_spans_twelve_months(today, first):
    assert MonthLine.first_day(today) == first


def test_no_dot_hides_another(star):
    line = star.turned_up.line
    middles = [middle for _, middle in line.dots()]
    for number, one in enumerate(middles):
        for other in middles[number + 1 :]:
            away = one - other
            assert away.x() ** 2 + away.y() ** 2 >= 100


def test_an_unwritten_leaf_says_so_quietly(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, "swords-02"))
    assert page.quiet.isVisible()
    assert "Nothing written yet." in page.quiet.toPlainText()
    assert [link.address for link in page.quiet.links()] == ["sources:"]
    for part in (page.own, page.turned, page.side_head, page.side, page.notes_head, page.grown):
        assert not part.isVisible()
    assert page.turned_up.isVisible()


def test_a_leaf_filled_again_keeps_nothing_of_the_last(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    page.show_spot(spot_of(session, "swords-02"))
    assert not page.own.isVisible()
    page.show_spot(spot_of(session, STAR))
    assert page.own.isVisible()
    assert not page.quiet.isVisible()


def test_long_own_words_take_the_whole_width(session, look, lay):
    binder, uid = session.shelf.card_leaf("swords-02")
    words.write_words(binder, uid, words.UPRIGHT, "A long meaning, slowly said. " * 20)
    page = lay(CardPage(session, look), spot_of(session, "swords-02"))
    assert page.own.width() > 480
    words.write_words(binder, uid, words.UPRIGHT, "Short.")
    page.show_spot(page.spot)
    assert page.own.width() < 380


def test_a_leaf_in_the_drawer_and_an_unknown_card_are_still_read(session, look, lay):
    spot = spot_of(session, STAR)
    binder, uid = session.shelf.card_leaf(STAR)
    leaves.set_aside(binder, uid)
    page = lay(CardPage(session, look), spot)
    assert page.heading.accessibleName() == "The Star"
    home = tabs.tab(binder, "Major Arcana")
    odd = leaves.add_leaf(binder, home, "The Happy Squirrel", kind="card", card="extra-01")
    page.show_spot(session.spot_of(odd))
    assert page.heading.accessibleName() == "The Happy Squirrel"
    assert not page.top.faces.isVisible()
    assert not page.turned_up.isVisible()


def test_its_own_name_is_not_a_link_but_others_are(star):
    found = {link.address for prose in star.proses for link in prose.links()}
    assert "card:major-18" in found
    assert f"card:{STAR}" not in found


def test_few_widgets_however_much_there_is(session, look, lay, laid_often):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    before = len(page.findChildren(QWidget))
    click_row(page.turned_up.list, NEWEST)
    assert len(page.findChildren(QWidget)) == before < 120


@pytest.mark.parametrize(
    ("locator", "said"),
    [("112", "p. 112"), ("204-205", "pp. 204–205"), ("204–5", "pp. 204–5"), ("ch. 3", "ch. 3")],
)
def test_pages_are_cited_as_pages(locator, said):
    assert cited_at(locator) == said


def test_columns_need_room(look):
    assert columns_fit(2, 524, look.theme)
    assert not columns_fit(2, 330, look.theme)
    assert not columns_fit(4, 2000, look.theme)


def test_of_many_versions_the_newest_are_laid_out(session, look, lay, qtbot):
    star = session.shelf.card_leaf(STAR)
    for number in range(grown.NEWEST + 2):
        words.write_words(*star, words.UPRIGHT, f"Meaning {number} of *many*.")
    page = lay(CardPage(session, look), spot_of(session, STAR))
    page.grown.setFocus()
    qtbot.keyClick(page.grown, Qt.Key.Key_Tab)
    qtbot.keyClick(page.grown, Qt.Key.Key_Return)
    told = page.grown.toPlainText()
    assert "Meaning 12 of many." in told
    assert "Hope run thin" not in told
    assert "earlier versions before these; all are listed under Leaf, Earlier versions." in told


def test_what_is_out_of_sight_is_filled_after_the_leaf_is_seen(session, look, lay, qtbot):
    page = lay(CardPage(session, look), spot_of(session, "cups-02"), 524, 300)
    page.show_spot(spot_of(session, STAR))
    assert "Clear weather" in page.own.toPlainText()
    assert "What I see" not in page.notes.toPlainText()
    qtbot.waitUntil(lambda: "What I see" in page.notes.toPlainText())
    assert page.turned_up.isVisibleTo(page)


def test_nothing_is_put_off_where_words_were_found(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, "cups-02"), 524, 300)
    page.show_spot(spot_of(session, STAR), ("jugs",))
    assert page.notes.first_mark() is not None


def test_a_change_is_shown_at_once_wherever_it_is(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, STAR), 524, 300)
    binder, uid = session.shelf.card_leaf(STAR)
    leaves.write(binder, uid, title="The Star", text="Other notes")
    page.show_spot(spot_of(session, STAR))
    assert page.notes.toPlainText() == "Other notes"


def test_what_was_put_off_follows_once_the_leaf_is_seen(session, look, qtbot):
    page = CardPage(session, look)
    qtbot.addWidget(page)
    page.resize(524, 200)
    page.show_spot(spot_of(session, STAR))
    settle()
    assert page.notes.toPlainText() == ""
    page.show()
    qtbot.waitUntil(lambda: "What I see" in page.notes.toPlainText())
