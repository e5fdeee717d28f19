"""Finding across binders: groups, and lines fit to be read."""

import pytest

from binder.store.schema import Leaf
from binder.store.search import OPEN, SHUT
from binder.study.leaves import leaves, tabs
from binder.study.overview.finding import count_all, find_all, marked_words, plain_line, tidy


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


@pytest.fixture
def crowded(course_shelf):
    """2,400 leaves with one word, every eighth with it in its title, and three elsewhere."""
    binder = course_shelf.binder("Practice")
    tab = tabs.tab(binder, "Clippings")
    rows = [
        {
            "uid": f"u{n}", "changed": 1, "tab": tab.row, "kind": "plain", "place": float(n),
            "title": f"The quay {n}" if n % 8 == 0 else f"Leaf {n}", "text": f"By the quay, {n}.",
        }
        for n in range(2_400)
    ]  # fmt: skip
    with binder.db.atomic():
        for at in range(0, len(rows), 400):
            Leaf.insert_many(rows[at : at + 400]).bind(binder.db).execute()
    other = course_shelf.binder("Foundations")
    for n in range(3):
        leaves.add_leaf(other, tabs.tab(other, "Clippings"), f"Other {n}", "the quay again")
    return course_shelf


def uids(found):
    return [hit.uid for group in found.groups for hit in group.hits]


def test_all_are_counted_and_the_rest_can_be_asked_for(crowded):
    first = find_all(crowded, "quay")
    assert len(uids(first)) == 60
    assert first.more
    assert count_all(crowded, "quay") == 2_403
    everything = find_all(crowded, "quay", -1)
    assert len(uids(everything)) == 2_403
    assert not everything.more
    assert count_all(crowded, "quay zanzibar") == 0
    assert count_all(crowded, "quay 3 Feb 1999") == 0


def test_more_goes_on_where_the_first_ended(crowded):
    """Whoever goes down the list sees none twice and misses none, and nothing moves above."""
    seen, after = [], 0
    while True:
        part = find_all(crowded, "quay", after=after)
        seen += uids(part)
        after += 60
        if not part.more:
            break
    assert len(seen) == len(set(seen)) == 2_403
    assert set(seen[:60]) == set(uids(find_all(crowded, "quay")))


def test_of_a_common_word_titles_come_first_then_the_latest(crowded):
    hits = [hit for group in find_all(crowded, "quay", 400).groups for hit in group.hits]
    assert all(OPEN in hit.title for hit in hits[:300])
    titled = [int(hit.uid[1:]) for hit in hits[:300]]
    assert titled == sorted(titled, reverse=True)
    later = [int(hit.uid[1:]) for hit in hits[300:] if hit.uid.startswith("u")]
    assert later == sorted(later, reverse=True)
    assert later[0] == 2_399


def test_a_search_is_interrupted_in_the_middle_of_a_statement(crowded):
    """The file is asked in one statement; `stop` is looked at while that runs."""
    asked = []

    def stop():
        asked.append(1)
        return len(asked) > 2

    assert find_all(crowded, "quay", -1, stop=stop).groups == ()
    assert count_all(crowded, "quay", stop=lambda: True) is None
    assert len(uids(find_all(crowded, "quay"))) == 60
