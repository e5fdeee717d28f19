"""What is left out of a printed tab is really not in the file."""

import io
import re
from dataclasses import replace

import pypdf
import pytest

from binder.cards.spreads import spread
from binder.errors import CanMend
from binder.paper.across import across_pdf
from binder.paper.leaves.gather import gather, print_tab
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.cards import words
from binder.study.kinds import LeafKind
from binder.study.leaves import files, leaves, tabs
from binder.study.readings import lookbacks, readings
from binder.study.readings.discretion import NOTHING, LeaveOut
from binder.study.readings.readings import Laid, NewReading
from binder.study.sources import sources
from tests.paper.reading_back import bare, texts

PNG = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010802000000907753de0000000c49444154789c63f8cfc0"
    "000003010100c9fe92ef0000000049454e44ae426082"
)
"""A red dot."""

TEXT = """Open words of Quill.

Private: secret one.

> Private: secret two
>
> ![secret three](file:{uid})

- open three
- Private: secret four

## Private

secret five[^1]

[^1]: secret six
"""
NAMES = ("Ada", "Quill", "QUILL")
EVERYTHING = LeaveOut(querents=True, private=True)


@pytest.fixture
def log(course_shelf):
    """Practice and its readings log, with a reading that has something to hide everywhere."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")
    uid = files.keep_bytes(binder, "secret-seven.png", "image/png", PNG)
    made = NewReading(
        "2026-11-22T19:30", "Will Ada Quill move?", spread("three-card"),
        [Laid(1, "wands-03", note="Private: secret eight"), Laid(2, "major-09", note="Ada here."),
         Laid(3, "cups-13")],
        text=TEXT.format(uid=uid), querent="Ada Quill", topic="Private: secret nine",
        mood="Private: secret mood", venue="at Ada's",
    )  # fmt: skip
    leaf = readings.log(binder, tab, made)
    lookbacks.expect(binder, leaf, "Private: secret ten.", 70, "2026-12-20")
    lookbacks.expect(binder, leaf, "Ada signs.", 70, "2026-12-20")
    lookbacks.look_back(binder, leaf, "Open end.\n\nPrivate: secret eleven", at="2026-12-20")
    readings.log(binder, tab, replace(made, question="Private: secret twelve?", text=""))
    return binder, tab


def everything(pdf: bytes) -> str:
    """All that can be read in a PDF: its pages, what describes it, its bookmarks and the files in
    it, and every object and stream unpacked."""
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    found = [pdf.decode("latin-1"), *(page.extract_text() for page in reader.pages)]
    found += [repr(reader.metadata), repr(reader.outline), repr(dict(reader.attachments))]
    for number in range(1, int(reader.trailer["/Size"])):
        item = reader.get_object(pypdf.generic.IndirectObject(number, 0, reader))
        found.append(repr(item))
        if isinstance(item, pypdf.generic.StreamObject):
            data = item.get_data()
            found += [data.decode("latin-1"), data.decode("utf-16-be", "ignore")]
    return re.sub(r"\s+", "", "".join(found))


def printed(shelf, binder, tab, leave_out):
    return typeset(gather(shelf, binder, tab, leave_out), Sheet("a4", "none", False))


def test_what_is_left_out_is_not_in_the_file(course_shelf, log):
    binder, tab = log
    pdf = printed(course_shelf, binder, tab, EVERYTHING)
    said = everything(pdf)
    assert "secret" not in said
    assert [name for name in NAMES if name in said] == []
    pages = "".join(texts(pdf))
    for words_ in ("Open words of the querent.", "open three", "Open end.", "The querent signs.",
                   "Will the querent move?", "The querent here.",
                   "Querents and private passages are left out."):  # fmt: skip
        assert bare(words_) in pages


def test_the_same_tab_shows_all_when_nothing_is_left_out(course_shelf, log):
    """So the search above would have found it."""
    binder, tab = log
    pdf = printed(course_shelf, binder, tab, NOTHING)
    pages = "".join(texts(pdf))
    for number in ("one", "two", "four", "five", "six", "eight", "ten", "eleven", "twelve"):
        assert f"secret{number}" in pages
    assert "secret" in everything(pdf)
    assert "Ada" in pages
    assert bare("For A. Q.") in pages


def test_the_name_of_a_tab_is_told_without_names(course_shelf, log):
    """It stands in the description of the file as well."""
    binder, tab = log
    tabs.rename_tab(binder, tab.uid, "Read for Ada")
    tab = tabs.tab(binder, tab.uid)
    assert "Ada" not in everything(printed(course_shelf, binder, tab, EVERYTHING))
    pdf = printed(course_shelf, binder, tab, NOTHING)
    assert pypdf.PdfReader(io.BytesIO(pdf)).metadata.title == "Read for Ada"


def test_a_source_keeps_its_private_words(course_shelf, log):
    """On its own leaf, in the bibliography, and across cards."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "sources")
    leaf = leaves.add_leaf(binder, tab, "Open book", kind=LeafKind.SOURCE)
    fields = {
        "type": "book", "note": "Private: secret note", "publisher": "Quill", "title": "Open book",
        "author": [{"family": "Quill", "given": "Ada"}],
    }  # fmt: skip
    sources.set_source(binder, leaf, "open", fields)
    leaves.add_leaf(binder, tab, "Cites it", "So [it says](source:open#p3).")
    for pdf in (
        printed(course_shelf, binder, tab, EVERYTHING),
        across_pdf(
            course_shelf, sources.sources(course_shelf)["open"], "Cards of Ada", ["major-17"],
            Sheet("a4", "none"), EVERYTHING,
        ),
    ):  # fmt: skip
        said = everything(pdf)
        assert "Openbook" in said
        assert [name for name in (*NAMES, "secret") if name in said] == []
    assert "secret" in everything(printed(course_shelf, binder, tab, NOTHING))


def test_a_picture_in_a_private_passage_is_not_in_the_file(course_shelf, log):
    binder, tab = log
    assert gather(course_shelf, binder, tab, EVERYTHING).pictures == {}
    assert len(gather(course_shelf, binder, tab).pictures) == 1


def test_a_card_named_in_private_only_is_not_listed(course_shelf, log):
    binder, tab = log
    for title in ("First", "Second"):
        leaves.add_leaf(binder, tab, title, "Private: The Star it was.", day="2026-11-01")
    for leave_out, pages in ((EVERYTHING, 0), (NOTHING, 1)):
        words_ = texts(printed(course_shelf, binder, tab, leave_out))
        assert len(re.findall(r"TheStar\d", "".join(words_))) == pages


def test_a_card_leaf_keeps_its_private_words(course_shelf, log):
    binder = course_shelf.binder("Foundations")
    tab = tabs.tab(binder, "Minor Arcana")
    leaf = next(e.uid for e in leaves.contents(binder, tab) if e.card == "cups-13")
    words.write_words(binder, leaf, words.UPRIGHT, "Open heart.\n\nPrivate: secret thirteen")
    section = gather(course_shelf, binder, tab, EVERYTHING)
    said = repr([leaf for leaf in section.leaves if leaf.title == "Queen of Cups"])
    assert "Open heart." in said
    assert "secret" not in said
    assert [name for name in NAMES if name in said] == []
    assert "A private leaf" in said
    assert "Will the querent move?" in said


def test_a_tab_of_private_leaves_only_is_one_sentence(course_shelf):
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "clippings")
    leaves.add_leaf(binder, tab, "Private: mine")
    with pytest.raises(CanMend, match="Every leaf behind “Clippings” is private"):
        gather(course_shelf, binder, tab, EVERYTHING)


def test_the_same_words_go_through_the_verb_that_prints(course_shelf, log, tmp_path):
    binder, tab = log
    out = tmp_path / "log.pdf"
    print_tab(course_shelf, binder, tab, Sheet("a4", "none", False), out, EVERYTHING)
    assert "secret" not in everything(out.read_bytes())
