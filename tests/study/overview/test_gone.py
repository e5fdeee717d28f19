"""Gone for good: what was emptied is looked for in every byte of every file that was touched."""

import io
from datetime import date

import pytest
from PIL import Image

from binder.cards.spreads import spread
from binder.store import copies, file
from binder.study.cards import words
from binder.study.leaves import drawer, files, leaves, tabs
from binder.study.overview import gone
from binder.study.overview.finding import find_all
from binder.study.readings import lookbacks, readings
from binder.study.readings.readings import Laid, NewReading

PHRASE, QUERENT, EARLIER = "zanzibar lanterns", "Quenby Ashgrove", "before the ferry burned"


@pytest.fixture
def practice(course_shelf, tmp_path, monkeypatch):
    """A leaf with a picture and a history, and a reading, among others that stay."""
    elsewhere = tmp_path / "temp"
    elsewhere.mkdir()
    monkeypatch.setenv("TMPDIR", str(elsewhere))
    binder = course_shelf.binder("Practice")
    notes = tabs.tab(binder, "Clippings")
    for number in range(200):
        leaves.add_leaf(binder, notes, f"Stays {number}", f"Nothing of note, {number}. " * 30)
    return binder


def picture(said):
    data = io.BytesIO()
    info = Image.new("RGB", (8, 8))
    info.save(data, "PNG")
    return data.getvalue() + said.encode()


def secret_leaf(binder):
    uid = leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "A leaf", f"{EARLIER} " * 20)
    shown = files.keep_bytes(binder, "x.png", "image/png", picture(PHRASE))
    leaves.write(binder, uid, title=PHRASE, text=f"Of {PHRASE}. ![x](file:{shown})" * 3)
    return uid, shown


def secret_reading(binder):
    made = NewReading(
        "2026-11-22T19:30", f"About {PHRASE}?", spread("one-card"), [Laid(1, "wands-03")],
        querent=QUERENT, topic=PHRASE,
    )  # fmt: skip
    return readings.log(binder, tabs.first_of_kind(binder, "readings"), made)


def bytes_of(folder):
    return {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def stands(folder, said):
    """Where the words stand, in any of the ways a file may hold them."""
    forms = [said.encode(), said.lower().encode(), said.encode("utf-16-le")]
    single = [word.encode() for word in said.split() if len(word) > 6]
    return [
        path.name
        for path, data in bytes_of(folder).items()
        if any(form in data for form in [*forms, *single])
    ]


def test_no_word_of_it_stays_in_any_file(course_shelf, practice, tmp_path):
    uid, _ = secret_leaf(practice)
    reading = secret_reading(practice)
    for said in (PHRASE, QUERENT):
        assert "Practice.ringbound" in stands(tmp_path, said)
    for one in (uid, reading):
        leaves.set_aside(practice, one)
    before = practice.path.stat().st_size
    assert gone.empty(course_shelf) == [practice]
    assert gone.wipe_due(course_shelf) == []
    for said in (PHRASE, QUERENT, EARLIER):
        assert stands(tmp_path, said) == []
    assert practice.path.stat().st_size < before
    assert gone.WIPE not in practice.info
    assert find_all(course_shelf, "zanzibar").groups == ()
    assert len(leaves.contents(practice, tabs.tab(practice, "Clippings"))) == 200
    course_shelf.close()
    for said in (PHRASE, QUERENT, EARLIER):
        assert stands(tmp_path, said) == []
    assert file.check(practice.path) == []


def test_the_copies_that_hold_it_go_with_it(course_shelf, practice, tmp_path):
    uid, _ = secret_leaf(practice)
    folder = tmp_path / "Copies"
    copies.make(practice, folder, date(2026, 11, 3))
    assert len(stands(folder, PHRASE)) == 1
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    assert gone.wipe_due(course_shelf, folder, date(2026, 12, 1)) == []
    assert stands(tmp_path, PHRASE) == []
    (made,) = copies.kept(folder)
    assert made.day == date(2026, 12, 1)


def test_until_then_it_can_be_taken_back(course_shelf, practice):
    uid, shown = secret_leaf(practice)
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    assert practice.gate.undo() == drawer.EMPTY
    assert gone.wipe_due(course_shelf) == []
    assert [one.uid for one in drawer.drawer(course_shelf)] == [uid]
    assert PHRASE in leaves.leaf(practice, uid).text
    assert files.kept(practice, shown) is not None


def test_afterwards_nothing_brings_it_back(course_shelf, practice):
    uid, _ = secret_leaf(practice)
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    gone.wipe_due(course_shelf)
    assert practice.gate.undo() is None
    assert practice.gate.redo() is None


@pytest.mark.parametrize("where", ["leaf", "earlier", "another binder", "note"])
def test_a_file_that_something_else_shows_stays(course_shelf, practice, where):
    uid, shown = secret_leaf(practice)
    link = f"![x](file:{shown})"
    if where == "another binder":
        other = course_shelf.binder("Foundations")
        leaves.add_leaf(other, tabs.tab(other, "Clippings"), "Shows it", link)
    elif where == "note":
        binder, card = course_shelf.card_leaf("major-17")
        for text in (link, "something else", "and something else again"):
            words.write_words(binder, card, words.UPRIGHT, text)
    else:
        kept = leaves.add_leaf(practice, tabs.tab(practice, "Clippings"), "Shows it", link * 3)
        if where == "earlier":
            for text in ("another text of it " * 9, "and still another one " * 9):
                leaves.write(practice, kept, title="Shows it", text=text)
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    gone.wipe_due(course_shelf)
    assert files.kept(practice, shown) is not None


def test_a_file_of_nothing_else_goes(course_shelf, practice):
    uid, shown = secret_leaf(practice)
    loose = files.keep_bytes(practice, "y.png", "image/png", picture("never shown"))
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    gone.wipe_due(course_shelf)
    assert files.kept(practice, shown) is None
    assert files.kept(practice, loose) is not None  # it did not belong to what was emptied


def test_a_shelf_that_cannot_be_written_says_so_and_tries_again(course_shelf, practice):
    uid, _ = secret_leaf(practice)
    leaves.set_aside(practice, uid)
    gone.empty(course_shelf)
    other = file.open_file(practice.path)
    other.db.execute_sql("PRAGMA busy_timeout = 0")
    with other.db.atomic("IMMEDIATE"):
        practice.db.execute_sql("PRAGMA busy_timeout = 1")
        (sentence,) = gone.wipe_due(course_shelf)
        assert "Practice.ringbound" in sentence
    other.close()
    assert gone.WIPE in practice.info
    assert gone.wipe_due(course_shelf) == []
    assert gone.WIPE not in practice.info


def test_statements_and_look_backs_go_too(course_shelf, practice, tmp_path):
    reading = secret_reading(practice)
    lookbacks.look_back(practice, reading, f"So it was: {EARLIER}.")
    leaves.set_aside(practice, reading)
    gone.empty(course_shelf)
    gone.wipe_due(course_shelf)
    assert stands(tmp_path, EARLIER) == []
