"""The fields that a kind of leaf has besides its text: a card's, a reading's, or none."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal, SignalInstance

from binder.store.file import Binder
from binder.study.kinds import LeafKind
from binder.study.leaves.leaves import LeafView
from binder.study.readings import lookbacks, readings
from ui.look.theme import Look
from ui.session.session import Session
from ui.writing.editor.editor import Editor
from ui.writing.editor.keeping import Part
from ui.writing.fields.card_fields import CardFields
from ui.writing.fields.described import Described
from ui.writing.fields.own_words import OwnWordsFields
from ui.writing.fields.placed_notes import PlacedNotes
from ui.writing.fields.sides import SideFields
from ui.writing.fields.stated import StatedFields

HEADS = {LeafKind.CARD: "Notes", LeafKind.READING: "Impressions"}
"""What stands over the text of a leaf that has other fields too."""

Remove = Callable[[Binder, str], None]


class KindFields(QObject):
    """All these fields, of which a leaf shows those of its kind."""

    edited = Signal()
    removed = Signal(object, str)
    """The verb that takes a row away, and the row's uid."""

    def __init__(self, session: Session, look: Look, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self.own, self.sides = OwnWordsFields(look), SideFields(session, look)
        self.named = CardFields(look)
        self.places, self.stated = PlacedNotes(look), StatedFields(look, session.today)
        self.described = Described(look)
        for fields in (self.own, self.named, self.sides, self.places, self.stated, self.described):
            fields.edited.connect(self.edited)
        self.sides.asked.connect(self.removed)
        self._removes(self.stated.removed, lookbacks.remove_expectation)

    def _removes(self, told: SignalInstance, verb: Remove) -> None:
        told.connect(lambda uid: self.removed.emit(verb, uid))

    @property
    def editors(self) -> list[Editor]:
        """The fields with live styles."""
        return [*self.own.editors, *self.named.editors]

    def open(self, view: LeafView) -> None:
        """Show the fields of a leaf's kind, filled."""
        for of_card in (self.own, self.named, self.sides):
            of_card.setVisible(view.kind is LeafKind.CARD)
        for of_reading in (self.places, self.stated, self.described):
            of_reading.setVisible(view.kind is LeafKind.READING)
        if view.kind is LeafKind.CARD:
            self.own.open(view)
            self.named.open(view)
            self.sides.open(view)
        elif view.kind is LeafKind.READING:
            reading = readings.reading(view.binder, view.uid)
            self.places.open(view, reading)
            self.stated.open(view, reading.expectations, self._session.today)
            self.described.open(view, reading)

    def parts(self, kind: LeafKind) -> list[Part]:
        """What is saved of a leaf of that kind; rows come and go while one writes."""
        if kind is LeafKind.CARD:
            return [*self.own.parts, *self.named.parts, *self.sides.parts]
        if kind is LeafKind.READING:
            return [*self.places.parts, *self.stated.parts, *self.described.parts]
        return []
