import io
import re
from dataclasses import replace

import pypdf
import pypdfium2
import pytest

from binder.errors import CanMend
from binder.paper.data import Part, PrintLeaf, Section
from binder.paper.sheets import Sheet
from binder.paper.typeset import count, pages_png, typeset
from tests.paper.reading_back import bare, pages_with, texts
from tests.paper.sample import card_leaf, looked_back, p, reading, section

TWO_SIDED = Sheet("a4", "3", two_sided=True)
CONTENTS_END = 5
"""The page on which the contents of eighty leaves end."""


def plain(n, paragraphs=1):
    """A leaf of some length with a title found nowhere else."""
    return PrintLeaf(
        uid=f"leaf{n}",
        kind="plain",
        title=f"Firing number {n:03d}x",
        day=f"{n % 28 + 1} Nov",
        parts=(Part("", [p("The kiln went up slowly. " * 30)] * paragraphs),),
    )


@pytest.fixture(scope="module")
def long_tab():
    """Eighty leaves, the first few of up to four pages, both sides: (leaves, PDF, the words of
    each page).
    """
    leaves = tuple(plain(n, 1 + 7 * n if n < 4 else 1) for n in range(80))
    pdf = typeset(section(*leaves), TWO_SIDED)
    return leaves, pdf, texts(pdf)


def test_an_empty_tab_has_nothing_to_print():
    with pytest.raises(CanMend, match="There is nothing behind this tab to print yet"):
        typeset(Section("Practice", "Readings log"), Sheet())


def test_the_contents_give_the_page_of_every_leaf(long_tab):
    leaves, pdf, pages = long_tab
    listed = "\n".join(
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages[2:CONTENTS_END]
    )
    for leaf in leaves:
        number = leaf.title.split()[-1]
        given = int(re.search(rf"Firing\s+number\s+{number}\s+(\d+)\b", listed)[1])
        stands = [n for n in pages_with(pages, leaf.title) if n > CONTENTS_END]
        assert given == stands[0]


def test_page_x_of_y_counts_every_page(long_tab):
    _, pdf, pages = long_tab
    for n, page in enumerate(pages, 1):
        assert f"page{n}of{len(pages)}" in page
    assert count(pdf) == len(pages)


def test_every_leaf_begins_a_page_and_is_named_where_it_goes_on(long_tab):
    leaves, _, pages = long_tab
    for leaf in leaves:
        mine = [page for page in pages[CONTENTS_END:] if bare(leaf.title) in page]
        assert len(mine) > 1 or len(leaf.parts[0].blocks) < 8
        assert [bare(leaf.title + ", continued") in page for page in mine] == [
            n > 0 for n in range(len(mine))
        ]


def test_leaves_begin_on_fronts_when_they_are_to_be_filed_apart():
    leaves = [plain(n, 1 + 7 * (n % 4)) for n in range(6)]
    pages = texts(typeset(section(*leaves), replace(TWO_SIDED, apart=True)))
    for leaf in leaves:
        begins = next(n for n in pages_with(pages, leaf.title) if n > 3)
        assert begins % 2 == 1


def test_the_divider_names_binder_tab_and_what_is_behind_it():
    first, second, *_ = texts(typeset(section(), TWO_SIDED))
    assert "Practice" in first
    assert "Readingslog" in first
    assert bare("61 readings, 1 December 2025 to 25 November 2026") in first
    assert bare(second) == "page2of9Readingslog"  # the tab, and nothing else


def test_one_sided_has_no_blank_back():
    assert "Contents" in texts(typeset(section(), Sheet()))[1]


def test_a_reading_prints_its_cards_expectations_and_lines():
    with_lines = typeset(section(reading()), Sheet())
    words = "".join(texts(with_lines))
    for said in ("2 Crosses it Five of Wands", "Four of Pentacles, reversed", "70%, 20 Dec"):
        assert bare(said) in words
    assert words.count("cameabout") == 2
    assert "Lookingback" in words
    without = "".join(texts(typeset(section(reading()), Sheet(), blank_lines=False)))
    assert "Lookingback" not in without


def ruled(pdf, number):
    """Distances from the top, in points, of lines across most of a page, and its height."""
    with pypdfium2.PdfDocument(pdf) as document:
        image = document[number - 1].render(scale=1).to_pil().convert("L")
    wide, high = image.size
    dark = [sum(image.getpixel((x, y)) < 235 for x in range(0, wide, 4)) for y in range(high)]
    return [y for y, count in enumerate(dark) if count > wide / 4 * 0.6], high


def test_lines_for_looking_back_take_half_a_page_at_most_and_none_where_it_is_written():
    pdf = typeset(section(replace(reading(), parts=())), Sheet())
    number = next(n for n in pages_with(texts(pdf), "Looking back"))
    rows, high = ruled(pdf, number)
    assert len(rows) >= 4
    assert rows[-1] - rows[0] <= high / 2
    pdf = typeset(section(looked_back()), Sheet())
    number = pages_with(texts(pdf), "Friday after all")[0]
    assert ruled(pdf, number)[0] == []


def test_a_card_leaf_prints_facts_sources_and_readings():
    words = "".join(texts(typeset(section(card_leaf()), Sheet())))
    for said in ("Sky Aquarius", "Bram Vesterholt", "The wrong star, followed faithfully."):
        assert bare(said) in words
    assert bare("7 times in 61 readings") in words


def test_footnotes_stand_at_the_foot_of_their_page_and_begin_again_on_each_leaf():
    again = replace(looked_back(), uid="r3", title="The second order")
    pages = texts(typeset(section(looked_back(), again), Sheet()))
    notes = pages_with(pages, "1Kiln log, page 12.")
    assert notes == [3, 4]


def test_the_preview_has_the_pages_of_the_pdf():
    pictures = pages_png(section(), Sheet("a5"), 30)
    assert len(pictures) == count(typeset(section(), Sheet("a5")))
    assert all(picture.startswith(b"\x89PNG") for picture in pictures)


def test_printing_the_same_tab_twice_gives_the_same_words_in_the_same_places():
    assert texts(typeset(section(), Sheet())) == texts(typeset(section(), Sheet()))
