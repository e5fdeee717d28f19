"""The layout of a reading: its photographs, and how it is shown."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from binder.errors import CanMend
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView
from binder.study.readings import details, readings
from ui.actions.base import Base
from ui.kit.forms import asking

PICTURES = "Pictures (*.jpg *.jpeg *.png *.webp *.gif *.bmp *.tif *.tiff)"


class LayoutActions(Base):
    """Both are about the reading at the left."""

    def _reading_at_left(self) -> LeafView:
        view = self.open_view()
        if view.kind is not LeafKind.READING:
            raise CanMend("Open a reading first; this is done on its leaf.")
        return view

    def photograph(self) -> None:
        """Keep pictures of the table on the reading's leaf."""
        view = self._reading_at_left()
        view.binder.gate.must_be_writable()
        names, _ = QFileDialog.getOpenFileNames(
            self.window, "Photographs of the table", "", PICTURES
        )
        if names:
            self.window.back_to_leaves()
            page = self.window.cover.leaf("left")
            from ui.leaves.reading.reading import ReadingPage

            assert isinstance(page, ReadingPage)
            page.take_photos([Path(name) for name in names])

    def show_layout(self) -> None:
        """Diagram, list, or both; print follows."""
        view = self._reading_at_left()
        ways = list(details.SHOWN)
        words = [word.capitalize() for word in details.SHOWN.values()]
        at = ways.index(readings.reading(view.binder, view.uid).shown)
        chosen = asking.choice(self.window, "Show the layout", "On screen and in print:", words, at)
        if chosen is not None:
            details.show_as(view.binder, view.uid, ways[chosen])
