"""What an installation put on a machine, written down so that just that is removed again."""

from __future__ import annotations

import json
import shutil
from pathlib import Path


class Record:
    """Puts files and folders in their places and notes those that were not there before."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self.files: list[Path] = []
        self.folders: list[Path] = []

    @classmethod
    def read(cls, file: Path) -> Record | None:
        """What was noted at an earlier installation; None where there was none."""
        if not file.is_file():
            return None
        held = json.loads(file.read_text(encoding="utf-8"))
        record = cls(file)
        record.files = [Path(path) for path in held["files"]]
        record.folders = [Path(path) for path in held["folders"]]
        return record

    def save(self) -> None:
        """Write it down."""
        self.folder(self.file.parent)
        held = {
            "files": [str(path) for path in self.files],
            "folders": [str(path) for path in self.folders],
        }
        self.file.write_text(json.dumps(held, indent=1), encoding="utf-8")

    def folder(self, path: Path) -> None:
        """Have a folder, and those above it."""
        for one in [*reversed(path.parents), path]:
            if not one.is_dir():
                one.mkdir()
                self.folders.append(one)

    def note(self, path: Path) -> None:
        """Note a file that is about to be made in a folder that is there."""
        if path not in self.files and not path.exists():
            self.files.append(path)

    def write(self, path: Path, text: str) -> None:
        """Put a file with some text."""
        self.folder(path.parent)
        self.note(path)
        path.write_text(text, encoding="utf-8")

    def copy(self, source: Path, path: Path) -> None:
        """Put a copy of a file, or of a link."""
        self.folder(path.parent)
        self.note(path)
        shutil.copy2(source, path, follow_symlinks=False)

    def copy_all(self, source: Path, path: Path) -> None:
        """Put a copy of a folder with all it holds."""
        self.folder(path)
        for one in sorted(source.rglob("*")):
            place = path / one.relative_to(source)
            if one.is_dir() and not one.is_symlink():
                self.folder(place)
            else:
                self.copy(one, place)

    def link(self, path: Path, target: Path) -> bool:
        """Put a link, unless something else has that name; whether it was put."""
        self.folder(path.parent)
        if path.exists() or path.is_symlink():
            return False
        self.note(path)
        path.symlink_to(target)
        return True

    def remove_files(self) -> None:
        """Take away every file that was put."""
        for path in self.files:
            path.unlink(missing_ok=True)

    def remove_folders(self) -> None:
        """Take away the note itself, and each folder made that is empty now."""
        self.file.unlink(missing_ok=True)
        for path in reversed(self.folders):
            if path.is_dir() and not any(path.iterdir()):
                path.rmdir()
