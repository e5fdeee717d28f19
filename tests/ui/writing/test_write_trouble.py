"""Full disks, read-only folders, locked files, and leaves too long: nothing is lost."""
# ruff: noqa: F811

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import Qt

from binder.page.markup.markdown import LONGEST
from binder.store.file import open_file
from binder.study.leaves import leaves
from tests.ui.writing_desk import CTRL, desk, own_data  # noqa: F401
from ui.writing.editor import rescue

K = Qt.Key
NOISE = os.urandom(400_000).hex()


@pytest.fixture
def quick(monkeypatch):
    """Saving is tried again sooner than in the program, so that the test need not wait."""
    monkeypatch.setattr("ui.writing.editor.keeping.AGAIN_MS", 100)


def fill_disk(binder):
    pages = binder.sql("PRAGMA page_count")[0][0]
    binder.db.execute_sql(f"PRAGMA max_page_count = {pages}")


def make_room(binder):
    binder.db.execute_sql("PRAGMA max_page_count = 1000000")


def test_a_full_disk_is_said_the_text_stays_and_is_saved_once_there_is_room(quick, desk):
    desk.leaf("kept")
    fill_disk(desk.binder)
    desk.editor.replace_all(NOISE[:60_000])
    desk.until(lambda: "Not saved yet: The disk is full" in desk.page.said.text())
    assert desk.page.said.isVisible()
    assert desk.saved().text == "kept"
    assert not desk.page.save()
    make_room(desk.binder)
    desk.until(lambda: desk.saved().text == NOISE[:60_000], 3000)
    assert not desk.page.said.isVisible()


def test_leaving_with_unsaved_words_puts_them_by_and_saves_them_later(quick, desk):
    said = []
    desk.session.said.connect(said.append)
    uid = desk.leaf("kept", title="Kiln / log")
    fill_disk(desk.binder)
    desk.editor.replace_all(NOISE[:60_000])
    desk.session.turn(0)
    path = rescue.found(uid)
    assert path.name.startswith("Kiln log ")
    assert NOISE[:60_000] in path.read_text()
    assert str(path) in said[0]
    make_room(desk.binder)
    desk.until(lambda: leaves.leaf(desk.binder, uid).text == NOISE[:60_000], 3000)
    assert "“Kiln / log” is saved now." in said
    assert rescue.found(uid) is None


def test_unsaved_words_are_there_again_when_the_leaf_is_opened_again(quick, desk):
    uid = desk.leaf("kept")
    fill_disk(desk.binder)
    desk.editor.replace_all(NOISE[:60_000])
    desk.session.turn(0)
    desk.open(uid)
    assert desk.text() == NOISE[:60_000]
    make_room(desk.binder)
    assert desk.page.save()
    assert desk.saved().text == NOISE[:60_000]


def test_words_put_by_in_an_earlier_session_are_offered(desk):
    uid = desk.leaf("kept")
    rescue.put_by(uid, "A leaf", "# A leaf\n\nrescued words\n")
    desk.open(uid)
    assert "were not saved lie in" in desk.page.said.text()
    desk.page.said.linkActivated.emit("put")
    assert desk.text() == "kept\n\nrescued words\n"
    assert desk.saved().text == "kept\n\nrescued words\n"
    assert rescue.found(uid) is None


def test_a_read_only_binder_is_said(desk, monkeypatch):
    uid, shelf = desk.add("kept"), desk.shelf
    binder = shelf.binder("Practice")
    # Root may write anything, so the operating system's answer is given here as it is to others.
    monkeypatch.setattr(os, "access", lambda path, mode: mode != os.W_OK)
    shut = open_file(binder.path)
    shelf.binders[shelf.binders.index(binder)] = shut
    desk.open(uid)
    desk.type("more ")
    assert not desk.page.save()
    assert "Not saved yet:" in desk.page.said.text()
    assert "read but not written" in desk.page.said.text()
    desk.page.leave()
    assert "more " in rescue.found(uid).read_text()
    binder.close()


def test_a_binder_written_elsewhere_is_said_and_tried_again(quick, desk):
    desk.leaf("kept")
    desk.binder.db.execute_sql("PRAGMA busy_timeout = 50")
    script = (
        "import sqlite3,sys; db = sqlite3.connect(sys.argv[1], isolation_level=None);"
        "db.execute('BEGIN EXCLUSIVE'); print('held', flush=True); sys.stdin.read()"
    )
    with subprocess.Popen(
        [sys.executable, "-c", script, str(desk.binder.path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    ) as other:
        other.stdout.readline()
        desk.press(K.Key_End)
        desk.type("!")
        assert not desk.page.save()
        assert "another window" in desk.page.said.text()
        other.stdin.close()
    desk.until(lambda: desk.saved().text == "kept!", 4000)


def test_a_leaf_removed_elsewhere_is_said_and_its_words_are_put_by(desk):
    uid = desk.leaf("kept")
    desk.press(K.Key_End)
    desk.type(" on")
    with desk.binder.change("Remove") as change:
        from binder.store.schema import Leaf

        change.remove(Leaf, uid)
    assert not desk.page.save()
    assert "no longer in this binder" in desk.page.said.text()
    desk.page.leave()
    assert "kept on" in rescue.found(uid).read_text()


def test_where_not_even_a_copy_can_be_put_by_it_is_still_tried_again(quick, desk, tmp_path):
    (tmp_path / "data").write_text("no folder")
    said = []
    desk.session.said.connect(said.append)
    uid = desk.leaf("kept")
    fill_disk(desk.binder)
    desk.editor.replace_all(NOISE[:60_000])
    desk.session.turn(0)
    assert said == ["“A leaf” is not saved yet; it is tried again every few seconds."]
    make_room(desk.binder)
    desk.until(lambda: leaves.leaf(desk.binder, uid).text == NOISE[:60_000], 3000)


LINE = "A line of the diary that goes on for a bit."
LINES, ONE_LINE = (f"{LINE}{end}" * (LONGEST // len(LINE) + 1) for end in "\n ")


@pytest.mark.parametrize("text", [LINES, ONE_LINE], ids=["lines", "one line"])
def test_a_leaf_too_long_to_be_set_opens_and_can_be_written_on(desk, text):
    binder = desk.shelf.binder("Practice")
    desk.leaf("before")
    leaves.write(binder, desk.uid, title="A leaf", text=text)
    desk.open(desk.uid)
    assert desk.editor is desk.page.texts.long
    assert "too long for headings" in desk.page.said.text()
    desk.caret(0)
    desk.type("Now: ")
    assert desk.page.save()
    words = desk.saved().text.split()
    assert words == ("Now: " + text).split()


def test_a_word_too_long_to_write_on_is_shown_and_left_alone(desk):
    text = "x" * (LONGEST + 1)
    desk.leaf(text)
    assert "can only be read" in desk.page.said.text()
    desk.type("more")
    assert desk.page.save()
    assert desk.saved().text == text


def test_bold_works_in_a_long_leaf_too(desk):
    desk.leaf("a word\n\n" + "line\n" * 50_000)
    assert desk.editor is desk.page.texts.long
    desk.caret(2, 6)
    desk.press(K.Key_B, CTRL)
    assert desk.text().startswith("a **word**\n")
    assert desk.page.save()
    assert desk.saved().text.startswith("a **word**\n")


@pytest.fixture
def unhurried(monkeypatch):
    """Saving waits long, as while somebody types on; noting does not."""
    monkeypatch.setattr("ui.writing.editor.keeping.PAUSE_MS", 600_000)
    monkeypatch.setattr("ui.writing.editor.keeping.LONGEST_MS", 600_000)
    monkeypatch.setattr("ui.writing.editor.keeping.NOTED_MS", 10)


def test_words_typed_without_a_pause_stand_in_a_file_before_they_are_saved(unhurried, desk):
    uid = desk.leaf("kept")
    desk.press(K.Key_End)
    for word in (" and", " on", " and on"):
        desk.type(word)
        desk.until(lambda: rescue.found(uid) and desk.text().strip() in rescue.words(uid, "A leaf"))
    assert desk.saved().text == "kept"
    assert desk.page.save()
    desk.page.keeping.wait()
    assert rescue.found(uid) is None


def test_what_was_noted_when_the_computer_stopped_is_put_in_once(unhurried, desk):
    """The file has the whole leaf; what is saved of it already is not put in again."""
    uid = desk.leaf("kept")
    rescue.put_by(uid, "A leaf", "# A leaf\n\nkept and three words\n")
    desk.open(desk.add("another"))
    desk.open(uid)
    desk.page.said.linkActivated.emit("put")
    assert desk.saved().text == "kept\n\nand three words\n"
    desk.page.keeping.wait()
    assert rescue.found(uid) is None
