"""Text sources of a shelf, good and bad, from real folders."""

from datetime import date, datetime

import pytest

from binder.carry import text_shelf
from binder.carry.texts import CardText, HandoutText, ReadingText, SourceText, UnitText
from binder.errors import CanMend

BINDER = """name = "Practice"
colour = "spineP"

[[tab]]
folder = "log"
name = "Readings log"
kind = "readings"
colour = "tabRead"
"""
READING = """+++
title = "The stall"
at = 2026-05-02T19:30:00
question = "What shall I sell?"
spread = "three-card"
deck = "plain"
cards = "3w, hermit r, qc"

[notes]
2 = "A lamp."

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
text = "It did."
verdicts = ["came about", ""]
+++

Three cards.

[The other](leaf:practice/log/b) and [a sheet](file:sheet.pdf).
"""


@pytest.fixture
def folder(tmp_path):
    """A shelf of one binder, one tab and one reading."""
    (tmp_path / "practice" / "log").mkdir(parents=True)
    (tmp_path / "shelf.toml").write_text('name = "S"\nbinders = ["practice"]\n')
    (tmp_path / "decks.toml").write_text('[[deck]]\nkey = "plain"\nname = "Plain deck"\n')
    (tmp_path / "practice" / "binder.toml").write_text(BINDER)
    (tmp_path / "practice" / "log" / "a.md").write_text(READING)
    return tmp_path


def leaf(folder, text):
    (folder / "practice" / "log" / "a.md").write_text(text)
    return text_shelf.read_leaf_text(folder, "practice/log/a")


def test_shelf_is_read_whole(folder):
    shelf = text_shelf.read_shelf(folder)
    assert (shelf.name, [deck.name for deck in shelf.decks]) == ("S", ["Plain deck"])
    (binder,) = shelf.binders
    (tab,) = binder.tabs
    assert (binder.name, binder.colour, tab.name, tab.kind) == (
        *("Practice", "spineP"),
        *("Readings log", "readings"),
    )
    assert [each.name for each in tab.leaves] == ["practice/log/a"]


def test_reading_keeps_all_its_parts(folder):
    made = leaf(folder, READING)
    reading = made.holds
    assert isinstance(reading, ReadingText)
    assert made.title == "The stall"
    assert made.at == reading.at == datetime(2026, 5, 2, 19, 30)
    assert made.body.startswith("Three cards.")
    assert reading.notes == {2: "A lamp."}
    assert [(e.text, e.sure, e.due) for e in reading.expects] == [
        ("It rains.", 60, date(2026, 5, 9)),
        ("It stops.", 50, date(2026, 5, 10)),
    ]
    assert reading.look_backs[0].verdicts == ("came about", "")
    assert (reading.querent, reading.purpose, reading.look_on) == ("self", "", None)


@pytest.mark.parametrize(
    ("front", "kind"),
    [
        (
            'card = "major-17"\n[[own_words]]\nat = 2026-05-02T10:00:00\nupright = "Clear."',
            CardText,
        ),
        (
            'title = "Cups"\nat = 2026-05-02T10:00:00\nunit = 5\ncards = ["cups-01"]\n'
            "starts = 2026-05-02\nends = 2026-06-02\n"
            'state = "to come"\naims = "Know them."\nstudied = []',
            UnitText,
        ),
        (
            'title = "A book"\nat = 2026-05-02T10:00:00\nkey = "b"\n[csl]\ntype = "book"',
            SourceText,
        ),
        (
            'title = "A sheet"\nat = 2026-05-02T10:00:00\nhandout = "log-sheet"\n'
            'file = "s.pdf"\n[words]\ntitle = "Sheet"',
            HandoutText,
        ),
        ('title = "Plain"\nat = 2026-05-02T10:00:00', type(None)),
    ],
)
def test_kind_of_leaf_is_told_by_its_keys(folder, front, kind):
    assert type(leaf(folder, f"+++\n{front}\n+++\nWords.\n").holds) is kind


def test_source_has_its_key_as_id(folder):
    front = 'title = "A"\nat = 2026-05-02T10:00:00\nkey = "b"\n[csl]\ntype = "book"'
    assert leaf(folder, f"+++\n{front}\n+++\n").holds.csl == {"type": "book", "id": "b"}


BAD = [
    ("sure = 60", 'sure = "high"', "line 14: “sure” must be a whole number from 0 to 100."),
    ("sure = 50", "sure = 120", "line 19: “sure” must be a whole number from 0 to 100."),
    ("due = 2026-05-09", 'due = "soon"', "line 15: “due” must be a date, as 2026-12-20."),
    ("at = 2026-05-02T19:30:00", "at = 7", "line 3: “at” must be a date"),
    ("due = 2026-05-10", "due = 2026-02-30", "line 20: This is not valid TOML"),
    ('deck = "plain"', 'deck = "plain', "line 6: This is not valid TOML"),
    ('deck = "plain"\n', "", "line 2: “deck” must be given, as words in quotes."),
    ('title = "The stall"', 'titel = "The stall"', "line 2: “titel” is not used here"),
    ('"came about", ""', '"came true"', "line 25: “came true” is no verdict"),
    ('"came about", ""', '"", "", ""', "line 25: There are more verdicts than expectations"),
    ('2 = "A lamp."', 'two = "A lamp."', "line 10: “two” must be the number of a place"),
    ('"3w, hermit r, qc"', '" "', "line 7: “cards” must not be empty."),
    ("[[expect]]", "[expect]", "This is not valid TOML"),
    ("[[look_back]]", '[[look_back]]\ncard = "major-22"', "line 23: There is no card “major-22”"),
    ("+++\n\nThree", "\nThree", "Close the block at the head with +++."),
]


@pytest.mark.parametrize(("good", "bad", "said"), BAD)
def test_a_slip_is_told_by_file_and_line(folder, good, bad, said):
    assert good in READING
    with pytest.raises(CanMend) as error:
        leaf(folder, READING.replace(good, bad, 1))
    assert str(error.value).startswith("practice/log/a.md, line ")
    assert said in str(error.value)
    assert "\n" not in str(error.value)


def test_leaf_without_a_block_is_refused(folder):
    with pytest.raises(CanMend, match=r"a\.md, line 1: A leaf begins with a line of \+\+\+\."):
        leaf(folder, "# Only words\n")


def test_leaf_that_is_no_text_is_refused(folder):
    (folder / "practice" / "log" / "a.md").write_bytes(b"+++\n\xff\xfe\n+++\n")
    with pytest.raises(CanMend, match="not UTF-8 text"):
        text_shelf.read_shelf(folder)


def test_missing_tab_folder_and_unknown_kind_are_told(folder):
    path = folder / "practice" / "binder.toml"
    path.write_text(BINDER.replace('"log"', '"logs"'))
    with pytest.raises(CanMend, match=r"binder\.toml, line 5: There is no folder “logs”"):
        text_shelf.read_shelf(folder)
    path.write_text(BINDER.replace('kind = "readings"', 'kind = "reading"'))
    with pytest.raises(CanMend, match=r"line 7: “kind” must be “plan”, “majors”"):
        text_shelf.read_shelf(folder)


def test_missing_shelf_file_is_told(tmp_path):
    with pytest.raises(CanMend, match=r"shelf\.toml: This file cannot be read"):
        text_shelf.read_shelf(tmp_path)


def test_unit_cannot_end_before_it_starts(folder):
    front = (
        'title = "Cups"\nat = 2026-05-02T10:00:00\nunit = 5\ncards = []\nstarts = 2026-05-02\n'
        'ends = 2026-05-01\nstate = "done"\naims = "x"\nstudied = []'
    )
    with pytest.raises(CanMend, match="line 7: A unit cannot end before it starts"):
        leaf(folder, f"+++\n{front}\n+++\n")


def test_card_leaves_stand_in_the_order_of_the_cards(folder):
    log = folder / "practice" / "log"
    (log / "a.md").unlink()
    for name, key in (("a", "cups-02"), ("b", "wands-10"), ("c", "major-03"), ("d", "wands-02")):
        words = 'at = 2026-05-02T10:00:00\nupright = "x"'
        (log / f"{name}.md").write_text(f'+++\ncard = "{key}"\n[[own_words]]\n{words}\n+++\n')
    leaves = text_shelf.read_shelf(folder).binders[0].tabs[0].leaves
    assert [each.title for each in leaves] == [
        *("The Empress", "Two of Wands", "Ten of Wands", "Two of Cups"),
    ]


def test_local_links_are_found_and_swapped(folder):
    body = leaf(folder, READING).body + "[p. 1](source:b#p1) [The Star](card:major-17)"
    assert text_shelf.local_links(body) == [("leaf", "practice/log/b"), ("file", "sheet.pdf")]
    swapped = text_shelf.swap_links(body, lambda scheme, name: f"{len(name)}")
    assert "(leaf:14)" in swapped
    assert "(file:9)" in swapped
    assert "(source:b#p1) [The Star](card:major-17)" in swapped


CARD = """+++
card = "major-17"
keywords = "hope, rest"
keywords_reversed = "drought"
questions = "Who pours?"

[[own_words]]
at = 2026-08-23T21:10:00
upright = "Hope."

[[mark]]
x = 0.5
y = 1
text = "A road"

[[mark]]
x = 0.1
y = 0.2
text = "A hill"
deck = "plain"

[[pair]]
card = "major-18"
text = "Two lights"
+++
"""


def test_a_card_leaf_has_fields_marks_and_pairs(folder):
    path = folder / "practice" / "log" / "b.md"
    path.write_text(CARD)
    text = text_shelf.read_shelf(folder).binders[0].tabs[0].leaves[1].holds
    assert text.fields == {
        "keywords": "hope, rest",
        "keywords reversed": "drought",
        "questions": "Who pours?",
    }
    assert [(m.x, m.y, m.text, m.deck) for m in text.marks] == [
        (0.5, 1.0, "A road", ""),
        (0.1, 0.2, "A hill", "plain"),
    ]
    assert [(p.card, p.text) for p in text.pairs] == [("major-18", "Two lights")]
    path.write_text(CARD.replace("x = 0.1", "x = 10"))
    with pytest.raises(CanMend, match=r"b\.md, line 1[67]: “x” must be a number from 0 to 1"):
        text_shelf.read_shelf(folder)
