"""The typesetter, run in a process of its own that ends: it remembers all it ever set, and that
memory is given back only so. Stopping ends the process at once.

What is to be set lies in a folder with the templates; a file there tells the process what to do,
another what came of it. `python -m binder.paper.press FOLDER` is that process.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from contextvars import ContextVar
from functools import cache
from pathlib import Path
from typing import Any

from binder.errors import CanMend
from binder.resources import ROOT

SETS = "RINGBOUND_SETS_PAGES"
"""Set for the process that sets pages, so that a bundled program knows itself as that."""
TOLD, MADE, CAME = "press.json", "press-{}.made", "press-done.json"
_LOOK = 0.05
"""Seconds from one look to the next whether to go on."""
_STOPPED = "The pages were not made, as you stopped it; nothing was changed."
_ENDED = (
    "The pages could not be made: what sets them ended by itself ({why}), as when there is too "
    "little memory. Close other programs, or print fewer leaves at once."
)

Stop = Callable[[], bool]
Tell = Callable[[float], None]
"""Called with how far it is, 0 to 1."""
_stop: ContextVar[Stop] = ContextVar("stop", default=lambda: False)
_tell: ContextVar[Tell] = ContextVar("tell", default=lambda _share: None)


class NotSet(Exception):
    """What the typesetter said of pages that it could not set."""


@contextmanager
def until(stop: Stop) -> Iterator[None]:
    """What is set within ends as soon as `stop` is true, with CanMend."""
    before = _stop.set(stop)
    try:
        yield
    finally:
        _stop.reset(before)


@contextmanager
def telling(tell: Tell) -> Iterator[None]:
    """Of what is set within and takes long, `tell` hears how far it is."""
    before = _tell.set(tell)
    try:
        yield
    finally:
        _tell.reset(before)


def far(share: float) -> None:
    """Say how far it is to whoever asked by `telling`."""
    _tell.get()(share)


def run(root: Path, source: str, **how: Any) -> list[bytes]:
    """Set a template, or text of our own, in a folder: a PDF, or the pages as pictures.

    `how` is what `typst.compile` takes. NotSet where it finds fault; CanMend where it was stopped.
    """
    made = leave(root, source, **how)
    return [(root / MADE.format(number)).read_bytes() for number in range(made)]


def leave(root: Path, source: str, **how: Any) -> int:
    """The same, left in the folder as MADE with numbers from 0; gives how many there are."""
    return int(_run(root, {"source": source, "how": how})["made"])


def ask(root: Path, source: str, label: str) -> Any:
    """Set a template and give what it tells at a label, without its pages; errors as for `run`."""
    return json.loads(_run(root, {"source": source, "asked": label})["told"])


def _run(root: Path, told: dict[str, Any]) -> dict[str, Any]:
    (root / CAME).unlink(missing_ok=True)
    (root / TOLD).write_text(json.dumps(told), encoding="utf-8")
    command = [sys.executable] if _frozen() else [sys.executable, "-m", __name__]
    with subprocess.Popen(
        [*command, str(root)], env=_surroundings(), stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    ) as process:  # fmt: skip
        try:
            _wait(process)
        finally:
            process.kill()
    return _came(root, process.returncode)


def _wait(process: subprocess.Popen[bytes]) -> None:
    stop = _stop.get()
    while not stop():
        with suppress(subprocess.TimeoutExpired):
            process.wait(_LOOK)
            return
    raise CanMend(_STOPPED)


def _came(root: Path, code: int) -> dict[str, Any]:
    if not (root / CAME).exists():
        raise CanMend(_ENDED.format(why=f"signal {-code}" if code < 0 else f"code {code}"))
    said: dict[str, Any] = json.loads((root / CAME).read_text(encoding="utf-8"))
    if "fault" in said:
        raise NotSet(said["fault"])
    return said


def _frozen() -> bool:
    return bool(getattr(sys, "frozen", False))


def _surroundings() -> dict[str, str]:
    """Ours, and where the program's own modules are."""
    paths = [str(ROOT), *filter(None, [os.environ.get("PYTHONPATH")])]
    return os.environ | {SETS: "1", "PYTHONPATH": os.pathsep.join(paths)}


# In the process


def main(words: list[str] | None = None) -> int:
    """Set what the folder tells; 0, with what came of it written there."""
    root = Path((sys.argv[1:] if words is None else words)[0])
    told = json.loads((root / TOLD).read_text(encoding="utf-8"))
    came = _asked(root, told) if "asked" in told else _set(root, told["source"], told["how"])
    (root / CAME).write_text(json.dumps(came), encoding="utf-8")
    return 0


def _asked(root: Path, told: dict[str, Any]) -> dict[str, Any]:
    import typst

    try:
        said = typst.query(
            root / told["source"], told["asked"], field="value", one=True, root=str(root),
            font_paths=our_fonts(), ignore_system_fonts=True,
        )  # fmt: skip
    except RuntimeError as error:  # what a query raises is no TypstError
        return {"fault": str(error)}
    return {"told": said}


def _set(root: Path, source: str, how: dict[str, Any]) -> dict[str, Any]:
    import typst

    template = root / source
    what = template if source.endswith(".typ") and template.exists() else source.encode()
    try:
        made = typst.compile(
            what, root=str(root), font_paths=our_fonts(), ignore_system_fonts=True, **how
        )
    except typst.TypstError as error:
        return {"fault": str(error)}
    pages = made if isinstance(made, list) else [made]
    for number, page in enumerate(pages):
        (root / MADE.format(number)).write_bytes(page or b"")
    return {"made": len(pages)}


@cache
def our_fonts() -> Any:
    """Our own letters and those that come with the typesetter; none of this computer's."""
    import fontpkg_vollkorn
    import typst

    folder = Path(fontpkg_vollkorn.__file__).parent / "files"
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(folder)]
    )


if __name__ == "__main__":
    sys.exit(main())
