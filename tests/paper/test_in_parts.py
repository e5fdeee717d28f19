"""A long tab is set in parts that are joined: page for page it says what one run says.

What stands on the pages is read back by pypdf and pypdfium2, which had no part in setting them.
"""

import io
import re
import shutil
from pathlib import Path

import pypdf
import pytest

from binder.carry.building import build
from binder.errors import CanMend
from binder.paper import press
from binder.paper.in_parts import typeset_parts
from binder.paper.leaves.gather import Gatherer, print_tab
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.resources import samples
from binder.store.shelf import Shelf
from binder.study.leaves import leaves, tabs
from tests.paper.reading_back import texts

SHEETS = {
    "one side": Sheet(),
    "both sides, each leaf on a front": Sheet(two_sided=True, apart=True),
    "both sides, leaves on backs too": Sheet(two_sided=True),
    "holes": Sheet("letter", "3", two_sided=True),
}


@pytest.fixture(scope="module")
def sample_folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("sample")
    build(samples(), folder).close()
    return folder


@pytest.fixture
def sample_text_shelf(sample_folder, tmp_path):
    made = Shelf(Path(shutil.copytree(sample_folder, tmp_path / "sample")))
    yield made
    made.close()


@pytest.fixture
def log(sample_text_shelf):
    binder = sample_text_shelf.binder("Practice")
    return sample_text_shelf, binder, tabs.first_of_kind(binder, "readings")


@pytest.mark.parametrize("sheet", SHEETS.values(), ids=SHEETS)
def test_page_for_page_it_says_what_one_run_says(log, sheet):
    """Contents, running heads, numbers, notes and the index of cards among them."""
    whole = texts(typeset(Gatherer(*log).section(), sheet))
    parts = typeset_parts(Gatherer(*log).sections(7), sheet)
    assert len(whole) > 60
    assert texts(parts) == whole


def test_sources_and_their_numbers_go_on_from_part_to_part(sample_text_shelf):
    binder = sample_text_shelf.binder("Practice")
    tab = tabs.tab(binder, "Methods")
    cite = "She says so [p. 12](source:lisle#p12), and he [p. 3](source:marrable#p3)."
    for number in range(5):
        leaves.add_leaf(binder, tab, f"On method {number}", cite)
    sheet = Sheet()
    whole = texts(typeset(Gatherer(sample_text_shelf, binder, tab).section(), sheet))
    parts = texts(typeset_parts(Gatherer(sample_text_shelf, binder, tab).sections(2), sheet))
    assert parts == whole
    assert any("Notes" in page for page in parts)


def test_sheets_keep_their_size_and_the_backs_their_side(log):
    """Of two-sided sheets the text of a back stands nearer the left edge than that of a front."""
    pdf = typeset_parts(Gatherer(*log).sections(7), Sheet(two_sided=True))
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    sizes = {tuple(round(float(side), 1) for side in page.mediabox[2:]) for page in pages}
    assert sizes == {(595.3, 841.9)}  # A4 is 210 by 297 mm (ISO 216)
    for number, page in enumerate(pages[4:20], 5):
        left = min(edge_of(page), default=None)
        if left is not None:
            assert (left < 60) == (number % 2 == 0), number


def edge_of(page):
    found = []

    def seen(text, _cm, matrix, _font, size):
        if text.strip() and size > 8 and 120 < matrix[5] < 700:
            found.append(matrix[4])

    page.extract_text(visitor_text=seen)
    return found


def test_how_far_it_is_is_told_and_it_can_be_stopped(log):
    heard = []
    with press.telling(heard.append):
        typeset_parts(Gatherer(*log).sections(10), Sheet())
    assert heard == sorted(heard)
    assert 0 < heard[0] < 1
    assert heard[-1] == 1
    with press.until(lambda: len(heard) > 0), pytest.raises(CanMend, match="stopped"):
        typeset_parts(Gatherer(*log).sections(10), Sheet())


def test_a_tab_longer_than_one_run_takes_is_printed_in_parts(course_shelf, tmp_path):
    """More leaves than are set at once; a broken picture among them keeps none from being set."""
    from binder.paper.in_parts import MOST
    from binder.study.leaves import files

    binder = course_shelf.binder("Practice")
    tab = tabs.tab(binder, "Clippings")
    with binder.change("Many"):
        for number in range(MOST + 3):
            leaves.add_leaf(binder, tab, f"Clipping {number}", f"What stood there: {number}.")
    broken = files.keep_bytes(binder, "torn.png", "image/png", b"\x89PNG\r\n\x1a\n torn")
    leaves.add_leaf(binder, tab, "Torn", f"![a picture](file:{broken})")
    out = tmp_path / "clippings.pdf"
    pages = print_tab(course_shelf, binder, tab, Sheet(), out)
    said = texts(out.read_bytes())
    assert len(said) == pages
    assert f"page {pages} of {pages}".replace(" ", "") in said[-1].replace(" ", "")
    assert "Torn" in said[-1]
    begins = next(n for n, page in enumerate(said, 1) if re.search(rf"stoodthere:{MOST}\.", page))
    line = next(page for page in said[:30] if f"Clipping{MOST}" in page)
    assert re.search(rf"Clipping{MOST}\D*{begins}", line)
