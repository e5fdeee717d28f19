"""What is kept from one start to the next, and what a spoilt settings file does."""

import pytest
from PySide6.QtCore import QByteArray

from ui.session.memory import Memory
from ui.session.trail import NOWHERE, Show, Spot


@pytest.fixture
def file(tmp_path):
    return tmp_path / "folder" / "desk.ini"


def test_everything_is_remembered(file, tmp_path):
    shelf = tmp_path / "My shelf, second"
    shelf.mkdir()
    spot = Spot(Show.LEAF, "binder-1", "tab, with a comma", "leaf")
    memory = Memory(file)
    memory.shelf, memory.welcomed, memory.theme, memory.scale = shelf, True, "lamp", 1.3
    memory.window = QByteArray(b"\x00\x01geometry")
    memory.keep_spot(shelf, spot)
    memory.save()
    again = Memory(file)
    assert (again.shelf, again.welcomed, again.theme, again.scale) == (shelf, True, "lamp", 1.3)
    assert again.window == QByteArray(b"\x00\x01geometry")
    assert again.spot(shelf) == spot


def test_at_first_nothing_is_known(file, tmp_path):
    memory = Memory(file)
    assert (memory.shelf, memory.welcomed, memory.theme, memory.scale) == (None, False, "day", 1.0)
    assert memory.window is None
    assert memory.spot(tmp_path) is None


def test_a_shelf_that_is_gone_is_forgotten(file, tmp_path):
    memory = Memory(file)
    memory.shelf = tmp_path / "gone"
    assert memory.shelf is None


def test_each_shelf_has_its_own_spot(file, tmp_path):
    memory = Memory(file)
    one, two = tmp_path / "one", tmp_path / "two"
    memory.keep_spot(one, Spot(Show.CONTENTS, "b", "t"))
    memory.keep_spot(two, NOWHERE)
    assert memory.spot(one) == Spot(Show.CONTENTS, "b", "t")
    assert memory.spot(two) == NOWHERE


@pytest.mark.parametrize("words", ["scale=large", "scale=", "window=17", "[open]\nx=1", "\x00\x01"])
def test_a_spoilt_file_is_as_good_as_none(file, tmp_path, words):
    file.parent.mkdir()
    file.write_text(f"[General]\n{words}\n")
    memory = Memory(file)
    assert memory.scale == 1.0
    assert memory.window is None
    assert memory.spot(tmp_path) is None


@pytest.mark.parametrize("kept", ["nan", "inf", "-inf", "large", ""])
def test_a_scale_that_is_no_number_is_the_usual_one(tmp_path, kept):
    (tmp_path / "desk.ini").write_text(f"[General]\nscale={kept}\n")
    assert Memory(tmp_path / "desk.ini").scale == 1.0
