"""A folder of binder files, and what is found across them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from binder.errors import CanMend
from binder.store.change import Notice, Step
from binder.store.connection import usual_name
from binder.store.file import Binder, create, open_file
from binder.store.schema import SUFFIX
from binder.store.sentences import COPIES, COPY, MISSING, OTHERWISE_NAMED


@dataclass(frozen=True, slots=True)
class Broken:
    """A file on the shelf that could not be opened, and the sentence that says why."""

    path: Path
    sentence: str


# Asked at every turn, so written out: building them would take longer than running them.
_HOME = """
SELECT tab.uid FROM leaf JOIN tab ON tab.id = leaf.tab_id
WHERE leaf.uid = ? AND leaf.aside IS NULL AND tab.aside IS NULL
"""
_CARD_LEAF = """
SELECT uid FROM leaf WHERE card = ? AND card <> '' AND kind = 'card' AND aside IS NULL
ORDER BY id LIMIT 1
"""


class Shelf:
    """An open folder of binders, in the order of their places.

    A file that cannot be opened is kept in `broken`; the rest of the shelf works on.
    """

    def __init__(self, path: Path) -> None:
        if not path.is_dir():
            raise CanMend(f"There is no shelf at “{path}”; give a folder that holds binders.")
        self.path = path
        self.binders: list[Binder] = []
        self.broken: list[Broken] = []
        self._told: list[Callable[[Notice], None]] = []
        copies: dict[str, list[Binder]] = {}
        for file in sorted(path.glob(f"*{SUFFIX}")):
            binder = self._opened(file)
            if binder is not None:
                copies.setdefault(binder.uid, []).append(binder)
        for some in copies.values():
            self._take(some)
        self._sort()

    def _opened(self, file: Path, *, to_read: bool = False) -> Binder | None:
        try:
            return open_file(file, to_read=to_read)
        except CanMend as error:
            self.broken.append(Broken(file, str(error)))
            return None

    def _take(self, copies: list[Binder]) -> None:
        """Let the one stand that was always written where it lies; where that cannot be told, one
        of them, to be read only.
        """
        if len(copies) == 1:
            self._stand(copies[0])
            return
        at_home = [binder for binder in copies if binder.is_at_home]
        meant = at_home[0] if len(at_home) == 1 else None
        for binder in copies:
            if binder is not meant:
                binder.close()
        stands = meant or self._opened(max((b.path for b in copies), key=_written), to_read=True)
        if stands is None:
            return
        self._stand(stands)
        said = COPY if meant else COPIES
        for binder in copies:
            if binder.path != stands.path:
                words = said.format(copy=binder.path.name, name=stands.path.name)
                self.broken.append(Broken(binder.path, words))

    def _stand(self, binder: Binder) -> None:
        binder.listen(self._tell)
        self.binders.append(binder)

    def _sort(self) -> None:
        self.binders.sort(key=lambda binder: (binder.place, binder.name))

    def _tell(self, notice: Notice) -> None:
        if notice.touches("info"):
            self._sort()
        for told in tuple(self._told):
            told(notice)

    def listen(self, told: Callable[[Notice], None]) -> None:
        """Call `told` after each change in any binder of the shelf."""
        self._told.append(told)

    def add(self, name: str, colour: str) -> Binder:
        """Make a new binder file at the right end of the shelf."""
        if not name.strip():
            raise CanMend("A binder needs a name for its spine.")
        place = max((binder.place for binder in self.binders), default=0.0) + 1
        binder = create(self.path / usual_name(name), name.strip(), colour, place)
        self._stand(binder)
        return binder

    def remove(self, binder: Binder) -> Path:
        """Take a binder off the shelf: its file goes into the folder 'Set aside'; nothing is lost.

        Returns where the file lies now. CanMend where it cannot be moved; it then stays in use.
        """
        away = self.path / "Set aside"
        try:
            away.mkdir(exist_ok=True)
            target = _free_name(away / binder.path.name)
            binder.close()
            binder.path.rename(target)
        except OSError as error:
            if binder.db.is_closed():
                binder.db.connect()
            raise CanMend(
                f"“{binder.name}” stays on the shelf, as its file could not be moved "
                f"({error.strerror}); see that its folder can be written."
            ) from error
        self.binders.remove(binder)
        return target

    def binder(self, name_or_uid: str) -> Binder:
        """The binder with that uid, or that name whatever its case."""
        for binder in self.binders:
            if name_or_uid in (binder.uid, binder.name):
                return binder
        for binder in self.binders:
            if binder.name.casefold() == name_or_uid.casefold():
                return binder
        names = ", ".join(binder.name for binder in self.binders) or "none yet"
        raise CanMend(f"There is no binder called “{name_or_uid}” here; there are: {names}.")

    def home_of(self, leaf_uid: str) -> Binder | None:
        """The binder in which the leaf with that uid stands; None when gone or in a drawer."""
        return next((b for b in self.binders if b.sql(_HOME, (leaf_uid,))), None)

    def each(self, query: Any) -> Iterator[tuple[Binder, Any]]:
        """Rows of a select in every binder, in the order of the shelf."""
        for binder in self.binders:
            for row in binder.all(query.clone()):
                yield binder, row

    def info(self, key: str) -> str:
        """What the info row of that key says, in whichever binder it is kept; '' for none."""
        return next(filter(None, (binder.info.get(key) for binder in self.binders)), "")

    def home_of_info(self, key: str) -> Binder | None:
        """Where an info row is to be written: where it is kept, else in the first binder; None
        where no binder can be written.
        """
        able = [binder for binder in self.binders if binder.writable]
        return next((b for b in able if b.info.get(key)), next(iter(able), None))

    @contextmanager
    def beside(self) -> Iterator[None]:
        """Use every binder on another thread: connections of its own, closed at the end."""
        with ExitStack() as stack:
            for binder in tuple(self.binders):
                stack.enter_context(binder.beside())
            yield

    def card_leaf(self, key: str) -> tuple[Binder, str] | None:
        """Binder and uid of the leaf of a card, wherever it is kept."""
        for binder in self.binders:
            found = binder.sql(_CARD_LEAF, (key,))
            if found:
                return binder, str(found[0][0])
        return None

    def changed_outside(self) -> bool:
        """True once after another window or program wrote a binder of this shelf."""
        flags = [binder.changed_outside() for binder in self.binders]
        if any(flags):
            self._sort()
        return any(flags)

    # Undo over all binders

    def last_done(self) -> tuple[Binder, Step] | None:
        """The last step made in any binder, and that binder."""
        done = [(b, b.gate.last_done) for b in self.binders]
        made = [(binder, step) for binder, step in done if step]
        return max(made, key=lambda one: one[1].number, default=None)

    def last_undone(self) -> tuple[Binder, Step] | None:
        """The step that `redo` would do again; None once another step was made in any binder."""
        undone = [(b, b.gate.last_undone) for b in self.binders]
        taken_back = [(binder, step) for binder, step in undone if step]
        first = min(taken_back, key=lambda one: one[1].number, default=None)
        done = self.last_done()
        return None if first and done and done[1].number > first[1].number else first

    def undo(self) -> tuple[Binder, str] | None:
        """Take back the last step of the shelf, with those joined to it: its binder and label."""
        return self._shift(self.last_done, "undo")

    def redo(self) -> tuple[Binder, str] | None:
        """Do the step last taken back again: its binder and label."""
        return self._shift(self.last_undone, "redo")

    def _shift(
        self, top: Callable[[], tuple[Binder, Step] | None], verb: str
    ) -> tuple[Binder, str] | None:
        first = found = top()
        while found is not None:
            binder, step = found
            getattr(binder.gate, verb)()
            found = top()
            if not step.joined or found is None or found[1].joined != step.joined:
                break
        return (first[0], first[1].label) if first else None

    def close(self) -> None:
        """Close all binders."""
        for binder in self.binders:
            binder.close()


def named_as_binder(path: Path) -> bool:
    """Whether a path is meant for a file, be it there or not, and not for a shelf."""
    return path.is_file() or (path.suffix.casefold() == SUFFIX and not path.is_dir())


def folder_of(file: Path) -> Path:
    """The shelf that a binder's file stands on, which is its folder; CanMend for other files."""
    if not file.is_file():
        raise CanMend(MISSING.format(name=file.name, folder=file.parent))
    if file.suffix != SUFFIX:
        raise CanMend(OTHERWISE_NAMED.format(name=file.name, ending=SUFFIX))
    return file.parent


def _written(path: Path) -> float:
    """When a file was written last."""
    return path.stat().st_mtime


def _free_name(path: Path) -> Path:
    number, free = 2, path
    while free.exists():
        free = path.with_stem(f"{path.stem} {number}")
        number += 1
    return free
