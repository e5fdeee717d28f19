"""The leaf of a source on paper."""

import pytest

from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.leaves import leaves, tabs
from binder.study.sources import sources
from tests.paper.reading_back import bare, texts


@pytest.fixture
def practice(course_shelf):
    made = sources.new_source(course_shelf, "Perpetua Lisle", "Upside Down")
    binder = course_shelf.home_of(made.leaf_uid)
    sources.note(*course_shelf.card_leaf("major-17"), "lisle", "Upright", "A light.", "12")
    leaves.write(binder, made.leaf_uid, title="Upside Down", text="A *kind* book.")
    return binder


def printed(shelf, binder):
    section = gather(shelf, binder, tabs.tab(binder, "Sources"))
    return "".join(texts(typeset(section, Sheet())))


def test_it_says_what_it_is_and_where_it_is_cited(course_shelf, practice):
    said = printed(course_shelf, practice)
    for words in (
        "Perpetua Lisle Upside Down", "Kind", "Book", "A kind book.",
        "It has no year; it is cited by what it has.", "The Star: Upright p. 12",
    ):  # fmt: skip
        assert bare(words) in said


def test_a_leaf_without_bibliography_has_its_notes(course_shelf, practice):
    home = tabs.tab(practice, "Sources")
    leaves.add_leaf(practice, home, "Not looked up", "From the tin.", kind="source")
    said = printed(course_shelf, practice)
    assert bare("Not looked up") in said
    assert bare("From the tin.") in said


def test_words_of_a_source_are_never_markup(course_shelf, practice):
    made = sources.new_source(course_shelf, "", "T")
    fields = {"type": "book", "title": "T", "publisher": "*Quay* [x](card:major-01) $y$ #z"}
    sources.set_source(practice, made.leaf_uid, made.key, fields)
    assert bare("Publisher: *Quay* [x](card:major-01) $y$ #z") in printed(course_shelf, practice)
