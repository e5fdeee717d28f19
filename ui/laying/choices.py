"""The slip under the shorthand line: what a word may mean, one row a card."""

from __future__ import annotations

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPoint,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QFontMetrics, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QFrame,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from ui.kit.guard import painting, painting_row
from ui.kit.paint import shadow
from ui.laying.offers import Offer, OfferRow
from ui.look.theme import Look

AnyIndex = QModelIndex | QPersistentModelIndex
_ROLE = Qt.ItemDataRole
PAD, ROW, SOFT = 14, 30, 8
"""Padding, height of a row, and room for the shadow, in pixels at scale 1."""
WIDEST = 400


class OfferModel(QAbstractListModel):
    """The rows of an offer."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.rows: tuple[OfferRow, ...] = ()

    def take(self, rows: tuple[OfferRow, ...]) -> None:
        """Show other rows."""
        self.beginResetModel()
        self.rows = rows
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:  # noqa: B008
        """How many rows."""
        return 0 if parent.isValid() else len(self.rows)

    def data(self, index: AnyIndex, role: int = _ROLE.DisplayRole) -> object:
        """The row, and its words for those who hear the screen."""
        row = self.rows[index.row()]
        if role == _ROLE.UserRole:
            return row
        spoken = f"{row.title}, {row.text}"
        return spoken if role in (_ROLE.DisplayRole, _ROLE.AccessibleTextRole) else None


class OfferDelegate(QStyledItemDelegate):
    """Draws a row: the card's title, its shorthand, and the key that takes it."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self.digits = False

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """One line."""
        return QSize(200, self._look.theme.px(ROW))

    @painting_row
    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """The chosen row is shaded and its title stronger."""
        theme = self._look.theme
        row: OfferRow = index.data(_ROLE.UserRole)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        if chosen:
            painter.fillRect(option.rect, theme["band"])
        area = option.rect.adjusted(theme.px(PAD), 0, -theme.px(PAD), 0)
        key = "Tab" if chosen else str(index.row() + 1) if self.digits else ""
        right = self._key(painter, area, key) if key else area.right()
        x = area.left()
        stretches = (
            (row.title, theme.font("list", 600 if chosen else 400), "ink"),
            (row.text, theme.font("list"), "own"),
        )
        for words, font, colour in stretches:
            if words and x < right:
                painter.setFont(font)
                painter.setPen(theme[colour])
                shown = QFontMetrics(font).elidedText(words, Qt.TextElideMode.ElideRight, right - x)
                room = QRect(x, area.top(), right - x, area.height())
                painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, shown)
                x += QFontMetrics(font).horizontalAdvance(shown) + theme.px(10)
        painter.restore()

    def _key(self, painter: QPainter, area: QRect, words: str) -> int:
        """A small key at the right; says how far the words may go."""
        theme = self._look.theme
        painter.setFont(theme.font("caption"))
        wide = painter.fontMetrics().horizontalAdvance(words) + theme.px(14)
        tall = theme.px(20)
        room = QRectF(area.right() - wide, area.center().y() - tall / 2 + 1, wide, tall)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme["line"], 1))
        painter.setBrush(theme["slip"])
        painter.drawRoundedRect(room, 3, 3)
        painter.setPen(theme["ink"])
        painter.drawText(room, Qt.AlignmentFlag.AlignCenter, words)
        return round(room.left()) - theme.px(8)


class Choices(QFrame):
    """Shows an offer under the word it is for. The keyboard stays in the line."""

    chosen = Signal(int)
    """Number of the row clicked, from 0."""
    considered = Signal(str)
    """Title of the card of the chosen row; '' when there is none any more."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self.look, self.under = look, parent
        """`under` is what the slip lies on."""
        self.offer: Offer | None = None
        self.walked = False
        """Whether the student has moved to a row, so that Enter means it."""
        self.model = OfferModel(self)
        self.list = QListView(self)
        self.list.setModel(self.model)
        self._delegate = OfferDelegate(look, self.list)
        self.list.setItemDelegate(self._delegate)
        self.list.setFrameShape(QFrame.Shape.NoFrame)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setStyleSheet("QListView { background: transparent; border: none; }")
        self.list.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setCursor(Qt.CursorShape.PointingHandCursor)
        self.list.setAccessibleName("What may be meant")
        self.list.selectionModel().currentChanged.connect(lambda *_rows: self._consider())
        self.list.clicked.connect(lambda index: self.chosen.emit(index.row()))
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.hide()

    def show_at(self, offer: Offer, at: QPoint) -> None:
        """Lay the slip out with its corner near a point of its parent, kept inside it."""
        theme = self.look.theme
        if offer != self.offer or not self.isVisible():
            self.offer, self.walked = offer, False
            self._delegate.digits = offer.digits
            self.model.take(offer.rows)
            if offer.rows:
                self.list.setCurrentIndex(self.model.index(0))
        soft, room = theme.px(SOFT), self.under.width()
        wide = min(theme.px(WIDEST), room) + 2 * soft
        head = self._head_height(wide)
        rows = len(offer.rows) * theme.px(ROW)
        left = max(-soft, min(at.x() - soft - theme.px(PAD), room - wide + soft))
        self.setGeometry(left, at.y() - soft + 2, wide, 2 * soft + head + rows + theme.px(6))
        inner = self._paper().toRect()
        self.list.setGeometry(inner.left() + 1, inner.top() + head + 3, inner.width() - 2, rows)
        self.setAccessibleName(offer.problem or "Cards this may become")
        self.show()
        self.raise_()

    def row(self) -> int:
        """Number of the chosen row, -1 where there is none."""
        return self.list.currentIndex().row() if self.offer and self.offer.rows else -1

    def step(self, by: int) -> None:
        """Move to another row."""
        count = len(self.model.rows)
        if count:
            self.walked = True
            self.list.setCurrentIndex(self.model.index((self.row() + by) % count))

    def put_away(self) -> None:
        """Take the slip away."""
        if self.offer is not None:
            self.hide()
            self.offer = None
            self.considered.emit("")

    def _consider(self) -> None:
        row = self.row()
        if row >= 0:
            self.considered.emit(self.model.rows[row].title.partition(",")[0])

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click beside the rows goes no further."""
        event.accept()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """A slip of paper with a soft shadow, the sentence at its head in red."""
        theme, painter = self.look.theme, QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paper = self._paper()
        dark = QColor(0, 0, 0, 150 if theme.lamp else 80)
        shadow(painter, paper, theme.px(SOFT) * 0.9, dark, 1.5)
        painter.setPen(QPen(theme["line"], 1))
        painter.setBrush(theme["slip"])
        painter.drawRoundedRect(paper.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
        if self.offer and self.offer.problem:
            painter.setPen(theme["red"])
            painter.setFont(theme.font("label", 600))
            painter.drawText(self._head_room(self.width()), self._flags(), self.sentence())

    def _paper(self) -> QRectF:
        soft = self.look.theme.px(SOFT)
        return QRectF(self.rect()).adjusted(soft, 2, -soft, -soft)

    def sentence(self) -> str:
        """What stands at the head of the slip: what is wrong, and what may be done."""
        assert self.offer is not None
        problem, rows = self.offer.problem, self.offer.rows
        if not problem.endswith("is not understood."):
            return problem
        return f"{problem} {'Did you mean' if rows else self.offer.advice}"

    def _flags(self) -> int:
        return int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignTop.value)

    def _head_room(self, wide: int) -> QRect:
        theme = self.look.theme
        off = theme.px(SOFT) + theme.px(PAD)
        return QRect(off, theme.px(10), wide - 2 * off, 10_000)

    def _head_height(self, wide: int) -> int:
        if not self.offer or not self.offer.problem:
            return 0
        metrics = QFontMetrics(self.look.theme.font("label", 600))
        room = metrics.boundingRect(self._head_room(wide), self._flags(), self.sentence())
        return room.height() + self.look.theme.px(12)
