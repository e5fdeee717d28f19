"""Taking photographs of a table into a binder, beside the window's thread."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage

from binder.errors import CanMend, RingboundError
from binder.store.file import Binder
from binder.study.leaves import files
from binder.study.readings import details
from binder.study.readings.readings import Photo
from ui.session.jobs import Newest, Stop
from ui.session.photos import MOST_PIXELS, as_jpeg, read_photo
from ui.session.picture import natural_size, turned

LONGEST = 2400
"""Pixels of the longer side of a kept photograph; larger ones are made smaller."""
_AS_THEY_ARE = {".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".png": "image/png"}


@dataclass(frozen=True, slots=True)
class Prepared:
    """A photograph ready to be kept, and the file it was made from where that is wanted too."""

    name: str
    media: str
    data: bytes
    original: bytes = b""
    note: str = ""
    """What there is to say about it once it is kept."""


def is_large(path: Path) -> bool:
    """Whether a picture would be made smaller; False for what is refused anyway."""
    try:
        size = natural_size(path.read_bytes()) if path.stat().st_size <= files.LARGEST else None
    except OSError:
        return False
    if size is None or not size.isValid() or size.width() * size.height() > MOST_PIXELS:
        return False
    return max(size.width(), size.height()) > LONGEST


def prepared(path: Path, *, with_original: bool = False) -> Prepared:
    """A picture file upright and no larger than LONGEST; CanMend when it is no picture."""
    data = path.read_bytes() if path.is_file() and path.stat().st_size <= files.LARGEST else b""
    size = natural_size(data) if data else None
    longer = max(size.width(), size.height()) if size is not None and size.isValid() else LONGEST
    share = min(1.0, LONGEST / longer)
    image = read_photo(path, round((size.width() if size is not None else LONGEST) * share))
    media, note = _AS_THEY_ARE.get(path.suffix.casefold()), ""
    if is_cut_short(data):
        note = f"“{path.name}” is cut short: what there is of it was kept. Copy it once more."
    if media and share == 1.0 and not turned(data):
        return Prepared(path.name, media, data, note=note)
    return Prepared(
        f"{path.stem}.jpg", "image/jpeg", as_jpeg(image), data if with_original else b"", note
    )


def is_cut_short(data: bytes) -> bool:
    """Whether a JPEG lacks its end (markers of ITU-T T.81, annex B); Qt reads what there is."""
    return data.startswith(b"\xff\xd8") and b"\xff\xd9" not in data[data.rfind(b"\xff\xda") :]


def pasted(image: QImage) -> Prepared:
    """A picture from the clipboard."""
    if image.isNull():
        raise CanMend("The picture on the clipboard could not be read; copy it again.")
    if max(image.width(), image.height()) > LONGEST:
        from PySide6.QtCore import Qt

        keep, smooth = Qt.AspectRatioMode.KeepAspectRatio, Qt.TransformationMode
        image = image.scaled(LONGEST, LONGEST, keep, smooth.SmoothTransformation)
    return Prepared("Pasted photograph.jpg", "image/jpeg", as_jpeg(image))


class PhotoImport(QObject):
    """One import at a time; what is ready is kept at once, so stopping loses nothing of it."""

    going = Signal(int, int)
    """So many are done, of so many; both 0 when there is nothing more to do."""
    said = Signal(str)
    """Why a file was not kept."""
    _ready = Signal(object, int, int)
    _refused = Signal(str, int, int)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.job = Newest(self)
        self.job.done.connect(lambda _all: self.going.emit(0, 0))
        self.job.failed.connect(self._failed)
        self._ready.connect(self._keep)
        self._refused.connect(self._refuse)
        self._into: tuple[Binder, str] | None = None

    def start(self, binder: Binder, leaf_uid: str, paths: Sequence[Path], original: bool) -> None:
        """Take files in, one after another."""
        self._into = (binder, leaf_uid)
        self.going.emit(0, len(paths))
        self.job.start(lambda stop: self._work(list(paths), original, stop))

    def stop(self) -> None:
        """Take in no more; what was kept stays."""
        self.job.cancel()
        self._into = None
        self.going.emit(0, 0)

    def _work(self, paths: list[Path], original: bool, stop: Stop) -> None:
        for number, path in enumerate(paths, 1):
            if stop():
                return
            try:
                self._ready.emit(prepared(path, with_original=original), number, len(paths))
            except RingboundError as error:
                self._refused.emit(str(error), number, len(paths))
            except OSError as error:
                sentence = f"“{path.name}” could not be read ({error.strerror})."
                self._refused.emit(sentence, number, len(paths))

    def _keep(self, ready: Prepared, number: int, of: int) -> None:
        if self._into is None:
            return
        try:
            keep(*self._into, ready)
        except RingboundError as error:
            self.said.emit(str(error))
        else:
            if ready.note:
                self.said.emit(ready.note)
        self._step(number, of)

    def _refuse(self, sentence: str, number: int, of: int) -> None:
        self.said.emit(sentence)
        self._step(number, of)

    def _step(self, number: int, of: int) -> None:
        if self._into is not None and number < of:
            self.going.emit(number, of)

    def _failed(self, sentence: str) -> None:
        self.said.emit(sentence)
        self.going.emit(0, 0)


def keep(binder: Binder, leaf_uid: str, ready: Prepared) -> None:
    """Keep a photograph and show it on a reading's leaf, in one step."""
    with binder.change("Add a photograph"):
        uid = files.keep_bytes(binder, ready.name, ready.media, ready.data)
        whole = ""
        if ready.original:
            whole = files.keep_bytes(
                binder, f"{Path(ready.name).stem}, original.jpg", "image/jpeg", ready.original
            )
        details.add_photo(binder, leaf_uid, Photo(uid, whole))
