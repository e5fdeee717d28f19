"""The program among those of a Linux desktop: in its menu, with its icon and its type of file.

Where everything lies is said by the specifications of freedesktop.org: Desktop Entry, Shared MIME
Info, Icon Theme, and Base Directory.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

from binder.resources import resource
from ui.bundle.record import Record

COMMANDS = ("ringbound", "ringbound-window")
FILE_ICON = "application-x-ringbound"


def put(record: Record, program: Path, icons: Path, data: Path, home: Path) -> list[str]:
    """Make the program in a folder known, under the user's data and home folder; gives back the
    commands that could not be put, since another file has their name.
    """
    entry = resource("desktop", "ringbound.desktop").read_text(encoding="utf-8")
    record.write(
        data / "applications" / "ringbound.desktop",
        pointed(entry, program / "ringbound-window"),
    )
    record.copy(resource("desktop", "ringbound.xml"), data / "mime" / "packages" / "ringbound.xml")
    theme = data / "icons" / "hicolor"
    for source in sorted(icons.glob("*.png")):
        size = f"{source.stem}x{source.stem}"
        record.copy(source, theme / size / "apps" / "ringbound.png")
        record.copy(source, theme / size / "mimetypes" / f"{FILE_ICON}.png")
    drawing = resource("desktop", "ringbound.svg")
    record.copy(drawing, theme / "scalable" / "apps" / "ringbound.svg")
    record.copy(drawing, theme / "scalable" / "mimetypes" / f"{FILE_ICON}.svg")
    record.note(data / "applications" / "mimeinfo.cache")
    links = home / ".local" / "bin"
    taken = [name for name in COMMANDS if not record.link(links / name, program / name)]
    tell_desktop(data)
    return taken


def pointed(entry: str, program: Path) -> str:
    """The desktop entry with the program's whole path in place of its name."""
    return entry.replace("Exec=ringbound-window ", f"Exec={word(str(program))} ")


def word(path: str) -> str:
    """A path as a command line of a desktop entry has it, quoted where it must be."""
    if not set(path) & set(" \t\n\"'\\><~|&;$*?#()`%"):
        return path
    quoted = "".join(f"\\{sign}" if sign in '"`$\\' else sign for sign in path)
    # Read twice: as a string of the file, where a backslash is written twice, then as a command.
    return '"' + quoted.replace("\\", "\\\\").replace("%", "%%") + '"'


def forget(data: Path, had_types: bool) -> None:
    """Have the desktop forget what is no longer there; `had_types` tells whether there was a
    folder of types before the program came.
    """
    mime = data / "mime"
    if not had_types and mime.is_dir() and not any(mime.glob("packages/*.xml")):
        shutil.rmtree(mime)  # only what update-mime-database made of the one file that was there
    tell_desktop(data)


def tell_desktop(data: Path) -> None:
    """Have the desktop read its menus, types and icons anew, by its own tools where it has them."""
    for command, folder, what in (
        ("update-mime-database", data / "mime", "packages/*.xml"),
        ("update-desktop-database", data / "applications", "*.desktop"),
    ):
        if shutil.which(command) and any(folder.glob(what)):
            subprocess.run([command, str(folder)], capture_output=True)
    theme = data / "icons" / "hicolor"
    if theme.is_dir():
        os.utime(theme)  # caches older than their folder are not believed
