"""How far a filing has come, a button to stop it, and afterwards what could not be filed."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from binder.counting import counted, noun_for
from binder.study.handouts.filing import Report
from ui.desk.said import is_escape
from ui.leaves.handout.filing import Filing, Order
from ui.look.theme import Look

SOON_MS = 300
"""What is done sooner needs no panel."""
WIDE, EDGE = 460, 16


class FilingPanel(QFrame):
    """Lies over the foot of the window while something is filed."""

    def __init__(self, filing: Filing, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look, self._filing, self._under = look, filing, parent
        self.setObjectName("filing")
        self.setAccessibleName("Filing handouts")
        self._summary = ""
        self.told, self.bar = QLabel(), QProgressBar()
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("How far it has come")
        self.stop, self.close_button = QPushButton("Sto&p"), QPushButton("Put awa&y")
        self.list = QListWidget()
        self.list.setWordWrap(True)
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setAccessibleName("What could not be filed")
        self._soon = QTimer(self, singleShot=True, interval=SOON_MS)
        self._soon.timeout.connect(self._appear)
        self._lay_out()
        self.stop.clicked.connect(self._stop)
        self.close_button.clicked.connect(self.put_away)
        filing.going.connect(self._going)
        filing.ended.connect(self._ended)
        look.changed.connect(self._dress)
        parent.installEventFilter(self)
        self._dress()
        self.hide()

    def _lay_out(self) -> None:
        px = self._look.theme.px
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(px(14), px(10), px(14), px(12))
        column.setSpacing(px(8))
        self.told.setWordWrap(True)
        self.told.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        row = QHBoxLayout()
        row.addWidget(self.bar, 1)
        row.addWidget(self.stop)
        row.addStretch(0)
        column.addWidget(self.told)
        column.addLayout(row)
        column.addWidget(self.list)
        foot = QHBoxLayout()
        foot.addStretch(1)
        foot.addWidget(self.close_button)
        column.addLayout(foot)

    # While it goes on

    def _going(self, words: str, done: int, of: int) -> None:
        if not words:
            self._soon.stop()
            self.told.setText(self._summary)
            self._show_work(False)
            self.setVisible(bool(self.list.count()))
            return
        if not self.isVisible() and not self._soon.isActive():
            self._soon.start()
        self.told.setText(words)
        self.bar.setRange(0, of)
        self.bar.setValue(done)
        self._show_work(True)

    def _show_work(self, on: bool) -> None:
        self.bar.setVisible(on)
        self.stop.setVisible(on)
        self.stop.setEnabled(True)
        self.list.setVisible(bool(self.list.count()))
        self.close_button.setVisible(bool(self.list.count()))
        self._place()

    def _appear(self) -> None:
        if self._filing.busy:
            self.show()
            self.raise_()
            self._place()

    def _stop(self) -> None:
        self._filing.stop()
        self.stop.setEnabled(False)
        self.told.setText("Stopping…")

    # Afterwards

    def _ended(self, order: Order, report: Report) -> None:
        sentences = [sentence for _, sentence in report.amiss] + report.remarks
        self.list.addItems(sentences)
        if sentences:
            self._summary = said(order, report)
            self._soon.stop()
            self.show()
            self.raise_()
        self._show_work(self._filing.busy and self.bar.isVisible())

    def put_away(self) -> None:
        """What is listed was read."""
        self.list.clear()
        self.hide()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts the list away."""
        if event.matches(QKeySequence.StandardKey.Cancel) and not self._filing.busy:
            self.put_away()
        else:
            super().keyPressEvent(event)

    # Where it lies

    def _dress(self) -> None:
        theme = self._look.theme
        self.told.setFont(theme.font("list"))
        self.list.setFont(theme.font("label"))
        self.setStyleSheet(
            f"#filing {{ background: {theme['slip'].name()}; "
            f"border: 1px solid {theme['line'].name()}; border-radius: 3px; }}"
            f"QListWidget {{ background: {theme['slip'].name()}; border: none; }}"
            f"QProgressBar {{ background: {theme['faint'].name()}; "
            f"border: 1px solid {theme['line'].name()}; height: {theme.px(8)}px; }}"
            f"QProgressBar::chunk {{ background: {theme['own'].name()}; }}"
        )
        self._place()

    def _place(self) -> None:
        room, px = self._under.size(), self._look.theme.px
        wide = min(px(WIDE), room.width() - 2 * EDGE)
        self.resize(wide, self.height())
        self.list.doItemsLayout()
        high = sum(self.list.sizeHintForRow(row) for row in range(self.list.count()))
        self.list.setFixedHeight(min(high + px(8), room.height() * 2 // 5))
        self._column.activate()
        self.resize(wide, min(self.sizeHint().height(), room.height() - 2 * EDGE))
        self.move((room.width() - wide) // 2, room.height() - self.height() - EDGE)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay at the foot when the window changes its size; Escape puts the list away wherever
        the keyboard is, unless it was wanted there.
        """
        if event.type() is QEvent.Type.Resize and self.isVisible():
            self._place()
        if is_escape(event) and self.isVisible() and not self._filing.busy:
            self.put_away()
            return True
        return super().eventFilter(watched, event)


def said(order: Order, report: Report) -> str:
    """What came of it, in a sentence or two."""
    count = len(report.leaves)
    made = "No handout is" if not count else f"{counted(count, 'handout')} {noun_for(count, 'is')}"
    words = [f"{made} filed behind {order.tab.name}."]
    if report.stopped:
        words.append("The rest was left out, as you stopped it.")
    if report.there:
        words.append(f"{counted(report.there, 'was')} there already.")
    if report.amiss:
        words.append(f"{len(report.amiss)} could not be filed.")
    return " ".join(words)
