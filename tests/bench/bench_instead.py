"""What a student would keep instead: 100,000 Markdown files with ripgrep, and 20,000 readings as
the rows of a spreadsheet file read by a library. All are asked the same three questions: all
readings with a card reversed; words; a tab on paper.

A tab on paper is the readings log of a shelf of 1,000 leaves: as we print it; and the same readings
through Qt's own text document, as an editor or a spreadsheet prints them, without layouts, notes,
contents or index. Each in a process of its own: `python bench_instead.py FILE OUT` is theirs.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent.parent), str(HERE)]
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import big_shelf  # noqa: E402
from desk import application  # noqa: E402
from measuring import Row, ratios, turns  # noqa: E402
from PySide6.QtGui import QPdfWriter, QTextDocument  # noqa: E402

from binder.cards.facts import card  # noqa: E402
from binder.store.schema import Leaf, Placed, Reading  # noqa: E402
from binder.store.shelf import Shelf  # noqa: E402
from binder.study.overview.finding import find_all  # noqa: E402

CARD, WORDS = "major-16", "lantern ferry"
REPLACE: tuple[str, ...] = ()
COLUMNS = ("day", "question", "cards", "text")


def rows(folder):
    """Ours over each of the others, for each question."""
    application()
    shelf = Shelf(folder)
    files, sheet = as_markdown(shelf, folder), as_sheet(shelf, folder)
    asked = {
        "readings with a card reversed": (
            lambda: reversed_in(shelf), lambda: files_with(files, [f"^{title()}, reversed$"]),
            lambda: [row for row in cells(sheet) if f"{title()}, reversed" in row[2]],
        ),
        "words": (
            lambda: find_all(shelf, WORDS),
            lambda: files_with(files, [rf"\b{word}" for word in WORDS.split()]),
            lambda: [row for row in cells(sheet) if all(w in " ".join(row) for w in WORDS.split())],
        ),
    }  # fmt: skip
    try:
        for question, (ours, by_files, by_sheet) in asked.items():
            works = {"ours": ours}
            if shutil.which("rg"):
                works["ripgrep over 100,000 Markdown files"] = by_files
            if sheet:
                works["a library reading a spreadsheet of the readings"] = by_sheet
            taken = turns(works)
            mine = taken.pop("ours")
            for other, theirs in taken.items():
                yield Row(f"{question} / {other}", ratios(mine, theirs), 1)
    finally:
        shelf.close()
    with tempfile.TemporaryDirectory() as place:
        yield from on_paper(Path(place))


def on_paper(place: Path):
    """A readings log of a small shelf as a PDF, by turns."""
    folder = big_shelf.make(place / "shelf", 1_000, 200)
    shelf = Shelf(folder)
    files, sheet = as_markdown(shelf, folder), as_sheet(shelf, folder)
    shelf.close()
    ours = [sys.executable, "-m", "binder.cli", "print", str(folder), "--binder", "Practice"]
    ours += ["--tab", "Readings log", "--out", str(place / "ours.pdf")]
    theirs = [sys.executable, __file__]
    f_pdf = f"{place}/f.pdf"
    works = {
        "ours": lambda: run(*ours, *REPLACE),
        "Markdown files through a text document": lambda: run(*theirs, str(files), f_pdf),
    }
    if sheet:
        name = "spreadsheet rows through a text document"
        works[name] = lambda: run(*theirs, str(sheet), f"{place}/s.pdf")
    taken = turns(works)
    mine = taken.pop("ours")
    for other, seconds in taken.items():
        yield Row(f"a tab of 66 readings on paper / {other}", ratios(mine, seconds))


def run(*command: str) -> None:
    """A whole process, quietly."""
    subprocess.run(command, capture_output=True, check=True, cwd=HERE.parent.parent)


def plainly(source: Path, out: Path) -> None:
    """Every third reading of a folder or a sheet, as one binder of three holds them, as a PDF."""
    application()
    if source.is_dir():
        said = [path.read_text() for path in sorted(source.glob("*.md"))[::3]]
    else:
        said = ["\n\n".join(row) for row in cells(source)][::3]
    document = QTextDocument()
    document.setMarkdown("\n\n".join(said))
    document.print_(QPdfWriter(str(out)))


def title() -> str:
    """The card asked for."""
    return card(CARD).title


def reversed_in(shelf):
    """As a person asks it in the find field."""
    return find_all(shelf, f"{title().lower()} reversed")


def readings(shelf):
    """Day, question, cards and text of each reading."""
    for binder in shelf.binders:
        cards: dict[int, list[str]] = {}
        for placed in binder.all(Placed.select(Placed.leaf, Placed.title, Placed.reversed)):
            turned = ", reversed" if placed.reversed else ""
            cards.setdefault(placed.leaf_id, []).append(f"{placed.title}{turned}")
        query = Leaf.select(Leaf.id, Leaf.day, Leaf.title, Leaf.text).join(Reading)
        for row in binder.all(query):
            yield row.day, row.title, "\n".join(cards.get(row.id, [])), row.text


def as_markdown(shelf, folder: Path) -> Path:
    """Every leaf as a file, its cards a line each."""
    out = folder.with_name(f"{folder.name}-markdown")
    if out.exists() and out.stat().st_mtime > (folder / "whole").stat().st_mtime:
        return out
    shutil.rmtree(out, ignore_errors=True)
    for binder in shelf.binders:
        home = out / binder.name
        home.mkdir(parents=True)
        for row in binder.all(
            Leaf.select(Leaf.id, Leaf.title, Leaf.text).where(Leaf.kind != "reading")
        ):
            (home / f"{row.id}.md").write_text(f"# {row.title}\n\n{row.text}\n")
    for number, (day, question, cards, text) in enumerate(readings(shelf)):
        (out / f"{number}.md").write_text(f"# {question}\n\n{day}\n\n{cards}\n\n{text}\n")
    os.utime(out)
    return out


def as_sheet(shelf, folder: Path) -> Path | None:
    """The readings as a spreadsheet file; None where no library for it is installed."""
    try:
        import openpyxl
    except ImportError:
        return None
    path = folder.with_name(f"{folder.name}-readings.xlsx")
    if path.exists() and path.stat().st_mtime > (folder / "whole").stat().st_mtime:
        return path
    book = openpyxl.Workbook(write_only=True)
    sheet = book.create_sheet("Readings")
    sheet.append(COLUMNS)
    for row in readings(shelf):
        sheet.append(row)
    book.save(path)
    return path


def cells(path: Path):
    """The rows of the spreadsheet, as text."""
    import openpyxl

    book = openpyxl.load_workbook(path, read_only=True)
    try:
        for row in book.worksheets[0].iter_rows(min_row=2, values_only=True):
            yield [str(cell or "") for cell in row]
    finally:
        book.close()


def files_with(files: Path, patterns: list[str]) -> list[str]:
    """Files in which every pattern stands: one search in what the last one found."""
    found = [str(files)]
    for pattern in patterns:
        command = ["rg", "--files-with-matches", "--ignore-case", pattern, *found]
        found = subprocess.run(command, capture_output=True, text=True, check=False).stdout.split()
        if not found:
            break
    return found


if __name__ == "__main__":
    plainly(Path(sys.argv[1]), Path(sys.argv[2]))
