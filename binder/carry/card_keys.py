"""Keys of cards in a front block."""

from __future__ import annotations

from binder.cards.facts import card
from binder.carry.front import Front
from binder.errors import CanMend


def card_keys(front: Front, name: str) -> tuple[str, ...]:
    """The list of card keys under `name`."""
    return tuple(_key(front, key, name) for key in front.texts(name))


def card_key(front: Front, name: str) -> str:
    """The card key under `name`."""
    return _key(front, front.text(name), name)


def maybe_card_key(front: Front, name: str) -> str:
    """The card key under `name`, '' where there is none."""
    return card_key(front, name) if name in front.data else ""


def _key(front: Front, said: str, name: str) -> str:
    try:
        return card(said).key
    except CanMend as error:
        raise front.fault(str(error), name) from error
