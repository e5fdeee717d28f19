"""Leaves: written, numbered, moved, set aside; nothing is lost on the way."""

import pytest

from binder.errors import CanMend
from binder.store.file import create
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import drawer, files, history, leaves, tabs
from binder.study.overview import moving


@pytest.fixture
def notes(binder):
    return tabs.tab(binder, "Notes")


def titles(binder, tab):
    return [entry.title for entry in leaves.contents(binder, tab)]


def fill(binder, tab, *names):
    return [leaves.add_leaf(binder, tab, name) for name in names]


def test_leaves_are_numbered_in_their_order(binder, notes):
    uids = fill(binder, notes, "A", "B", "C")
    assert [(leaves.leaf(binder, u).number, leaves.leaf(binder, u).count) for u in uids] == [
        (1, 3), (2, 3), (3, 3),
    ]  # fmt: skip
    assert leaves.beside(binder, leaves.leaf(binder, uids[0]), 1) == uids[1]
    assert leaves.beside(binder, leaves.leaf(binder, uids[0]), -1) is None
    assert leaves.beside(binder, leaves.leaf(binder, uids[2]), 1) is None


def test_a_log_is_newest_first(binder):
    log = tabs.tab(binder, "Readings log")
    for day in ("2026-05-02T10:00", "2026-07-01T09:00", "2026-01-30T22:00"):
        leaves.add_leaf(binder, log, day, day=day)
    assert titles(binder, log) == ["2026-07-01T09:00", "2026-05-02T10:00", "2026-01-30T22:00"]
    newest = leaves.contents(binder, log)[0].uid
    assert leaves.leaf(binder, newest).number == 1


@pytest.mark.parametrize(("index", "expected"), [(0, "CAB"), (1, "ACB"), (2, "ABC"), (99, "ABC")])
def test_moving_within_a_tab(binder, notes, index, expected):
    uids = fill(binder, notes, "A", "B", "C")
    moving.move_to_index(binder, notes.uid, uids[2], index)
    assert "".join(titles(binder, notes)) == expected


def test_moving_between_the_same_two_leaves_for_ever_finds_room(binder, notes):
    fill(binder, notes, "A", "B", "C")
    for _ in range(120):
        last = leaves.contents(binder, notes)[2].uid
        moving.move_to_index(binder, notes.uid, last, 1)
    assert sorted(titles(binder, notes)) == ["A", "B", "C"]
    assert titles(binder, notes)[0] == "A"


def test_to_another_tab_and_back_by_undo(binder, notes):
    (uid,) = fill(binder, notes, "A")
    moving.move_to_tab(binder, uid, tabs.tab(binder, "Readings log"))
    assert leaves.leaf(binder, uid).tab == "Readings log"
    binder.gate.undo()
    assert leaves.leaf(binder, uid).tab == "Notes"


def test_to_another_binder_with_all_that_belongs_to_it(binder, notes, tmp_path):
    other = create(tmp_path / "Other.ringbound", "Other", "spineM")
    tabs.add_tab(other, "Cards", "majors")
    picture = files.keep_bytes(binder, "a.png", "image/png", b"picture")
    uid = leaves.add_leaf(
        binder, notes, "The Star", f"![a](file:{picture})", kind=LeafKind.CARD, card="major-17"
    )
    words.write_words(binder, uid, "upright", "Clear weather.")
    moving.move_to_binder(binder, uid, other, tabs.tab(other, "Cards"))
    assert leaves.leaf(other, uid).card == "major-17"
    assert words.history(other, uid)[0].text == "Clear weather."
    assert files.kept(other, picture).data == b"picture"
    with pytest.raises(CanMend):
        leaves.leaf(binder, uid)
    other.close()


def test_set_aside_and_brought_back_to_its_place(binder, notes, stood):
    uids = fill(binder, notes, "A", "B", "C")
    leaves.set_aside(binder, uids[1])
    assert titles(binder, notes) == ["A", "C"]
    (aside,) = drawer.drawer(stood)
    assert aside.title == "B"
    drawer.bring_back(aside)
    assert titles(binder, notes) == ["A", "B", "C"]


def test_a_title_is_one_line_and_never_empty(binder, notes):
    uid = leaves.add_leaf(binder, notes, "  two\n lines ")
    assert leaves.leaf(binder, uid).title == "two lines"
    with pytest.raises(CanMend, match="needs a title"):
        leaves.rename(binder, uid, " \n ")


def test_the_state_before_the_first_change_is_a_version(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", "first")
    leaves.write(binder, uid, title="A", text="second")
    leaves.write(binder, uid, title="A", text="third")
    assert [version.text for version in history.of_text(binder, uid)] == ["first"]


def test_what_another_window_wrote_meanwhile_is_kept(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", "first")
    seen = leaves.leaf(binder, uid).changed
    leaves.write(binder, uid, title="A", text="theirs", seen=seen)
    leaves.write(binder, uid, title="A", text="mine", seen=seen)
    assert leaves.leaf(binder, uid).text == "mine"
    assert "theirs" in [version.text for version in history.of_text(binder, uid)]


def test_saving_what_is_there_already_writes_nothing(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", "first")
    told = []
    binder.listen(told.append)
    leaves.write(binder, uid, title="A", text="first")
    assert told == []


def test_five_megabytes_go_in_and_come_out(binder, notes):
    text = "A line of the diary.\n" * 250_000
    uid = leaves.add_leaf(binder, notes, "Long", text)
    assert leaves.leaf(binder, uid).text == text


def test_equal_files_are_kept_once(binder):
    one = files.keep_bytes(binder, "a.png", "image/png", b"same")
    assert files.keep_bytes(binder, "b.png", "image/png", b"same") == one


def test_a_file_that_is_no_picture_is_refused(binder, tmp_path):
    odd = tmp_path / "thing.exe"
    odd.write_bytes(b"MZ")
    with pytest.raises(CanMend, match="neither a picture nor a PDF"):
        files.keep_file(binder, odd)


def test_how_many_leaves_of_each_year(course_shelf):
    binder = course_shelf.binder("Practice")
    home = tabs.tab(binder, "Clippings")
    for day in ("2026-05-16", "2026-12-31", "2025-01-01", "", "1999-06-01"):
        leaves.add_leaf(binder, home, f"Of {day}", day=day)
    gone = leaves.add_leaf(binder, home, "Gone", day="2026-05-16")
    leaves.set_aside(binder, gone)
    assert leaves.years(binder, home) == [("2026", 2), ("2025", 1), ("1999", 1), ("", 1)]


def test_a_leaf_that_is_not_there_is_one_sentence(course_shelf):
    with pytest.raises(CanMend, match=r"^That leaf is no longer in this binder\.$"):
        leaves.leaf(course_shelf.binder("Practice"), "no-such")
