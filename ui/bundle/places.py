"""Where an installed program lies, for the user alone: nothing needs an administrator."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path

import platformdirs


@dataclass(frozen=True)
class Places:
    """The folders of a user that an installation touches."""

    home: Path
    data: Path
    """Where programs keep things for the user, as ~/.local/share."""
    settings: Path
    documents: Path

    @classmethod
    def of_user(cls) -> Places:
        """Those of whoever runs the program."""
        return cls(
            Path.home(),
            platformdirs.user_data_path(),
            platformdirs.user_config_path("ringbound", appauthor=False),
            platformdirs.user_documents_path(),
        )

    @property
    def program(self) -> Path:
        """The folder the program is copied to."""
        if sys.platform == "win32":
            return self.data / "Programs" / "Ringbound"
        return self.data / "ringbound" / "program"

    @property
    def record(self) -> Path:
        """The file that says what was put where."""
        return self.data / "ringbound" / "installed.json"
