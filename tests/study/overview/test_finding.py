"""Finding across binders: groups, and lines fit to be read."""

import pytest

from binder.store.search import OPEN, SHUT
from binder.study.leaves import leaves, tabs
from binder.study.overview.finding import find_all, marked_words, plain_line, tidy


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (f"- the Christmas {OPEN}stall{SHUT}", f"the Christmas {OPEN}stall{SHUT}"),
        ("- [x] lay it beside the Moon", "lay it beside the Moon"),
        ("| | Ostrey, quay | Tarrow |", "Ostrey, quay, Tarrow"),
        ("## What I see", "What I see"),
        ("> The lamp you carry", "The lamp you carry"),
        ("3. third thing", "third thing"),
        ("see [p. 204](source:vesterholt#p204) again", "see p. 204 again"),
        ("a **bold** word", "a bold word"),
        ("5 * 3 - 2 is 13", "5 * 3 - 2 is 13"),
    ],
)
def test_a_line_loses_its_marks_and_keeps_its_words(line, words):
    assert tidy(line) == words


def test_hits_are_grouped_by_binder_and_tab_best_first(course_shelf):
    for name, tab, title, text in (
        ("Practice", "Methods", "Counting by the quay", "words"),
        ("Foundations", "Clippings", "Other", "the quay again"),
        ("Practice", "Methods", "More", "quay"),
    ):
        binder = course_shelf.binder(name)
        leaves.add_leaf(binder, tabs.tab(binder, tab), title, text)
    found = find_all(course_shelf, "quay")
    assert [(g.binder, g.tab, len(g.hits)) for g in found.groups] == [
        ("Practice", "Methods", 2),
        ("Foundations", "Clippings", 1),
    ]
    assert plain_line(found.groups[0].hits[0].title) == "Counting by the quay"
    assert marked_words(found.groups[0].hits[0]) == ["quay"]


def test_leaves_of_a_day_stand_before_those_with_the_words(course_shelf):
    binder = course_shelf.binder("Practice")
    clippings = tabs.tab(binder, "Clippings")
    said = leaves.add_leaf(binder, clippings, "What she said on 3 Nov 2026", day="2026-11-05T08:00")
    late = leaves.add_leaf(binder, clippings, "The quay", day="2026-11-03T23:59")
    bare = leaves.add_leaf(binder, clippings, "The stall", day="2026-11-03")
    leaves.add_leaf(binder, clippings, "Another day", day="2026-11-04T00:00")
    found = find_all(course_shelf, "3 Nov 2026")
    hits = [hit.uid for group in found.groups for hit in group.hits]
    assert set(hits[:2]) == {bare, late}
    assert hits[2:] == [said]
    assert found.read_as == "3 November 2026"


def test_a_binder_that_fails_is_named_and_the_others_are_searched(course_shelf):
    for name in ("Foundations", "Practice"):
        binder = course_shelf.binder(name)
        leaves.add_leaf(binder, tabs.tab(binder, "Clippings"), "Here", "the quay")
    course_shelf.binder("Foundations").db.execute_sql("DROP TABLE leaf_find")
    found = find_all(course_shelf, "quay")
    assert [group.binder for group in found.groups] == ["Practice"]
    assert "Foundations" in found.failed[0]


def test_a_search_told_to_stop_gives_nothing(course_shelf):
    assert find_all(course_shelf, "star", stop=lambda: True).groups == ()
