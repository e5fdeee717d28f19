"""Blank sheets asked for in a dialog, and saved."""

import pypdf
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog

from binder.cards.spreads import Place, Spread
from binder.study.spreads.spreads import add_spread
from ui.proof.blank_dialog import BlankDialog


@pytest.fixture
def dialog(qtbot, session, look):
    made = BlankDialog(session, look)
    qtbot.addWidget(made)
    made.show()
    return made


@pytest.fixture
def answer(monkeypatch):
    """What the system's own dialog for files answers."""

    def given(path):
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))

    return given


def choose(combo, key):
    combo.setCurrentIndex(combo.findData(key))


def test_only_what_the_sheet_takes_is_asked(dialog):
    assert dialog.spread.isVisible()
    choose(dialog.kind, "card")
    assert dialog.card.isVisible()
    assert not dialog.spread.isVisible()
    choose(dialog.kind, "month")
    assert dialog.month.isVisible()
    assert dialog.month.text() == "2026-11"


def test_the_usual_holes_give_way_on_smaller_paper(dialog):
    choose(dialog.paper, "a5")
    assert dialog.sheet().holes == "2"


def test_saved_as_a_pdf(qtbot, session, dialog, answer, tmp_path):
    choose(dialog.spread, "celtic-cross")
    dialog.copies.setValue(2)
    qtbot.keyClick(dialog.both, Qt.Key.Key_Space)
    assert dialog.sheet().two_sided
    answer(tmp_path / "sheets")
    with qtbot.waitSignal(session.said) as said:
        qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert said.args[0].startswith("Saved 2 pages as")
    assert not dialog.isVisible()
    reader = pypdf.PdfReader(tmp_path / "sheets.pdf")
    assert "Celtic Cross" in reader.pages[1].extract_text()


def test_a_spread_of_ones_own_has_its_sheet(qtbot, session, look, answer, tmp_path):
    labels = ("What the quay wants", "What the kiln wants")
    places = tuple(Place(n, label, "", 1.5 * n, 0) for n, label in enumerate(labels, start=1))
    own = Spread("quay-and-kiln", "Quay and kiln", "own", places)
    add_spread(session.shelf, session.shelf.binders[0], own)
    dialog = BlankDialog(session, look)
    qtbot.addWidget(dialog)
    dialog.spread.setCurrentText("Quay and kiln")
    answer(tmp_path / "own.pdf")
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    said = pypdf.PdfReader(tmp_path / "own.pdf").pages[0].extract_text()
    for words in ("Quay and kiln", *labels):
        assert words in said


@pytest.mark.parametrize(
    ("field", "value", "said"), [("month", "soon", "no month"), ("paper", "a5", "do not fit")]
)
def test_what_cannot_be_is_said_and_the_dialog_stays(
    qtbot, dialog, answer, tmp_path, field, value, said
):
    choose(dialog.kind, "month")
    if field == "month":
        dialog.month.setText(value)
    else:
        choose(dialog.paper, value)
        choose(dialog.holes, "4")
    answer(tmp_path / "x.pdf")
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert dialog.isVisible()
    assert said in dialog.wrong.text()


def test_no_place_chosen_saves_nothing(qtbot, dialog, answer, tmp_path):
    answer("")
    qtbot.mouseClick(dialog.yes, Qt.MouseButton.LeftButton)
    assert dialog.isVisible()
    assert "Nothing was saved yet" in dialog.wrong.text()
