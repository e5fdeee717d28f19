"""An example in an empty line slants; what is typed or shown never does."""

import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from ui.kit.forms.example import ExampleLine


@pytest.fixture
def line(qtbot, look):
    window = QWidget()
    qtbot.addWidget(window)
    made = ExampleLine("work, home", window)
    QVBoxLayout(window).addWidget(made)
    made.setFont(look.theme.font("list"))
    window.show()
    yield made
    window.close()


def test_the_example_slants_until_something_is_typed(line):
    assert line.font().italic()
    QTest.keyClicks(line, "kiln")
    assert not line.font().italic()
    line.clear()
    assert line.font().italic()


@pytest.mark.parametrize("change", [("set_name", "lamp"), ("set_scale", 1.5)])
def test_another_theme_leaves_it_as_it_is(line, look, change):
    line.setText("kiln")
    getattr(look, change[0])(change[1])
    QApplication.processEvents()
    assert not line.font().italic()
    line.clear()
    getattr(look, change[0])("day" if change[0] == "set_name" else 1.0)
    QApplication.processEvents()
    assert line.font().italic()
