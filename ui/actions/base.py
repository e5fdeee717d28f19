"""What all deeds start from: the window, its session, and what lies open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QDialog

from binder.errors import CanMend
from binder.store.file import Binder
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView

if TYPE_CHECKING:
    from ui.desk.window import Window


class Base:
    """A window's deeds; each raises CanMend where what it needs does not lie open."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.session = window.session
        self.theme_look = window.look

    def ask(self, dialog: QDialog) -> bool:
        """Lay a dialog open until it is closed, True if it was taken; then it goes, and listens to
        nothing any more.
        """
        taken = dialog.exec()
        dialog.deleteLater()
        return bool(taken)

    def open_view(self) -> LeafView:
        """The leaf at the left."""
        view = self.session.leaf_of(self.session.left)
        if view is None:
            raise CanMend("Open a leaf first.")
        return view

    def open_binder(self) -> Binder:
        """The open binder."""
        if self.session.binder is None:
            raise CanMend("Open a binder first.")
        return self.session.binder

    def open_tab(self) -> TabView:
        """The tab whose leaf lies at the left."""
        if self.session.tab is None:
            raise CanMend("This binder has no tab yet; add one first.")
        return self.session.tab
