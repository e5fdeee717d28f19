"""The direction of imports is checked, and the check bites."""

import re
import shutil
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
LINTER = [str(Path(sys.executable).with_name("lint-imports")), "--no-logo", "--no-cache"]
TYPING = "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    {}"
LATER = "def later():\n    {}"

WRONG = (
    ("binder/cards/facts.py", "{}", "binder.page.markup.markdown"),
    ("binder/store/schema.py", "{}", "binder.study.dates"),
    ("binder/paper/__init__.py", "{}", "binder.carry.uids"),
    ("binder/errors.py", "{}", "binder.resources"),
    ("binder/counting.py", TYPING, "binder.cards.facts"),
    ("binder/study/leaves/leaves.py", LATER, "PySide6"),
    ("binder/cli/command_line.py", LATER, "ui.app"),
    ("binder/cli/common.py", "{}", "binder.cli.shelf"),
    ("binder/cli/carry.py", TYPING, "binder.cli.reading"),
    ("binder/cards/facts.py", "{}", "sqlite3"),
    ("ui/look/theme.py", "{}", "peewee"),
    ("binder/store/change.py", TYPING, "binder.store.file"),
    ("binder/store/parts.py", LATER, "binder.store.search"),
    ("binder/study/dates.py", "{}", "binder.study.kinds"),
    ("binder/study/kinds.py", TYPING, "binder.study.leaves.tabs"),
    ("binder/study/cards/words.py", TYPING, "binder.study.readings.draws"),
    ("binder/study/recall/recall.py", LATER, "binder.study.overview.level"),
    ("binder/page/address.py", "{}", "binder.page.lines"),
    ("binder/page/layout/boxes.py", TYPING, "binder.page.markup.tags"),
    ("binder/paper/tables.py", TYPING, "binder.paper.leaves.gathering"),
    ("binder/paper/year.py", LATER, "binder.paper.blank"),
)
"""Where a wrong import is put, how, and what is imported."""

CIRCLES = (
    ("binder/page/markup/tags.py", TYPING, "binder.page.markup.blocks"),
    ("binder/carry/texts.py", TYPING, "binder.carry.building"),
    ("binder/paper/data.py", LATER, "binder.paper.leaves.gather"),
    ("binder/cards/words.py", TYPING, "binder.cards.shorthand"),
    ("binder/page/editing/spans.py", "{}", "binder.page.editing.flow"),
)

PLACELESS = ("binder/elsewhere.py", "binder/store/elsewhere.py", "binder/study/elsewhere.py",
             "binder/page/elsewhere.py", "binder/cli/elsewhere.py")  # fmt: skip


def lint(folder: Path) -> str:
    """What the linter says of a house; empty if it found nothing."""
    done = subprocess.run(LINTER, cwd=folder, capture_output=True, text=True)
    assert (" 0 broken." in done.stdout) == (done.returncode == 0), done.stdout + done.stderr
    return done.stdout if done.returncode else ""


def spoilt(folder: Path, wrong: Iterable[tuple[str, str]]) -> str:
    """What the linter says of a copy of the code with lines put at the end of some files."""
    for name in ("binder", "ui"):
        shutil.copytree(ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", folder)
    for spot, lines in wrong:
        with (folder / spot).open("a") as code:
            code.write(f"\n{lines}\n")
    return lint(folder)


def planted(wrong: Iterable[tuple[str, str, str]]) -> list[tuple[str, str]]:
    return [(spot, how.format(f"import {imported}")) for spot, how, imported in wrong]


@pytest.fixture(scope="module")
def told(tmp_path_factory):
    """What the linter says of everything wrong at once."""
    return spoilt(tmp_path_factory.mktemp("wrong"), planted(WRONG))


@pytest.fixture(scope="module")
def told_circles(tmp_path_factory):
    """What the linter says of circles; they are told apart from what goes up."""
    return spoilt(tmp_path_factory.mktemp("circles"), planted(CIRCLES))


def test_the_house_stands():
    assert lint(ROOT) == ""


@pytest.mark.parametrize(("spot", "how", "imported"), WRONG)
def test_a_wrong_import_is_caught(told, spot, how, imported):
    module = spot.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
    assert re.search(rf"{re.escape(module)} -> {re.escape(imported)}\b", told)


@pytest.mark.parametrize("spot", [spot for spot, _, _ in CIRCLES])
def test_a_circle_is_caught(told_circles, spot):
    room = spot.rpartition("/")[0].replace("/", ".")
    assert f"are allowed in {room}." in told_circles


def test_a_module_without_a_place_is_caught(tmp_path):
    told = spoilt(tmp_path, [(spot, '"""Nowhere in the order."""') for spot in PLACELESS])
    assert all(spot.removesuffix(".py").replace("/", ".") in told for spot in PLACELESS), told


def test_imports_for_types_alone_count():
    assert "exclude_type_checking_imports" not in (ROOT / "pyproject.toml").read_text()
