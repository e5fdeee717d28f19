"""The bibliographic form of a source, there and back, and what a leaf says of it."""

from dataclasses import replace

import pytest

from binder.errors import CanMend
from binder.study.leaves import leaves, tabs
from binder.study.sources import bibliography, citing, sources
from binder.study.sources.sources import SourceView

LISLE = {
    "type": "book",
    "title": "Upside Down: a Short Book about Reversals",
    "author": [{"family": "Lisle", "given": "Perpetua"}],
    "issued": {"date-parts": [[2019, 3]]},
    "publisher": "Marchbank and Teasel",
    "number-of-pages": "104",
    "editor": [{"family": "Orme", "given": "T."}, {"literal": "the Reading Room"}],
    "accessed": {"date-parts": [[2026, 3, 8]]},
    "shelf-mark": "133 LIS",
}


@pytest.fixture
def practice(course_shelf):
    return course_shelf.binder("Practice")


@pytest.fixture
def lisle(practice):
    uid = leaves.add_leaf(practice, tabs.tab(practice, "Sources"), "Upside Down", kind="source")
    sources.set_source(practice, uid, "lisle", LISLE)
    return uid


def form_of(practice, uid):
    return bibliography.of(sources.source_of(practice, uid))


def changed(form, **said):
    """The form with other words in some fields."""
    return replace(form, said={**form.said, **said})


def test_the_form_says_what_the_fields_say(practice, lisle):
    form = form_of(practice, lisle)
    assert (form.kind, form.title, form.key) == ("book", LISLE["title"], "lisle")
    assert {name: said for name, said in form.said.items() if said} == {
        "author": "Perpetua Lisle", "issued": "2019-03", "publisher": "Marchbank and Teasel",
        "editor": "T. Orme\nthe Reading Room", "accessed": "2026-03-08",
    }  # fmt: skip


def test_keeping_the_form_unchanged_changes_nothing(course_shelf, practice, lisle):
    bibliography.write(course_shelf, practice, lisle, form_of(practice, lisle))
    assert sources.source_of(practice, lisle).fields == LISLE
    assert leaves.leaf(practice, lisle).title == "Upside Down"


def test_what_the_form_asks_is_changed_and_the_rest_kept(course_shelf, practice, lisle):
    form = changed(
        form_of(practice, lisle),
        author="Perpetua Lisle\nOrme, T.\nWren",
        issued="2021",
        publisher="",
    )
    bibliography.write(course_shelf, practice, lisle, form)
    fields = sources.source_of(practice, lisle).fields
    assert fields["author"] == [
        {"family": "Lisle", "given": "Perpetua"},
        {"family": "Orme", "given": "T."},
        {"literal": "Wren"},
    ]
    assert fields["issued"] == {"date-parts": [[2021]]}
    assert "publisher" not in fields
    assert fields["shelf-mark"] == "133 LIS"


def test_a_new_source_names_its_leaf(course_shelf, practice):
    uid = leaves.add_leaf(practice, tabs.tab(practice, "Sources"), "New leaf", kind="source")
    assert sources.source_of(practice, uid) is None
    form = bibliography.Bibliography("book", "Ferry Cards: a Year", "ferry")
    bibliography.write(course_shelf, practice, uid, form)
    assert leaves.leaf(practice, uid).title == "Ferry Cards"
    assert sources.source_of(practice, uid).fields == {"type": "book", "title": form.title}
    assert practice.gate.undo() == "Write source details"
    assert leaves.leaf(practice, uid).title == "New leaf"


def test_another_key_takes_its_citations_along(course_shelf, practice, lisle):
    binder, star = course_shelf.card_leaf("major-17")
    sources.note(binder, star, "lisle", "Upright", "A light.")
    bibliography.write(
        course_shelf, practice, lisle, replace(form_of(practice, lisle), key="lisle-2019")
    )
    assert [one.title for one in citing.cited(course_shelf, "lisle-2019")] == ["The Star"]


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        ({"title": " "}, "needs a title"),
        ({"said": {"issued": "last spring"}}, "is no year and no day"),
        ({"key": "two words"}, "one word"),
    ],
)
def test_what_cannot_be_kept_is_said_and_nothing_changes(
    course_shelf, practice, lisle, wrong, sentence
):
    with pytest.raises(CanMend, match=sentence):
        bibliography.write(
            course_shelf, practice, lisle, replace(form_of(practice, lisle), **wrong)
        )
    assert sources.source_of(practice, lisle).fields == LISLE


def test_what_a_leaf_says_below_the_title(practice, lisle):
    assert bibliography.described(sources.source_of(practice, lisle)) == [
        ("Edited by", "T. Orme and the Reading Room"),
        ("Publisher", "Marchbank and Teasel"),
        ("Pages", "104"),
        ("Looked at on", "2026-03-08"),
        ("Shelf mark", "133 LIS"),
    ]


@pytest.mark.parametrize(
    ("issued", "year"),
    [
        ({"date-parts": [[1911]]}, "1911"),
        ({"date-parts": [["1911", 5]]}, "1911"),
        ({"raw": "about 1890"}, "about 1890"),
        ({"date-parts": []}, ""),
        ("1911", ""),
        (None, ""),
    ],
)
def test_the_year_of_any_date(issued, year):
    assert bibliography.year({"issued": issued}) == year


def test_a_date_in_words_survives_the_form(course_shelf, practice, lisle):
    fields = LISLE | {"issued": {"raw": "about 1890"}}
    sources.set_source(practice, lisle, "lisle", fields)
    bibliography.write(course_shelf, practice, lisle, form_of(practice, lisle))
    assert sources.source_of(practice, lisle).fields == fields


def test_isbn_and_doi_are_checked_and_kept(course_shelf, practice, lisle):
    form = changed(form_of(practice, lisle), ISBN="978-0-306-40615-7", DOI="doi:10.1000/182")
    bibliography.write(course_shelf, practice, lisle, form)
    fields = sources.source_of(practice, lisle).fields
    assert (fields["ISBN"], fields["DOI"]) == ("978-0-306-40615-7", "10.1000/182")
    with pytest.raises(CanMend, match="a digit is mistyped"):
        bibliography.write(course_shelf, practice, lisle, changed(form, ISBN="978-0-306-40615-8"))
    assert sources.source_of(practice, lisle).fields == fields
    odd = replace(changed(form, ISBN="978-0-306-40615-8"), as_is=frozenset(["ISBN"]))
    bibliography.write(course_shelf, practice, lisle, odd)
    assert sources.source_of(practice, lisle).fields["ISBN"] == "978-0-306-40615-8"


def test_an_odd_number_that_was_there_before_stops_nothing(course_shelf, practice, lisle):
    sources.set_source(practice, lisle, "lisle", LISLE | {"ISBN": "odd 1"})
    form = changed(form_of(practice, lisle), publisher="Quay")
    bibliography.write(course_shelf, practice, lisle, form)
    assert sources.source_of(practice, lisle).fields["ISBN"] == "odd 1"


def test_every_kind_has_its_fields_and_days_are_kept_whole(course_shelf, practice, lisle):
    talk = replace(
        changed(
            form_of(practice, lisle), **{"event-title": "Reading Room evening"},
            issued="2026-02-14", URL="https://example.org/talk",
        ),
        kind="speech",
    )  # fmt: skip
    bibliography.write(course_shelf, practice, lisle, talk)
    fields = sources.source_of(practice, lisle).fields
    assert fields["type"] == "speech"
    assert fields["event-title"] == "Reading Room evening"
    assert fields["issued"] == {"date-parts": [[2026, 2, 14]]}
    assert bibliography.asks("speech", "event-title")
    assert not bibliography.asks("book", "event-title")
    for kind in bibliography.KINDS:
        assert bibliography.asks(kind, "author")


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"title": "A"}, "no author and no year"),
        ({"author": [{"literal": "B"}]}, "no year"),
        ({"director": [{"literal": "B"}], "issued": {"raw": "1990"}}, ""),
    ],
)
def test_what_a_source_lacks_is_said(fields, said):
    assert bibliography.lacking(fields) == said


def test_what_a_leaf_says_first_of_a_source():
    source = SourceView(
        "", "waite", "Pictorial Key", {"type": "book", "issued": {"date-parts": [[1911, 5]]}}
    )
    assert bibliography.facts(source) == [
        ("Kind", "Book"),
        ("Year", "1911"),
        ("Cite it as", "waite"),
    ]
    source = SourceView(
        "", "talk", "A talk", {"type": "speech", "issued": {"literal": "last spring"}}
    )
    assert bibliography.facts(source) == [
        ("Kind", bibliography.KINDS.get("speech", "speech")), ("Year", "last spring"),
        ("Cite it as", "talk"),
    ]  # fmt: skip
    assert bibliography.facts(SourceView("", "bare", "Bare", {})) == [("Cite it as", "bare")]


@pytest.mark.parametrize(
    ("person", "name"),
    [
        ({"given": "Orla", "family": "Tenpenny"}, "Orla Tenpenny"),
        ({"family": "Tenpenny"}, "Tenpenny"),
        ({"literal": "The Saltings Circle"}, "The Saltings Circle"),
        ({"given": "Orla", "literal": "O. T."}, "Orla"),
        ({}, ""),
    ],
)
def test_a_name_is_told_given_name_first(person, name):
    assert sources.person_name(person) == name


def test_names_that_stay_are_kept_as_they_were_when_another_is_added(course_shelf, practice, lisle):
    form = changed(form_of(practice, lisle), editor="the Reading Room; Ada Bell\nT. Orme")
    bibliography.write(course_shelf, practice, lisle, form)
    assert sources.source_of(practice, lisle).fields["editor"] == [
        {"literal": "the Reading Room"}, {"family": "Bell", "given": "Ada"},
        {"family": "Orme", "given": "T."},
    ]  # fmt: skip
