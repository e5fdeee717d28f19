"""Looking over which photograph shows which card, before they are kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path

from PySide6.QtCore import (
    QAbstractItemModel,
    QAbstractTableModel,
    QModelIndex,
    QObject,
    Qt,
    Signal,
)
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QProgressBar,
    QPushButton,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from binder.cards.titles import DeckTitles
from binder.errors import CanMend, RingboundError
from binder.store.file import Binder
from binder.store.shelf import Shelf
from binder.study.decks.deck_faces import set_faces
from binder.study.decks.decks import DeckView
from binder.study.decks.photo_names import Match, matched, still_bare
from binder.study.leaves import files
from ui.kit.forms.hints import Hint
from ui.kit.forms.room import open_at
from ui.kit.lists.tall_list import AnyIndex
from ui.look.theme import Look
from ui.session.jobs import Newest
from ui.session.photos import card_photo, folder_pictures, read_photo

HEADS = ("Photograph", "Shows", "")
FILE, CARD, NOTE = range(3)
THUMB = 56
"""Height of a small picture at scale 1."""
NO_CARD = "no card"
_ROLE = Qt.ItemDataRole


class MatchModel(QAbstractTableModel):
    """A row a file: its picture and name, the card it shows, what to look at."""

    def __init__(
        self, look: Look, matches: Sequence[Match], titles: DeckTitles, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._look, self.titles = look, titles
        self.matches = list(matches)
        self._thumbs: dict[str, QPixmap] = {}

    def chosen(self) -> dict[str, str]:
        """File -> key of its card, for those that have one."""
        return {match.file: match.key for match in self.matches if match.key}

    def set_thumb(self, file: str, image: QImage) -> None:
        """Show the small picture of a file."""
        tall = self._look.theme.px(THUMB)
        smooth = Qt.TransformationMode.SmoothTransformation
        self._thumbs[file] = QPixmap.fromImage(image.scaledToHeight(tall, smooth))
        row = next(n for n, match in enumerate(self.matches) if match.file == file)
        self.dataChanged.emit(self.index(row, FILE), self.index(row, FILE))

    def fail(self, file: str, sentence: str) -> None:
        """A file that cannot be shown shows no card."""
        row = next(n for n, match in enumerate(self.matches) if match.file == file)
        self.matches[row] = Match(file, "", sentence)
        self.dataChanged.emit(self.index(row, FILE), self.index(row, NOTE))

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many files."""
        return 0 if parent.isValid() else len(self.matches)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """File, card, note."""
        return 0 if parent.isValid() else len(HEADS)

    def headerData(
        self, section: int, way: Qt.Orientation, role: int = _ROLE.DisplayRole
    ) -> object:
        """Names of the columns."""
        shown = way is Qt.Orientation.Horizontal and role == _ROLE.DisplayRole
        return HEADS[section] if shown else None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """The card can be chosen."""
        plain = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        return plain | Qt.ItemFlag.ItemIsEditable if index.column() == CARD else plain

    def data(self, index: AnyIndex, role: int = _ROLE.DisplayRole) -> object:
        """What a cell shows."""
        match, theme = self.matches[index.row()], self._look.theme
        title = self.titles.title(match.key) if match.key else NO_CARD
        words = (match.file, title, match.note)[index.column()]
        shown: dict[int, object] = {_ROLE.DisplayRole: words, _ROLE.ToolTipRole: words}
        if index.column() == FILE:
            shown[_ROLE.DecorationRole] = self._thumbs.get(match.file)
        elif index.column() == CARD:
            shown[_ROLE.EditRole] = match.key
            shown[_ROLE.ForegroundRole] = theme[
                "own" if match.sure else "ink" if match.key else "red"
            ]
        else:
            shown[_ROLE.ForegroundRole] = theme["inksoft"]
        return shown.get(role)

    def setData(self, index: AnyIndex, key: object, role: int = _ROLE.EditRole) -> bool:
        """Choose a card for a file; another file that had it has none then."""
        if role != _ROLE.EditRole or index.column() != CARD:
            return False
        for row, match in enumerate(self.matches):
            if key and match.key == key and row != index.row():
                self.matches[row] = replace(match, key="", note="its card was given to another")
        self.matches[index.row()] = replace(self.matches[index.row()], key=str(key), note="")
        self.dataChanged.emit(self.index(0, FILE), self.index(len(self.matches) - 1, NOTE))
        return True


class CardDelegate(QStyledItemDelegate):
    """The card of a file, from a list of all cards of the deck."""

    def createEditor(
        self, parent: QWidget, option: QStyleOptionViewItem, index: AnyIndex
    ) -> QWidget:
        """A list that opens at once."""
        model = index.model()
        assert isinstance(model, MatchModel)
        titles, box = model.titles, QComboBox(parent)
        box.addItem(NO_CARD, "")
        for key in titles.keys:
            box.addItem(titles.title(key), key)
        box.activated.connect(partial(self._choose, box))
        return box

    def _choose(self, box: QComboBox, *_row: int) -> None:
        self.commitData.emit(box)
        self.closeEditor.emit(box)

    def setEditorData(self, editor: QWidget, index: AnyIndex) -> None:
        """The card it has now."""
        assert isinstance(editor, QComboBox)
        editor.setCurrentIndex(max(editor.findData(index.data(_ROLE.EditRole)), 0))

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: AnyIndex) -> None:
        """The card chosen."""
        assert isinstance(editor, QComboBox)
        model.setData(index, editor.currentData())


class _Told(QObject):
    """What a job tells while it runs, from its own thread."""

    thumb = Signal(str, QImage)
    failed = Signal(str, str)
    step = Signal(int)


class PhotoReview(QDialog):
    """A row for each photograph of a folder; those agreed on are read and kept in one step."""

    def __init__(
        self, shelf: Shelf, binder: Binder, deck: DeckView, look: Look, folder: Path,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self._shelf, self._binder, self._deck, self._folder = shelf, binder, deck, folder
        names = folder_pictures(folder)
        if not names:
            raise CanMend(f"There are no pictures in “{folder.name}”; choose another folder.")
        self.setWindowTitle(f"Photographs for “{deck.name}”")
        self.model = MatchModel(look, matched(names, deck.titles), deck.titles, self)
        self._thumbs, self._reading = Newest(self), Newest(self)
        self._told = _Told(self)
        self._make(look)
        self._connect()
        self._count()
        open_at(self, look, 760, 620)
        side = look.theme.px(THUMB)
        self._thumbs.start(lambda stop: self._show_thumbs(names, side, stop))

    def _make(self, look: Look) -> None:
        px = look.theme.px
        self.table = QTableView()
        self.table.setModel(self.model)
        self.table.setAccessibleName("Photographs and the cards they show")
        self.table.setItemDelegateForColumn(CARD, CardDelegate(self.table))
        self.table.setEditTriggers(QTableView.EditTrigger.AllEditTriggers)
        self.table.setWordWrap(True)
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(px(THUMB) + px(6))
        head = self.table.horizontalHeader()
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        head.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        self.count, self.wrong = QLabel(), Hint(look)
        self.count.setWordWrap(True)
        self.progress = QProgressBar()
        self.progress.setTextVisible(False)
        self.progress.hide()
        self.keep, self.leave = QPushButton("Keep these pictures"), QPushButton("Leave it")
        self.keep.setDefault(True)
        self.leave.setAutoDefault(False)
        foot = QHBoxLayout()
        foot.addWidget(self.progress, 1)
        foot.addStretch(1)
        foot.addWidget(self.leave)
        foot.addWidget(self.keep)
        column = QVBoxLayout(self)
        column.setContentsMargins(*[px(16)] * 4)
        column.setSpacing(px(10))
        for widget in (self.table, self.count, self.wrong):
            column.addWidget(widget)
        column.addLayout(foot)

    def _connect(self) -> None:
        self.model.dataChanged.connect(lambda *_cells: self._count())
        self.keep.clicked.connect(self._begin)
        self.leave.clicked.connect(self.reject)
        self._told.thumb.connect(self.model.set_thumb)
        self._told.failed.connect(self.model.fail)
        self._told.step.connect(self.progress.setValue)
        self._reading.done.connect(self._keep)
        self._reading.failed.connect(self._fail)

    def _count(self) -> None:
        chosen = self.model.chosen()
        bare = still_bare(chosen, self._deck.titles)
        some = ", ".join(bare[:4]) + (f" and {len(bare) - 4} more" if len(bare) > 4 else "")
        without = f" Without one: {some}." if bare else ""
        of = len(self._deck.titles.keys)
        self.count.setText(f"{len(chosen)} of {of} cards have a photograph here.{without}")
        self.keep.setEnabled(bool(chosen))

    # Beside the window's thread

    def _show_thumbs(self, names: Sequence[str], side: int, stop: Callable[[], bool]) -> None:
        for name in names:
            if stop():
                return
            try:
                image = read_photo(self._folder / name, side)
            except CanMend as error:
                self._told.failed.emit(name, str(error))
            else:
                self._told.thumb.emit(name, image)

    def _begin(self) -> None:
        chosen = self.model.chosen()
        self.keep.setEnabled(False)
        self.table.setEnabled(False)
        self.leave.setText("Stop")
        self.progress.setRange(0, len(chosen))
        self.progress.setValue(0)
        self.progress.show()
        self._reading.start(lambda stop: self._read(chosen, stop))

    def _read(self, chosen: dict[str, str], stop: Callable[[], bool]) -> dict[str, bytes]:
        """Key of a card -> its picture as JPEG."""
        found: dict[str, bytes] = {}
        for number, (file, key) in enumerate(chosen.items(), 1):
            if stop():
                break
            found[key] = card_photo(self._folder / file)
            self._told.step.emit(number)
        return found

    def _keep(self, pictures: dict[str, bytes]) -> None:
        titles = self._deck.titles
        try:
            with self._binder.change("Put pictures on cards"):
                kept = {
                    key: files.keep_bytes(
                        self._binder, f"{titles.title(key)}.jpg", "image/jpeg", data
                    )
                    for key, data in pictures.items()
                }
                set_faces(self._shelf, self._binder, self._deck.uid, kept)
        except RingboundError as error:
            self._fail(str(error))
            return
        self.accept()

    def _fail(self, sentence: str) -> None:
        self.wrong.say(sentence, wrong=True)
        self._stop_reading()

    def _stop_reading(self) -> None:
        self._reading.cancel()
        self.progress.hide()
        self.table.setEnabled(True)
        self.leave.setText("Leave it")
        self._count()

    def reject(self) -> None:
        """Stop what is being read; nothing is kept. Again, leave it."""
        if not self.progress.isHidden():
            self._stop_reading()
            return
        super().reject()

    def done(self, result: int) -> None:
        """Nothing goes on reading behind a closed window."""
        self._thumbs.cancel()
        self._thumbs.wait()
        self._reading.cancel()
        self._reading.wait()
        super().done(result)
