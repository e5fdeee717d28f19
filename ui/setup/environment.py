"""The program's own Python environment, made once and remade when its locked versions change."""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import shutil
import sqlite3
import subprocess
import sys
import sysconfig
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from binder.errors import CanMend
from ui.setup import fetching, system

MARK = "ringbound.json"
"""In the environment's folder: what has been installed in full; `{}` while that is under way."""

HOUR = 3600.0


@dataclass(frozen=True)
class Environment:
    """A virtual environment in `folder` for the checkout at `root`."""

    root: Path
    folder: Path

    @property
    def python(self) -> Path:
        """The environment's interpreter."""
        return self.script("python")

    def script(self, name: str) -> Path:
        """An installed command, such as `ruff`."""
        windows = sys.platform == "win32"
        return self.folder / ("Scripts" if windows else "bin") / (name + ".exe" * windows)

    def ready(self, lock: Path) -> bool:
        """Whether everything in `lock` was installed in full by this Python for this checkout."""
        held = self._held()
        return held.get("for") == self._made_for() and held.get(lock.name) == self._locked()

    def prepare(self, lock: Path) -> None:
        """Install `lock`, unless it is ready, and make good a broken-off run. Raises CanMend."""
        try:
            with alone(self.folder.with_name(self.folder.name + ".lock")):
                if not self.ready(lock):
                    self._install(lock)
        except KeyboardInterrupt:
            raise CanMend(
                "Stopped half way; run the same command again to set up afresh."
            ) from None
        except (OSError, sqlite3.Error, subprocess.CalledProcessError) as error:
            raise CanMend(
                f"Ringbound could not make its own folder {self.folder} ({error}); see that "
                "there is room and that you may write there, then run the same command again."
            ) from error

    def _install(self, lock: Path) -> None:
        """Nothing counts as installed until all of it is."""
        held = self._held()
        if held.get("for") != self._made_for():
            self._make()
            held = {}
        self._hold({})
        fetching.install(self.python, lock, self.folder / "setup.log")
        self._introduce()
        self.declare(lock, held)

    def declare(self, lock: Path, held: dict[str, str] | None = None) -> None:
        """Note that everything in `lock` is installed; what was `held` before stands if it is new
        enough.
        """
        now = self._locked()
        others = {name: mark for name, mark in (held or {}).items() if mark == now}
        self._hold({**others, "for": self._made_for(), lock.name: now})

    def _make(self) -> None:
        """A new, empty environment in place of whatever was left here."""
        import venv

        system.install_missing_parts_of_python()
        if self.folder.exists():
            shutil.rmtree(self.folder)
        self.folder.mkdir(parents=True)
        self._hold({})
        venv.create(self.folder, with_pip=True, symlinks=sys.platform != "win32")

    def _introduce(self) -> None:
        """Let the environment import the checkout and hold a `ringbound` command that runs it."""
        spots = {"base": str(self.folder), "platbase": str(self.folder)}
        packages = Path(sysconfig.get_path("purelib", "venv", spots))
        (packages / "ringbound.pth").write_text(f"{self.root}\n", encoding="utf-8")
        command = self.command
        if sys.platform == "win32":
            command.write_text(f'@"{self.python}" -P -m binder.cli %*\n', encoding="utf-8")
            return
        command.write_text(
            f'#!/bin/sh\nexec "{self.python}" -P -m binder.cli "$@"\n', encoding="utf-8"
        )
        command.chmod(0o755)

    @property
    def command(self) -> Path:
        """The `ringbound` command of this checkout."""
        return self.python.with_name("ringbound" + ".cmd" * (sys.platform == "win32"))

    def _made_for(self) -> str:
        """What the environment cannot outlive: this Python, and the place of the checkout."""
        return f"Python {sys.version.split()[0]} in {sys.base_prefix}, for {self.root}"

    def _locked(self) -> str:
        """SHA-256 over the checkout's lock files together, in hexadecimal."""
        locks = sorted(self.root.glob("requirements*.lock"))
        return hashlib.sha256(b"".join(lock.read_bytes() for lock in locks)).hexdigest()

    def _held(self) -> dict[str, str]:
        try:
            held = json.loads((self.folder / MARK).read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return {}
        return held if isinstance(held, dict) else {}

    def _hold(self, held: dict[str, str]) -> None:
        new = self.folder / (MARK + ".new")
        new.write_text(json.dumps(held, indent=1), encoding="utf-8")
        new.replace(self.folder / MARK)


def find(root: Path) -> Environment:
    """The environment of a checkout: its .venv, or in the user's data folder if need be."""
    here = root / ".venv"
    if os.access(root, os.W_OK) and is_ours(here):
        return Environment(root, here)
    name = "environment-" + hashlib.sha256(str(root).encode()).hexdigest()[:8]
    return Environment(root, data_folder() / "ringbound" / name)


def is_ours(folder: Path) -> bool:
    """Whether a folder may be filled and cleared: not there, empty, or one that we made."""
    return not folder.exists() or (folder / MARK).exists() or not any(folder.iterdir())


def data_folder() -> Path:
    """Where programs keep things for the user on this system."""
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support"
    return Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share")


@contextlib.contextmanager
def alone(path: Path) -> Iterator[None]:
    """Wait for any other set-up to end, and keep others waiting meanwhile.

    SQLite's lock on a file is the one that the standard library has for every system; it goes
    with the process that held it.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with contextlib.closing(sqlite3.connect(path, timeout=HOUR, isolation_level=None)) as held:
        held.execute("BEGIN EXCLUSIVE")
        yield
