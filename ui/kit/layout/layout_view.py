"""The layout of a reading: its cards in their places, and beside them what each place holds."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from binder.cards.spreads import Place, Spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.study.readings.readings import Laid
from ui.kit.faces.faces import FaceCache
from ui.kit.guard import painting
from ui.kit.layout import layout_paint
from ui.kit.layout.layout_plan import Plan, plan
from ui.kit.layout.places_view import STEPS, PlacesView
from ui.kit.paint import Kept
from ui.look.theme import Look


class PlaceButton(QAbstractButton):
    """One place, for keys and for those who hear the screen; its view paints it."""

    walked = Signal(int)
    """An arrow key: so many places on, or back."""

    def __init__(self, view: QWidget) -> None:
        super().__init__(view)
        self.shown_by_key = False
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The view paints all places at once."""

    def sizeHint(self) -> QSize:
        """As large as it is laid."""
        return self.size()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows walk the places; Enter and the space bar lay the card's leaf facing."""
        if event.key() in STEPS and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.walked.emit(STEPS[Qt.Key(event.key())])
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Focus got by key is shown."""
        self.shown_by_key = event.reason() is not Qt.FocusReason.MouseFocusReason
        super().focusInEvent(event)


class LayoutView(PlacesView):
    """A reading's layout, as tall as its width asks for."""

    chosen = Signal(str)
    """Key of the card whose place was clicked, or Enter pressed on."""
    menu_asked = Signal(str, QPoint)
    """Key of a card and the place on the screen for its menu."""
    reached = Signal(QRectF)
    """A place was walked to: the room it takes, so that the leaf can scroll to it."""

    def __init__(
        self, look: Look, faces: FaceCache | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(look, faces or FaceCache(), QSizePolicy.Policy.Fixed, parent)
        self._spread: Spread | None = None
        self._titles = STANDARD
        self._laid: dict[int, list[Laid]] = {}
        self._plan: Plan | None = None
        self._shown = ""
        self._picked = ""
        self._hovered: int | None = None
        self._version = 0
        self._buttons: list[PlaceButton] = []
        self._kept = Kept(lambda painter, _size: self._paint(painter))
        self.setAccessibleName("Layout")
        look.changed.connect(self._fit)

    def show_reading(
        self,
        spread: Spread,
        laid: Sequence[Laid],
        titles: DeckTitles = STANDARD,
        deck: str = "",
        shown: str = "",
    ) -> None:
        """Lay these cards out; several in one place are the card and those that clarify it.

        `deck` is the uid of the deck whose pictures are shown, '' for our drawn faces; `shown` is
        'layout' or 'list' where only one of them is.
        """
        self._shown = shown
        self._spread, self._titles = spread, titles
        self._faces = self._faces.of(deck)
        self._laid, self._picked, self._hovered = {}, "", None
        for card in laid:
            self._laid.setdefault(card.n, []).append(card)
        self.setAccessibleDescription(f"{spread.name}, {len(laid)} cards laid")
        self._name_buttons()
        self._fit()

    def pick(self, key: str) -> None:
        """Draw the pencil ring round the card of that key; '' takes it away."""
        if key != self._picked:
            self._picked = key
            self._version += 1
            self.update()

    @property
    def picked(self) -> str:
        """Key of the card with the pencil ring, or ''."""
        return self._picked

    def places(self) -> list[PlaceButton]:
        """The places in their order, for keys and accessibility."""
        return self._buttons[: len(self._places())]

    def place_rect(self, n: int) -> QRectF:
        """The room of the card in place n."""
        assert self._plan is not None
        return self._plan.room(n)

    @property
    def laid_out(self) -> Plan | None:
        """Where everything of the reading lies; None before one was shown."""
        return self._plan

    # Making places

    def _places(self) -> tuple[Place, ...]:
        return self._spread.places if self._spread else ()

    def _name_buttons(self) -> None:
        places = self._places()
        while len(self._buttons) < len(places):
            self._buttons.append(self._made(len(self._buttons)))
        for number, button in enumerate(self._buttons):
            button.setVisible(number < len(places))
            first = number == 0
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus if first else Qt.FocusPolicy.NoFocus)
            if number < len(places):
                button.setAccessibleName(spoken(places[number], self._laid))
                button.setAccessibleDescription(places[number].asks)

    def _made(self, index: int) -> PlaceButton:
        button = PlaceButton(self)
        button.clicked.connect(partial(self._choose, index))
        button.walked.connect(partial(self._walk, index))
        button.installEventFilter(self)
        return button

    def _choose(self, index: int, *_checked: object) -> None:
        cards = self._laid.get(self._place(index).n)
        if cards:
            self.chosen.emit(cards[0].card)

    def _place(self, index: int) -> Place:
        return self._places()[index]

    def _walk(self, index: int, step: int) -> None:
        places = self.places()
        self._focus(min(max(index + step, 0), len(places) - 1), Qt.FocusReason.OtherFocusReason)

    def _focus(self, index: int, reason: Qt.FocusReason) -> None:
        """Only one place takes the Tab key: the one last walked to."""
        for number, button in enumerate(self.places()):
            here = number == index
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus if here else Qt.FocusPolicy.NoFocus)
        self.places()[index].setFocus(reason)

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """The focus of a place is painted here."""
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
            if event.type() is QEvent.Type.FocusIn and isinstance(watched, PlaceButton):
                self.reached.emit(QRectF(watched.geometry()))
        return False

    # Laying out and painting

    def _fit(self) -> None:
        if self._spread is None or self.width() < 40:
            return
        self._plan = plan(self._spread, self._laid, self.width(), self._look.theme, self._shown)
        self._version += 1
        self.setFixedHeight(round(self._plan.height) + 1)
        for place, button in zip(self._places(), self.places(), strict=True):
            button.setGeometry(self.place_rect(place.n).toAlignedRect())
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lay out anew where the width has changed."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self._fit()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """The kept picture, and over it where the pointer and the keyboard are."""
        if self._plan is None:
            return
        painter = QPainter(self)
        self._kept.draw(painter, self, self._look.theme, self._version)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._hovered is not None:
            layout_paint.hover(painter, self._plan, self._hovered, self._look.theme)
        for place, button in zip(self._places(), self.places(), strict=True):
            if button.hasFocus() and button.shown_by_key:
                layout_paint.focus(painter, self._plan, place.n, self._look.theme)

    def _paint(self, painter: QPainter) -> None:
        if self._plan is not None:
            layout_paint.layout(
                painter, self._plan, self._laid, self._titles, self._picked, self._look.theme,
                self._faces, self.devicePixelRatioF(),
            )  # fmt: skip

    # The pointer

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which place is under the pointer, on the card and in the list."""
        self._hover(self.place_at(event.position()))

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the pointer any more."""
        self._hover(None)
        super().leaveEvent(event)

    def drawn(self) -> Plan | None:
        """The layout and its list."""
        return self._plan

    def tip(self, n: int) -> str:
        """What the place asks."""
        return self._place(self._index(n)).asks

    def walked_to(self) -> int | None:
        """The place whose button has the keyboard."""
        index = next((i for i, button in enumerate(self.places()) if button.hasFocus()), None)
        return None if index is None else self._place(index).n

    def place_at(self, point: QPointF) -> int | None:
        """Only a place with a card in it can be chosen."""
        n = super().place_at(point)
        return n if n in self._laid else None

    def _hover(self, n: int | None) -> None:
        if n != self._hovered:
            self._hovered = n
            self.show_pointing(n is not None)
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The place clicked also takes the keyboard."""
        n = self.place_at(event.position())
        if n is None or event.button() is not Qt.MouseButton.LeftButton:
            event.ignore()
            return
        self._focus(self._index(n), Qt.FocusReason.MouseFocusReason)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click lays the card's leaf facing."""
        n = self.place_at(event.position())
        if n is None or event.button() is not Qt.MouseButton.LeftButton:
            event.ignore()
            return
        self._choose(self._index(n))

    def _index(self, n: int) -> int:
        return [place.n for place in self._places()].index(n)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Ask for the menu of the card under the pointer, or of the place with the keyboard."""
        n, at = self.menu_place(event)
        if n in self._laid:
            self.menu_asked.emit(self._laid[n][0].card, at)


def spoken(place: Place, laid: dict[int, list[Laid]]) -> str:
    """A place in words: 'Place 2, Crosses it: Five of Wands, reversed'."""
    cards = laid.get(place.n, [])
    label = cards[0].label if cards and cards[0].label else place.label
    told = [f"{card.title}, reversed" if card.reversed else card.title for card in cards]
    return f"Place {place.n}, {label}: {', with '.join(told) or 'no card'}"
