"""Which pictures stand on a card leaf."""

import pytest

from binder.errors import CanMend
from binder.study.decks import decks, shown_faces
from binder.study.decks.shown_faces import chosen, pictures


@pytest.fixture
def known(shelf):
    """Two decks on a shelf with one binder: the usual one first."""
    home = shelf.add("Practice", "spineP")
    for name in ("Lantern Road", "Saltmarsh"):
        decks.add_deck(shelf, home, name)
    return decks.decks(shelf)


def names(*given, **more):
    return [one.name for one in pictures(*given, **more)]


def test_without_pictures_there_is_the_drawn_face(known):
    assert names(known, (), None) == ["Drawn face"]
    assert names([], (), None) == ["Drawn face"]


def test_pictures_of_several_decks_stand_side_by_side(known):
    lantern, salt = (deck.uid for deck in known)
    assert names(known, {salt, lantern}, None) == ["Lantern Road", "Saltmarsh"]
    assert names(known, {salt}, None) == ["Drawn face", "Saltmarsh"]
    assert names(known, {lantern}, None) == ["Lantern Road"]
    assert names(known, {lantern}, None, {""}) == ["Lantern Road", "Drawn face"]


def test_the_owner_chooses(shelf, known):
    lantern, salt = (deck.uid for deck in known)
    assert chosen(shelf) is None
    shown_faces.choose(shelf, shelf.binders[0], [salt])
    assert names(known, {salt, lantern}, chosen(shelf)) == ["Saltmarsh"]
    assert names(known, {lantern}, chosen(shelf)) == ["Drawn face"]
    shown_faces.choose(shelf, shelf.binders[0], [salt, ""])
    assert names(known, {salt, lantern}, chosen(shelf)) == ["Saltmarsh", "Drawn face"]
    shelf.undo()
    shelf.undo()
    assert chosen(shelf) is None
    with pytest.raises(CanMend, match="at least one"):
        shown_faces.choose(shelf, shelf.binders[0], [])
