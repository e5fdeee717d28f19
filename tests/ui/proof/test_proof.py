"""The sheets of a tab before they are printed."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPageSize
from PySide6.QtPrintSupport import QPrinter

from binder.cards.spreads import spread
from binder.paper.holes import PATTERNS
from binder.paper.in_parts import MOST
from binder.paper.sheets import PAPERS, Sheet
from binder.study.leaves import leaves, tabs
from binder.study.readings import readings
from binder.study.readings.readings import Laid, NewReading
from binder.study.sources import sources
from ui.look.theme import Look
from ui.proof.printer import page_size, printer_for
from ui.proof.proof import Proof
from ui.session.session import Session


@pytest.fixture
def beginner(course_shelf):
    made = Session(course_shelf, date(2026, 11, 25))
    yield made
    made.deleteLater()


@pytest.fixture
def proof(qtbot, course_shelf, beginner):
    binder = course_shelf.binder("Practice")
    log = tabs.first_of_kind(binder, "readings")
    for day in range(1, 6):
        one = NewReading(
            f"2026-11-0{day}T19:30", f"Question {day}?", spread("one-card"), [Laid(1, "major-17")]
        )
        readings.log(binder, log, one)
    made = Proof(beginner, Look())
    qtbot.addWidget(made)
    made.resize(1380, 900)
    made.show()
    made.open(binder, log)
    qtbot.waitUntil(lambda: made.printed is not None, timeout=20_000)
    return made


def set_again(qtbot, proof, act):
    before = proof.printed
    act()
    qtbot.waitUntil(lambda: proof.printed not in (None, before), timeout=20_000)


def test_it_counts_pages_and_sheets(proof):
    pages = proof.printed.pages
    assert proof.count.text() == f"{pages} pages, on {(pages + 1) // 2} sheets"
    assert proof.model.rowCount() == pages


def test_one_side_only(qtbot, proof):
    set_again(qtbot, proof, lambda: qtbot.keyClick(proof.two_sided, Qt.Key.Key_Space))
    assert not proof.printed.sheet.two_sided
    assert proof.model.caption(2) == "Page 3"


def test_what_does_not_fit_is_said_and_nothing_can_be_printed(qtbot, proof):
    proof.holes.setCurrentIndex(proof.holes.findData("4"))
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=20_000)
    proof.paper.setCurrentIndex(proof.paper.findData("a5"))
    assert "A5" in proof.count.text()
    assert not proof.print_button.isEnabled()
    assert not proof.save_button.isEnabled()
    set_again(qtbot, proof, lambda: proof.holes.setCurrentIndex(proof.holes.findData("2")))
    assert proof.print_button.isEnabled()


def test_the_usual_holes_give_way_on_smaller_paper(qtbot, proof):
    set_again(qtbot, proof, lambda: proof.paper.setCurrentIndex(proof.paper.findData("a5")))
    assert proof.printed.sheet == Sheet("a5", "2", two_sided=True)


def test_a_log_stands_oldest_first_or_newest_first(qtbot, proof):
    oldest = proof.printed.leaves
    set_again(qtbot, proof, lambda: qtbot.keyClick(proof.newest_first, Qt.Key.Key_Space))
    assert len(oldest) == 5
    assert proof.printed.leaves == oldest[::-1]


def test_another_style_of_citing_by_key(qtbot, proof):
    set_again(qtbot, proof, lambda: qtbot.keyClick(proof.citing, Qt.Key.Key_Down))
    assert proof.printed.sheet.citing == "author-date"


def test_save_as_pdf(proof, tmp_path):
    proof.save_to(tmp_path / "log")
    assert (tmp_path / "log.pdf").read_bytes()[:5] == b"%PDF-"


def test_saving_never_takes_the_place_of_something_else(proof, tmp_path, beginner):
    said = []
    beginner.said.connect(said.append)
    binder = tmp_path / "Practice.ringbound"
    binder.write_bytes(b"SQLite format 3\0 and a life's words")
    proof.save_to(binder)
    assert binder.read_bytes().endswith(b"a life's words")
    assert (tmp_path / "Practice.ringbound.pdf").read_bytes()[:5] == b"%PDF-"
    mine = tmp_path / "mine.pdf"
    mine.write_text("not a PDF at all")
    proof.save_to(mine)
    assert mine.read_text() == "not a PDF at all"
    assert "was left alone" in said[-1]
    proof.save_to(tmp_path / "Practice.ringbound")
    assert "there already" in said[-1]


def test_saving_where_one_may_not_is_said(qtbot, proof, beginner, tmp_path):
    with qtbot.waitSignal(beginner.said) as said:
        proof.save_to(tmp_path / "nowhere" / "log.pdf")
    assert "could not be written" in said.args[0]


def test_pages_go_to_a_printer(proof, tmp_path):
    printer = QPrinter(QPrinter.PrinterMode.ScreenResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    proof.print_on(printer)
    import pypdf

    assert len(pypdf.PdfReader(tmp_path / "printed.pdf").pages) == proof.printed.pages


def test_escape_goes_back(qtbot, proof):
    with qtbot.waitSignal(proof.closed):
        qtbot.keyClick(proof, Qt.Key.Key_Escape)


def test_what_is_left_out_is_not_in_the_file(session, look, qtbot, tmp_path):
    from binder.study.leaves import tabs

    binder = session.shelf.binder("Practice")
    log = tabs.first_of_kind(binder, "readings")
    with_names, without = _words(session, look, qtbot, binder, log, tmp_path)
    assert "For T." in with_names
    assert "For T." not in without


def _words(session, look, qtbot, binder, log, tmp_path):
    """The words of the log's PDF, once with and once without those who were read for."""
    from pypdf import PdfReader

    made = Proof(session, look)
    qtbot.addWidget(made)
    for out in (False, True):
        made.no_querents.setChecked(out)
        with qtbot.waitSignal(made.job.done, timeout=60000):
            made.open(binder, log)
        made.save_to(tmp_path / f"{out}.pdf")
        pages = PdfReader(tmp_path / f"{out}.pdf").pages
        yield " ".join(" ".join(page.extract_text().split()) for page in pages)


def test_the_year_sheet_is_shown_without_what_is_for_leaves(qtbot, proof, course_shelf):
    set_again(qtbot, proof, lambda: proof.open_year(2026))
    assert proof.title.text() == "Print the year 2026"
    assert proof.count.text() == "1 page, on 1 sheet"
    for_leaves = (proof.lines, proof.citing)
    assert [part.isVisible() for part in for_leaves] == [False, False]
    binder = course_shelf.binder("Practice")
    set_again(qtbot, proof, lambda: proof.open(binder, tabs.first_of_kind(binder, "readings")))
    assert [part.isVisible() for part in for_leaves] == [True, True]


def test_every_paper_and_every_row_of_holes_can_be_chosen(proof):
    def choices(combo):
        return {combo.itemData(n): combo.itemText(n) for n in range(combo.count())}

    assert choices(proof.paper) == {"a4": "A4", "letter": "Letter", "a5": "A5"}
    assert list(choices(proof.holes).items()) == [
        ("2", "two, 80 mm apart"),
        ("3", "three, 108 mm apart"),
        ("4", "four, 80 mm apart"),
        ("none", "none"),
    ]
    assert choices(proof.paper).keys() == PAPERS.keys()
    assert choices(proof.holes).keys() == PATTERNS.keys()


STANDARD = QPageSize.PageSizeId


@pytest.mark.parametrize(
    ("paper", "known_as"),
    [("a4", STANDARD.A4), ("letter", STANDARD.Letter), ("a5", STANDARD.A5)],
)
def test_a_printer_is_set_to_the_sheet(qapp, paper, known_as):
    printer = printer_for(Sheet(paper))
    size = PAPERS[paper]
    shown = printer.pageLayout().pageSize().size(QPageSize.Unit.Millimeter)
    assert (round(shown.width()), round(shown.height())) == (round(size.width), round(size.height))
    assert page_size(Sheet(paper)).id() == known_as


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_every_paper_is_one_that_printers_know(paper):
    assert page_size(Sheet(paper.key)).id() != STANDARD.Custom


def test_the_sources_of_a_tab_are_shown_as_one_list(qtbot, proof, course_shelf):
    sources.new_source(course_shelf, "Tess Orme", "Ferry Cards")
    before = proof.printed
    proof.open_bibliography(*sources.home(course_shelf))
    qtbot.waitUntil(lambda: proof.printed not in (None, before), timeout=20_000)
    assert proof.title.text() == "Print the bibliography of Sources"
    assert proof.printed.pages == 1
    assert proof.citing.isVisible()
    assert not proof.lines.isVisible()


def test_a_long_tab_says_how_far_it_is(qtbot, course_shelf, beginner):
    """More leaves than are set at once come in parts."""
    binder = course_shelf.binder("Practice")
    tab = tabs.tab(binder, "Clippings")
    with binder.change("Many"):
        for number in range(MOST + 2):
            leaves.add_leaf(binder, tab, f"Clipping {number}")
    made = Proof(beginner, Look())
    qtbot.addWidget(made)
    made.show()
    said = []
    made.far.connect(lambda _share: said.append(made.count.text()))
    made.open(binder, tab)
    qtbot.waitUntil(lambda: made.printed is not None, timeout=60_000)
    assert said
    assert all(words.startswith("Setting the pages… ") for words in said)
    assert said[-1] == "Setting the pages… 100 of 100"
    assert made.printed.pages > MOST
    assert made.stop_button.isHidden()
