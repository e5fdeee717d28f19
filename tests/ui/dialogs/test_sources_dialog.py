"""Sources taken in from a file and saved to one, with real keys and clicks."""

import json

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog

from binder.carry import references
from binder.study.sources.sources import sources
from ui.dialogs.sources_dialog import FATE, KEY, TITLE, SourcesDialog

LEFT = Qt.MouseButton.LeftButton
FILE = r"""
@book{lisle, author={Other, Ann}, title={Down Under}, year=1950}
@book{muller, author={M{\"u}ller, J{\'o}n}, title={{\'E}tudes}, year=1931}
@book{again, author={Lisle, Perpetua}, year=2019,
  title={Upside Down: a Short Book about Reversals}}
@article{broken, title={Unclosed, year=1999
}
@misc{bare, title={Bare}}
"""


@pytest.fixture
def dialog(session, look, qtbot, tmp_path):
    path = tmp_path / "in.bib"
    path.write_text(FILE, encoding="utf-8")
    made = SourcesDialog(session, look, references.review(session.shelf, path))
    qtbot.addWidget(made)
    made.show()
    return made


def said(dialog, row):
    return dialog.table.item(row, FATE).text()


def test_it_lists_what_is_new_what_is_here_and_what_has_anothers_key(dialog):
    assert dialog.said.text().startswith("5 sources in “in.bib”.")
    assert "“lisle” is the key of “Upside Down”; both are kept, this one as" in said(dialog, 0)
    assert dialog.table.item(1, TITLE).text() == "Jón Müller, Études"
    assert said(dialog, 1) == "New."
    assert said(dialog, 2) == "Here already, as “Upside Down” (same title, authors and year)."
    assert "could not be read (line 7)" in said(dialog, 3)
    assert "no author and no year" in said(dialog, 4)
    assert "Line 7 of the file could not be read" in dialog.amiss.toPlainText()
    assert dialog.yes.text() == "Take in 3 sources"


def test_nothing_is_written_when_it_is_left(dialog, session, qtbot):
    before = sources(session.shelf)
    qtbot.mouseClick(dialog.no, LEFT)
    assert sources(session.shelf) == before


def test_what_is_ticked_is_taken_in_and_undone_in_one_step(dialog, session, qtbot):
    before = sources(session.shelf)
    dialog.table.item(4, TITLE).setCheckState(Qt.CheckState.Unchecked)
    assert dialog.yes.text() == "Take in 2 sources"
    dialog.table.item(0, KEY).setText("other-1950")
    qtbot.mouseClick(dialog.yes, LEFT)
    after = sources(session.shelf)
    assert after.keys() - before.keys() == {"other-1950", "muller"}
    assert after["lisle"] == before["lisle"]
    session.undo()
    assert sources(session.shelf) == before


def test_a_key_that_is_taken_is_said_and_nothing_is_lost(dialog, session, qtbot):
    dialog.table.item(0, KEY).setText("lisle")
    qtbot.mouseClick(dialog.yes, LEFT)
    assert dialog.isVisible()
    assert "“lisle” is the key of “Upside Down” already" in dialog.hint.text()


def test_the_menu_takes_in_and_saves(window, tmp_path, monkeypatch, qtbot):
    path, out = tmp_path / "in.bib", tmp_path / "out.json"
    path.write_text(FILE, encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(out), ""))

    def agree():
        found = [w for w in QApplication.topLevelWidgets() if isinstance(w, SourcesDialog)]
        if not found or not found[0].isVisible():
            QTimer.singleShot(30, agree)
            return
        qtbot.mouseClick(found[0].yes, LEFT)

    QTimer.singleShot(30, agree)
    window.actions_by_name["take_sources"].trigger()
    assert "Études" in {one.title for one in sources(window.session.shelf).values()}
    window.actions_by_name["save_sources"].trigger()
    assert len(json.loads(out.read_text(encoding="utf-8"))) == len(sources(window.session.shelf))


def test_a_file_of_another_kind_is_one_sentence(window, tmp_path, monkeypatch):
    path = tmp_path / "in.txt"
    path.write_text("words", encoding="utf-8")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(path), ""))
    window.actions_by_name["take_sources"].trigger()
    assert "should end in .bib" in window.said.text()
