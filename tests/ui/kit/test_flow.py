"""Fields side by side: rows by the room there is, and no layout whose items Python could keep."""

import shutil
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from ui.kit.forms.flow import Flow

ROOT = Path(__file__).parents[3]


@pytest.fixture
def flow(qtbot, look):
    """Six buttons and a field that may grow, in a column with a label below."""
    host = QWidget()
    qtbot.addWidget(host)
    made, column = Flow(10, 4), QVBoxLayout(host)
    column.setContentsMargins(0, 0, 0, 0)
    made.parts = [QPushButton(f"Button {n}") for n in range(6)] + [QLineEdit()]
    for part in made.parts:
        made.addWidget(part)
    column.addWidget(made)
    column.addStretch(1)
    column.addWidget(QLabel("below"))
    host.resize(2000, 400)
    host.show()
    qtbot.waitExposed(host)
    made.host = host  # alive as long as what stands in it
    return made


def settle(flow, width):
    flow.parentWidget().resize(width, 400)
    for _ in range(3):  # a part dressed late asks for its room once more
        QApplication.processEvents()
    return [part.geometry() for part in flow.parts if not part.isHidden()]


def test_one_row_where_there_is_room_and_what_may_grow_takes_the_rest(flow):
    rooms = settle(flow, 2000)
    assert max(room.top() for room in rooms) < min(room.bottom() for room in rooms)
    assert rooms[-1].right() + 1 == flow.width()
    assert all(a.right() + 10 == b.left() - 1 for a, b in pairwise(rooms))


@pytest.mark.parametrize("width", [240, 330, 500])
def test_narrow_it_takes_more_rows_nothing_overlaps_and_all_is_seen(flow, width):
    rooms = settle(flow, width)
    assert len({room.center().y() for room in rooms}) > 1
    assert flow.height() == flow.heightForWidth(width)
    for at, room in enumerate(rooms):
        assert flow.rect().contains(room)
        assert not any(room.intersects(other) for other in rooms[at + 1 :])


def test_a_field_that_is_hidden_or_let_go_makes_room(flow):
    tall = [settle(flow, 240), flow.height()][1]
    for part in flow.parts[:3]:
        part.hide()
    flow.removeWidget(flow.parts[3])
    flow.parts.pop(3).hide()
    QApplication.processEvents()
    assert flow.height() < tall
    flow.parts[0].show()
    QApplication.processEvents()
    assert flow.parts[0].geometry().topLeft() == flow.rect().topLeft()


DELETING = """
import sys
from datetime import date
from pathlib import Path
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QLabel
from binder.store.clock import OtherDay
from ui.actions.installed import actions_of
from ui.app import Program
from ui.session.memory import Memory

def settle():
    for _ in range(6):
        app.processEvents()
        app.sendPostedEvents(None, QEvent.Type.DeferredDelete)

app = QApplication([])
program = Program(app, Memory(Path(sys.argv[1]) / "desk.ini"), OtherDay(date(2026, 11, 25)))
window = program.open(Path(sys.argv[2]))
window.resize(1600, 1000)
settle()
labels = [QLabel("x", window.slips._pile) for _ in range(9)]
actions_of(window).new_reading()
for label in labels:
    label.deleteLater()
settle()
window.grab()
print("alive")
"""


def test_widgets_deleted_while_a_reading_is_logged_end_nothing(sample_folder, tmp_path):
    """A layout written in Python died of it: an item was taken for one deleted before it."""
    folder = shutil.copytree(sample_folder, tmp_path / "sample")
    done = subprocess.run(
        [sys.executable, "-c", DELETING, str(tmp_path), str(folder)],
        cwd=ROOT, capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip
    assert (done.returncode, done.stdout.strip()) == (0, "alive"), done.stderr[-2000:]
