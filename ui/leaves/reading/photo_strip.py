"""Photographs of the table on a reading's leaf."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QMenu,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from binder.errors import RingboundError
from binder.store.file import Binder
from binder.store.whole import write_whole
from binder.study.leaves import files
from binder.study.leaves.files import FileView
from binder.study.readings import details
from binder.study.readings.readings import Photo
from ui.kit.guard import painting
from ui.kit.paint import focus_ring
from ui.look.theme import Look
from ui.session.jobs import Newest
from ui.session.picture import natural_size, scaled
from ui.session.session import Session

TALLEST = 380
"""Height of a photograph on the leaf, at scale 1."""


class PhotoView(QAbstractButton):
    """One photograph, as wide as the leaf or as tall as TALLEST; Enter or a click enlarges it."""

    menu_asked = Signal(QPoint)

    def __init__(self, look: Look, file: FileView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._file = look, file
        self._natural = natural_size(file.data)
        self._image = QPixmap()
        self._job = Newest(self)
        self._job.done.connect(self._show)
        self.setText(f"Photograph of the table, {file.name}")
        self.setToolTip(file.name)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        look.changed.connect(self._fit)

    def _size(self) -> QSize:
        """The size it is shown at in the present width."""
        room = QSize(max(self.width() - 4, 40), self._look.theme.px(TALLEST))
        if not self._natural.isValid():
            return QSize(room.width(), self._look.theme.px(24))
        if self._natural.width() <= room.width() and self._natural.height() <= room.height():
            return self._natural
        return self._natural.scaled(room, Qt.AspectRatioMode.KeepAspectRatio)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width, another size."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    def _fit(self) -> None:
        size, ratio, data = self._size(), self.devicePixelRatioF(), self._file.data
        self.setFixedHeight(size.height() + 4)
        self._job.start(lambda _stop: scaled(data, size.width(), ratio))

    def _show(self, image: QImage) -> None:
        self._image = QPixmap.fromImage(image)
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture with a thin edge; a tint while it is being read."""
        theme, painter, size = self._look.theme, QPainter(self), self._size()
        room = QRectF(2, 2, size.width(), size.height())
        if self._image.isNull():
            painter.fillRect(room, theme["faint"])
        else:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawPixmap(room, self._image, QRectF(self._image.rect()))
        painter.setPen(theme["rule"])
        painter.drawRect(room)
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            focus_ring(painter, room, theme, 2)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter enlarges, as the space bar does."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """What can be done with it."""
        self.menu_asked.emit(event.globalPos())


class PhotoStrip(QWidget):
    """All photographs of a reading under each other, and how far an import has come."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._shown: tuple[Photo, ...] = ()
        self._of: tuple[Binder, str] | None = None
        self.views: list[PhotoView] = []
        self.stop = QPushButton("Stop")
        self.bar, self.told = QProgressBar(), QLabel()
        self.bar.setTextVisible(False)
        self.bar.setFixedWidth(look.theme.px(120))
        self.going = QWidget()
        row = QHBoxLayout(self.going)
        row.setContentsMargins(0, 0, 0, 0)
        for part in (self.told, self.bar, self.stop):
            row.addWidget(part)
        row.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.theme.px(8))
        self._column.addWidget(self.going)
        self.going.hide()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_photos(self, binder: Binder, leaf_uid: str, photos: Sequence[Photo]) -> None:
        """Show the photographs of a reading."""
        self._of = (binder, leaf_uid)
        if tuple(photos) == self._shown and self.views:
            return
        for old in self.views:
            old.hide()
            old.deleteLater()
        self.views, self._shown = [], tuple(photos)
        for photo in photos:
            file = files.kept_anywhere(self._session.shelf, photo.file, binder)
            if file is not None:
                self._add(photo, file)
        self._weigh()

    def _add(self, photo: Photo, file: FileView) -> None:
        view = PhotoView(self._look, file, self)
        view.clicked.connect(lambda: self.enlarge(file))
        view.menu_asked.connect(lambda at: self._menu(photo, file, at))
        self._column.insertWidget(len(self.views), view)
        self.views.append(view)
        view.show()

    def _weigh(self) -> None:
        self.setVisible(bool(self.views) or not self.going.isHidden())

    def show_going(self, done: int, of: int) -> None:
        """How far an import has come; 0 of 0 when it is over."""
        self.going.setVisible(bool(of))
        self.told.setText(f"Keeping photograph {done + 1} of {of}…")
        self.bar.setRange(0, of)
        self.bar.setValue(done)
        self._weigh()

    # Doing

    def _menu(self, photo: Photo, file: FileView, at: QPoint) -> None:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("&Enlarge").triggered.connect(lambda: self.enlarge(file))
        menu.addAction("&Save as…").triggered.connect(lambda: self._ask_save(photo, file))
        menu.addAction("&Take it away").triggered.connect(lambda: self.take_away(photo))
        menu.popup(at)

    def take_away(self, photo: Photo) -> None:
        """Take a photograph off the leaf."""
        of = self._of
        if of is not None:
            self._try(lambda: details.remove_photo(*of, photo.file))

    def enlarge(self, file: FileView) -> None:
        """Show a photograph as large as the screen has room for."""
        screen = self.screen().availableSize() * 0.85
        natural = natural_size(file.data)
        if not natural.isValid():
            return
        room = natural.scaled(screen, Qt.AspectRatioMode.KeepAspectRatio)
        wide = min(room.width(), natural.width())
        shown = QLabel()
        shown.setPixmap(QPixmap.fromImage(scaled(file.data, wide, self.devicePixelRatioF())))
        dialog = QDialog(self.window())
        dialog.setWindowTitle(file.name)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        QVBoxLayout(dialog).addWidget(shown)
        dialog.open()

    def _ask_save(self, photo: Photo, file: FileView) -> None:
        whole = files.kept_anywhere(self._session.shelf, photo.original) if photo.original else None
        kept = whole or file
        name, _ = QFileDialog.getSaveFileName(self, "Save the photograph", kept.name)
        if name:
            self._try(lambda: write_whole(kept.data, Path(name)))

    def _try(self, verb: Callable[[], object]) -> None:
        try:
            verb()
        except RingboundError as error:
            self._session.said.emit(str(error))
