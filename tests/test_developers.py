"""What DEVELOPERS.md says is so: every room is on its map, and what it names is there."""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
TOPS = ("binder/", "ui/", "tests/", "resources/", "sample_binders/")


def section(head):
    return TEXT.partition(f"## {head}\n")[2].partition("\n## ")[0]


def rows(text):
    """The cells of every row of the tables in a text."""
    return [line.strip("| ").split(" | ") for line in text.splitlines() if line.startswith("| `")]


def is_there(place):
    return (ROOT / place).exists() or (ROOT / f"{place}.py").is_file()


ON_MAP = {place for row in rows(section("The map")) for place in re.findall(r"`([^`]+)`", row[0])}


def test_every_room_is_on_the_map():
    found = {
        path.parent.relative_to(ROOT).as_posix()
        for house in ("binder", "ui")
        for path in (ROOT / house).rglob("__init__.py")
    }
    assert found - {"binder", "ui"} - ON_MAP == set()


def test_every_file_on_the_ground_of_a_house_is_on_the_map():
    found = {
        f"{house}/{path.stem}"
        for house in ("binder", "ui")
        for path in (ROOT / house).glob("*.py")
        if path.stem != "__init__"
    }
    assert found - ON_MAP == set()


def test_no_file_has_the_name_of_a_room():
    """Python would read only one of the two."""
    found = [
        path
        for house in ("binder", "ui")
        for path in (ROOT / house).rglob("*.py")
        if path.with_suffix("").is_dir()
    ]
    assert found == []


def test_nothing_else_is_on_the_map():
    assert {place for place in ON_MAP if not is_there(place)} == set()


@pytest.mark.parametrize("row", rows(section("The map")), ids=lambda row: row[0])
def test_the_files_a_row_begins_with_are_in_that_room(row):
    """A name in small letters in the second cell is a file or room there."""
    room = ROOT / re.search(r"`([^`]+)`", row[0])[1]
    named = re.findall(r"`([a-z_]+)`", row[1])
    assert [name for name in named if room.is_dir() and not is_there(room / name)] == []


def test_every_path_is_there():
    named = {word for word in re.findall(r"`([^`\s]+)`", TEXT) if word.startswith(TOPS)}
    named |= set(re.findall(r"python3? (tests/\S+?\.py)", TEXT))
    assert named
    assert {place for place in named if not is_there(place) and "NNNN" not in place} == set()


CHANGES = [
    line.strip("| ").split(" | ")
    for line in section("Where to change what").splitlines()
    if line.startswith("| ") and not line.startswith(("| you want", "| ---"))
]


@pytest.mark.parametrize("row", CHANGES, ids=lambda row: row[0])
def test_what_is_to_be_changed_stands_where_it_says(row):
    named = re.findall(r"`([^`\s]+)`", row[1])
    places = [word for word in named if word.startswith(TOPS)]
    assert places
    code = "\n".join(
        (ROOT / place).read_text(encoding="utf-8") for place in places if (ROOT / place).is_file()
    )
    missing = [
        word
        for word in named
        if word not in places and not re.search(rf"{re.escape(word)}(?!\w)", code)
    ]
    assert missing == []


def printed(*words):
    run = [sys.executable, str(ROOT / "tests" / "map.py"), *words]
    done = subprocess.run(run, capture_output=True, text=True, encoding="utf-8")
    return done.returncode, done.stdout


def test_the_printed_map_has_a_sentence_for_every_file():
    code, out = printed()
    assert code == 0
    assert [line for line in out.splitlines() if not re.fullmatch(r"\S+ +\S.*[.?!:].*", line)] == []
    count = sum(1 for house in ("binder", "ui") for _ in (ROOT / house).rglob("*.py"))
    assert len(out.splitlines()) == count


def test_the_printed_map_finds_by_words():
    code, out = printed("moon", "sky")
    assert code == 0
    assert [line.split()[0] for line in out.splitlines()] == ["binder/reckon/sky.py"]
    assert printed("no-such-thing") == (1, "")


def test_the_version_stands_in_one_place():
    version = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["version"]
    named = [
        path.relative_to(ROOT).as_posix()
        for house in ("binder", "ui")
        for path in (ROOT / house).rglob("*.py")
        if f'"{version}"' in path.read_text(encoding="utf-8")
    ]
    assert named == []
