"""Sources on paper: numbered notes and a bibliography at the end, whatever a title holds."""

import ctypes

import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.errors import CanMend
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import to_html
from binder.paper.citations import STYLES, entry, keys
from binder.paper.data import Part, PrintLeaf, Section, SideBySide
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from tests.paper.reading_back import bare, texts
from tests.profiles import fewer

LISLE = {
    "type": "book", "title": "Upside Down", "author": [{"family": "Lisle", "given": "Perpetua"}],
    "issued": {"date-parts": [[2019]]}, "publisher": "Marchbank", "publisher-place": "Hallow",
}  # fmt: skip


def section(text, bibliography, **fields):
    part = Part("", blocks(to_html(text)))
    leaf = PrintLeaf("u1", "plain", "A leaf", parts=(part,), **fields)
    return Section("Practice", "Notes", leaves=(leaf,), bibliography=bibliography)


def last_page(text, bibliography, style="house", **fields):
    return texts(typeset(section(text, bibliography, **fields), Sheet(citing=style)))[-1]


def test_links_become_numbered_notes_with_their_places():
    text = "One [p. 112](source:lisle#p112), two [Lisle](source:lisle#pp88-89), [no](source:none)."
    pages = texts(typeset(section(text, {"lisle": LISLE}), Sheet()))
    assert bare("One p. 1121, two Lisle2, no.") in "".join(pages)
    assert bare("1 Perpetua Lisle, Upside Down, 2019, p. 112") in pages[-1]
    assert bare("2 Perpetua Lisle, Upside Down, 2019, pp. 88–89") in pages[-1]
    assert bare("Perpetua Lisle. Upside Down. Hallow, Marchbank, 2019.") in pages[-1]


def test_without_sources_there_is_no_such_page():
    assert "Sources" not in last_page("Plain words.", {})


def test_what_only_stands_side_by_side_is_in_the_bibliography():
    table = SideBySide((("Perpetua Lisle", "Upside Down"),), (("Upright", ("Rest",)),), ("lisle",))
    page = last_page("Words.", {"lisle": LISLE}, side_by_side=table)
    assert "Notes" not in page.partition("Sources")[0].partition("page")[2]
    assert bare("Upside Down. Hallow") in page


def test_every_style_sets_a_source_with_nothing_but_a_title():
    for style in STYLES:
        page = last_page("See [it](source:x#note4).", {"x": {"title": "Cards"}}, style)
        assert bare("note 4") in page
        assert bare("Cards") in page.partition("Sources")[2]


def test_words_are_never_markup():
    odd = LISLE | {"title": r"$#panic()$ {x} #[b] *c* \ @d <e>", "publisher": "$y$"}
    page = last_page("[it](source:x)", {"x": odd})
    assert bare(r"$#panic()$ {x} #[b] *c* \ @d <e>") in page
    assert bare("$y$") in page


def test_an_unknown_style_is_refused():
    with pytest.raises(CanMend, match="in one of these styles: house"):
        Sheet(citing="curly")


ANY = st.text(max_size=12)
VALUE = ANY | st.integers() | st.none() | st.lists(ANY, max_size=2)
FIELDS = st.dictionaries(
    st.sampled_from(["type", "title", "issued", "volume", "issue", "edition", "page", "URL", "note",
                     "publisher", "container-title", "author"]), VALUE,
)  # fmt: skip


@fewer(4)
@given(st.lists(FIELDS, min_size=1, max_size=6))
def test_whatever_the_fields_hold_it_is_printed(found):
    cited = {f"k{n}": fields for n, fields in enumerate(found)}
    text = " ".join(f"[a](source:{key}#p{key})" for key in cited)
    assert bare("Sources") in last_page(text, cited, "notes")


def test_a_year_in_words_is_left_out():
    assert "date" not in entry({"title": "A", "issued": {"literal": "c. 1911"}})


def test_keys_are_found_at_any_depth():
    said = blocks(to_html("> - [a](source:one#p1)\n\n[b](source:two)\n"))
    assert list(keys(said)) == ["one", "two"]


def test_quotations_stay_in_ink_among_own_words():
    """In print own words are blue-black; each run of letters is drawn in its own colour."""
    part = Part("", blocks(to_html("Mine.\n\n> Theirs.")), own=True)
    leaf = PrintLeaf("u1", "plain", "A leaf", parts=(part,))
    pdf = typeset(Section("Practice", "Notes", leaves=(leaf,)), Sheet())
    inks = {}
    with pypdfium2.PdfDocument(pdf) as document:
        page = document[len(document) - 1]
        words = page.get_textpage()
        for at in range(words.count_chars()):
            red, green, blue, alpha = (ctypes.c_uint() for _ in range(4))
            pdfium.FPDFText_GetFillColor(words.raw, at, red, green, blue, alpha)
            inks.setdefault((red.value, green.value, blue.value), []).append(
                words.get_text_range(at, 1)
            )
    said = {ink: "".join(letters) for ink, letters in inks.items()}
    assert "Mine." in said[0x1C, 0x3A, 0x63]
    assert "Theirs." in said[0x23, 0x21, 0x1D]
