"""A level at its end: what stands and what is thin, to be read before it is finished."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFrame,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from binder.page.markup.markdown import to_html
from binder.study.overview.level import Level, report
from ui.kit.forms.room import open_at
from ui.kit.prose.prose import Prose
from ui.kit.scroll import ScrollArea
from ui.look.theme import Look

ABOUT = (
    "These are counts, not marks: a level is finished when you say so. Its binder stays as it is, "
    "its card leaves go on facing readings of every level, and Undo takes the finishing back."
)


class LevelDialog(QDialog):
    """`filed` says whether the list is to be kept as a leaf; `gone_to` is a link that was followed.

    Links close the dialog, so that what they lead to can be read.
    """

    def __init__(self, look: Look, found: Level, then: str, parent: QWidget | None = None) -> None:
        """`then` is the name of the binder that is opened next, or ''."""
        super().__init__(parent)
        self._look = look
        self.gone_to = ""
        self.setWindowTitle(f"Finish {found.name}")
        self.text = Prose(look)
        self.text.setAccessibleName(f"What stands and what is thin in {found.name}")
        self.text.followed.connect(self._go)
        self.text.show_html(to_html(report(found)))
        self.about = QLabel(ABOUT)
        self.about.setWordWrap(True)
        self.file = QCheckBox("&File this list as a leaf behind the course plan")
        self.file.setToolTip("It is dated, can be found, and prints with the tab.")
        self.file.setChecked(True)
        self._buttons(f"F&inish it and open {then}" if then else "F&inish it")
        self._lay_out()
        self.no.setDefault(True)

    def _buttons(self, finish: str) -> None:
        self.buttons = QDialogButtonBox()
        self.yes = self.buttons.addButton(finish, QDialogButtonBox.ButtonRole.AcceptRole)
        self.no = self.buttons.addButton("&Not yet", QDialogButtonBox.ButtonRole.RejectRole)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)

    def _lay_out(self) -> None:
        px = self._look.theme.px
        sheet = QWidget()
        inner = QVBoxLayout(sheet)
        inner.setContentsMargins(px(14), px(6), px(14), px(10))
        inner.addWidget(self.text)
        inner.addStretch(1)
        scroll = ScrollArea(over=False)
        scroll.setFrameShape(QFrame.Shape.StyledPanel)
        scroll.setWidget(sheet)
        self.text.reached.connect(lambda at: scroll.ensureVisible(at.x(), at.bottom()))
        column = QVBoxLayout(self)
        column.setContentsMargins(*[px(18)] * 4)
        column.setSpacing(px(12))
        column.addWidget(scroll, 1)
        for part in (self.about, self.file, self.buttons):
            column.addWidget(part)
        open_at(self, self._look, 660, 620)

    @property
    def filed(self) -> bool:
        """Whether the list is to be kept as a leaf."""
        return self.file.isChecked()

    def _go(self, address: str) -> None:
        self.gone_to = address
        self.reject()
