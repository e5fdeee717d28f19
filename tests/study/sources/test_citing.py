"""Where a source is cited, and what happens to its citations when its key changes."""

import pytest

from binder.errors import CanMend
from binder.study.cards import words
from binder.study.leaves import leaves, tabs
from binder.study.sources import citing, sources


@pytest.fixture
def cited_shelf(course_shelf):
    practice = course_shelf.binder("Practice")
    home = tabs.tab(practice, "Sources")
    uid = leaves.add_leaf(practice, home, "Upside Down", kind="source")
    sources.set_source(practice, uid, "lisle", {"type": "book"})
    binder, star = course_shelf.card_leaf("major-17")
    sources.note(binder, star, "lisle", "Upright", "A light.", "12")
    sources.note(binder, star, "lisle", "Reversed", "A light, gone elsewhere.", "13")
    clippings = tabs.tab(practice, "Clippings")
    leaves.add_leaf(practice, clippings, "Five ways", "As [she says](source:lisle#p30) it.")
    leaves.add_leaf(practice, clippings, "Another", "See [her](source:lisle-2) and source: lisle.")
    return course_shelf


def told(shelf, key):
    return [(one.title, one.notes) for one in citing.cited(shelf, key)]


def test_notes_first_then_leaves_that_link(cited_shelf):
    assert told(cited_shelf, "lisle") == [
        ("The Star", (("Upright", "12"), ("Reversed", "13"))),
        ("Five ways", ()),
    ]
    assert told(cited_shelf, "nobody") == []
    assert told(cited_shelf, "§") == []


def test_quotations_and_own_words_count_and_follow_the_key(cited_shelf):
    star = cited_shelf.card_leaf("major-17")
    sun = cited_shelf.card_leaf("major-19")
    said = "> A lamp.\n>\n> Lisle, [p. 4](source:lisle#p4)\n\nAs [p. 4](source:lisle#p4), too."
    words.write_words(*star, "upright", said)
    words.write_words(*sun, "upright", "> So.\n>\n> [note 2](source:lisle#note2)")
    found = {one.title: one.links for one in citing.cited(cited_shelf, "lisle")}
    assert found == {
        "The Star": ((True, "p. 4"), (False, "p. 4")),
        "The Sun": ((True, "note 2"),),
        "Five ways": ((False, "p. 30"),),
    }
    citing.rekey(cited_shelf, "lisle", "perpetua")
    now = words.standing(*star).now["upright"].text
    assert now == said.replace("source:lisle", "source:perpetua")
    assert len(citing.cited(cited_shelf, "perpetua")) == 3


def test_a_leaf_that_cites_in_its_table_and_in_its_words_is_named_once(cited_shelf):
    binder, star = cited_shelf.card_leaf("major-17")
    words.write_words(binder, star, "upright", "As [p. 4](source:lisle#p4).")
    (found,) = (one for one in citing.cited(cited_shelf, "lisle") if one.leaf_uid == star)
    assert found.notes == (("Upright", "12"), ("Reversed", "13"))
    assert citing.places(found) == "Upright p. 12, Reversed p. 13, in its text p. 4"


def test_who_wrote_what_a_link_leads_to(cited_shelf):
    made = sources.new_source(cited_shelf, "Orla Tenpenny", "Cards at the Kitchen Table")
    assert sources.author_of(cited_shelf, f"source:{made.key}#p12") == made.author
    assert "Tenpenny" in made.author
    assert sources.author_of(cited_shelf, "source:lisle#p12") == ""  # no author is noted
    assert sources.author_of(cited_shelf, "source:nobody") == ""


def test_what_lies_in_the_drawer_does_not_count(cited_shelf):
    practice = cited_shelf.binder("Practice")
    tabs.set_tab_aside(practice, tabs.tab(practice, "Clippings").uid)
    binder, star = cited_shelf.card_leaf("major-17")
    leaves.set_aside(binder, star)
    assert told(cited_shelf, "lisle") == []


@pytest.mark.parametrize("new", ["perpetua-lisle_2019", r"li\1sle", "莉"])
def test_another_key_takes_its_citations_along(cited_shelf, new):
    citing.rekey(cited_shelf, "lisle", new)
    assert told(cited_shelf, "lisle") == []
    assert [title for title, _ in told(cited_shelf, new)] == ["The Star", "Five ways"]
    practice = cited_shelf.binder("Practice")
    texts = [
        leaves.leaf(practice, entry.uid).text
        for entry in leaves.contents(practice, tabs.tab(practice, "Clippings"))
    ]
    assert texts[0] == f"As [she says](source:{new}#p30) it."
    assert texts[1] == "See [her](source:lisle-2) and source: lisle."


@pytest.mark.parametrize("key", ["", " ", "two words", "a#b", "a(b", "a]b"])
def test_a_key_is_one_word(cited_shelf, key):
    with pytest.raises(CanMend, match="one word"):
        citing.checked_key(cited_shelf, "any", key)


def test_a_key_belongs_to_one_source(cited_shelf):
    own = sources.sources(cited_shelf)["lisle"].leaf_uid
    assert citing.checked_key(cited_shelf, own, " lisle ") == "lisle"
    with pytest.raises(CanMend, match="the key of “Upside Down” already"):
        citing.checked_key(cited_shelf, "another-leaf", "lisle")
