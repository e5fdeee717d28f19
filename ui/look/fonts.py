"""The program's letters: Vollkorn in the weights it uses, cut once and kept in the user's cache.

The package carries variable fonts. Qt takes only their Regular and Italic and thickens the rest
by smearing, so each weight is cut to a font of its own under one family name.
Run as `python -m ui.look.fonts` it cuts what is missing; that takes some seconds, once.
"""

import os
import sys
from collections.abc import Callable
from pathlib import Path

_GENTLY = "gently"
"""Word of the command line: leave the processor to the window, which is in use meanwhile."""

FAMILY = "Vollkorn"
"""Family name of every cut, for QFont and for SVG."""

UPRIGHT, ITALIC = "Vollkorn[wght].ttf", "Vollkorn-Italic[wght].ttf"
CUTS = (
    (UPRIGHT, 400),
    (UPRIGHT, 500),
    (UPRIGHT, 600),
    (UPRIGHT, 700),
    (ITALIC, 400),
    (ITALIC, 600),
    (ITALIC, 700),
)
"""Variable font and weight of each cut."""


def sources() -> Path:
    """The folder of the variable fonts."""
    import fontpkg_vollkorn

    return Path(fontpkg_vollkorn.__file__).parent / "files"


def folder() -> Path:
    """Where the cuts are kept; letters of another version, told by size, get another folder."""
    import platformdirs

    cache = platformdirs.user_cache_path("ringbound", appauthor=False)
    sizes = "-".join(str((sources() / name).stat().st_size) for name in (UPRIGHT, ITALIC))
    return cache / f"letters-{sizes}"


def missing(where: Path | None = None) -> list[tuple[str, int]]:
    """Those of `CUTS` that are not in the folder yet."""
    where = where or folder()
    return [cut for cut in CUTS if not _path(where, cut).is_file()]


def make_cut(cut: tuple[str, int], where: Path) -> Path:
    """Cut one weight out of its variable font; takes about two seconds."""
    from fontTools.ttLib import TTFont
    from fontTools.varLib import instancer

    name, weight = cut
    where.mkdir(parents=True, exist_ok=True)
    path = _path(where, cut)
    half_done = path.with_suffix(".part")
    with TTFont(sources() / name, lazy=True) as font:
        at = {"wght": weight}
        instancer.instantiateVariableFont(font, at, inplace=True, updateFontNames=True)
        font.save(half_done)
    half_done.replace(path)
    return path


def make_missing(where: Path | None = None, *, alone: bool = False) -> int:
    """Cut all that is missing, on all processors or `alone` on one; returns how many were cut.

    Only to be called where `__main__` can be imported again, as multiprocessing asks.
    """
    import multiprocessing
    from concurrent.futures import ProcessPoolExecutor

    where = where or folder()
    wanted = missing(where)
    if alone:
        for cut in wanted:
            make_cut(cut, where)
    elif wanted:
        with ProcessPoolExecutor(mp_context=multiprocessing.get_context("spawn")) as pool:
            list(pool.map(make_cut, wanted, [where] * len(wanted)))
    return len(wanted)


def load(where: Path | None = None) -> bool:
    """Hand the letters to Qt; False when there are no cuts yet and the variable fonts must serve.

    May be called again: once the cuts are there they replace the variable fonts.
    """
    from PySide6.QtGui import QFontDatabase

    where = where or folder()
    cut = not missing(where)
    files = [_path(where, c) for c in CUTS] if cut else [sources() / UPRIGHT, sources() / ITALIC]
    wanted = [str(path) for path in files]
    if set(wanted) - _loaded.keys():
        for number in _loaded.values():
            QFontDatabase.removeApplicationFont(number)
        _loaded.clear()
        _loaded.update({path: QFontDatabase.addApplicationFont(path) for path in wanted})
    return cut


def make_beside(done: Callable[[], None], parent: object) -> None:
    """Cut what is missing in a process of its own, then call `done` in the window's thread."""
    from PySide6.QtCore import QObject, QProcess

    from binder.resources import ROOT

    process = QProcess(parent if isinstance(parent, QObject) else None)
    process.setWorkingDirectory(str(ROOT))
    process.finished.connect(lambda code, _status: done() if code == 0 else None)
    process.finished.connect(process.deleteLater)
    process.start(sys.executable, ["-m", "ui.look.fonts", _GENTLY])


def _path(where: Path, cut: tuple[str, int]) -> Path:
    name, weight = cut
    return where / f"{name.split('[')[0]}-{weight}.ttf"


_loaded: dict[str, int] = {}

if __name__ == "__main__":
    gently = _GENTLY in sys.argv
    if gently and hasattr(os, "nice"):
        os.nice(15)
    # Alone, since the processes of a pool outlive it when the window is shut and it is killed.
    made = make_missing(alone=gently)
    print(f"{made} cuts of the letters made." if made else "The letters are ready.")
