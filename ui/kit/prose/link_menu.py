"""What can be done about a card name where it stands: follow it, or choose what is linked."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtWidgets import QMenu

from binder.errors import RingboundError
from binder.page.address import Scheme
from binder.study.cards.links import ALWAYS, NEVER, leave_alone, set_rule
from ui.kit.prose.prose_links import Pointed
from ui.session.session import Session
from ui.session.trail import Spot

LONGEST = 60
"""Characters of a selection that could still be the title of a card."""


def add_card(menu: QMenu, session: Session, key: str) -> None:
    """The one thing to do with any card: lay its leaf facing."""
    menu.addAction(
        f"&Lay {_title(session, key)} facing", partial(_guard, session, session.face_card, key)
    )


def fill(
    menu: QMenu, session: Session, spot: Spot | None, pointed: Pointed, nth: int | None = None
) -> None:
    """Put into a menu what goes for the link pointed at, or for the words selected.

    `nth` counts the names of the same card before it in the leaf's own text; None elsewhere.
    """
    link = pointed.link
    if link is not None and link.address.startswith(Scheme.CARD.prefix):
        add_card(menu, session, link.address.removeprefix(Scheme.CARD.prefix))
        if link.said and nth is not None and spot is not None:
            key = link.address.removeprefix(Scheme.CARD.prefix)
            menu.addAction("Not a card in this &place", partial(_leave, session, spot, key, nth))
        if link.said:
            _add_unlinking(menu, session, spot, pointed.words)
    elif link is None and pointed.selected:
        _add_linking(menu, session, spot, pointed.selected)


def _add_unlinking(menu: QMenu, session: Session, spot: Spot | None, words: str) -> None:
    menu.addAction(
        "&Not a card on this leaf", partial(_rule, session, spot, words, NEVER, here=True)
    )
    menu.addAction(
        f"Never link “{words.casefold()}”", partial(_rule, session, spot, words, NEVER, here=False)
    )


def _add_linking(menu: QMenu, session: Session, spot: Spot | None, words: str) -> None:
    if spot is None or not _is_title(session, spot, words):
        return
    more = menu.addMenu(f"&Always link “{words}” as a card…")
    more.addAction("On &this leaf", partial(_rule, session, spot, words, ALWAYS, here=True))
    more.addAction("On &every leaf", partial(_rule, session, spot, words, ALWAYS, here=False))


def _is_title(session: Session, spot: Spot, words: str) -> bool:
    if len(words) > LONGEST:
        return False
    folded = " ".join(words.casefold().split())
    return any(folded in deck.names() for deck in session.linker.lexicon(spot.leaf).titles)


def _rule(session: Session, spot: Spot | None, words: str, rule: str, *, here: bool) -> None:
    binder = session.binder_of(spot) if spot else None
    if spot is None or binder is None:
        return
    leaf_uid = spot.leaf if here else ""
    _guard(session, partial(set_rule, leaf_uid=leaf_uid), binder, words, rule)


def _leave(session: Session, spot: Spot, key: str, nth: int) -> None:
    binder = session.binder_of(spot)
    if binder is not None:
        _guard(session, leave_alone, binder, spot.leaf, key, nth, session.linker)


def _guard(session: Session, verb: Callable[..., object], *arguments: object) -> None:
    try:
        verb(*arguments)
    except RingboundError as error:
        session.said.emit(str(error))


def _title(session: Session, key: str) -> str:
    """What the card's own leaf is called; what the deck calls it where it has no leaf."""
    found = session.shelf.card_leaf(key)
    spot = session.spot_of(found[1]) if found else None
    view = session.leaf_of(spot) if spot else None
    return session.title_of(view) if view else session.titles.called(key)
