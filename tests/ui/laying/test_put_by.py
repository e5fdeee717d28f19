"""A reading begun lasts beyond the window: closed, killed while typing, or not writable."""

import signal
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from binder.cards.spreads import spread
from binder.store.shelf import Shelf
from binder.study.leaves import tabs
from binder.study.overview import slips
from binder.study.readings import put_by, readings
from binder.study.readings.readings import Laid, NewReading
from tests.ui.driving import (
    CTRL,
    K,
    answering,
    ask_menu,
    click,
    key,
    keys,
    pick,
    presses,
    settle,
)
from ui.actions.installed import actions_of
from ui.app import Program
from ui.laying.entry import Entry
from ui.laying.putting_by import SOON_MS
from ui.session.memory import Memory

ROOT = Path(__file__).parents[3]
ESC = Qt.Key.Key_Escape


def files(desk):
    return sorted(p.name for p in (desk.session.shelf.path / put_by.FOLDER).glob("*"))


def another(desk, look, qtbot):
    """An entry of its own on the same shelf, as after the next start."""
    made = Entry(desk.session, look)
    for leaf in (made.left, made.right):
        qtbot.addWidget(leaf)
    made.begin(desk.binder, desk.tab)
    return made


def test_words_are_on_disk_within_two_seconds_however_long_one_types(desk, qtbot):
    """A timer begun anew by each letter would never write while they come one upon another."""
    assert SOON_MS < 2000

    def typing_on():
        desk.type("a")
        return put_by.load(desk.session.shelf.path, put_by.NEW)

    qtbot.waitUntil(lambda: typing_on() is not None)
    kept = put_by.load(desk.session.shelf.path, put_by.NEW)
    assert set(kept[0].question) == {"a"}


def test_all_of_it_is_taken_up_by_another_window(desk, look, qtbot):
    desk.type("Half a question")
    desk.head.querent.setText("B. T.")
    desk.head.topic.setText("work")
    desk.head.choose_spread(spread("five-card-cross"))
    desk.entry.hand.change_spread(spread("five-card-cross"))
    desk.entry.left.to_cards()
    desk.type("3w + qc, herm")
    desk.session.leaving.emit()
    other = another(desk, look, qtbot)
    assert other.draft() == desk.entry.draft()
    assert other.left.purpose.text().startswith("Taken up where you put it by.")


@pytest.mark.parametrize("way", ["kept", "afresh"])
def test_the_file_goes_when_the_reading_is_kept_or_begun_afresh(desk, way):
    desk.type("Once?")
    desk.session.leaving.emit()
    assert files(desk) == ["new.json"]
    if way == "afresh":
        desk.entry.left.purpose.linkActivated.emit("afresh")
    else:
        desk.entry.left.to_cards()
        desk.type("3w, qc, star")
        desk.key(Qt.Key.Key_Return)
        assert desk.kept
    assert files(desk) == []


def test_an_untouched_window_leaves_the_draft_of_another_alone(desk, look, qtbot):
    other = another(desk, look, qtbot)
    desk.type("Mine")
    desk.session.leaving.emit()
    other.put_away()
    assert files(desk) == ["new.json"]


def test_a_shelf_that_cannot_be_written_says_so_once_and_keeps_the_words(desk):
    (desk.session.shelf.path / put_by.FOLDER).write_text("in the way")
    desk.type("Still here")
    for _ in range(3):
        desk.session.leaving.emit()
    assert len(desk.said) == 1
    assert desk.said[0].endswith("What you type is kept while this window is open.")
    desk.key(ESC)
    desk.entry.begin(desk.binder, desk.tab)
    assert desk.head.question.toPlainText() == "Still here"


def test_a_damaged_file_is_said_and_a_fresh_reading_begun(desk):
    desk.type("Lost")
    desk.key(ESC)
    (desk.session.shelf.path / put_by.FOLDER / "new.json").write_text("{")
    desk.entry.begin(desk.binder, desk.tab)
    assert "new.damaged" in desk.said[-1]
    assert desk.head.question.toPlainText() == ""


def test_putting_right_is_taken_up_unless_the_reading_was_changed_meanwhile(desk, look, qtbot):
    laid = [Laid(1, "wands-03"), Laid(2, "major-09"), Laid(3, "cups-13")]
    old = NewReading("2026-10-01T19:30", "The kiln?", spread("three-card"), laid)
    uid = readings.log(desk.binder, desk.tab, old)
    desk.entry.amend(desk.binder, uid)
    desk.head.question.setPlainText("The new kiln?")
    desk.entry.put_away()
    slip = slips.slips(desk.session.shelf, desk.session.today)[0]
    assert (slip.heading, slip.title, slip.leaf_uid) == ("Correcting", "The new kiln?", uid)
    other = another(desk, look, qtbot)
    other.amend(desk.binder, uid)
    assert other.left.head.question.toPlainText() == "The new kiln?"


def test_a_card_for_a_month_is_on_one_slip_its_own_or_that_of_what_was_begun(desk):
    shelf = desk.session.shelf
    desk.entry.begin(desk.binder, desk.tab, month="2026-12")
    desk.entry.left.to_cards()
    desk.type("st")
    desk.entry.put_away()
    near, later = (slips.slips(shelf, on) for on in (date(2026, 11, 30), date(2027, 1, 20)))
    assert [s.kind for s in near if s.month == "2026-12"] == [slips.SlipKind.MONTH]
    assert [(s.kind, s.title) for s in later if s.month == "2026-12"] == [
        (slips.SlipKind.BEGUN, "Card for December 2026")
    ]


# In the whole program


def test_the_next_start_lays_a_slip_that_takes_the_reading_up(window, program, qapp, tmp_path):
    key(window, K.Key_L, CTRL)
    keys(window, "What stays?")
    path = window.session.shelf.path
    window.close()
    program.close()
    settle()
    again = Program(qapp, Memory(tmp_path / "desk.ini"), program.clock)
    second = again.open(path)
    settle(8)
    slip = second.slips.slips()[0]
    assert slip.note.spoken() == "Reading begun, What stays?, put by today"
    click(slip)
    assert second.staged("entry")
    assert actions_of(second).entry.left.head.question.toPlainText() == "What stays?"
    key(second, K.Key_Escape)
    second.close()
    again.close()


def test_what_was_begun_is_thrown_away_from_the_menu_of_its_slip(window):
    key(window, K.Key_L, CTRL)
    keys(window, "What goes?")
    key(window, K.Key_Escape)
    folder = window.session.shelf.path / put_by.FOLDER
    for answer, left in (("Leave it", 1), ("Throw it away", 0)):
        slip = window.slips.slips()[0]
        assert slip.note.title == "Reading begun"
        answering(presses(answer))
        pick(ask_menu(slip), "Throw it away…")
        assert len(list(folder.glob("*"))) == left
    assert window.slips.slips()[0].note.title != "Reading begun"
    window.actions_by_name["new_reading"].trigger()
    assert window.staged("entry")
    assert actions_of(window).entry.left.head.question.toPlainText() == ""


TYPING = """
import sys
from datetime import date
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from binder.store.clock import OtherDay
from ui.actions.installed import actions_of
from ui.app import Program
from ui.session.memory import Memory
app = QApplication([])
program = Program(app, Memory(Path(sys.argv[2])), OtherDay(date(2026, 11, 25)))
window = program.open(Path(sys.argv[1]))
window.activateWindow()
window.actions_by_name["new_reading"].trigger()
entry = actions_of(window).entry
number = 0
def another():
    global number
    QTest.keyClicks(entry.left.head.question, f"w{number} ")
    print(number, flush=True)
    number += 1
timer = QTimer(interval=50)
timer.timeout.connect(another)
timer.start()
app.exec()
"""


def test_killed_while_typing_what_was_put_by_is_there_word_for_word(tmp_path):
    """How much it may lose is said by SOON_MS, above."""
    shelf = Shelf(_folder(tmp_path / "shelf"))
    tabs.add_tab(shelf.add("Practice", "spineP"), "Readings log", "readings")
    shelf.close()
    child = subprocess.Popen(
        [sys.executable, "-c", TYPING, str(tmp_path / "shelf"), str(tmp_path / "desk.ini")],
        cwd=ROOT, stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    seen = set()
    try:
        for _ in child.stdout:
            seen.add(len(words_put_by(tmp_path / "shelf")))
            if len(seen - {0}) == 2:  # written, and written again while it was typed on
                break
    finally:
        child.send_signal(signal.SIGKILL) if hasattr(signal, "SIGKILL") else child.kill()
        child.communicate()
    typed = words_put_by(tmp_path / "shelf")
    assert len(typed) >= max(seen) > 0
    assert typed == [f"w{number}" for number in range(len(typed))]


def words_put_by(folder):
    kept = put_by.load(folder, put_by.NEW)
    return kept[0].question.split() if kept else []


def _folder(path):
    path.mkdir()
    return path
