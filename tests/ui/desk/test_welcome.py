"""The welcome leaf of the very first start: two things to choose from, and then never again."""

import shutil
from datetime import date, datetime

import pytest
from PySide6.QtWidgets import QApplication, QLabel

from binder.store.clock import OtherDay
from binder.study.kinds import LeafKind
from tests.ui.driving import K, answering, click, key, keys, left, presses, says, settle
from ui import app
from ui.app import Program
from ui.desk import welcome
from ui.session import places
from ui.session.memory import Memory


@pytest.fixture(scope="session")
def built(tmp_path_factory):
    """A data folder with the sample shelf in it, as a start leaves it."""
    data = tmp_path_factory.mktemp("data")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(places.platformdirs, "user_data_dir", lambda *a, **k: str(data))
        places.sample_shelf(datetime(2026, 11, 25, 12))
    return data


@pytest.fixture
def home(built, tmp_path, monkeypatch):
    """A user's folders, new but for the sample shelf."""
    shutil.copytree(built, tmp_path / "data")
    for name, folder in (("user_data_dir", "data"), ("user_documents_dir", "Documents")):
        monkeypatch.setattr(
            places.platformdirs, name, lambda *a, _f=folder, **k: str(tmp_path / _f)
        )
    return tmp_path


@pytest.fixture
def first(home, qapp, qtbot):
    """The program at its very first start."""
    program = Program(qapp, Memory(home / "desk.ini"), OtherDay(date(2026, 11, 25)))
    window = app.open_first(program, [])
    window.resize(1600, 1000)
    with qtbot.waitActive(window):
        window.activateWindow()
    yield program
    program.window.close()
    program.close()
    program.window.deleteLater()


def page(program):
    return program.window.cover.leaf("left")


def test_it_lies_on_the_sample_shelf_with_the_keyboard_on_it(first):
    assert first.window.staged("welcome")
    assert first.window.session.shelf.path.name == "Sample shelf"
    assert page(first).look_round.hasFocus()
    assert first.window.session.shelf.binders[0].name == "Foundations"


def test_it_says_where_a_course_is_kept(first):
    said = " ".join(label.text() for label in page(first).findChildren(QLabel))
    assert "“My course” under “Ringbound” in your Documents" in said


def test_look_round_lays_a_reading_and_a_card_open(first):
    key(first.window, K.Key_Space)
    assert not first.window.staged("welcome")
    assert left(first.window).kind is LeafKind.READING
    assert first.window.session.leaf_of(first.window.session.facing).kind is LeafKind.CARD
    assert first.window.cover.holds_focus()


def by_mouse(window):
    click(window.cover.leaf("left").begin)


def by_key(window):
    key(window, K.Key_Tab)
    key(window, K.Key_Return)


@pytest.mark.parametrize("way", [by_mouse, by_key])
def test_begin_opens_a_course_of_ones_own(first, home, way):
    before = first.window
    way(before)
    assert first.window is not before
    folder = home / "Documents" / "Ringbound" / "My course"
    assert first.window.session.shelf.path == folder
    assert first.window.session.tab.name == "Course plan"
    assert first.memory.shelf == folder
    assert first.window.windowTitle() == "Foundations – My course – Ringbound"


def test_a_course_has_the_name_its_student_gives_it(first, home):
    assert first.window.windowTitle() == "Foundations – Sample shelf – Ringbound"
    name = page(first).name
    click(name)
    name.selectAll()
    keys(first.window, "Wren: cards/2026")
    said = " ".join(label.text() for label in page(first).findChildren(QLabel))
    assert "“Wren cards 2026” under “Ringbound” in your Documents" in said
    click(page(first).begin)
    assert first.window.session.shelf.path == home / "Documents/Ringbound/Wren cards 2026"
    assert first.window.windowTitle() == "Foundations – Wren cards 2026 – Ringbound"
    assert first.window.spines.accessibleDescription() == "The shelf “Wren cards 2026”"


def test_the_menu_asks_for_the_name_too(first, home):
    answering(says("Evenings"), presses("Begin there"))
    first.window.actions_by_name["new_course"].trigger()
    assert first.window.session.shelf.path == home / "Documents/Ringbound/Evenings"


@pytest.mark.parametrize(
    ("said", "folder"),
    [("  two   words ", "two words"), ("..", "My course"), ("a?b", "a b"), ("é 1.", "é 1")],
)
def test_a_name_becomes_a_folder_any_system_takes(home, said, folder):
    assert places.own_shelf(said) == home / "Documents" / "Ringbound" / folder


def test_begin_where_binders_are_already_is_said(first, home):
    places.begin_course(home / "Documents/Ringbound/My course", date(2026, 1, 1))
    click(page(first).begin)
    assert first.window.said.text().startswith("There are binders in")
    assert first.window.staged("welcome")


def test_anything_else_may_be_done_too(first):
    first.window.session.turn(1)
    assert not first.window.staged("welcome")


def test_it_comes_once_only(first, home, qapp):
    again = Program(qapp, Memory(home / "desk.ini"), OtherDay(date(2026, 11, 25)))
    again.memory.shelf = first.window.session.shelf.path
    window = app.open_first(again, [])
    assert not window.staged("welcome")
    window.close()
    again.close()
    settle()


def test_a_shelf_given_by_hand_needs_no_welcome(home, qapp, course_shelf):
    program = Program(qapp, Memory(home / "desk.ini"), OtherDay(date(2026, 11, 25)))
    window = app.open_first(program, [str(course_shelf.path)])
    assert not window.staged("welcome")
    window.close()
    program.close()


@pytest.mark.parametrize("size", [(1600, 1000), (800, 600)])
def test_nothing_on_it_is_cut_off(first, size):
    first.window.resize(*size)
    first.look.set_scale(1.5)
    settle()
    leaf = page(first)
    for label in leaf.findChildren(QLabel):
        assert label.height() >= label.heightForWidth(label.width())
    for button in (leaf.look_round, leaf.begin):
        assert button.width() <= leaf.viewport().width()
        assert button.width() >= button.sizeHint().width()
    first.look.set_scale(1.0)
    QApplication.processEvents()


def test_its_words_are_plain(first):
    assert "!" not in welcome.ROUND + welcome.OWN + welcome.LATER
