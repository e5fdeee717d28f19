"""The leaf of a card: the picture marked, cards paired, decks chosen."""

from __future__ import annotations

from binder.cards.titles import STANDARD
from binder.errors import CanMend
from binder.study.cards import related
from binder.study.decks import decks, shown_faces
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView
from ui.actions.base import Base, leaving
from ui.session.trail import Spot


class CardActions(Base):
    """Each works on the card leaf at the left, or on the one a link was followed on."""

    @leaving
    def mark_picture(self, spot: Spot | None = None, deck: str = "") -> None:
        """Set numbers on a card's face, and write what is there."""
        from ui.leaves.card.mark_dialog import MarkDialog

        view = self._card_view(spot)
        view.binder.gate.must_be_writable()
        known = decks.decks(self.session.shelf)
        photos = self.session.photos
        pictured = [one.uid for one in known if photos.uid(one.uid, view.card)]
        pictures = shown_faces.all_pictures(known, pictured)
        if not deck and spot is None:
            deck = pictures[0].deck
        self.ask(MarkDialog(self.session, self.theme_look, view, pictures, deck, self.window))

    @leaving
    def pair_card(self, spot: Spot | None = None, which: str = "") -> None:
        """Pair the card with another; `which` is the uid of a pair to change."""
        from ui.leaves.card.pair_dialog import PairDialog

        view = self._card_view(spot)
        standing = related.pairs(self.session.shelf, view.card)
        pair = next((one for one in standing if one.uid == which), None)
        self.ask(PairDialog(self.session, self.theme_look, view, pair, self.window))

    def card_faces(self) -> None:
        """Choose the decks whose pictures stand on card leaves."""
        from ui.leaves.card.faces_dialog import FacesDialog

        shelf, binder = self.session.shelf, self.open_binder()
        known = decks.decks(shelf)
        uids = [one.uid for one in known]
        chosen = shown_faces.chosen(shelf)
        ticked = [*uids, ""] if chosen is None else list(chosen)
        self.ask(
            FacesDialog(
                self.theme_look, shown_faces.all_pictures(known, uids), ticked,
                lambda kept: shown_faces.choose(shelf, binder, kept), self.window,
            )
        )  # fmt: skip

    def _card_view(self, spot: Spot | None) -> LeafView:
        view = self.session.leaf_of(spot or self.session.left)
        if view is None or view.kind is not LeafKind.CARD or view.card not in STANDARD.keys:
            raise CanMend("Open the leaf of one of the 78 cards first.")
        return view
