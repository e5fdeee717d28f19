"""The user's own choices about what is linked: never, always, here or everywhere, and once."""

import pytest

from binder.errors import CanMend
from binder.study.cards import links
from binder.study.leaves import leaves, tabs

TEXT = "The Star, and then strength again; The Star once more."


@pytest.fixture
def told(course_shelf):
    """A binder and two leaves in which cards are named."""
    binder = course_shelf.binder("Practice")
    tab = tabs.tab(binder, "Clippings")
    return binder, *(leaves.add_leaf(binder, tab, title, TEXT) for title in ("One", "Two"))


def found(shelf, leaf=""):
    return [mention.key for mention in links.Linker(shelf).find(TEXT, leaf)]


def test_a_word_is_never_linked_everywhere_or_on_one_leaf(course_shelf, told):
    binder, one, two = told
    usual = found(course_shelf, one)
    assert usual.count("major-17") == 2
    links.set_rule(binder, "  The  STAR ", links.NEVER, leaf_uid=one)
    assert "major-17" not in found(course_shelf, one)
    assert found(course_shelf, two) == found(course_shelf) == usual
    links.set_rule(binder, "star", links.NEVER)
    assert "major-17" not in found(course_shelf, two)


def test_a_choice_takes_the_place_of_the_one_before(course_shelf, told):
    binder, one, _ = told
    links.set_rule(binder, "The Star", links.NEVER)
    links.set_rule(binder, "star", links.ALWAYS)
    links.set_rule(binder, "star", links.NEVER, leaf_uid=one)
    kept = {row[2:] for row in links.rules(course_shelf)}
    assert kept == {("", "star", links.ALWAYS), (one, "star", links.NEVER)}
    assert "major-17" in found(course_shelf)
    assert "major-17" not in found(course_shelf, one)


def test_choices_are_undone_and_forgotten_by_name(course_shelf, told):
    binder, *_ = told
    links.set_rule(binder, "Star", links.NEVER)
    ((of, uid, leaf, word, rule),) = links.rules(course_shelf)
    assert (of, leaf, word, rule) == (binder, "", "star", links.NEVER)
    links.forget_rule(binder, uid)
    assert links.rules(course_shelf) == []
    assert binder.gate.undo() == "Forget a choice about links"
    assert binder.gate.undo() == "Choose what is linked"
    assert links.rules(course_shelf) == []


def test_one_name_of_several_is_left_alone(course_shelf, told):
    binder, one, two = told
    linker = links.Linker(course_shelf)
    before = [mention.start for mention in linker.find(TEXT) if mention.key == "major-17"]
    links.leave_alone(binder, one, "major-17", 1, linker)
    text = leaves.leaf(binder, one).text
    after = [mention.start for mention in linker.find(text, one) if mention.key == "major-17"]
    assert after == before[:1]
    assert text.startswith(TEXT[: before[1]])
    assert text.endswith(TEXT[before[1] :])
    assert leaves.leaf(binder, two).text == TEXT
    with pytest.raises(CanMend, match="changed meanwhile"):
        links.leave_alone(binder, one, "major-17", 1, linker)
    links.leave_alone(binder, one, "major-17", 0, linker)
    assert "major-17" not in [one.key for one in linker.find(leaves.leaf(binder, one).text)]


def test_a_linker_knows_of_a_choice_once_it_reads_again(course_shelf, told):
    binder, *_ = told
    linker = links.Linker(course_shelf)
    assert "major-17" in {one.key for one in linker.find(TEXT)}
    links.set_rule(binder, "star", links.NEVER)
    assert "major-17" in {one.key for one in linker.find(TEXT)}
    linker.refresh()
    assert "major-17" not in {one.key for one in linker.find(TEXT)}
