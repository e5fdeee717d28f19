"""All sources behind a tab as one list on as few sheets as it needs."""

import pytest

from binder.errors import CanMend
from binder.paper.bibliography import bibliography_pdf, print_bibliography
from binder.paper.sheets import Sheet
from binder.study.leaves import leaves, tabs
from binder.study.readings.discretion import LeaveOut
from binder.study.sources.sources import home, new_source
from tests.paper.reading_back import bare, texts


def test_the_sources_stand_one_after_the_other_by_name(course_shelf):
    for author, title in (("Ann Zander", "Last"), ("Tess Orme", "Ferry Cards"), ("", "Leaflet")):
        new_source(course_shelf, author, title)
    pages = texts(bibliography_pdf(course_shelf, *home(course_shelf), Sheet()))
    assert len(pages) == 1
    assert bare("Bibliography") in pages[0]
    places = [pages[0].index(bare(said)) for said in ("Leaflet", "Ferry Cards", "Last.")]
    assert places == sorted(places)


def test_twenty_sources_need_one_page_and_a_hundred_no_page_each(course_shelf):
    for number in range(20):
        new_source(course_shelf, f"Ann Bee{number}", f"Book {number}")
    where = home(course_shelf)
    assert len(texts(bibliography_pdf(course_shelf, *where, Sheet()))) == 1
    for number in range(20, 100):
        new_source(course_shelf, f"Ann Bee{number}", f"Book {number}")
    pages = texts(bibliography_pdf(course_shelf, *where, Sheet()))
    assert len(pages) < 6
    assert all(bare(f"Book {number}.") in "".join(pages) for number in range(100))


def test_only_what_is_behind_that_tab_and_not_private(course_shelf):
    new_source(course_shelf, "Tess Orme", "Ferry Cards")
    binder, _ = home(course_shelf)
    other = tabs.tab(binder, "Clippings")
    made = new_source(course_shelf, "Ann Bee", "Elsewhere", (binder, other))
    page = "".join(texts(bibliography_pdf(course_shelf, binder, other, Sheet())))
    assert bare("Elsewhere") in page
    assert bare("Ferry Cards") not in page
    leaves.rename(binder, made.leaf_uid, "Private: Elsewhere")
    with pytest.raises(CanMend, match="no source behind"):
        bibliography_pdf(course_shelf, binder, other, Sheet(), LeaveOut(private=True))


def test_it_is_written_to_a_file(course_shelf, tmp_path):
    new_source(course_shelf, "Tess Orme", "Ferry Cards")
    out = tmp_path / "list.pdf"
    assert print_bibliography(course_shelf, *home(course_shelf), Sheet(), out) == 1
    assert out.read_bytes().startswith(b"%PDF")
