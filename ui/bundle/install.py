"""`install`: copies the program to where it stays, and makes it known to the system."""

from __future__ import annotations

import sys
from pathlib import Path

from binder.errors import CanMend
from binder.resources import ROOT
from ui.bundle import linux, uninstall, windows
from ui.bundle.places import Places
from ui.bundle.record import Record
from ui.bundle.telling import tell


def main() -> int:
    """Install the program from the folder that this one lies in; returns an exit code."""
    folder = Path(sys.executable).resolve().parent
    return tell(lambda: install(folder, ROOT / "icons", Places.of_user()))


def install(folder: Path, icons: Path, places: Places) -> str:
    """Install the program in a folder, in place of an older one; what to tell the user.

    Raises CanMend.
    """
    if folder == places.program.resolve():
        raise CanMend("This Ringbound is installed already; it stands in the menu of programs.")
    uninstall.removed(places)
    record = Record(places.record)
    try:
        record.copy_all(folder, places.program)
        taken = _make_known(record, icons, places)
        record.save()
    except OSError as error:
        uninstall.take_away(record, places)
        raise CanMend(
            f"Ringbound could not be installed ({error}), and nothing was left behind; see that "
            "there is room and that you may write there, then try again."
        ) from error
    told = "Ringbound is installed: it stands in the menu of programs, and binders open in it."
    others = [f"The command “{name}” was left as it is, since another has it." for name in taken]
    return "\n".join([told, *others, f"The folder “{folder}” is not needed any more."])


def _make_known(record: Record, icons: Path, places: Places) -> list[str]:
    if sys.platform == "win32":
        windows.put(places.program)
        return []
    return linux.put(record, places.program, icons, places.data, places.home)
