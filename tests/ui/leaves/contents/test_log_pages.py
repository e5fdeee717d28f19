"""The year sheet and what came of it, in a real window, by keys and clicks."""

from datetime import date, timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog

from binder.reckon.calendar import Draw
from binder.store.clock import OtherDay
from binder.study.leaves import leaves
from binder.study.overview import came, months, slips
from binder.study.readings import draws, readings
from tests.ui.driving import follow, pick
from tests.ui.leaf_fixtures import log
from ui.actions.installed import Installed, actions_of
from ui.desk.due import due
from ui.dialogs.draws import DrawsDialog
from ui.kit.forms import asking
from ui.leaves.counted.came import CamePage, SurePage
from ui.leaves.counted.year import YearPage
from ui.session.memory import Memory
from ui.session.trail import Show, Spot

STAR = "major-17"
NOVEMBER = 10


@pytest.fixture
def window(qtbot, session, look, tmp_path):
    from ui.desk.window import Window

    made = Window(session, look, Memory(tmp_path / "desk.ini"))
    Installed(made)
    qtbot.addWidget(made)
    made.resize(1600, 1000)
    made.start(None)
    with qtbot.waitActive(made):
        made.show()
        made.activateWindow()
    yield made
    made.hide()


def key(window, key, modifier):
    QTest.keyClick(window, key, modifier)


def year_page(window):
    key(
        window,
        Qt.Key.Key_M,
        Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier,
    )
    page = window.cover.leaf("left")
    assert isinstance(page, YearPage)
    return page


def came_page(window):
    key(
        window,
        Qt.Key.Key_J,
        Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier,
    )
    page = window.cover.leaf("left")
    assert isinstance(page, CamePage)
    return page


def click_row(qtbot, view, row):
    at = view.visualRect(view.model().index(row, 0)).center()
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)


# The year sheet


def test_a_key_lays_the_year_open_and_its_newest_reading_facing(window):
    page = year_page(window)
    assert page.heading.accessibleName() == "The year 2026"
    assert page.model.rowCount() == 12
    lines = months.year_sheet(window.session.shelf, 2026, date(2026, 11, 25))
    drawn = [line for line in lines if line.leaf_uid]
    assert window.session.facing.leaf == drawn[-1].leaf_uid
    assert drawn[-1].titled in page.model.index(NOVEMBER, 0).data()


def test_a_click_on_a_month_opens_its_reading(window, qtbot):
    page = year_page(window)
    wanted = page.model.rows[NOVEMBER].leaf_uid
    click_row(qtbot, page.list, NOVEMBER)
    assert window.session.left.leaf == wanted


def test_enter_on_the_month_offered_begins_its_draw(window, qtbot):
    page = year_page(window)
    page.list.setCurrentIndex(page.model.index(11, 0))
    qtbot.keyClick(page.list, Qt.Key.Key_Return)
    assert window.staged("entry")
    assert actions_of(window).entry.draft().month == "2026-12"


def test_a_missed_month_leads_nowhere(window, qtbot):
    page = year_page(window)
    click_row(qtbot, page.list, 0)
    assert window.session.left.show is Show.YEAR


def test_turning_goes_from_year_to_year_and_back(window):
    page = year_page(window)
    key(window, Qt.Key.Key_PageUp, Qt.KeyboardModifier.ControlModifier)
    assert page.heading.accessibleName() == "The year 2025"
    page.links.words[1].click()
    assert page.heading.accessibleName() == "The year 2026"
    window.session.back()
    assert page.heading.accessibleName() == "The year 2025"


def test_the_arrows_name_the_years_they_lead_to(window, qtbot):
    page = year_page(window)
    for step, words in ((0, "← 2025"), (0, "← 2024"), (1, "2025 →"), (1, "2026 →"), (1, "2027 →")):
        assert page.links.words[step].text() == words
        qtbot.mouseClick(page.links.words[step], Qt.MouseButton.LeftButton)
        assert page.heading.accessibleName() == f"The year {words.strip(' ←→')}"


@pytest.mark.parametrize(
    ("year", "words", "leads"),
    [
        (1900, ["← 1899", "1901 →"], [False, True]),
        (1901, ["← 1900", "1902 →"], [True, True]),
        (2199, ["← 2198", "2200 →"], [True, True]),
        (2200, ["← 2199", "2201 →"], [True, False]),
    ],
)
def test_no_arrow_leads_beyond_the_years_there_are(session, look, lay, year, words, leads):
    page = lay(YearPage(session, look), Spot(Show.YEAR, leaf=str(year)))
    assert [word.text() for word in page.links.words[:2]] == words
    assert [word.isEnabled() for word in page.links.words[:2]] == leads


@pytest.mark.parametrize("way", ["link", "key"])
def test_the_year_is_printed_from_its_page(window, way):
    page = year_page(window)
    if way == "link":
        page.links.words[-1].click()
    else:
        window.actions_by_name["print"].trigger()
    assert actions_of(window).proof.title.text() == "Print the year 2026"
    assert actions_of(window).proof.isVisible()
    actions_of(window).proof.wait()
    actions_of(window).proof.leave()
    assert window.session.left.show is Show.YEAR
    assert not page.isHidden()


def test_the_log_leads_to_its_sheets(window):
    binder, tab = window.session.log()
    window.session.open_tab(binder, tab)
    page = window.cover.leaf("left")
    page.links.words[0].click()
    assert window.session.left.show is Show.YEAR
    window.session.back()
    window.cover.leaf("left").links.words[1].click()
    assert window.session.left.show is Show.CAME


def test_other_tabs_have_no_such_links(window):
    window.session.open_leaf(window.session.shelf.card_leaf(STAR)[1])
    window.actions_by_name["contents"].trigger()
    assert window.cover.leaf("left").links.isHidden()


# What came of it


def test_what_came_lies_beside_how_sure(window):
    page = came_page(window)
    assert isinstance(window.cover.leaf("right"), SurePage)
    whole = came.came(window.session.shelf).whole
    assert f"{whole.stated} statements" in page.heading.accessibleDescription()
    assert f"{whole.out.came} came about" in page.bar.accessibleName()
    told = window.cover.leaf("right").picture.accessibleDescription()
    assert told.endswith(f"of {whole.out.cases}")


def test_a_group_is_laid_facing_by_key(window, qtbot):
    page = came_page(window)
    page.switch.words[4].click()
    first = page.model.rows[0]
    page.list.setFocus()
    page.list.setCurrentIndex(page.model.index(0, 0))
    qtbot.keyClick(page.list, Qt.Key.Key_Return)
    facing = window.cover.leaf("right")
    assert facing.heading.accessibleDescription().casefold() == f"topic: {first.name}".casefold()
    actions_of(window).sure("")
    assert facing.heading.accessibleDescription() == "All statements"


def test_more_cards_come_on_demand(window, qtbot):
    page = came_page(window)
    last = page.model.rowCount() - 1
    assert page.model.index(last, 0).data().startswith("and ")
    page.list.chosen.emit(last)
    assert page.model.rowCount() == len(came.came(window.session.shelf).groups[came.By.CARD])


def test_a_card_leaf_tells_what_came_of_its_readings(window):
    session = window.session
    session.open_leaf(session.shelf.card_leaf(STAR)[1])
    page = window.cover.leaf("left")
    whole = came.came_of(session.shelf, STAR).whole
    assert not page.came.isHidden()
    assert f"{whole.out.came} came about" in page.came.bar.accessibleName()
    page.came.followed.emit(f"sure:card|{STAR}")
    assert window.session.facing.show is Show.SURE
    assert "The Star" in window.cover.leaf("right").heading.accessibleDescription()


def test_a_log_without_statements_says_so(qtbot, course_shelf, look, lay):
    from ui.session.session import Session

    session = Session(course_shelf, OtherDay(date(2026, 11, 25)))
    session.open_counted(Show.CAME)
    page = lay(CamePage(session, look), session.left)
    assert "Nothing is stated yet" in page.words.html
    assert page.list.isHidden()
    session.deleteLater()


# Draws


def test_the_weekly_draw_is_switched_on_and_asked_for(window, qtbot, look):
    shelf = window.session.shelf
    dialog = DrawsDialog(window.session, look, window)
    qtbot.addWidget(dialog)
    box = dialog.boxes[Draw.DAY]
    assert not box.isChecked()
    dialog.show()
    qtbot.keyClick(box, Qt.Key.Key_Space)
    assert draws.switched_on(shelf, Draw.DAY)
    window.show_slips()
    assert any(slip.month == "2026-11-25" for slip in due(window.session)[0])
    qtbot.keyClick(box, Qt.Key.Key_Space)
    assert not draws.switched_on(shelf, Draw.DAY)


# A reading's table, from the menu


def reading_open(window):
    binder, tab = window.session.log()
    uid = leaves.nth(binder, tab.row, True, 0)
    window.session.open_leaf(uid)
    return binder, uid


def test_the_layout_is_shown_otherwise_from_the_menu(window, monkeypatch):
    binder, uid = reading_open(window)
    monkeypatch.setattr(asking, "choice", lambda *_asked: 2)
    window.actions_by_name["show_layout"].trigger()
    assert readings.reading(binder, uid).shown == "list"
    assert not window.cover.leaf("left").cards.laid_out.pictured


def test_a_photograph_is_chosen_from_the_menu(window, qtbot, monkeypatch, tmp_path):
    binder, uid = reading_open(window)
    image = QImage(120, 80, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    assert image.save(str(tmp_path / "table.png"))
    chosen = ([str(tmp_path / "table.png")], "")
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_asked: chosen)
    page = window.cover.leaf("left")
    with qtbot.waitSignal(page.importing.job.done, timeout=10000):
        window.actions_by_name["photograph"].trigger()
    qtbot.waitUntil(lambda: len(readings.reading(binder, uid).photos) == 1, timeout=5000)
    window.session.open_counted(Show.YEAR)
    assert not window.actions_by_name["photograph"].isEnabled()


# From the question to the look back, months later


def test_a_reading_without_statements_asks_after_thirty_days_and_is_put_off_and_let_go(window):
    session = window.session
    shelf = session.shelf
    window.actions_by_name["new_reading"].trigger()
    entry = actions_of(window).entry
    entry.left.head.question.setPlainText("What of the kiln?")
    entry.left.head.looks.click()
    entry.hand.write("3w, hermit r, qc")
    entry.keep()
    uid = session.left.leaf
    binder = shelf.home_of(uid)
    assert readings.reading(binder, uid).look_on == "2026-12-25"
    before, on = came.came(shelf), date(2026, 12, 25)
    assert uid not in {slip.leaf_uid for slip in slips.slips(shelf, on - timedelta(days=1))}
    assert uid in {slip.leaf_uid for slip in slips.slips(shelf, on)}
    session.clock.day = on
    window.actions_by_name["look_back"].trigger()
    page = actions_of(window).looking_back
    pick(page.later.menu(), "In a week")
    assert readings.reading(binder, uid).look_on == "2027-01-01"
    window.actions_by_name["look_back"].trigger()
    page.let_go.click()
    after = came.came(shelf)
    assert (after.put_off, after.let_go) == (before.put_off + 1, before.let_go + 1)
    assert uid not in {slip.leaf_uid for slip in slips.slips(shelf, date(2027, 2, 1))}


def test_several_look_backs_are_kept_each_under_its_day(window):
    binder, uid = reading_open(window)
    before = len(readings.reading(binder, uid).look_backs)
    for words in ("The quay is let.", "And let again."):
        window.actions_by_name["look_back"].trigger()
        page = actions_of(window).looking_back
        page.text.setPlainText(words)
        page.keep.click()
    view = readings.reading(binder, uid)
    assert [one.text for one in view.look_backs[before:]] == ["The quay is let.", "And let again."]
    assert all(one.at for one in view.look_backs)


def test_a_look_back_is_begun_from_the_day_told_on_its_leaf(window):
    _, uid = log(window.session.shelf, look_on="2026-12-22")
    window.session.open_leaf(uid)
    QApplication.processEvents()
    looked = window.cover.leaf("left").looked
    link = looked.links()[-1]
    follow(looked, link)
    assert window.staged("look back")
    assert window.session.left.leaf == uid
