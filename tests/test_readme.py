"""What README says is so: its commands work as they stand there, its pictures and places exist."""

import os
import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from binder import cli
from binder.store.shelf import Shelf
from binder.study.decks import decks
from binder.study.leaves import leaves, tabs
from binder.study.sources.sources import new_source

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
MOST_PROSE = 60
"""Lines of prose; what is longer is not read before the program is tried."""


def indented(head):
    """The lines of code under a heading of README."""
    section = README.partition(f"## {head}\n")[2].partition("\n## ")[0]
    return [line.strip() for line in section.splitlines() if line.startswith("    ")]


def commands():
    """Every command of the block, its lines joined, without the words that explain it."""
    joined = []
    for line in indented("Without a window"):
        if line.startswith("ringbound"):
            joined.append(re.split(r" {3,}", line)[0])
        else:
            joined[-1] += f" {line}"
    return joined


COMMANDS = commands()


def minimal(command):
    """The command without what may be left out."""
    return re.sub(r"\[[^\]]*\]", "", command)


def full(command):
    """The command with all that may be added, the first where there is a choice."""
    bare = re.sub(r"[\[\]]", "", command)
    return re.sub(r"\|\S+", "", bare)


@pytest.fixture
def run(capsys, tmp_path):
    """Run a command of README on a new course; exit code and what it said."""
    shelf, place = tmp_path / "shelf", tmp_path / "out"
    place.mkdir()
    (place / "one.bib").write_text("@book{a1, title={A Title}, author={Ash, May}, year={2001}}\n")
    fills = {
        "SHELF": shelf, "WORDS": "moon", "BINDER": "Practice", "SPREAD": "three-card",
        "QUESTION": "What next?", "DAY": "2026-11-22", "TAB": "Methods",
        "FILE": place / "one.bib", "FILE.pdf": place / "made.pdf", "FILE.ics": place / "made.ics",
        "FOLDER": place / "pictures", "DECK": "Worn deck",
    }  # fmt: skip

    def told(words):
        try:
            code = cli.main(words)
        except SystemExit as end:
            code = end.code
        out, err = capsys.readouterr()
        return code, out + err

    def command(line):
        goes = {"FILE": place / "new.bib"} if "--export" in line else {}
        words = [str((fills | goes).get(word, word)) for word in shlex.split(line)]
        assert words[0] == "ringbound"
        if words[1] != "new" and "SHELF" in line:
            told(["new", str(shelf), "--start", "2026-03-02"])
        if "DECK" in line:
            add_deck(shelf, fills["DECK"])
        if "TAB" in line:
            add_leaf(shelf, fills["BINDER"], fills["TAB"])
        return told(words[1:])

    return command


def add_deck(folder, name):
    """A deck of the reader's own, so that a command can name it."""
    shelf = Shelf(folder)
    decks.add_deck(shelf, shelf.binder("Practice"), name)
    shelf.close()


def add_leaf(folder, binder, tab):
    """A leaf and a source behind a tab, so that there is something to print."""
    shelf = Shelf(folder)
    home = shelf.binder(binder)
    leaves.add_leaf(home, tabs.tab(home, tab), "Counting", "Fire first.")
    new_source(shelf, "Ash May", "A Title", (home, tabs.tab(home, tab)))
    shelf.close()


HERE = [command for command in COMMANDS if not re.match(r"ringbound (open|pictures)\b", command)]


@pytest.mark.parametrize("command", HERE)
@pytest.mark.parametrize("way", [minimal, full])
def test_every_command_works_as_it_stands(run, command, way):
    code, said = run(way(command))
    assert code == 0, said


def test_the_command_for_pictures_is_understood(run):
    """It is carried out in tests/ui/test_pictures.py; here it meets a shelf that is not there."""
    (command,) = [one for one in COMMANDS if one.startswith("ringbound pictures")]
    code, said = run(command.replace("SHELF", "nowhere"))
    assert (code, said.split(";")[0]) == (2, "There is no shelf at “nowhere”")


def test_the_command_that_opens_a_window_opens_it(tmp_path):
    """In a program of its own, which is closed as soon as its window listens."""
    (command,) = [one for one in COMMANDS if one.startswith("ringbound open")]
    assert cli.main(["new", str(tmp_path / "shelf")]) == 0
    code = (
        "import sys\n"
        "from PySide6.QtCore import QTimer\n"
        "from PySide6.QtWidgets import QApplication\n"
        "from binder import cli\n"
        "app = QApplication(['ringbound'])\n"
        "closing = QTimer(interval=1)\n"
        "closing.timeout.connect(app.quit)\n"
        "closing.start()\n"
        "raise SystemExit(cli.main(sys.argv[1:]))"
    )
    words = command.replace("SHELF", str(tmp_path / "shelf")).split()[1:]
    home = {"HOME": str(tmp_path), "XDG_CONFIG_HOME": str(tmp_path), "APPDATA": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", code, *words], capture_output=True, text=True, cwd=ROOT,
        env=environment(home), timeout=120,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr


def environment(more):
    """The surroundings of a program that has no display and keeps nothing in the user's places."""
    return {**os.environ, "QT_QPA_PLATFORM": "offscreen", **more}


def test_no_command_is_missing(capsys):
    with pytest.raises(SystemExit):
        cli.main(["--help"])
    known = set(re.findall(r"^    (\w+)  ", capsys.readouterr().out, re.MULTILINE))
    assert known
    assert known == {command.split()[1] for command in COMMANDS} - {"--version"}


def test_the_two_commands_run_files_that_are_there():
    lines = indented("Two commands")
    assert lines == ["python3 ui/start.py", "python3 tests/run.py"]
    assert all((ROOT / line.split()[1]).is_file() for line in lines)


def test_the_spreads_it_names_are_those_that_come_along():
    named = re.search(r"Spreads are (.*?);", README, re.DOTALL)[1]
    kept = tomllib.loads((ROOT / "resources/spreads.toml").read_text(encoding="utf-8"))["spread"]
    assert set(re.findall(r"`([\w-]+)`", named)) == {one["key"] for one in kept}


def test_its_pictures_and_links_are_there_and_no_picture_is_left_over():
    linked = set(re.findall(r"\]\(([^)]+)\)", README))
    assert [place for place in linked if not (ROOT / place).is_file()] == []
    kept = {f"resources/pictures/{path.name}" for path in (ROOT / "resources/pictures").iterdir()}
    assert kept == {place for place in linked if place.endswith(".png")}


def test_it_is_short():
    prose = [
        line
        for line in README.splitlines()
        if line.strip() and not line.startswith(("    ", "#", "!", "|"))
    ]
    assert len(prose) <= MOST_PROSE
