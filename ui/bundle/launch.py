"""Where the bundled program begins; what it does is told by the name it is called by."""

from __future__ import annotations

import io
import os
import re
import sys
from importlib import import_module
from pathlib import Path

from binder.paper.press import SETS
from binder.resources import ROOT
from ui.setup import system

BEGUN_BY = {
    "ringbound": "binder.cli",
    "ringbound-window": "ui.app",
    "install": "ui.bundle.install",
    "uninstall": "ui.bundle.uninstall",
}
SETTER = "binder.paper.press"
"""The process that sets pages is the program again."""
NOT_NEEDED = ("libwayland-client.so.0", "libwayland-cursor.so.0")
"""Where these are lacking nobody has a desktop that draws with them."""


def main() -> int:
    """Begin what this program's name stands for; returns its exit code."""
    if sys.stdout is None or sys.stderr is None:  # a window of Windows has neither
        sys.stdout = sys.stderr = io.StringIO()
    begun = SETTER if SETS in os.environ else BEGUN_BY[Path(sys.executable).stem]
    try:
        return int(import_module(begun).main())
    except ImportError as error:
        sentence = lacking(str(error), ROOT / "PySide6" / "Qt")
        if not sentence:
            raise
        sys.stderr.write(f"{sentence}\n")
        return 2


def lacking(report: str, folder: Path) -> str:
    """What to do where the loader reported that the system lacks a library; '' where it did not.

    All that is lacking is named at once, as far as what lies in Qt's `folder` can tell.
    """
    found = re.match(r"(\S+\.so\S*): cannot open shared object file", report)
    if found is None:
        return ""
    lost = sorted({found[1], *system.missing_for([folder])} - set(NOT_NEEDED))
    packages = " ".join(sorted({system.package(name) for name in lost}))
    return (
        f"Ringbound's window needs {', '.join(lost)}, which this system lacks; install them, on "
        f"Debian and its relatives with `sudo apt-get install {packages}`."
    )


if __name__ == "__main__":
    sys.exit(main())
