"""The environment is made once, remade when it must be, and never over somebody else's."""

import contextlib
import json
import sqlite3
import subprocess
import sys
import zipfile
from hashlib import sha256
from pathlib import Path

import pytest

from binder.errors import CanMend
from ui.setup import environment
from ui.setup.environment import MARK, Environment, alone, find, is_ours

ROOT = Path(__file__).parents[3]


def wheel(folder: Path, name: str) -> Path:
    """A package of one empty module, as the binary distribution format describes (PEP 427)."""
    path = folder / f"{name}-1-py3-none-any.whl"
    about = f"{name}-1.dist-info"
    with zipfile.ZipFile(path, "w") as packed:
        packed.writestr(f"{name}.py", "")
        packed.writestr(f"{about}/METADATA", f"Metadata-Version: 2.1\nName: {name}\nVersion: 1\n")
        packed.writestr(f"{about}/WHEEL", "Wheel-Version: 1.0\nTag: py3-none-any\n")
        packed.writestr(f"{about}/RECORD", f"{name}.py,,\n{about}/RECORD,,\n")
    return path


def locked(path: Path, digest: str) -> str:
    return f"--no-index\n{path.stem.split('-')[0]} @ {path.as_uri()} --hash=sha256:{digest}\n"


@pytest.fixture
def checkout(tmp_path):
    """A checkout that needs one small package, kept in the folder itself."""
    root = tmp_path / "a checkout"
    (root / "binder").mkdir(parents=True)
    (root / "binder" / "__init__.py").touch()
    (root / "binder" / "cli.py").write_text("import sys\nprint('told', sys.argv[1:])\n")
    packed = wheel(root, "smallpart")
    (root / "requirements.lock").write_text(locked(packed, sha256(packed.read_bytes()).hexdigest()))
    return root


def imports(place: Environment, name: str) -> bool:
    return subprocess.run([place.python, "-c", f"import {name}"]).returncode == 0


def test_it_is_made_once_and_made_good_after_a_broken_run(checkout):
    lock = checkout / "requirements.lock"
    place = find(checkout)
    assert place.folder == checkout / ".venv"
    assert not place.ready(lock)

    place.prepare(lock)
    assert place.ready(lock)
    assert imports(place, "smallpart")
    made = place.python.lstat().st_mtime_ns
    place.prepare(lock)
    assert place.python.lstat().st_mtime_ns == made

    told = subprocess.run([place.command, "find", "two words"], capture_output=True, text=True)
    assert told.stdout == "told ['find', 'two words']\n"

    (place.folder / MARK).write_text("{}")
    place.python.unlink()
    assert not place.ready(lock)
    place.prepare(lock)
    assert imports(place, "smallpart")

    lock.write_text(lock.read_text().rpartition(":")[0] + ":" + "0" * 64 + "\n")
    with pytest.raises(CanMend, match="damaged or changed"):
        place.prepare(lock)
    assert not place.ready(lock)


def held(checkout: Path) -> Environment:
    """An environment that says it is ready."""
    place = find(checkout)
    place.folder.mkdir()
    place.declare(checkout / "requirements.lock")
    return place


def test_a_changed_lock_file_makes_it_unready(checkout):
    place, lock = held(checkout), checkout / "requirements.lock"
    assert place.ready(lock)
    lock.write_text("# newer\n")
    assert not place.ready(lock)


def test_a_change_of_the_other_lock_file_counts_too(checkout):
    place = held(checkout)
    (checkout / "requirements-test.lock").write_text("# newer\n")
    assert not place.ready(checkout / "requirements.lock")


def test_another_python_makes_it_unready(checkout, monkeypatch):
    place = held(checkout)
    monkeypatch.setattr(sys, "base_prefix", "/opt/another")
    assert not place.ready(checkout / "requirements.lock")


@pytest.mark.parametrize("text", ["", '{"for": ', "[]", "\udcff"])
def test_a_damaged_record_means_not_ready(checkout, text):
    place = held(checkout)
    (place.folder / MARK).write_text(text, errors="surrogateescape")
    assert not place.ready(checkout / "requirements.lock")


def test_a_folder_of_somebody_elses_is_left_alone(checkout, monkeypatch):
    (checkout / ".venv").mkdir()
    assert is_ours(checkout / ".venv")
    (checkout / ".venv" / "pyvenv.cfg").touch()
    monkeypatch.setattr(environment, "data_folder", lambda: checkout / "data")
    assert find(checkout).folder.parent == checkout / "data" / "ringbound"


def test_two_checkouts_share_no_folder_in_the_users_data(tmp_path, monkeypatch):
    monkeypatch.setattr(environment, "data_folder", lambda: tmp_path)
    assert find(tmp_path / "nowhere" / "a").folder != find(tmp_path / "nowhere" / "b").folder


def test_a_folder_that_cannot_be_made_is_one_sentence(tmp_path):
    (tmp_path / "file").touch()
    place = Environment(ROOT, tmp_path / "file" / "environment")
    with pytest.raises(CanMend, match="could not make its own folder"):
        place.prepare(ROOT / "requirements.lock")


def test_one_set_up_waits_for_another(tmp_path):
    path, left = tmp_path / "lock", tmp_path / "left"
    code = f"""
from pathlib import Path
from ui.setup.environment import alone
print("asking", flush=True)
with alone(Path({str(path)!r})):
    print(Path({str(left)!r}).exists())
"""
    with alone(path):
        other = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, cwd=ROOT)
        assert other.stdout.readline().strip() == b"asking"
        hasty = sqlite3.connect(path, timeout=0)
        with contextlib.closing(hasty), pytest.raises(sqlite3.OperationalError, match="locked"):
            hasty.execute("BEGIN EXCLUSIVE")
        left.touch()
    assert other.communicate(timeout=60)[0].strip() == b"True"


def test_what_is_held_can_be_read_by_people(checkout):
    place = held(checkout)
    record = json.loads((place.folder / MARK).read_text())
    assert record["for"].startswith(f"Python {sys.version_info.major}.")
