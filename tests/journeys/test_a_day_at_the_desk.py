"""A student's day, by mouse and keys: log, write, find, look back, print, begin a course."""

import pypdf
import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton

from binder.store.shelf import Shelf
from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.readings import readings
from tests.ui.driving import CTRL, K, click, divider, key, keys, settle, spine
from ui.actions.installed import actions_of
from ui.writing.write import WritePage

ENTER = K.Key_Return


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """What would go into the user's own folders goes into a temporary one."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


def at_left(window):
    return window.session.leaf_of(window.session.left)


def at_right(window):
    return window.session.leaf_of(window.session.facing)


def slip(window, words_on_it):
    return next(s for s in window.slips.slips() if words_on_it in s.accessibleName())


def test_the_card_for_december_is_logged_by_keys_and_found_and_printed(window, qtbot, tmp_path):
    click(slip(window, "Card for December"))
    keys(window, "star r")
    key(window, ENTER, CTRL)
    assert at_left(window).title == "Card for December 2026"
    assert isinstance(window.cover.leaf("left"), WritePage)
    keys(window, "The Star upside down, and the Tower behind it.")
    key(window, K.Key_Escape)
    assert at_left(window).text == "The Star upside down, and the Tower behind it."
    assert at_right(window).title == "The Star"
    shown = (prose.links() for prose in window.cover.leaf("left").proses)
    said = [link.address for links in shown for link in links]
    assert {"card:major-17", "card:major-16"} <= set(said)
    assert not any("Card for December" in s.accessibleName() for s in window.slips.slips())

    key(window, K.Key_F, CTRL)
    keys(window, "upside tower behi")
    qtbot.waitUntil(lambda: window.finder.isVisible())
    key(window, ENTER)
    assert at_left(window).title == "Card for December 2026"

    actions_of(window).print()
    proof = window.desk.stage()
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=30_000)
    proof.save_to(tmp_path / "log.pdf")
    printed = "".join(page.extract_text() for page in pypdf.PdfReader(tmp_path / "log.pdf").pages)
    assert "The Star upside down" in printed
    key(window, K.Key_Escape)
    assert window.desk.stage() is window.cover


def test_looking_back_on_the_ferry_booking_from_its_slip(window):
    click(slip(window, "Ferry booking"))
    view = at_left(window)
    page = window.cover.leaf("right")
    first = page.findChildren(QAbstractButton)
    came = [button for button in first if button.text().replace("&", "") == "came about"]
    for button in came:
        QTest.keyClick(button, K.Key_Space)
    page.text.setFocus()
    keys(window, "The boat was full, and we were on it.")
    click(page.keep)
    reading = readings.reading(view.binder, view.uid)
    assert reading.look_backs[-1].text == "The boat was full, and we were on it."
    assert {one.verdict for one in reading.expectations} == {"came about"}
    settle()
    assert not any("Ferry booking" in s.accessibleName() for s in window.slips.slips())


def test_a_course_of_ones_own_from_the_first_leaf(program, tmp_path, qtbot):
    from datetime import date

    from ui.session.places import begin_course

    folder = tmp_path / "mine"
    begin_course(folder, date(2026, 11, 25))
    window = program.open(folder)
    with qtbot.waitActive(window):
        window.activateWindow()
    shelf = window.session.shelf
    click(spine(window, "Foundations"))
    click(divider(window, "Major Arcana"))
    key(window, K.Key_PageDown, CTRL)
    assert at_left(window).title == "The Fool"
    key(window, K.Key_E, CTRL)
    keys(window, "Setting off before one knows how.")
    key(window, K.Key_Escape)
    said = words.current(words.history(at_left(window).binder, at_left(window).uid))
    assert "Setting off before one knows how." in (
        *(one.text for one in said.values()), at_left(window).text,
    )  # fmt: skip

    click(divider(window, "Clippings"))
    key(window, K.Key_N, CTRL)
    page = window.cover.leaf("left")
    assert isinstance(page, WritePage)
    keys(window, "A clipping about tides.")
    key(window, K.Key_Escape)
    clipping = at_left(window)
    practice = shelf.binder("Practice")
    actions_of(window).drop_on_spine(practice.uid, clipping.uid)
    assert shelf.home_of(clipping.uid) is practice
    window.session.undo()
    settle()
    assert shelf.home_of(clipping.uid).name == "Foundations"
    window.close()
    again = Shelf(folder)
    kept = [
        entry.title
        for binder in again.binders
        for entry in leaves.contents(binder, tabs.tab(binder, "Clippings"))
    ]
    again.close()
    assert len(kept) == 1
