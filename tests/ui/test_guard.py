"""Nothing that paints may raise: what cannot be drawn is drawn as that, and the fault told once."""

import ast
from pathlib import Path

import pytest
from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QApplication,
    QListView,
    QStyledItemDelegate,
    QWidget,
)

import ui
from ui.kit.guard import painting, painting_row

# Faults made here leave painters at work in the middle of a painting, of which Qt complains.
pytestmark = pytest.mark.qt_log_ignore("^Q", extend=True)


class Faulty(QWidget):
    """Fails with two painters at work, one of them on a picture of its own."""

    faults = ("a fault",)

    @painting
    def paintEvent(self, _event):
        painter = QPainter(self)
        painter.fillRect(self.rect(), Qt.GlobalColor.red)
        self.deeper()
        painter.end()

    def deeper(self):
        pixmap = QPixmap(20, 20)
        painter = QPainter(pixmap)
        painter.translate(300, 300)
        for fault in self.faults:
            try:
                raise KeyError(fault)
            except KeyError as error:
                raise ValueError(fault) from error
        painter.end()  # a picture that dies before its painter takes the program with it


class FaultyArea(QAbstractScrollArea):
    @painting
    def paintEvent(self, _event):
        painter = QPainter(self.viewport())
        painter.rotate(45)
        raise ValueError("a fault")


class FaultyRow(QStyledItemDelegate):
    """Draws every row but the second."""

    @painting_row
    def paint(self, painter, option, index):
        if index.row() == 1:
            painter.save()
            painter.translate(500, 500)
            painter.setOpacity(0.1)
            raise ValueError("a row")
        painter.fillRect(option.rect, Qt.GlobalColor.blue)


def painted(widget, times=3):
    """Paints a widget several times, as when the window is resized; gives back what is seen."""
    for number in range(times):
        widget.resize(240 + number, 90)
        widget.repaint()
        QApplication.processEvents()
    return widget.grab().toImage()


@pytest.mark.parametrize("made", [Faulty, FaultyArea])
def test_a_fault_while_painting_is_drawn_and_told_once(made, qtbot, look):
    widget = made()
    qtbot.addWidget(widget)
    with qtbot.captureExceptions() as told:
        widget.show()
        image = painted(widget)
        QApplication.processEvents()
    assert [str(error) for _kind, error, _where in told] == ["a fault"]
    colours = {image.pixelColor(x, y).name() for x in range(240) for y in range(30, 60)}
    assert "#ff0000" not in colours
    assert len(colours) > 2, "words stand there"


def test_another_fault_of_the_same_part_is_told_too(qtbot, look):
    widget = Faulty()
    qtbot.addWidget(widget)
    with qtbot.captureExceptions() as told:
        widget.show()
        painted(widget)
        widget.faults = ("another",)
        painted(widget)
        widget.faults = ()
        image = painted(widget)
    assert [str(error) for _kind, error, _where in told] == ["a fault", "another"]
    assert image.pixelColor(120, 45).name() == "#ff0000"


def test_a_row_that_cannot_be_drawn_leaves_the_others_alone(qtbot, look):
    view = QListView()
    qtbot.addWidget(view)
    view.setModel(QStringListModel(["one", "two", "three"]))
    view.setItemDelegate(FaultyRow(view))
    with qtbot.captureExceptions() as told:
        view.show()
        image = painted(view)
        QApplication.processEvents()
    assert [str(error) for _kind, error, _where in told] == ["a row"]
    rows = [view.visualRect(view.model().index(row, 0)).center() for row in range(3)]
    seen = [image.pixelColor(view.viewport().mapTo(view, at)).name() for at in rows]
    assert (seen[0], seen[2]) == ("#0000ff", "#0000ff")
    assert seen[1] != "#0000ff"


def guards(method):
    """Names of what guards a method."""
    return {one.id for one in method.decorator_list if isinstance(one, ast.Name)}


def painters():
    """Every method of ours that Qt calls to paint, with its place and what is to guard it."""
    for path in Path(ui.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.FunctionDef) or len(node.body) < 2:
                continue  # a line of words alone paints nothing
            taken = [one.arg for one in node.args.args]
            if node.name == "paintEvent":
                yield f"{path.name}:{node.lineno}", node, "painting"
            elif node.name == "paint" and taken[2:] == ["option", "index"]:
                yield f"{path.name}:{node.lineno}", node, "painting_row"


def test_all_that_paints_is_guarded():
    found = list(painters())
    assert len(found) > 50
    assert [where for where, node, guard in found if guard not in guards(node)] == []
