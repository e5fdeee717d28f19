"""What can be done to a reading from its layout: clarifying cards, and how the layout is shown."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtGui import QActionGroup
from PySide6.QtWidgets import QMenu, QWidget

from binder.cards.shorthand import example
from binder.errors import RingboundError
from binder.study.leaves.leaves import LeafView
from binder.study.readings import details, readings
from ui.kit.forms import asking
from ui.session.session import Session

WAYS = (("", "Diagram &and list"), ("layout", "&Diagram only"), ("list", "L&ist only"))


def fill(menu: QMenu, session: Session, view: LeafView, key: str) -> None:
    """Entries for the card with that key, and for the layout as a whole."""
    reading = readings.reading(view.binder, view.uid)
    first = next((one for one in reading.laid if one.card == key), None)
    if first is not None:
        menu.addAction("Lay a &clarifying card…").triggered.connect(
            lambda: ask_clarifying(menu.parentWidget(), session, view, first.n)
        )
        beside = details.clarifying(reading)
        for one in reading.laid:
            if one.n == first.n and one.card in beside:
                take = partial(details.take_beside, view.binder, view.uid, one.card)
                menu.addAction(f"Take {one.title} &away").triggered.connect(
                    lambda _checked=False, take=take: _guarded(session, take)
                )
    menu.addSeparator()
    add_ways(menu, session, view)


def add_ways(menu: QMenu, session: Session, view: LeafView) -> None:
    """How the layout is shown, one of three."""
    shown = readings.reading(view.binder, view.uid).shown
    group = QActionGroup(menu)
    for way, words in WAYS:
        action = menu.addAction(words)
        action.setCheckable(True)
        action.setChecked(way == shown)
        group.addAction(action)
        show = partial(details.show_as, view.binder, view.uid, way)
        action.triggered.connect(lambda _checked=False, show=show: _guarded(session, show))


def ask_clarifying(
    parent: QWidget | None, session: Session, view: LeafView, n: int, text: str = ""
) -> None:
    """Ask which card lies beside place n; asks again with a sentence where it cannot be laid."""
    reading = readings.reading(view.binder, view.uid)
    place = reading.spread.place(n)
    three, star = example("wands-03", reading.titles), example("major-17", reading.titles)
    queen = example("cups-13", reading.titles, True)
    prompt = f"The card beside {n}, {place.label}, as {three}, {star} or {queen}:"
    while True:
        said = asking.line(parent, "Clarifying card", prompt, text)
        if said is None:
            return
        text = said
        try:
            details.clarify(view.binder, view.uid, n, text)
        except RingboundError as error:
            prompt = str(error)
        else:
            return


def _guarded(session: Session, verb: Callable[[], None]) -> None:
    try:
        verb()
    except RingboundError as error:
        session.said.emit(str(error))
