"""`uninstall`: takes away what `install` put, and leaves everything its user wrote."""

from __future__ import annotations

import sys
from pathlib import Path

from binder.errors import CanMend
from ui.bundle import linux, windows
from ui.bundle.places import Places
from ui.bundle.record import Record
from ui.bundle.telling import tell


def main() -> int:
    """Uninstall the program; returns an exit code."""
    return tell(lambda: uninstall(Places.of_user()))


def uninstall(places: Places) -> str:
    """Uninstall the program; what to tell the user. Raises CanMend."""
    if not removed(places):
        raise CanMend("Ringbound is not installed here, so nothing was removed.")
    told = (
        "Ringbound is uninstalled. Your binders stay where they are, in "
        f"“{places.documents / 'Ringbound'}” unless you chose another folder."
    )
    own = {"the sample shelf": places.record.parent, "your settings": places.settings}
    left = [f"{what} in “{folder}”" for what, folder in own.items() if folder.is_dir()]
    if not left:
        return told
    return f"{told} Left as well: {' and '.join(left)}; delete what you do not want any more."


def removed(places: Places) -> bool:
    """Remove what an installation put; False where there was none. Raises CanMend."""
    try:
        record = Record.read(places.record)
        if record is None:
            return False
        take_away(record, places)
    except (OSError, ValueError, KeyError) as error:
        raise CanMend(
            f"Ringbound could not be removed whole ({error}); see that you may write in "
            f"“{places.data}”, then try again."
        ) from error
    return True


def take_away(record: Record, places: Places) -> None:
    """Take away all that is noted, and what the system made of it."""
    if sys.platform == "win32":
        windows.take_away(places.program)
        if Path(sys.executable).is_relative_to(places.program):
            windows.remove_when_ended(places.program)  # no running program can be removed there
            record.files = [file for file in record.files if places.program not in file.parents]
    record.remove_files()
    if sys.platform != "win32":
        linux.forget(places.data, places.data / "mime" not in record.folders)
    record.remove_folders()
