"""All that a reading holds can be written in the text sources and is built into the leaf."""

import json
import tempfile
from datetime import date, datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.carry.building import build
from binder.errors import CanMend
from binder.reckon.calendar import Draw
from binder.study.leaves import files, leaves, tabs
from binder.study.readings import draws, readings
from tests.paper.test_photographs import photograph
from tests.profiles import fewer

BINDER = """name = "Practice"
colour = "spineP"
draws = ["week"]

[[tab]]
folder = "log"
name = "Readings log"
kind = "readings"
colour = "tabRead"
"""
FULL = """+++
title = "The stall"
at = 2026-05-02T19:30:00
question = "What shall I sell?"
spread = "three-card"
deck = "plain"
cards = "3w, hermit r + moon, qc"
topic = "stall"
querent = "M. O."
significator = "cups-13"
purpose = "week"
week = "2026-W19"
mood = "calm"
venue = "on the ferry, below"
on_screen = true
shown = "list"
photographs = ["table.jpg", "drawn"]
look_on = 2026-05-10
put_off = 2
let_go = true

[notes]
2 = "Private: a lamp."

[[expect]]
text = "It rains."
sure = 60
due = 2026-05-09

[[expect]]
text = "It stops."
sure = 50
due = 2026-05-10

[[look_back]]
at = 2026-05-11T08:00:00
verdicts = ["came about", ""]
+++
Three cards.

Private: nobody is to read this.
"""


def folder(at, text=FULL):
    """A text shelf of one binder, one log and one reading, with a picture beside it."""
    (at / "practice" / "log").mkdir(parents=True)
    (at / "shelf.toml").write_text('name = "S"\nbinders = ["practice"]\n')
    (at / "decks.toml").write_text('[[deck]]\nkey = "plain"\nname = "Plain deck"\n')
    (at / "practice" / "binder.toml").write_text(BINDER)
    (at / "practice" / "log" / "a.md").write_text(text, encoding="utf-8")
    (at / "practice" / "log" / "table.jpg").write_bytes(photograph())
    return at


def built(at, text=FULL):
    return build(folder(at / "text", text), at / "shelf")


def only_reading(shelf):
    binder = shelf.binder("Practice")
    (entry,) = leaves.contents(binder, tabs.first_of_kind(binder, "readings"))
    return readings.reading(binder, entry.uid)


def put_off(shelf):
    ((count,),) = shelf.binder("Practice").sql("SELECT put_off FROM reading")
    return count


@pytest.mark.parametrize("at", ["2026-05-02", "2026-05-02T00:00:00"])
def test_a_day_without_an_hour_is_told_from_midnight(tmp_path, at):
    view = only_reading(built(tmp_path, FULL.replace("at = 2026-05-02T19:30:00", f"at = {at}")))
    assert view.at == (datetime(2026, 5, 2) if "T" in at else date(2026, 5, 2))
    assert isinstance(view.at, datetime) is ("T" in at)


def test_all_parts_of_a_reading_are_on_its_leaf(tmp_path):
    shelf = built(tmp_path)
    view = only_reading(shelf)
    assert (view.topic, view.querent, view.significator) == ("stall", "M. O.", "cups-13")
    assert (view.purpose, view.month) == ("week", "2026-W19")
    assert (view.mood, view.venue, view.on_screen) == ("calm", "on the ferry, below", True)
    assert view.shown == "list"
    assert (view.look_on, put_off(shelf), view.look_state) == ("2026-05-10", 2, "let go")
    assert [(one.n, one.card, one.note) for one in view.laid] == [
        (1, "wands-03", ""), (2, "major-09", "Private: a lamp."), (2, "major-18", ""),
        (3, "cups-13", ""),
    ]  # fmt: skip
    assert [(e.verdict, bool(e.judged)) for e in view.expectations] == [
        ("came about", True),
        ("can't tell", False),
    ]
    assert view.look_backs == ()
    kept = [files.kept_anywhere(shelf, photo.file) for photo in view.photos]
    assert [file.name for file in kept] == ["table.jpg", "table.png"]
    assert kept[0].data == photograph()
    assert kept[1].data.startswith(b"\x89PNG")
    leaf = leaves.leaf(shelf.binder("Practice"), view.leaf_uid)
    assert leaf.text == "Three cards.\n\nPrivate: nobody is to read this."
    shelf.close()


def test_a_binder_says_which_draws_its_log_takes(tmp_path):
    shelf = built(tmp_path)
    assert draws.home_of_draw(shelf, Draw.WEEK) is shelf.binder("Practice")
    assert draws.home_of_draw(shelf, Draw.DAY) is None
    shelf.close()


@pytest.mark.parametrize(
    ("good", "bad", "said"),
    [
        ('"2026-W19"', '"2026-05"', "line 12: “2026-05” is no week; change it or the purpose."),
        ('"2026-W19"', '"2026-W54"', "line 12: “2026-W54” is no month, week or day"),
        ('week = "2026-W19"', 'month = "2026-05"', "line 12: “month” is not used here"),
        ("on_screen = true", 'on_screen = "yes"', "line 15: “on_screen” must be true or false"),
        ('shown = "list"', 'shown = "layout"', "line 16: “shown” must be “both”, “diagram” or"),
        ("put_off = 2", "put_off = -1", "line 19: “put_off” must be a whole number from 0"),
        ('"table.jpg"', '"none.jpg"', "“none.jpg” could not be read"),
        ('"table.jpg"', '"../table.jpg"', "“../table.jpg” names no picture beside this leaf."),
        ('"table.jpg"', '"a.md"', "“a.md” names no picture beside this leaf."),
        ('verdicts = ["came about", ""]', 'verdicts = ["", ""]', "“text” must be given"),
    ],
)
def test_a_slip_is_told(tmp_path, good, bad, said):
    assert good in FULL
    with pytest.raises(CanMend) as error:
        built(tmp_path, FULL.replace(good, bad, 1))
    assert said in str(error.value)
    assert "\n" not in str(error.value)


def test_an_unknown_draw_is_told(tmp_path):
    source = folder(tmp_path)
    path = source / "practice" / "binder.toml"
    path.write_text(BINDER.replace('"week"', '"year"'))
    with pytest.raises(CanMend, match=r"line 3: “year” is no draw; write month, week or day\."):
        build(source, tmp_path / "shelf")


WORDS = st.text(
    st.characters(exclude_categories=("C", "Z"), exclude_characters="\x7f"), min_size=1, max_size=9
)
LINES = st.lists(WORDS, min_size=1, max_size=4).map(" ".join)
TOLD = st.fixed_dictionaries(
    {"question": LINES},
    optional={
        "topic": LINES, "mood": LINES, "venue": LINES, "on_screen": st.booleans(),
        "shown": st.sampled_from(["both", "diagram", "list"]),
        "put_off": st.integers(0, 9999), "significator": st.sampled_from(["cups-13", "major-00"]),
    },
)  # fmt: skip
DAYS = st.dates(date(2026, 5, 3), date(2199, 12, 31))
EXPECTED = st.lists(st.tuples(LINES, st.integers(0, 100), DAYS), max_size=3)


def said(value):
    """A value as TOML; its strings are those of JSON."""
    return json.dumps(value, ensure_ascii=False)


def text_of(told, expected, notes):
    lines = ["+++", 'title = "T"', "at = 2026-05-02T19:30:00", 'spread = "three-card"',
             'deck = "plain"', 'cards = "3w, hermit r, ap"']  # fmt: skip
    lines += [f"{name} = {said(value)}" for name, value in told.items()]
    lines += ["", "[notes]", *(f"{n} = {said(note)}" for n, note in notes.items())]
    for text, sure, due in expected:
        lines += ["", "[[expect]]", f"text = {said(text)}", f"sure = {sure}", f"due = {due}"]
    return "\n".join([*lines, "+++", "Words."])


@fewer(4)
@given(TOLD, EXPECTED, st.dictionaries(st.integers(1, 3), LINES))
def test_whatever_is_written_comes_back(told, expected, notes):
    with tempfile.TemporaryDirectory() as place:
        shelf = built(Path(place), text_of(told, expected, notes))
        view, count = only_reading(shelf), put_off(shelf)
        shelf.close()
    assert count == told.pop("put_off", 0)
    shown = {"both": "", "diagram": "layout", "list": "list"}
    for name, value in told.items():
        assert getattr(view, name) == (shown[value] if name == "shown" else value)
    assert [(e.text, e.sure, e.due) for e in view.expectations] == [
        (text, sure, due.isoformat()) for text, sure, due in expected
    ]
    assert {one.n: one.note for one in view.laid if one.note} == notes
