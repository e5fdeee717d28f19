"""What the handbook says is so: its keys and menu words exist, its examples are read as told."""

import ast
import re
from pathlib import Path

import pytest
from PySide6.QtGui import QKeySequence

from binder.cards.shorthand import read
from binder.cards.titles import STANDARD
from ui.actions.menus_and_keys import ACTIONS
from ui.leaves.handbook.subject import KEYS, with_native_keys
from ui.leaves.handbook.subjects import having, marks, subjects
from ui.writing.tools import TOOLS

ROOT = Path(__file__).parents[4]
EVERY = subjects()
TITLES = [subject.title for subject in EVERY]
EVERYWHERE = {"Ctrl+Shift", "Alt+Down"}
"""Written before 'and an arrow'; and the key that opens a list or a calendar, as anywhere."""


def literals():
    """Every string in the code of the screen, its letters for keys taken out."""
    found = set()
    for path in (ROOT / "ui").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.add(node.value.replace("&", ""))
    return found


@pytest.fixture(scope="module")
def words_of_screen():
    return literals()


def known_keys():
    """Every key of the table of actions and of the writing desk."""
    found = set()
    for key in [line.key for line in ACTIONS] + [tool.key for tool in TOOLS]:
        if isinstance(key, str):
            found |= {QKeySequence(one).toString() for one in key.split()}
        else:
            found |= {one.toString() for one in QKeySequence.keyBindings(key)}
    return found


def test_there_is_a_leaf_for_each_file_and_each_has_a_title_of_its_own():
    assert len(EVERY) == len(list((ROOT / "resources" / "handbook").glob("*.md")))
    assert len(set(TITLES)) == len(TITLES)
    assert [subject.number for subject in EVERY] == list(range(1, len(EVERY) + 1))


@pytest.mark.parametrize("subject", EVERY, ids=TITLES)
def test_a_leaf_is_short(subject):
    """It is read while something else is wanted."""
    assert 40 < len(subject.words.split()) < 260


@pytest.mark.parametrize("subject", EVERY, ids=TITLES)
def test_every_key_it_names_is_one(qapp, subject, words_of_screen):
    named = set(KEYS.findall(subject.text)) - EVERYWHERE
    wrong = {
        key
        for key in named
        if QKeySequence(key).toString() not in known_keys() and key not in words_of_screen
    }
    assert wrong == set()


@pytest.mark.parametrize("subject", EVERY, ids=TITLES)
def test_every_entry_of_a_menu_it_names_is_there(subject, words_of_screen):
    named = [" ".join(words.split()) for words in re.findall(r"\*([^*]+…)\*", subject.text)]
    assert [words for words in named if words not in words_of_screen] == []


@pytest.mark.parametrize(
    ("typed", "card", "reversed_"),
    [
        ("3w", "Three of Wands", False), ("10s", "Ten of Swords", False),
        ("ac", "Ace of Cups", False), ("pgw", "Page of Wands", False),
        ("knc", "Knight of Cups", False), ("qs", "Queen of Swords", False),
        ("kp", "King of Pentacles", False), ("hermit", "The Hermit", False),
        ("17", "The Star", False), ("hermit r", "The Hermit", True),
    ],
)  # fmt: skip
def test_its_shorthand_is_read_as_it_says(typed, card, reversed_):
    (leaf,) = [subject for subject in EVERY if subject.title == "Cards in shorthand"]
    assert f"`{typed}`" in leaf.text
    (part,) = read(typed, STANDARD).parts
    assert (part.card.title, part.reversed) == (card, reversed_)


def test_words_are_found_by_their_beginnings_whatever_their_case():
    assert [subject.title for subject in having("bibtex", EVERY)] == ["Many authors"]
    assert having("no such words", EVERY) == []
    assert having("", EVERY) == list(EVERY)


def test_the_whole_word_is_marked():
    (leaf,) = having("bibt", EVERY)
    assert marks("bibt", leaf) == ("BibTeX",)


def test_keys_are_written_as_on_this_system(qapp):
    native = QKeySequence("Ctrl+Shift+D").toString(QKeySequence.SequenceFormat.NativeText)
    assert with_native_keys("empty it (Ctrl+Shift+D).") == f"empty it ({native})."
    smaller = QKeySequence("Ctrl+-").toString(QKeySequence.SequenceFormat.NativeText)
    assert with_native_keys("Ctrl+- smaller") == f"{smaller} smaller"
