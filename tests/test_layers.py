"""The direction of imports is checked, and the check bites."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
LINTER = [str(Path(sys.executable).with_name("lint-imports")), "--no-logo", "--no-cache"]


def lint(folder: Path) -> str:
    """What the linter says of a house; empty if it found nothing."""
    done = subprocess.run(LINTER, cwd=folder, capture_output=True, text=True)
    assert ("0 broken." in done.stdout) == (done.returncode == 0), done.stdout + done.stderr
    return done.stdout if done.returncode else ""


@pytest.fixture
def house(tmp_path):
    """A copy of the code, to spoil."""
    for name in ("binder", "ui"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


def test_the_house_stands():
    assert lint(ROOT) == ""


@pytest.mark.parametrize(
    ("spot", "wrong"),
    [
        ("binder/cards/facts.py", "from binder.page import markdown"),
        ("binder/store/file.py", "import binder.study.leaves"),
        ("binder/paper/__init__.py", "import binder.carry"),
        ("binder/errors.py", "from binder import resources"),
        ("binder/study/leaves.py", "def later():\n    from PySide6.QtCore import QObject"),
        ("binder/cli.py", "def later():\n    import ui.app"),
        ("binder/cards/facts.py", "import sqlite3"),
        ("ui/theme.py", "from peewee import SQL"),
        ("binder/elsewhere.py", "'''A module that has no place in the order.'''"),
    ],
)
def test_a_wrong_import_is_caught(house, spot, wrong):
    with (house / spot).open("a") as code:
        code.write(f"\n{wrong}\n")
    told = lint(house)
    module = spot.removesuffix(".py").removesuffix("/__init__").replace("/", ".")
    assert module in told or module.rpartition(".")[2] in told
