"""Sources carried in and out; what can be read is read, the rest is said."""

import json

import pytest
import typst
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from pybtex.database import parse_string
from pybtex.richtext import Text

from binder.carry import bibtex, references
from binder.errors import CanMend
from binder.paper.citations import entry
from binder.study.leaves import leaves
from binder.study.sources import bibliography
from binder.study.sources.sources import SourceView, sources
from tests.paper.reading_back import bare, texts
from tests.profiles import fewer

MIXED = r"""
@book{lisle2019, author={Perpetua Lisle and M{\"u}ller, J{\'o}n and {The Quay Press}},
  title={Upside {D}own: na{\"\i}ve \'Etudes \& \ss{}o on}, year=2019, address={Hallow},
  publisher="Marchbank", isbn={978-0-306-40615-7}}
@article{broken, title={Unclosed, year=1999
}
@article{small-hours, title="Small Hours", journal={Quarterly of {Pips}}, year={1931}, volume=3,
  pages={12--18}, doi={10.99/x}}
@misc{small-hours, title={Again}}
@misc{bare, title={Bare}}
@book{untitled, year=1950}
"""


UNCLOSED = """@book{whole, title={Whole}, year=1901}
@article{torn, author={Nobody, title={Half a title
@book{after, title={After}, note={Pasted:
@misc{inner, title={Inner}}
}}
@book{torn_too, title={Never ended
@book{last, title={Last}}
"""


def test_an_entry_that_is_never_closed_does_not_swallow_the_rest(tmp_path):
    path = tmp_path / "in.bib"
    path.write_text(UNCLOSED)
    found, said = references.read(path)
    whole = [(one.key, one.where) for one in found if not one.broken]
    assert whole == [("whole", "line 1"), ("after", "line 3"), ("last", "line 7")]
    assert [said_of.partition(" of")[0] for said_of in said] == ["Line 2", "Line 6"]


def bring(shelf, tmp_path, text, name="in.bib"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return references.bring_in(shelf, path)


def test_bibtex_with_accents_and_errors_in_the_middle(course_shelf, tmp_path):
    brought = bring(course_shelf, tmp_path, MIXED)
    known = sources(course_shelf)
    assert known["lisle2019"].fields == {
        "type": "book", "title": "Upside Down: naïve Études & ßo on", "publisher": "Marchbank",
        "publisher-place": "Hallow", "ISBN": "978-0-306-40615-7",
        "author": [{"family": "Lisle", "given": "Perpetua"}, {"family": "Müller", "given": "Jón"},
                   {"literal": "The Quay Press"}],
        "issued": {"date-parts": [[2019]]},
    }  # fmt: skip
    assert known["small-hours"].fields["container-title"] == "Quarterly of Pips"
    assert known["small-hours"].fields["page"] == "12–18"
    said = "\n".join(brought.said)
    assert "Line 6 of the file could not be read" in said
    assert "“small-hours” is the key of “another in the file” already" in said
    assert known["smallhours"].title == "Again"
    assert "A part of it could not be read (line 6)." in said
    assert "broken" not in known
    assert "“bare” has no author and no year" in said
    assert "The source “untitled” (line 11) has no title and is left out." in said
    assert "“10.99/x” is no DOI" in said
    assert leaves.leaf(*place(course_shelf, "lisle2019")).title == "Upside Down"


def place(shelf, key):
    uid = sources(shelf)[key].leaf_uid
    return shelf.home_of(uid), uid


def test_a_key_of_the_shelf_is_never_taken_over(course_shelf, tmp_path):
    bring(course_shelf, tmp_path, "@book{one, title={First}, year=1901, author={A B}}")
    brought = bring(course_shelf, tmp_path, "@book{one, title={Second}}")
    assert brought.keys == ["one2"]
    assert "“one” is the key of “First” already; this one, “Second”, gets" in brought.said[0]
    assert sources(course_shelf)["one"].title == "First"


def test_the_same_source_is_not_taken_in_twice(course_shelf, tmp_path):
    first = "@book{one, title={First}, year=1901, author={Ann Bee}, isbn={0-306-40615-2}}"
    bring(course_shelf, tmp_path, first)
    for again, why in (
        (first, "same ISBN"),
        ("@book{x, title={FIRST.}, year=1901, author={Bee, A.}}", "same title, authors and year"),
        ("@book{y, title={Prime}, isbn={0306406152}}", "same ISBN"),
    ):
        brought = bring(course_shelf, tmp_path, again)
        assert brought.keys == []
        assert f"is here already, as “First” ({why})" in brought.said[0]


@pytest.mark.parametrize(
    ("said", "address"),
    [
        (r"\url{https://example.org/a\_b}", "https://example.org/a_b"),
        (r"{\url{https://example.org/~ann}}", "https://example.org/~ann"),
        ("https://example.org/x", "https://example.org/x"),
        (r"\href{https://example.org/y}{A page}", "https://example.org/y"),
        (r"Online: \url{https://example.org/z}", "https://example.org/z"),
    ],
)
def test_what_is_published_at_an_address_has_that_address(tmp_path, said, address):
    path = tmp_path / "in.bib"
    path.write_text(f"@misc{{web, title={{Tides}}, howpublished={{{said}}}}}")
    ((one,), _) = references.read(path)
    assert one.fields["URL"] == address
    assert "publisher" not in one.fields


def test_how_else_it_was_published_stays_words(tmp_path):
    path = tmp_path / "in.bib"
    path.write_text("@misc{leaflet, title={Tides}, howpublished={Handed out at the quay}}")
    ((one,), _) = references.read(path)
    assert one.fields["publisher"] == "Handed out at the quay"


def test_nothing_is_written_until_it_is_agreed(course_shelf, tmp_path):
    path = tmp_path / "in.bib"
    path.write_text(MIXED, encoding="utf-8")
    before = sources(course_shelf)
    reviewed = references.review(course_shelf, path)
    assert sources(course_shelf) == before
    told = [(one.given, one.where, one.fate, one.wanted) for one in reviewed.offered]
    assert told == [
        ("lisle2019", "line 2", "new", True),
        ("broken", "line 5", "new", False),
        ("small-hours", "line 7", "new", True),
        ("small-hours", "line 9", "its key is another source's", True),
        ("bare", "line 10", "new", True),
    ]
    reviewed.offered[0].key = "small-hours"
    with pytest.raises(CanMend, match="Two of these sources have the key"):
        references.take(course_shelf, reviewed)
    assert sources(course_shelf) == before


def test_one_undo_takes_all_of_them_away(course_shelf, tmp_path):
    before = sources(course_shelf)
    bring(course_shelf, tmp_path, MIXED)
    course_shelf.undo()
    assert sources(course_shelf) == before


def test_csl_json_comes_back_as_it_went(course_shelf, tmp_path):
    item = {
        "id": "t1", "type": "book", "title": "Tides {and} $cups$", "shelf-mark": "133 LIS",
        "author": [{"family": "Orme", "given": "Tess"}], "issued": {"date-parts": [[1931, 5]]},
    }  # fmt: skip
    bring(course_shelf, tmp_path, json.dumps([item, 5]), "in.json")
    assert references.carry_out(course_shelf, tmp_path / "out.json") == 1
    assert json.loads((tmp_path / "out.json").read_text(encoding="utf-8")) == [item]


@pytest.mark.parametrize(
    ("name", "text", "sentence"),
    [
        ("in.json", "[{", "is no CSL-JSON file"),
        ("in.txt", "", "should end in .bib for BibTeX"),
    ],
)
def test_files_of_another_kind_are_refused(course_shelf, tmp_path, name, text, sentence):
    with pytest.raises(CanMend, match=sentence):
        bring(course_shelf, tmp_path, text, name)
    with pytest.raises(CanMend, match="could not be opened"):
        references.read(tmp_path / "nowhere.bib")


WORDS = st.text(st.characters(categories=["L", "N"], include_characters=" &%#_$^~\\"), max_size=20)


@given(WORDS.map(lambda words: f"T {words} e"))
def test_a_title_comes_back_out_of_bibtex(title):
    source = SourceView("", "k", title, {"type": "book", "title": " ".join(title.split())})
    [found], said = bibtex.read(bibtex.write([source]))
    assert (found.key, found.broken, said) == ("k", "", [])
    assert found.fields["title"].replace("\\", "") == " ".join(title.split()).replace("\\", "")


def test_another_parser_reads_what_we_write(course_shelf, tmp_path):
    bring(course_shelf, tmp_path, MIXED)
    references.carry_out(course_shelf, tmp_path / "out.bib")
    (tmp_path / "t.typ").write_text('#bibliography("out.bib", full: true, style: "apa")')
    page = "".join(texts(typst.compile(tmp_path / "t.typ")))
    for words in (
        "Lisle, P., Müller, J.",
        "The Quay Press",
        "naïve Études & ßo on",
        "Quarterly of Pips",
    ):
        assert bare(words) in page


def test_bibtexs_own_parser_reads_all_we_write():
    """pybtex's whole parser, of which the reading here uses only the scanner."""
    fields = {
        "type": "chapter", "title": "Tides & Cups, 100%", "container-title": "The Long_Table",
        "author": [{"family": "van der Müller", "given": "Jón"}, {"literal": "The Quay Press"}],
        "editor": [{"family": "Wren", "given": "Bo"}], "issued": {"date-parts": [[1950, 3]]},
        "publisher": "Quay", "publisher-place": "Hallow", "page": "40–52", "volume": "2",
        "ISBN": "978-0-306-40615-7", "DOI": "10.1000/182", "URL": "https://example.org/~t",
    }  # fmt: skip
    written = bibtex.write([SourceView("", "muller", "Tides", fields)])
    entry = parse_string(written, "bibtex").entries["muller"]
    assert entry.type == "incollection"
    assert [(p.first_names, p.prelast_names, p.last_names) for p in entry.persons["author"]] == [
        (["Jón"], ["van", "der"], ["Müller"]), ([], [], ["{The Quay Press}"]),
    ]  # fmt: skip
    said = {name: Text.from_latex(value).render_as("text") for name, value in entry.fields.items()}
    assert said["booktitle"] == "The Long_Table"
    assert (said["year"], said["pages"], said["isbn"]) == ("1950", "40–52", "978-0-306-40615-7")
    [found], amiss = bibtex.read(written)
    assert amiss == []
    assert {**fields, "issued": {"date-parts": [[1950]]}} == found.fields


ODD = st.recursive(
    st.none() | st.booleans() | st.integers(-5, 3000) | st.text(max_size=6),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["family", "given", "date-parts", "raw"]), inner, max_size=3
        )
    ),
    max_leaves=6,
)
NAMED = st.sampled_from(["title", "author", "issued", "ISBN", "DOI", "type", "editor", "page", "x"])


@settings(fewer(3), suppress_health_check=[HealthCheck.function_scoped_fixture])
@example(items=[{"title": "Pips", "editor": [{"family": True, "literal": 7}]}])
@given(items=st.lists(st.dictionaries(NAMED, ODD, max_size=5), max_size=3))
def test_whatever_a_csl_file_holds_it_is_read_or_said(course_shelf, tmp_path, items):
    path = tmp_path / "in.json"
    path.write_text(json.dumps([{"id": f"k{n}", **item} for n, item in enumerate(items)]))
    reviewed = references.review(course_shelf, path)
    for one in reviewed.offered:
        one.wanted = True
        source = SourceView("", one.key, one.title, one.fields)
        assert isinstance(source.author, str)
        bibliography.described(source)
        bibliography.of(source)
        assert entry(one.fields)["title"]
    references.take(course_shelf, reviewed)
    assert len(sources(course_shelf)) == len(reviewed.offered)
    course_shelf.undo() if reviewed.offered else None


def test_a_part_of_the_wrong_shape_is_left_out_and_said(course_shelf, tmp_path):
    item = {"id": "a", "title": "T", "author": "Ann Bee", "issued": {"date-parts": [[1950]]}}
    path = tmp_path / "in.json"
    path.write_text(json.dumps([item]))
    (one,) = references.review(course_shelf, path).offered
    assert one.remarks[0] == "Its author could not be read."
    assert "author" not in one.fields


@pytest.mark.parametrize("text", ["[" * 100_000, '{"a":' * 100_000])
def test_a_file_nested_without_end_is_one_sentence(course_shelf, tmp_path, text):
    path = tmp_path / "deep.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(CanMend, match="is no CSL-JSON file"):
        references.review(course_shelf, path)
