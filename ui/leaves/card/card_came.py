"""What came of it, on the leaf of a card: the readings it lay in, in short."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from binder.study.overview import came
from binder.study.overview.came import By, Group
from ui.kit.figures.group_address import group_address
from ui.kit.figures.outcomes import OutcomeBar
from ui.kit.figures.sure_picture import halves
from ui.kit.page.heads import SectionHead
from ui.look.theme import Look
from ui.session.session import Session


class CardCame(QWidget):
    """Head, bar and two sentences; hidden while nothing was stated in a reading with the card."""

    followed = Signal(str)
    """'sure:…', where the whole picture of this card is."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        from ui.kit.prose.prose import Prose

        self._look = look
        self.head, self.bar = SectionHead(look, "What came of it"), OutcomeBar(look)
        self.words = Prose(look, role="label")
        self.words.setAccessibleName("What the numbers bear")
        self.words.followed.connect(self.followed)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setSpacing(0)
        column.setContentsMargins(0, 0, 0, look.theme.px(6))
        column.addWidget(self.head)
        column.addSpacing(look.theme.px(5))
        column.addWidget(self.bar)
        column.addWidget(self.words)

    def show_card(self, session: Session, key: str) -> None:
        """Count the statements of the readings in which a card lay."""
        found = (
            session.kept(("came", key), lambda: came.came_of(session.shelf, key)) if key else None
        )
        whole = found.whole if found else Group("", "")
        self.setVisible(bool(whole.stated))
        if not whole.stated or found is None:
            return
        self.head.say("What came of it", note(whole))
        self.bar.show_group(whole)
        said = escape(" ".join(sentences(whole)))
        more = f'<a href="{escape(group_address(By.CARD, key))}"><u>How sure, how often</u></a>'
        self.words.show_html(f"<p>{said} {more}</p>", ())


def note(whole: Group) -> str:
    """'4½ of 9, said 62%'."""
    if whole.sure is None:
        return f"{whole.stated} waiting" if whole.waiting == whole.stated else "none judged"
    return f"came {halves(whole.out.hits)} of {whole.out.cases}, said {whole.sure:.0%}"


def sentences(whole: Group) -> list[str]:
    """What the numbers bear, without the counts that the bar shows, and without the score."""
    return [said for said in whole.words()[1:] if not said.startswith("Brier")]
