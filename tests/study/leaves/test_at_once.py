"""Several programs saving one leaf at once: every text is in the leaf, or in its history."""

import subprocess
import sys

import pytest

from binder.resources import ROOT
from binder.store.file import create, open_file
from binder.store.schema import Leaf
from binder.study.leaves import history, leaves, tabs

WRITES, WRITERS = 25, 3
WRITER = """
import sys
from pathlib import Path
from binder.store.file import open_file
from binder.study.leaves import leaves
path, uid, who, count = Path(sys.argv[1]), sys.argv[2], sys.argv[3], int(sys.argv[4])
binder = open_file(path)
print("ready", flush=True)
sys.stdin.readline()
seen = leaves.leaf(binder, uid).changed
for number in range(count):
    seen = leaves.write(binder, uid, title="A leaf", text=f"{who} wrote line {number}.", seen=seen)
binder.close()
"""


@pytest.fixture
def shared(tmp_path):
    binder = create(tmp_path / "Shared.ringbound", "Shared", "spineF")
    tab = tabs.tab(binder, tabs.add_tab(binder, "Notes", "plain"))
    uid = leaves.add_leaf(binder, tab, "A leaf", "At first.")
    path = binder.path
    binder.close()
    return path, uid


def test_texts_written_at_once_by_three_programs_are_all_kept(shared):
    path, uid = shared
    running = [
        subprocess.Popen(
            [sys.executable, "-c", WRITER, str(path), uid, who, str(WRITES)],
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, cwd=ROOT,
        )
        for who in "ABC"[:WRITERS]
    ]  # fmt: skip
    for one in running:
        assert one.stdout.readline() == "ready\n"
    for one in running:
        one.stdin.write("go\n")
        one.stdin.flush()
    assert [one.wait() for one in running] == [0] * WRITERS
    for one in running:
        one.stdin.close()
        one.stdout.close()
    binder = open_file(path)
    kept = {version.text for version in history.of_text(binder, uid)}
    kept.add(leaves.leaf(binder, uid).text)
    # A writer's own next line may follow its last without a version between; nobody else's may.
    last = {f"{who} wrote line {WRITES - 1}." for who in "ABC"[:WRITERS]}
    assert last <= kept
    binder.close()


def test_a_text_is_not_lost_between_being_read_and_being_written(shared, monkeypatch):
    """Another program writes just after this one has looked at the leaf."""
    path, uid = shared
    mine, other = open_file(path), open_file(path)
    seen = leaves.leaf(mine, uid).changed
    began = mine.change

    def late(*given):
        monkeypatch.setattr(mine, "change", began)
        leaves.write(other, uid, title="A leaf", text="Theirs, in between.", seen=seen)
        return began(*given)

    monkeypatch.setattr(mine, "change", late)
    leaves.write(mine, uid, title="A leaf", text="Mine.", seen=seen)
    assert leaves.leaf(mine, uid).text == "Mine."
    assert "Theirs, in between." in {one.text for one in history.of_text(mine, uid)}
    mine.close()
    other.close()


def test_two_writings_within_a_millisecond_are_told_apart(shared, monkeypatch):
    path, uid = shared
    monkeypatch.setattr("binder.store.change.now_ms", lambda: 1_700_000_000_000)
    binder = open_file(path)
    told = []
    for number in range(3):
        with binder.change("Write") as change:
            change.edit(Leaf, uid, text=f"Text {number}")
        told.append(leaves.leaf(binder, uid).changed)
    assert told == sorted(set(told))
    binder.close()
