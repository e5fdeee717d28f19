"""PDFs and pictures filed as handouts behind a tab."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog

from binder.errors import CanMend
from binder.study.leaves import tabs
from ui.actions.base import Base, leaving
from ui.desk.stage import Stage
from ui.kit.clipboard import copied
from ui.kit.dropped import local_files

if TYPE_CHECKING:
    from binder.study.handouts.filing import Report
    from binder.study.leaves.tabs import TabView
    from ui.desk.filing_panel import FilingPanel
    from ui.leaves.handout.filing import Filing, Order

KINDS = "PDFs and pictures (*.pdf *.png *.jpg *.jpeg *.webp *.gif *.svg *.bmp *.tif *.tiff)"
NOTHING = "There is no file or picture on the clipboard; copy one first."


class FilingActions(Base):
    """All of them file behind the open tab, unless another is named."""

    @cached_property
    def filing(self) -> Filing:
        """Files what is asked for, one order after another."""
        from ui.leaves.handout.filing import Filing

        made = Filing(self.window)
        made.ended.connect(self._filed)
        return made

    @cached_property
    def filing_panel(self) -> FilingPanel:
        """How far it has come."""
        from ui.desk.filing_panel import FilingPanel

        return FilingPanel(self.filing, self.theme_look, self.window)

    def file_handouts(self, uid: str = "") -> None:
        """Ask for files, and file them behind a tab."""
        tab = tabs.tab(self.open_binder(), uid) if uid else self.open_tab()
        names, _ = QFileDialog.getOpenFileNames(self.window, "File handouts", "", KINDS)
        if names:
            self._file(tab, [Path(name) for name in names])

    def file_folder(self, uid: str = "") -> None:
        """Ask for a folder, and file all that is in it and in its folders."""
        tab = tabs.tab(self.open_binder(), uid) if uid else self.open_tab()
        name = QFileDialog.getExistingDirectory(self.window, "File a folder of handouts")
        if name:
            self._file(tab, [Path(name)])

    def file_dropped(self, uid: str, paths: Sequence[Path]) -> None:
        """Files or folders were dropped on a tab, or ('') on the open binder."""
        self._file(tabs.tab(self.open_binder(), uid) if uid else self.open_tab(), paths)

    def paste_handout(self) -> None:
        """File what lies on the clipboard; a reading takes a picture as a photograph."""
        data = copied()
        page = self._page_with_keyboard()
        if hasattr(page, "paste_photo") and page.paste_photo(data):
            return
        paths = local_files(data)
        if paths:
            self._file(self.open_tab(), paths)
        elif data.hasImage():
            self._file_picture(QImage(data.imageData()))
        else:
            raise CanMend(NOTHING)

    def end_filing(self) -> None:
        """The window is shut: file no more."""
        if "filing" in self.__dict__:
            self.filing.finish()

    def _page_with_keyboard(self) -> object:
        """The leaf the keyboard is on, else the one at the left."""
        cover, focused = self.window.cover, self.window.focusWidget()
        right = cover.leaf("right")
        on_right = right is not None and focused is not None and right.isAncestorOf(focused)
        return right if on_right or (right is not None and right is focused) else cover.leaf("left")

    @leaving
    def _file(self, tab: TabView, paths: Sequence[Path]) -> None:
        from ui.leaves.handout.filing import Order

        _ = self.filing_panel
        day = self.session.today.isoformat()
        self.filing.start(Order(self.open_binder(), tab, tuple(paths), day))

    def _file_picture(self, image: QImage) -> None:
        from binder.study.handouts import filing
        from binder.study.leaves import files
        from ui.writing.editor.pasting import encoded

        if image.isNull():
            raise CanMend("The picture on the clipboard could not be read; copy it again.")
        binder, tab = self.open_binder(), self.open_tab()
        name, media, data = encoded(image, "Pasted picture")
        with binder.change("File a pasted picture"):
            uid = files.keep_bytes(binder, name, media, data)
            made = filing.Filed(uid, name, "Pasted picture", media)
            leaves = filing.add_leaves(binder, tab, [made], self.session.today.isoformat())
        self.session.open_leaf(leaves[0])

    def _filed(self, order: Order, report: Report) -> None:
        """A single handout comes to the left; of several the number is said."""
        from ui.desk.filing_panel import said

        alone = len(report.leaves) == 1 and not report.there and self.session.binder
        if alone and alone.uid == order.binder.uid and self.window.staged(Stage.LEAVES):
            self.session.open_leaf(report.leaves[0])
        if not (report.amiss or report.remarks):
            self.session.said.emit(said(order, report))
