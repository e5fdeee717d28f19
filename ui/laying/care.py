"""What to mind of a question, said beside it while it is typed."""

from __future__ import annotations

from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QWidget

from binder.study.readings.cautions import Area, gravest
from ui.kit.forms.hints import Hint
from ui.look.theme import Look


class Care(Hint):
    """Says the caution of a question's gravest area; what is urgent stands out.

    A screen reader is told of it once, when it appears or when it becomes another.
    """

    def __init__(self, look: Look, field: QWidget, parent: QWidget | None = None) -> None:
        self._urgent, self._told = False, ""
        super().__init__(look, parent)
        self._field = field
        self.setAccessibleName("Caution")

    def weigh(self, topic: str, question: str) -> None:
        """Look at what is typed now."""
        area = gravest(topic, question)
        sentence = area.sentence if area else ""
        if sentence == self.text():
            return
        self._urgent = bool(area and area.urgent)
        self.say(sentence)
        self._field.setAccessibleDescription(sentence)
        self._announce(area)

    def begin(self) -> None:
        """Another reading is begun: what was told of the last may be told again."""
        self._told = ""

    def _announce(self, area: Area | None) -> None:
        from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

        if area is None or area.sentence == self._told:
            return
        self._told = area.sentence
        event = QAccessibleAnnouncementEvent(self, area.sentence)
        if area.urgent:
            event.setPoliteness(QAccessible.AnnouncementPoliteness.Assertive)
        QAccessible.updateAccessibility(event)

    def restyle(self) -> None:
        """Quiet as any hint; what is urgent upright, heavier and in ink."""
        super().restyle()
        if not self._urgent:
            return
        theme = self._look.theme
        self.setFont(theme.font("list", 600))
        colours = self.palette()
        colours.setColor(QPalette.ColorRole.WindowText, theme["ink"])
        self.setPalette(colours)
        self.setStyleSheet(
            f"color: {theme['ink'].name()}; background: {theme['slip'].name()};"
            f" border-left: {theme.px(3)}px solid {theme['red'].name()};"
            f" padding: {theme.px(4)}px {theme.px(8)}px;"
        )
