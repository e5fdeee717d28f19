"""The slim bar: the date, the box that finds in all binders, and a few buttons."""

from collections.abc import Sequence
from datetime import date

from PySide6.QtCore import QPointF, QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QAction,
    QFontMetrics,
    QIcon,
    QPainter,
    QPaintEvent,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QLabel, QLineEdit, QMenu, QToolButton, QWidget

from ui.kit.guard import painting
from ui.kit.paint import round_pen
from ui.look.theme import Look

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
EDGE, GAP = 16, 10
FIND_WIDTH, LEAST_FIND = 430, 110
FIND, FIND_SHORT = "Find in all binders", "Find"
"""What stands in the empty box, where it is wide enough and where it is not."""


class Bar(QWidget):
    """The bar. Where it grows narrow the date shortens, then buttons go into a menu 'More'."""

    find_changed = Signal(str)
    """What stands in the box, at every change the user makes."""
    find_entered = Signal(str)
    """What stands in the box when Enter is pressed."""

    def __init__(
        self, look: Look, actions: Sequence[QAction] = (), parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.look = look
        self._start = 232
        self._today: date | None = None
        self._date = QLabel(self)
        self._date.setAccessibleName("Today")
        self.find_field = QLineEdit(self)
        self.find_field.setAccessibleName(FIND)
        self._loupe = QToolButton(self.find_field)
        self._loupe.setAutoRaise(True)
        self._loupe.setAccessibleName("Find")
        self._loupe.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._loupe.setCursor(Qt.CursorShape.ArrowCursor)
        self._loupe.clicked.connect(self._enter)
        self.find_field.textEdited.connect(self.find_changed)
        self.find_field.returnPressed.connect(self._enter)
        self._buttons: list[QToolButton] = []
        self._more = QToolButton(self)
        self._more.setText("More")
        self._more.setAccessibleName("More buttons")
        self._more.setProperty("plain", True)
        self._more.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self._more.setMenu(QMenu(self._more))
        self._more.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        look.changed.connect(self.restyle)
        self.set_buttons(actions)
        self.restyle()

    def _enter(self) -> None:
        self.find_entered.emit(self.find_field.text())

    def set_date(self, today: date) -> None:
        """The day shown at the left."""
        self._today = today
        self._place()

    def set_start(self, x: int) -> None:
        """Where the box begins, in line with the binder below."""
        self._start = x
        self._place()

    def set_buttons(self, actions: Sequence[QAction]) -> None:
        """Buttons from left to right; a checked action's button is dark."""
        for button in self._buttons:
            button.hide()
            button.deleteLater()
        self._buttons = [self._made(action) for action in actions]
        self._place()

    def buttons(self) -> list[QToolButton]:
        """The buttons, those in the menu included."""
        return list(self._buttons)

    def sizeHint(self) -> QSize:
        """As high as its letters ask."""
        return QSize(800, self._button_height() + 18)

    def minimumSizeHint(self) -> QSize:
        """It can grow narrow."""
        return QSize(320, self.sizeHint().height())

    def restyle(self) -> None:
        """Take up the theme of now."""
        theme = self.look.theme
        font = theme.font("bar_and_tabs")
        for widget in (self._date, self._more, *self._buttons):
            widget.setFont(font)
        self.find_field.setFont(theme.font("bar_and_tabs", 400))
        colours = self._date.palette()
        colours.setColor(colours.ColorRole.WindowText, theme["ink"])
        self._date.setPalette(colours)
        side = theme.px(20)
        self._loupe.setIcon(self._loupe_icon(side))
        self._loupe.setIconSize(QSize(side, side))
        self.find_field.setTextMargins(0, 0, side + 6, 0)
        self.updateGeometry()
        self._place()
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar and draw its lower edge."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.theme["bar"])
        painter.fillRect(0, self.height() - 1, self.width(), 1, self.look.theme["barline"])

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew."""
        self._place()
        super().resizeEvent(event)

    def _place(self) -> None:
        height = self._button_height()
        top = (self.height() - height) // 2
        least = EDGE + round(LEAST_FIND * self.look.theme.scale) + 2 * GAP
        left = self._place_buttons(top, height, least)
        room = left - EDGE - GAP
        words = self._date_words(min(self._start - 2 * EDGE, room - least))
        metrics = QFontMetrics(self._date.font())
        width = metrics.horizontalAdvance(words) + 2 if words else 0
        self._date.setText(words)
        self._date.setGeometry(EDGE, top, width, height)
        wide = round(FIND_WIDTH * self.look.theme.scale)
        before = EDGE + width + GAP if words else EDGE
        start = max(before, min(self._start, room - wide // 2))
        self.find_field.setGeometry(start, top, max(0, min(wide, room - start)), height)
        side = height - 4
        free = self.find_field.width() - side - 2 * GAP
        fits = QFontMetrics(self.find_field.font()).horizontalAdvance(FIND) <= free
        self.find_field.setPlaceholderText(FIND if fits else FIND_SHORT)
        self._loupe.setGeometry(self.find_field.width() - side - 4, 2, side, side)

    def _place_buttons(self, top: int, height: int, least: int) -> int:
        """Lay the buttons from the right; says where the first one begins."""
        widths = [button.sizeHint().width() for button in self._buttons]
        more = self._more.sizeHint().width()
        shown = len(widths)
        while shown and self._needed(widths, shown, more) > self.width() - EDGE - least:
            shown -= 1
        self._more.setVisible(shown < len(widths))
        self._fill_more(self._buttons[shown:])
        row = [*self._buttons[:shown], *([self._more] if shown < len(widths) else [])]
        left = self.width() - EDGE
        for button in reversed(row):
            width = button.sizeHint().width()
            left -= width
            button.setGeometry(QRect(left, top, width, height))
            button.show()
            left -= GAP
        for button in self._buttons[shown:]:
            button.hide()
        return left

    def _needed(self, widths: list[int], shown: int, more: int) -> int:
        rest = more + GAP if shown < len(widths) else 0
        return sum(widths[:shown]) + GAP * shown + rest

    def _fill_more(self, hidden: list[QToolButton]) -> None:
        wanted = [button.defaultAction() for button in hidden]
        menu = self._more.menu()
        if menu.actions() != wanted:
            menu.clear()
            menu.addActions(wanted)

    def _date_words(self, room: int) -> str:
        """The longest way of writing the date that fits, or nothing."""
        if self._today is None:
            return ""
        day, month = self._today.day, MONTHS[self._today.month - 1]
        weekday = DAYS[self._today.weekday()]
        metrics = QFontMetrics(self._date.font())
        ways = (
            f"{weekday} {day} {month}",
            f"{weekday[:3]} {day} {month[:3]}",
            f"{day} {month[:3]}",
        )
        return next((way for way in ways if metrics.horizontalAdvance(way) + 2 <= room), "")

    def _button_height(self) -> int:
        return QFontMetrics(self.look.theme.font("bar_and_tabs")).height() + 9

    def _made(self, action: QAction) -> QToolButton:
        button = QToolButton(self)
        button.setDefaultAction(action)
        button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        button.setProperty("plain", True)
        button.setFont(self.look.theme.font("bar_and_tabs"))
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        action.changed.connect(self._place)
        return button

    def _loupe_icon(self, side: int) -> QIcon:
        ratio = max(2.0, self.devicePixelRatioF())
        pixmap = QPixmap(QSize(side, side) * ratio)
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(side / 20, side / 20)
        painter.setPen(round_pen(self.look.theme["ink"], 1.7))
        painter.drawEllipse(QPointF(8.5, 8.5), 5, 5)
        painter.drawLine(QPointF(12.3, 12.3), QPointF(17, 17))
        painter.end()
        return QIcon(pixmap)
