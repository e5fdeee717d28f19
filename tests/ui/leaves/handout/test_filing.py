"""Filing files and folders as handouts: dropped, chosen, pasted; progress, stopping, bad files."""

import io
import os

import pytest
from PIL import Image
from pypdf import PdfWriter
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog

from binder.study.handouts import page_notes
from binder.study.leaves import leaves, tabs
from tests.page.markup.written import written
from tests.ui.driving import CTRL, SHIFT, K, click, key, keys, settle
from ui.actions.installed import actions_of

COPY = Qt.DropAction.CopyAction


def pdf(pages=1, title="", password=""):
    writer = PdfWriter()
    for _ in range(pages):
        writer.add_blank_page(300, 400)
    writer.add_metadata({"/Title": title})
    if password:
        writer.encrypt(password)
    out = io.BytesIO()
    writer.write(out)
    return out.getvalue()


def png(width=20, height=10, colour=(160, 40, 40)):
    out = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(out, "PNG")
    return out.getvalue()


@pytest.fixture
def desk(window):
    """The window open at the clippings of the second level."""
    practice = window.session.shelf.binder("Practice")
    window.session.open_tab(practice, tabs.tab(practice, "Clippings"))
    settle()
    return window


def entries(window, tab="Clippings"):
    practice = window.session.shelf.binder("Practice")
    return leaves.contents(practice, tabs.tab(practice, tab))


def drop(widget, *paths, at=None):
    """Drag files over a widget and let go there."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(os.fspath(path)) for path in paths])
    at = at or widget.rect().center()
    usual = (COPY, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    enter = QDragEnterEvent(at, *usual)
    QApplication.sendEvent(widget, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(widget, QDropEvent(QPointF(at), *usual))


def finish(window):
    """Until all is filed and read."""
    filing = actions_of(window).filing
    for _ in range(1000):
        filing.wait()
        settle()
        if not filing.busy:
            break
    assert not filing.busy
    settle()


def test_files_dropped_on_the_binder_become_leaves_in_order(desk, tmp_path):
    (tmp_path / "sheet 10.pdf").write_bytes(pdf(2))
    (tmp_path / "sheet_9.pdf").write_bytes(pdf(1))
    (tmp_path / "map.png").write_bytes(png())
    before = len(entries(desk))
    drop(desk.cover, tmp_path / "sheet_9.pdf", tmp_path / "sheet 10.pdf", tmp_path / "map.png")
    finish(desk)
    new = entries(desk)[before:]
    assert [entry.title for entry in new] == ["sheet 9", "sheet 10", "map"]
    assert {entry.kind for entry in new} == {"handout"}
    assert desk.said.text() == "3 handouts are filed behind Clippings."
    key(desk, K.Key_Z, CTRL)
    assert len(entries(desk)) == before
    key(desk, K.Key_Z, CTRL | SHIFT)
    assert len(entries(desk)) == before + 3


def test_files_may_fall_anywhere_on_the_leaves(desk, tmp_path):
    (tmp_path / "on the list.pdf").write_bytes(pdf())
    contents = desk.cover.leaf("left")
    before = len(entries(desk))
    drop(contents.list.viewport(), tmp_path / "on the list.pdf")
    finish(desk)
    assert [entry.title for entry in entries(desk)[before:]] == ["on the list"]


def test_a_pdf_dropped_on_a_reading_is_filed_and_a_picture_is_its_photograph(desk, tmp_path):
    (tmp_path / "spread.pdf").write_bytes(pdf())
    (tmp_path / "table.png").write_bytes(png(40, 30))
    practice = desk.session.shelf.binder("Practice")
    log = tabs.first_of_kind(practice, "readings")
    desk.session.open_leaf(leaves.contents(practice, log)[0].uid)
    settle()
    reading, before = desk.cover.leaf("left"), len(entries(desk, log.name))
    drop(reading.viewport(), tmp_path / "table.png")
    reading.importing.job.wait()
    settle()
    assert len(entries(desk, log.name)) == before
    drop(reading.viewport(), tmp_path / "spread.pdf")
    finish(desk)
    assert len(entries(desk, log.name)) == before + 1
    assert desk.session.leaf_of(desk.session.left).kind == "handout"


def test_find_on_the_shelf_opens_a_handout_at_its_page(desk, tmp_path):
    (tmp_path / "talk.pdf").write_bytes(written("Nothing.", "A heronry by the slip."))
    drop(desk.cover, tmp_path / "talk.pdf")
    finish(desk)
    desk.session.open_tab(desk.session.binder, desk.session.tab)
    key(desk, K.Key_F, CTRL)
    keys(desk, "heronry")
    desk.finder.job.wait()
    settle()
    key(desk, K.Key_Return)
    page = desk.cover.leaf("left")
    for _ in range(4):
        page.wait()
        settle()
    assert (page.number, page.find_row.told.text()) == (1, "1 of 1")
    assert page.view.words.current is not None


def test_a_folder_dropped_on_a_tab_goes_behind_that_tab(desk, tmp_path):
    folder = tmp_path / "course"
    (folder / "week 10").mkdir(parents=True)
    (folder / "week 2").mkdir()
    (folder / ".hidden").mkdir()
    (folder / "week 10" / "b.pdf").write_bytes(pdf(1, "ten"))
    (folder / "week 2" / "a.pdf").write_bytes(pdf(1, "two"))
    (folder / ".hidden" / "x.pdf").write_bytes(pdf(1, "no"))
    (folder / "week 2" / "same.pdf").write_bytes(pdf(1, "two"))
    before = len(entries(desk, "Methods"))
    practice = desk.session.shelf.binder("Practice")
    button = desk.cover.dividers.button(tabs.tab(practice, "Methods").uid)
    drop(desk.cover.dividers, folder, at=button.mapTo(desk.cover.dividers, QPoint(8, 30)))
    finish(desk)
    assert [entry.title for entry in entries(desk, "Methods")[before:]] == ["a", "b"]
    assert "1 was there already" in desk.said.text()


def test_chosen_from_the_menu_and_a_single_one_is_opened(desk, tmp_path, monkeypatch):
    folder = tmp_path / "talks"
    folder.mkdir()
    path = folder / "01.pdf"
    path.write_bytes(pdf(1, "A talk about questions"))
    monkeypatch.setattr(QFileDialog, "getOpenFileNames", lambda *_: ([str(path)], ""))
    key(desk, K.Key_I, CTRL | SHIFT)
    finish(desk)
    view = desk.session.leaf_of(desk.session.left)
    assert view.title == "A talk about questions"  # the file's name says nothing
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    desk.actions_by_name["file_folder"].trigger()
    finish(desk)
    assert "1 was there already" in desk.said.text()


def test_pasted_files_and_pictures(desk, tmp_path):
    before = len(entries(desk))
    path = tmp_path / "pasted.pdf"
    path.write_bytes(pdf())
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    QGuiApplication.clipboard().setMimeData(data)
    key(desk, K.Key_V, CTRL)
    finish(desk)
    assert entries(desk)[before].title == "pasted"
    image = QImage(30, 20, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.darkGreen)
    QGuiApplication.clipboard().setImage(image)
    key(desk, K.Key_V, CTRL)
    assert entries(desk)[before + 1].title == "Pasted picture"
    key(desk, K.Key_Z, CTRL)
    assert len(entries(desk)) == before + 1
    QGuiApplication.clipboard().setText("only words")
    key(desk, K.Key_V, CTRL)
    assert desk.said.text() == "There is no file or picture on the clipboard; copy one first."


def test_pasting_into_a_note_puts_words_there(desk):
    binder = desk.session.binder
    uid = next(one.uid for one in entries(desk) if one.title.startswith("Planing"))
    desk.session.open_leaf(uid)
    page = desk.cover.leaf("left")
    for _ in range(3):
        page.wait()
        settle()
    page.beside.write()
    settle()
    assert desk.focusWidget() is page.beside.editor
    QGuiApplication.clipboard().setText("pasted words")
    key(desk, K.Key_V, CTRL)
    keys(desk, " and more")
    key(desk, K.Key_Escape)
    notes = page_notes.page_notes(binder, uid)
    assert ("pasted words and more", 1) in [(note.text, note.page) for note in notes]


def test_what_cannot_be_filed_is_listed_and_stops_nothing_else(desk, tmp_path):
    bomb = io.BytesIO()
    Image.new("1", (20_000, 10_000)).save(bomb, "PNG")
    bad = {
        "empty.pdf": b"", "torn.pdf": b"%PDF-1.7 torn", "words.txt": b"only words",
        "no.png": b"not a picture", "half.png": png(50, 50)[:20], "bomb.png": bomb.getvalue(),
        "shut.pdf": pdf(1, password="x"), "good.pdf": pdf(1), "really a picture.pdf": png(5, 5),
        "new\nline ‮.png": png(7, 7),
    }  # fmt: skip
    folder = tmp_path / "mixed"
    folder.mkdir()
    for name, data in bad.items():
        (folder / name).write_bytes(data)
    before = len(entries(desk))
    drop(desk.cover, folder, tmp_path / "gone.pdf")
    finish(desk)
    titles = [entry.title for entry in entries(desk)[before:]]
    assert titles == ["good", "new line", "really a picture", "shut"]
    panel = actions_of(desk).filing_panel
    assert panel.isVisible()
    assert panel.told.text().endswith("7 could not be filed.")
    listed = [panel.list.item(row).text() for row in range(panel.list.count())]
    for sentence in (
        "“bomb.png” has 200 million pixels", "“empty.pdf” is empty", "“half.png” is damaged",
        "“no.png” is neither a picture nor a PDF", "“torn.pdf” is damaged or has no pages",
        "“words.txt” is neither", "“gone.pdf” could not be read", "locked with a password",
    ):  # fmt: skip
        assert sum(sentence in line for line in listed) == 1, sentence
    assert len(listed) == 8
    desk.cover.leaf("left").focus_in()
    key(desk, K.Key_Escape)
    assert not panel.isVisible()
    panel.list.addItems(listed)
    panel.show()
    click(panel.close_button)
    assert not panel.isVisible()


def test_other_kinds_of_picture_are_kept_as_png(desk, tmp_path):
    Image.new("RGB", (30, 20), (10, 90, 40)).save(tmp_path / "old.bmp")
    drop(desk.cover, tmp_path / "old.bmp")
    finish(desk)
    view = desk.session.leaf_of(desk.session.left)
    assert view.title == "old"
    ((name, media),) = view.binder.sql("SELECT name, media FROM kept ORDER BY id DESC LIMIT 1")
    assert (name, media) == ("old.png", "image/png")


def test_stopping_keeps_what_is_filed_and_leaves_the_rest(desk, tmp_path, qtbot, monkeypatch):
    monkeypatch.setattr("ui.desk.filing_panel.SOON_MS", 0)
    folder = tmp_path / "many"
    folder.mkdir()
    for number in range(300):
        (folder / f"sheet {number}.pdf").write_bytes(pdf(1, str(number)))
    before = len(entries(desk))
    drop(desk.cover, folder)
    filing, panel = actions_of(desk).filing, actions_of(desk).filing_panel
    qtbot.waitUntil(panel.isVisible)
    QTest.mouseClick(panel.stop, Qt.MouseButton.LeftButton)
    finish(desk)
    assert not filing.busy
    filed = len(entries(desk)) - before
    assert filed < 300
    drop(desk.cover, folder)
    finish(desk)
    assert len(entries(desk)) - before == 300


def test_shutting_the_window_meanwhile_leaves_nothing_half_filed(desk, tmp_path):
    from binder.store.file import check, open_file

    folder = tmp_path / "many"
    folder.mkdir()
    for number in range(200):
        (folder / f"sheet {number}.pdf").write_bytes(pdf(1, str(number)))
    drop(desk.cover, folder)
    path = desk.session.binder.path
    desk.close()
    assert not actions_of(desk).filing.busy
    assert check(path) == []
    binder = open_file(path)
    (kept,), (shown,) = (
        binder.sql(f"SELECT count(*) FROM {of}")[0]
        for of in ("kept WHERE name LIKE 'sheet %.pdf'", "leaf WHERE title LIKE 'sheet %'")
    )
    binder.close()
    assert kept == shown


def test_two_orders_are_filed_one_after_the_other(desk, tmp_path):
    for name in ("one", "two"):
        (tmp_path / f"{name}.pdf").write_bytes(pdf(1, name))
    before = len(entries(desk))
    drop(desk.cover, tmp_path / "one.pdf")
    drop(desk.cover, tmp_path / "two.pdf")
    finish(desk)
    assert [entry.title for entry in entries(desk)[before:]] == ["one", "two"]


def test_a_binder_taken_off_the_shelf_meanwhile_is_named(desk, tmp_path):
    (tmp_path / "late.pdf").write_bytes(pdf())
    drop(desk.cover, tmp_path / "late.pdf")
    actions_of(desk).filing.keeping.wait()
    desk.session.binder.close()
    finish(desk)
    panel = actions_of(desk).filing_panel
    assert "was set aside meanwhile" in panel.list.item(0).text()
    assert panel.told.text().startswith("No handout is filed")
