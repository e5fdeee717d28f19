"""The installed package holds everything, and the lock files hold everything it needs."""

import ast
import re
import shutil
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest
from packaging.requirements import Requirement

ROOT = Path(__file__).parents[1]
PARTS = ("binder", "ui", "resources", "sample_binders")


def files(folder: Path) -> set[str]:
    """Every file of the four parts beneath a folder, as paths from it."""
    found = (path for part in PARTS for path in (folder / part).rglob("*") if path.is_file())
    return {
        path.relative_to(folder).as_posix() for path in found if "__pycache__" not in path.parts
    }


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """The package as pip builds it from a copy of the checkout."""
    copy = tmp_path_factory.mktemp("copy")
    for part in PARTS:
        shutil.copytree(ROOT / part, copy / part, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy(ROOT / name, copy)
    pip = [sys.executable, "-m", "pip", "wheel", "--no-deps", "--no-build-isolation", "--no-index"]
    subprocess.run([*pip, "-q", "-w", copy / "out", copy], check=True)
    (made,) = (copy / "out").iterdir()
    return made


def test_every_file_is_in_the_package(wheel):
    with zipfile.ZipFile(wheel) as packed:
        assert files(ROOT) - set(packed.namelist()) == set()


def test_nothing_else_is_in_the_package(wheel):
    with zipfile.ZipFile(wheel) as packed:
        others = {name for name in packed.namelist() if ".dist-info/" not in name}
    assert others - files(ROOT) == set()


def test_it_runs_from_where_it_is_unpacked(wheel, tmp_path):
    """-P and the folder keep the checkout out of reach."""
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(tmp_path)
        (entry,) = (name for name in packed.namelist() if name.endswith("entry_points.txt"))
        assert "ringbound = binder.cli:main" in packed.read(entry).decode()
    run = [sys.executable, "-m", "binder.cli"]
    subprocess.run([*run, "new", "shelf"], cwd=tmp_path, check=True, capture_output=True)
    told = subprocess.run([*run, "check", "shelf"], cwd=tmp_path, capture_output=True, text=True)
    assert told.returncode == 0, told.stderr
    assert "Looked at 3 files, 0 at fault." in told.stdout


def pins(lock: str) -> dict[str, str]:
    """Each package of a lock file and its version with what follows (the markers)."""
    lines = re.findall(r"^([\w.-]+)==(.*?)\s*\\?$", (ROOT / lock).read_text(), re.MULTILINE)
    return dict(lines)


def bare(requirement: str) -> str:
    """The name of a requirement, spelt as lock files spell it (PEP 503)."""
    return re.sub(r"[-_.]+", "-", re.split(r"[\s<>=;\[]", requirement)[0]).lower()


def project() -> dict:
    return tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]


def test_the_two_lock_files_agree():
    run, test = pins("requirements.lock"), pins("requirements-test.lock")
    assert run
    assert {name: test.get(name) for name in run} == run


@pytest.mark.parametrize("lock", ["requirements.lock", "requirements-test.lock"])
def test_the_lock_files_hold_what_the_project_asks_for(lock):
    asked = project()["dependencies"]
    if "test" in lock:
        asked = asked + project()["optional-dependencies"]["test"]
    for need in map(Requirement, asked):
        version = pins(lock)[bare(need.name)].partition(" ")[0]
        assert need.specifier.contains(version), f"{need} is locked at {version}"


@pytest.mark.parametrize("lock", ["requirements.lock", "requirements-test.lock"])
def test_every_pin_has_hashes_and_no_address(lock):
    text = (ROOT / lock).read_text()
    entries = re.split(r"^(?=\w)", text, flags=re.MULTILINE)[1:]
    assert len(entries) == len(pins(lock))
    assert [entry for entry in entries if "--hash=sha256:" not in entry] == []
    assert "://" not in text
    assert "-index" not in text


IMPORTED_AS = {
    "PySide6": "pyside6-essentials",
    "shiboken6": "pyside6-essentials",
    "astronomy": "astronomy-engine",
    "bs4": "beautifulsoup4",
    "playhouse": "peewee",
    "fontpkg_vollkorn": "fontpkg-vollkorn",
}
"""Packages that are imported under another name than they are installed by."""


def imported(path: Path) -> set[str]:
    """The top names of all modules that a file imports, wherever in it."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {name.name.partition(".")[0] for name in node.names}
        elif isinstance(node, ast.ImportFrom) and not node.level:
            found.add(str(node.module).partition(".")[0])
    return found


def test_everything_imported_is_named_in_the_project():
    found = {
        name
        for part in ("binder", "ui")
        for path in (ROOT / part).rglob("*.py")
        for name in imported(path)
    }
    foreign = found - sys.stdlib_module_names - {"binder", "ui"}
    named = {bare(need) for need in project()["dependencies"]}
    assert {IMPORTED_AS.get(name, name).lower() for name in foreign} - named == set()
