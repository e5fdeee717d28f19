"""What the program remembers from one start to the next."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from pathlib import Path

from PySide6.QtCore import QByteArray, QSettings

from ui.session.trail import Show, Spot

MOST_SHEETS = 200


class Memory:
    """A small settings file in the user's own configuration folder."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self._settings = QSettings(str(file), QSettings.Format.IniFormat)

    @classmethod
    def of_user(cls) -> Memory:
        """The memory of whoever runs the program."""
        import platformdirs

        return cls(Path(platformdirs.user_config_dir("ringbound", appauthor=False)) / "desk.ini")

    @property
    def shelf(self) -> Path | None:
        """The shelf last open, if it is still there."""
        text = self._settings.value("shelf", "")
        path = Path(str(text)) if text else None
        return path if path and path.is_dir() else None

    @shelf.setter
    def shelf(self, path: Path) -> None:
        self._settings.setValue("shelf", str(path))

    @property
    def welcomed(self) -> bool:
        """True once the welcome leaf was answered."""
        return self._settings.value("welcomed", "no") == "yes"

    @welcomed.setter
    def welcomed(self, said: bool) -> None:
        self._settings.setValue("welcomed", "yes" if said else "no")

    @property
    def theme(self) -> str:
        """'day' or 'lamp'."""
        return str(self._settings.value("theme", "day"))

    @theme.setter
    def theme(self, name: str) -> None:
        self._settings.setValue("theme", name)

    @property
    def scale(self) -> float:
        """Scale of the text, 1 to 2."""
        try:
            scale = float(str(self._settings.value("scale", "1")))
        except ValueError:
            return 1.0
        return scale if isfinite(scale) else 1.0

    @scale.setter
    def scale(self, scale: float) -> None:
        self._settings.setValue("scale", f"{scale:g}")

    def spot(self, shelf: Path) -> Spot | None:
        """What lay open on that shelf."""
        kept = self._settings.value(f"open/{_key(shelf)}")
        words = [str(word) for word in kept] if isinstance(kept, list) else []
        if len(words) != 4 or words[0] not in set(Show):
            return None
        return Spot(Show(words[0]), *(word[1:-1] for word in words[1:]))

    def keep_spot(self, shelf: Path, spot: Spot) -> None:
        """Remember what lies open on that shelf."""
        words = [str(spot.show), *(f"-{word}-" for word in (spot.binder, spot.tab, spot.leaf))]
        self._settings.setValue(f"open/{_key(shelf)}", words)

    def sheets(self, shelf: Path) -> dict[str, int]:
        """The sheets that the handouts of that shelf were left at, by the uid of their leaf."""
        kept = self._settings.value(f"sheets/{_key(shelf)}")
        pairs = [str(one).rpartition(" ") for one in kept] if isinstance(kept, list) else []
        return {uid: int(at) for uid, _, at in pairs if uid and at.isdecimal()}

    def keep_sheets(self, shelf: Path, sheets: Mapping[str, int]) -> None:
        """Remember the last of them."""
        pairs = [f"{uid} {at}" for uid, at in sheets.items() if at][-MOST_SHEETS:]
        self._settings.setValue(f"sheets/{_key(shelf)}", ["", *pairs])

    @property
    def window(self) -> QByteArray | None:
        """Geometry of the window, for restoreGeometry."""
        kept = self._settings.value("window")
        return kept if isinstance(kept, QByteArray) else None

    @window.setter
    def window(self, geometry: QByteArray) -> None:
        self._settings.setValue("window", geometry)

    def save(self) -> None:
        """Write to disk now."""
        self._settings.sync()


def _key(shelf: Path) -> str:
    return str(shelf.resolve()).replace("/", "|").replace("\\", "|")
