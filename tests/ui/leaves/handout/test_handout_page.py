"""The leaf of a handout: sheets turned and enlarged, files that cannot be shown; real keys."""
# ruff: noqa: F811

import io

import pytest
from PIL import Image
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from binder.study.leaves import leaves, tabs
from tests.ui.driving import ask_menu, double_click
from tests.ui.handouts import pdf_of, png, settle, show  # noqa: F401
from ui.leaves.handout.handout import HandoutPage
from ui.session.memory import Memory


def test_the_pages_of_a_pdf_are_leafed_through(show, qtbot):
    page = show(("sheet.pdf", "application/pdf", pdf_of((595, 842), (595, 842), (842, 595))))
    assert page.heading.accessibleDescription() == "16 May 2026"
    assert page.bar.count.text() == "Sheet 1 of 3"
    assert not page.bar.before.isEnabled()
    assert page.view.image.width() == pytest.approx(page.view.width(), abs=2)
    tall = page.view.height()
    assert tall == pytest.approx(page.view.width() * 842 / 595, abs=2)
    qtbot.mouseClick(page.bar.after, Qt.MouseButton.LeftButton)
    page.focus_in()
    qtbot.keyClick(page.view, Qt.Key.Key_PageDown)
    settle(qtbot, page)
    assert page.bar.count.text() == "Sheet 3 of 3"
    assert page.view.height() < tall
    assert not page.bar.after.isEnabled()
    qtbot.keyClick(page.view, Qt.Key.Key_PageDown)
    assert page.number == 2
    qtbot.keyClick(page.view, Qt.Key.Key_Home)
    assert page.number == 0
    qtbot.keyClick(page.view, Qt.Key.Key_End)
    qtbot.keyClick(page.view, Qt.Key.Key_PageUp)
    assert page.number == 1


def test_pictures_and_pdfs_stand_in_the_order_of_the_leaf(show, qtbot):
    page = show(
        ("map.png", "image/png", png(200, 100)),
        ("sheet.pdf", "application/pdf", pdf_of((595, 842))),
    )
    assert [sheet.name for sheet in page.sheets] == ["map.png", "sheet.pdf"]
    assert page.caption.toPlainText() == "map.png said"
    assert page.view.height() == pytest.approx(page.view.width() / 2, abs=2)
    page.step(1)
    assert page.caption.toPlainText() == "sheet.pdf said"


def test_notes_stand_below_without_the_links(show):
    page = show(("map.png", "image/png", png(20, 10)))
    assert page.notes.toPlainText() == "Notes of mine."
    assert page.notes.mapTo(page, QPoint()).y() > page.view.mapTo(page, QPoint()).y()


def test_one_picture_needs_no_turning(show):
    page = show(("map.png", "image/png", png(20, 10)))
    assert not page.bar.before.isVisible()
    assert not page.bar.count.isVisible()
    assert page.bar.larger.isVisible()


def test_enlarging_by_key_button_and_wheel(show, qtbot):
    page = show(("map.png", "image/png", png(2000, 1000)))
    page.focus_in()
    assert not page.bar.fit.isEnabled()
    qtbot.keyClick(page.view, Qt.Key.Key_Plus)
    qtbot.mouseClick(page.bar.larger, Qt.MouseButton.LeftButton)
    settle(qtbot, page)
    assert page.view.zoom == 2.0
    assert page.view.image.width() == pytest.approx(2 * page.view.width(), abs=2)
    wheel = QWheelEvent(
        QPointF(50, 50), QPointF(50, 50), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.ControlModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(page.view, wheel)
    assert page.view.zoom == 2.8
    qtbot.keyClick(page.view, Qt.Key.Key_Minus)
    assert page.view.zoom == 2.0
    qtbot.mouseClick(page.bar.fit, Qt.MouseButton.LeftButton)
    assert page.view.zoom == 1.0
    double_click(page.view, QPoint(10, 10))
    assert page.view.zoom == 2.0
    qtbot.keyClick(page.view, Qt.Key.Key_0)
    assert page.view.zoom == 1.0


def test_an_enlarged_sheet_is_moved_by_key_and_hand_and_stays_in_its_frame(show, qtbot):
    page = show(("map.png", "image/png", png(400, 400)))
    page.view.zoom_to(2.0)
    before = page.view.target().topLeft()
    qtbot.keyClick(page.view, Qt.Key.Key_Down)
    assert page.view.target().top() < before.y()
    qtbot.mousePress(page.view, Qt.MouseButton.LeftButton, pos=QPoint(200, 200))
    qtbot.mouseMove(page.view, QPoint(150, 200))
    qtbot.mouseRelease(page.view, Qt.MouseButton.LeftButton, pos=QPoint(150, 200))
    assert page.view.target().left() < before.x()
    for _ in range(40):
        qtbot.keyClick(page.view, Qt.Key.Key_Right)
    assert page.view.target().right() == pytest.approx(page.view.width(), abs=1)


@pytest.mark.parametrize(
    ("name", "media", "data", "sentence"),
    [
        ("torn.pdf", "application/pdf", b"%PDF-1.7 torn", "“torn.pdf” is damaged"),
        ("shut.pdf", "application/pdf", pdf_of((595, 842), password="x"), "locked with a password"),
        ("torn.png", "image/png", png(50, 50)[:60], "“torn.png” is damaged"),
        ("no.png", "image/png", b"not a picture", "“no.png” is damaged"),
    ],
)
def test_what_cannot_be_shown_is_said_in_place(show, qtbot, name, media, data, sentence):
    page = show((name, media, data))
    settle(qtbot, page)
    assert sentence in page.view.accessibleName()
    assert page.notes.isVisible()
    assert page.view.height() < 150
    page.view.grab()


def test_a_file_that_is_gone_does_not_hide_the_others(show, qtbot):
    page = show(("map.png", "image/png", png(20, 10)), missing=True)
    assert page.bar.count.text() == "Sheet 1 of 2"
    page.step(1)
    assert page.view.accessibleName() == "“the lost map” is not in this binder any more."
    assert page.bar.before.isVisible()


def test_a_handout_without_files_is_only_its_notes(show):
    page = show()
    assert not page.view.isVisible()
    assert not page.bar.isVisible()
    assert page.notes.toPlainText() == "Notes of mine."


def test_turning_to_another_leaf_shows_its_files(show, session, qtbot):
    first = show(("one.png", "image/png", png(30, 30)))
    other = show(("two.png", "image/png", png(30, 60)))
    first.show_spot(other.spot)
    settle(qtbot, first)
    assert [sheet.name for sheet in first.sheets] == ["two.png"]
    first.show_spot(first.spot)
    assert [sheet.name for sheet in first.sheets] == ["two.png"]


def test_a_copy_is_saved_or_the_reason_said(show, session, tmp_path, qtbot):
    data = png(30, 30)
    page = show(("one.png", "image/png", data))
    page.save_to(page.sheets[0], tmp_path / "copy.png")
    assert (tmp_path / "copy.png").read_bytes() == data
    with qtbot.waitSignal(session.said) as said:
        page.save_to(page.sheets[0], tmp_path / "nowhere" / "copy.png")
    assert "could not be written" in said.args[0]
    menu = ask_menu(page.view)
    assert [action.text() for action in menu.actions()] == [
        "&Write beside this page",
        "&Save a copy…",
    ]
    menu.close()


def test_the_sample_sheets_are_shown(session, look, lay, qtbot):
    practice = session.shelf.binder("Practice")
    entries = leaves.contents(practice, tabs.tab(practice, "Clippings"))
    uid = next(entry.uid for entry in entries if entry.kind == "handout")
    page = lay(HandoutPage(session, look), session.spot_of(uid))
    settle(qtbot, page)
    assert not page.view.image.isNull()
    assert not any(sheet.wrong for sheet in page.sheets)


# Bad and large files


def test_a_picture_made_to_fill_memory_is_refused_with_a_sentence(show):
    out = io.BytesIO()
    Image.new("1", (20_000, 10_000)).save(out, "PNG")
    page = show(("bomb.png", "image/png", out.getvalue()))
    assert "200 million pixels" in page.view.accessibleName()


def test_two_thousand_pages_are_turned_one_by_one(show, qtbot):
    page = show(("long.pdf", "application/pdf", pdf_of(*[(300, 400)] * 2000)))
    assert page.bar.count.text() == "Sheet 1 of 2,000"
    qtbot.keyClick(page.view, Qt.Key.Key_End)
    settle(qtbot, page)
    assert page.number == 1999
    assert not page.view.image.isNull()


def test_a_handout_lies_open_at_the_sheet_it_was_left_at(show, session, qtbot, tmp_path):
    three = pdf_of((595, 842), (595, 842), (842, 595))
    page = show(("sheet.pdf", "application/pdf", three))
    page.step(2)
    other = show(("one.png", "image/png", png(30, 30)))
    spot = page.spot
    page.show_spot(other.spot)
    settle(qtbot, page)
    assert page.bar.count.text() != "Sheet 3 of 3"
    page.show_spot(spot)
    settle(qtbot, page)
    assert page.bar.count.text() == "Sheet 3 of 3"
    memory = Memory(tmp_path / "desk.ini")
    memory.keep_sheets(tmp_path, session.sheets)
    memory.save()
    again = Memory(tmp_path / "desk.ini")
    assert again.sheets(tmp_path) == session.sheets == {spot.leaf: 2}
    assert again.sheets(tmp_path / "elsewhere") == {}
