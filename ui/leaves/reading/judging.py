"""One statement of a reading with the four verdicts to choose from."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QButtonGroup, QLabel, QRadioButton, QVBoxLayout, QWidget

from binder.study import dates
from binder.study.readings.lookbacks import Verdict
from binder.study.readings.readings import ExpectationView
from ui.kit.forms.wrap_row import WrapRow
from ui.look.theme import Look


class Statement(QWidget):
    """What was expected, and a row of verdicts."""

    def __init__(self, look: Look, of: ExpectationView, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self.uid, self._before = look, of.uid, of.verdict
        self._words = QLabel(of.text)
        self._words.setWordWrap(True)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._figures = QLabel(f"{of.sure}% sure, due {dates.written(of.due)}")
        self._group = QButtonGroup(self)
        self._radios: list[QRadioButton] = []
        self._row = WrapRow(gap=16)
        for verdict in Verdict:
            self._add(verdict, of)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 2, 0, 10)
        column.setSpacing(3)
        column.addWidget(self._words)
        column.addWidget(self._figures)
        column.addWidget(self._row)
        self.setAccessibleName(of.text)
        self._restyle()
        look.changed.connect(self._restyle)

    def _add(self, verdict: Verdict, of: ExpectationView) -> None:
        radio = QRadioButton(str(verdict).replace("'", "’"))
        radio.setAccessibleName(f"{verdict}: {of.text}")
        radio.setChecked(of.verdict == verdict)
        radio.setProperty("verdict", str(verdict))
        self._group.addButton(radio)
        self._radios.append(radio)
        self._row.add(radio)

    def _restyle(self) -> None:
        theme = self._look.theme
        self._words.setFont(theme.font("table"))
        self._words.setStyleSheet(f"color: {theme['own'].name()};")
        self._figures.setFont(theme.font("caption"))
        self._figures.setStyleSheet(f"color: {theme['inksoft'].name()};")

    def first(self) -> QRadioButton:
        """The verdict that stands, or the first one: where the keyboard comes in."""
        return next((r for r in self._radios if r.isChecked()), self._radios[0])

    def verdict(self) -> str:
        """The verdict chosen, '' while there is none."""
        chosen = self._group.checkedButton()
        return str(chosen.property("verdict")) if chosen else ""

    def changed(self) -> bool:
        """Whether another verdict is chosen than stands in the binder."""
        return self.verdict() != self._before

    def settled(self) -> None:
        """What is chosen stands in the binder now."""
        self._before = self.verdict()
