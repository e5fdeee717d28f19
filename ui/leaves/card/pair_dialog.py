"""Asks which card goes with a card, and why."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QDialogButtonBox,
    QLineEdit,
    QPlainTextEdit,
    QVBoxLayout,
    QWidget,
)

from binder.cards.shorthand import example
from binder.errors import RingboundError
from binder.study.cards import related
from binder.study.cards.related import PairView
from binder.study.decks.decks import usual_titles
from binder.study.leaves.leaves import LeafView
from ui.kit.forms.form import FormDialog
from ui.kit.forms.hints import Hint
from ui.look.theme import Look
from ui.session.session import Session


class PairDialog(FormDialog):
    """Makes a pair, or changes one that stands."""

    def __init__(
        self, session: Session, look: Look, view: LeafView, pair: PairView | None = None,
        parent: QWidget | None = None,
    ) -> None:  # fmt: skip
        super().__init__(look, f"A pair with {session.title_of(view)}", parent)
        self._session, self._view, self._pair = session, view, pair
        self._titles = usual_titles(session.shelf)
        self.card, self.named = QLineEdit(), Hint(look)
        moon, three = (example(key, self._titles) for key in ("major-18", "wands-03"))
        self.card.setPlaceholderText(f"{self._titles.title('major-18')}, or {moon}, or {three}")
        self.why = QPlainTextEdit(pair.text if pair else "")
        self.why.setTabChangesFocus(True)
        self.why.setFixedHeight(look.theme.px(96))
        self.why.setPlaceholderText("What you see when they lie together")
        self.card.textChanged.connect(self._name)
        which = QWidget()
        which.setFocusProxy(self.card)
        column = QVBoxLayout(which)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.card)
        column.addWidget(self.named)
        self.lay_out([("&Card", which), ("&Why", self.why)])
        if pair is not None:
            self.card.setText(self._titles.title(pair.across(view.card)))
            self.card.setEnabled(False)
            self._offer_apart()

    def _offer_apart(self) -> None:
        role = QDialogButtonBox.ButtonRole.DestructiveRole
        self.apart = self.button_box.addButton("&Remove pair", role)
        self.apart.clicked.connect(self._take_apart)

    def _name(self, text: str) -> None:
        """Say which card that is, or what is amiss once something was typed."""
        try:
            key = related.named_card(text, self._titles)
        except RingboundError as error:
            self.named.say(str(error) if text.strip() else "")
            return
        self.named.say("" if self._pair else self._titles.title(key))

    def keep(self) -> None:
        """Write the pair."""
        if self._pair is not None:
            related.change_pair(self._pair, self.why.toPlainText())
            return
        other = related.named_card(self.card.text(), self._titles)
        related.add_pair(self._session.shelf, self._view.card, other, self.why.toPlainText())

    def _take_apart(self) -> None:
        if self._pair is not None:
            related.remove_pair(self._pair)
        self.reject()
