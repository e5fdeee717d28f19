"""The history of a leaf: kept small, read whole, brought back, and lost by nothing."""

import pytest

from binder.errors import CanMend
from binder.page.compare import packed
from binder.store.clock import new_uid, now_ms
from binder.store.file import create
from binder.store.schema import Version
from binder.study.leaves import history, leaves, tabs
from binder.study.overview import moving


@pytest.fixture
def notes(binder):
    return tabs.tab(binder, "Notes")


def grow(binder, uid, texts):
    """Write texts after each other, each a sitting of its own."""
    for text in texts:
        row = binder.first(leaves.Leaf.select().where(leaves.Leaf.uid == uid))
        with binder.change("Write") as change:
            history.keep(binder, change, row)
            change.edit(leaves.Leaf, uid, text=text)


def texts(binder, uid):
    return [one.text for one in history.of_text(binder, uid)]


def test_versions_are_read_oldest_first(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", "one")
    grow(binder, uid, ["one two", "two", ""])
    assert texts(binder, uid) == ["one", "one two", "two"]


def test_an_earlier_one_is_brought_back_as_a_new_version(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", "one")
    grow(binder, uid, ["two", "three"])
    history.bring_back(binder, uid, history.of_text(binder, uid)[0])
    assert leaves.leaf(binder, uid).text == "one"
    assert texts(binder, uid) == ["one", "two", "three"]
    binder.gate.undo()
    assert leaves.leaf(binder, uid).text == "three"
    with pytest.raises(CanMend, match="says this already"):
        history.bring_back(binder, uid, history.Earlier("", "A", "three"))


TEXT = "The purse is heavy, and the road to the quay is longer than it looked in spring."


def a_moment_later():
    """Wait for the next millisecond, which is what uids and sittings are told apart by."""
    before = now_ms()
    while now_ms() == before:
        pass


def test_slips_put_right_within_a_sitting_make_no_version(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", TEXT)
    a_moment_later()  # a sitting begins after what it finds
    sitting = new_uid()
    for said in (f"{TEXT} A", f"{TEXT} A jug", f"{TEXT} A jug.", f"{TEXT} The jugs."):
        leaves.write(binder, uid, title="A", text=said, sitting=sitting)
    assert texts(binder, uid) == [TEXT]


def test_a_new_leaf_being_written_has_no_version(binder, notes):
    sitting = new_uid()
    uid = leaves.add_leaf(binder, notes, "A")
    for said in ("Th", "The ol", "The old kiln"):
        leaves.write(binder, uid, title="A", text=said, sitting=sitting)
    assert texts(binder, uid) == []


def test_many_words_taken_away_at_once_are_kept_in_any_sitting(binder, notes):
    sitting = new_uid()
    uid = leaves.add_leaf(binder, notes, "A")
    for said in (TEXT, "The purse.", "The purse. Again."):
        leaves.write(binder, uid, title="A", text=said, sitting=sitting)
    assert texts(binder, uid) == [TEXT]


def test_sittings_close_together_are_one(binder, notes):
    uid = leaves.add_leaf(binder, notes, "A", TEXT)
    for said in ("one", "two", "three"):
        a_moment_later()
        leaves.write(binder, uid, title="A", text=f"{TEXT} {said}", sitting=new_uid())
    assert texts(binder, uid) == [TEXT]


def test_each_leaf_has_sittings_of_its_own(binder, notes):
    """A version made of one leaf just now is none of the other."""
    one, other = (leaves.add_leaf(binder, notes, title, TEXT) for title in ("A", "B"))
    for uid in (one, other):
        leaves.write(binder, uid, title="A", text=f"{TEXT} more", sitting=new_uid())
    assert texts(binder, one) == texts(binder, other) == [TEXT]


def test_a_leaf_taken_to_another_binder_and_back_keeps_its_history(binder, notes, tmp_path):
    other = create(tmp_path / "Other.ringbound", "Other", "spineF")
    target = tabs.tab(other, tabs.add_tab(other, "Kept", "plain"))
    uid = leaves.add_leaf(binder, notes, "A", "one")
    grow(binder, uid, ["two", "three"])
    moving.move_to_binder(binder, uid, other, target)
    assert texts(other, uid) == ["one", "two"]
    other.gate.undo()
    binder.gate.undo()
    assert texts(binder, uid) == ["one", "two"]
    binder.gate.redo()
    other.gate.redo()
    assert texts(other, uid) == ["one", "two"]
    other.close()


def test_a_thousand_versions_cost_little_more_than_what_changed(binder, notes):
    words = [f"word{n % 611} of {n % 97}" for n in range(600)]
    uid = leaves.add_leaf(binder, notes, "A", ". ".join(words))
    row, said, changed = leaves.leaf(binder, uid).row, "", 0
    with binder.change("Write for years") as change:
        for n in range(1000):
            old, said = said, ". ".join(words)
            change.add(Version, leaf=row, at="2026-11-25", title="A", text=packed(said, old))
            words[n * 31 % 600] = sentence(n)
            changed += len(sentence(n))
    sizes = [len(one.text) for one in binder.all(Version.select(Version.text))]
    assert sum(sizes[1:]) <= 1.3 * changed
    kept = history.of_text(binder, uid)
    assert (len(kept), kept[-1].text) == (1000, said)


def sentence(n):
    """A few words that were not there before."""
    return f"In week {n} the {n * 7919 % 1009}th thing I saw was number {n * 104729 % 7919}"
