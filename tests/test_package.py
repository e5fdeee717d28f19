"""What leaves the workshop holds all it needs and little else; lock files hold what it needs."""

import ast
import configparser
import re
import shutil
import subprocess
import sys
import tarfile
import tomllib
import zipfile
from email.parser import Parser
from pathlib import Path

import pytest
from packaging.requirements import Requirement

ROOT = Path(__file__).parents[1]
PARTS = ("binder", "ui", "resources", "sample_binders")
BESIDE = (".ci", ".gitignore", "DEVELOPERS.md", "LICENSE", "MANIFEST.in", "README.md",
          "pyproject.toml", "requirements-bundle.lock", "requirements-test.lock",
          "requirements.lock", "tests")  # fmt: skip
"""What a checkout holds beside the four parts, all of it wanted in the source archive too."""
CACHES = ("__pycache__", ".*_cache")
README_ONLY = "resources/pictures/"
MEGABYTE = 1_000_000


def files(folder: Path, parts: tuple[str, ...] = PARTS) -> set[str]:
    """Every file of some parts of a folder, as paths from it."""
    found = (
        path
        for part in parts
        for path in ([folder / part] if (folder / part).is_file() else (folder / part).rglob("*"))
        if path.is_file()
    )
    return {
        path.relative_to(folder).as_posix() for path in found if "__pycache__" not in path.parts
    }


def build(folder: Path, kind: str) -> Path:
    """Build a folder's 'sdist' or 'wheel' as an installer does, without fetching anything."""
    out = folder.parent / kind
    out.mkdir()
    code = f"from setuptools import build_meta; build_meta.build_{kind}(r'{out}')"
    subprocess.run([sys.executable, "-c", code], cwd=folder, check=True, capture_output=True)
    (made,) = out.iterdir()
    return made


@pytest.fixture(scope="session")
def sdist(tmp_path_factory):
    """The source archive of a copy of the checkout."""
    copy = tmp_path_factory.mktemp("sources") / "copy"
    for name in (*PARTS, *BESIDE):
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns(*CACHES))
        else:
            shutil.copy(ROOT / name, copy / name)
    return build(copy, "sdist")


@pytest.fixture(scope="session")
def unpacked(sdist, tmp_path_factory):
    """The folder somebody has who unpacked the source archive."""
    folder = tmp_path_factory.mktemp("unpacked")
    with tarfile.open(sdist) as packed:
        if hasattr(tarfile, "data_filter"):  # Python 3.11.4 and later; PEP 706
            packed.extraction_filter = tarfile.data_filter
        packed.extractall(folder)
    (inner,) = folder.iterdir()
    return inner


@pytest.fixture(scope="session")
def wheel(unpacked):
    """The package as it is built from the source archive."""
    return build(unpacked, "wheel")


@pytest.fixture
def installed(wheel, tmp_path):
    """A folder that holds what an installation holds."""
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(tmp_path)
    return tmp_path


def test_every_file_is_in_the_package_but_the_pictures_of_readme(wheel):
    wanted = {name for name in files(ROOT) if not name.startswith(README_ONLY)}
    with zipfile.ZipFile(wheel) as packed:
        assert wanted - set(packed.namelist()) == set()


def test_nothing_else_is_in_the_package(wheel):
    wanted = {name for name in files(ROOT) if not name.startswith(README_ONLY)}
    with zipfile.ZipFile(wheel) as packed:
        others = {name for name in packed.namelist() if ".dist-info/" not in name}
    assert others - wanted == set()


def test_the_package_is_small(wheel):
    """With README's pictures it was more than five megabytes."""
    assert wheel.stat().st_size < 2 * MEGABYTE


def test_it_runs_from_where_it_is_unpacked(installed):
    """The folder keeps the checkout out of reach."""
    run = [sys.executable, "-m", "binder.cli"]
    subprocess.run([*run, "new", "shelf"], cwd=installed, check=True, capture_output=True)
    told = subprocess.run([*run, "check", "shelf"], cwd=installed, capture_output=True, text=True)
    assert told.returncode == 0, told.stderr
    assert "Looked at 3 files, 0 at fault." in told.stdout


def test_installed_it_knows_its_version(installed):
    run = [sys.executable, "-m", "binder.cli", "--version"]
    told = subprocess.run(run, cwd=installed, capture_output=True, text=True)
    assert told.stdout == f"ringbound {project()['version']}\n", told.stderr


def of_wheel(wheel: Path, ending: str) -> str:
    """The text of one of the files that tell about the package."""
    with zipfile.ZipFile(wheel) as packed:
        (name,) = (name for name in packed.namelist() if name.endswith(ending))
        return packed.read(name).decode()


def test_it_gives_a_command_and_a_window(wheel):
    points = configparser.ConfigParser()
    points.read_string(of_wheel(wheel, "entry_points.txt"))
    assert dict(points["console_scripts"]) == {"ringbound": "binder.cli:main"}
    assert dict(points["gui_scripts"]) == {"ringbound-window": "ui.app:main"}


def test_what_it_says_of_itself(wheel):
    told = Parser().parsestr(of_wheel(wheel, "METADATA"))
    assert told["Name"] == "ringbound"
    assert told["License-Expression"] == "MIT"
    assert told["Requires-Python"] == ">=3.11"
    kinds = {one.partition(" :: ")[0] for one in told.get_all("Classifier")}
    assert {"Environment", "Intended Audience", "Operating System", "Topic", "Typing"} <= kinds


@pytest.mark.parametrize("package", ["binder", "ui"])
def test_its_types_can_be_read_by_others(installed, package):
    assert (installed / package / "py.typed").is_file()


def test_the_source_archive_holds_the_whole_checkout(unpacked):
    wanted = (*PARTS, *BESIDE)
    assert files(ROOT, wanted) - files(unpacked, wanted) == set()


def test_the_source_archive_can_run_its_tests(unpacked):
    """One small room of them, for the rest are the same files."""
    run = [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", "tests/cards/test_facts.py"]
    told = subprocess.run(run, cwd=unpacked, capture_output=True, text=True)
    assert told.returncode == 0, told.stdout + told.stderr
    assert " passed" in told.stdout


def pins(lock: str) -> dict[str, str]:
    """Each package of a lock file and its version with what follows (the markers)."""
    lines = re.findall(r"^([\w.-]+)==(.*?)\s*\\?$", (ROOT / lock).read_text(), re.MULTILINE)
    return dict(lines)


def bare(requirement: str) -> str:
    """The name of a requirement, spelt as lock files spell it (PEP 503)."""
    return re.sub(r"[-_.]+", "-", re.split(r"[\s<>=;\[]", requirement)[0]).lower()


def project() -> dict:
    return tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]


LOCKS = ["requirements.lock", "requirements-test.lock", "requirements-bundle.lock"]


@pytest.mark.parametrize("lock", LOCKS[1:])
def test_the_lock_files_agree(lock):
    run, more = pins("requirements.lock"), pins(lock)
    assert run
    assert {name: more.get(name) for name in run} == run


@pytest.mark.parametrize("lock", LOCKS)
def test_the_lock_files_hold_what_the_project_asks_for(lock):
    asked = project()["dependencies"]
    for extra, more in project()["optional-dependencies"].items():
        if extra in lock:
            asked = asked + more
    for need in map(Requirement, asked):
        version = pins(lock)[bare(need.name)].partition(" ")[0]
        assert need.specifier.contains(version), f"{need} is locked at {version}"


@pytest.mark.parametrize("lock", LOCKS)
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
