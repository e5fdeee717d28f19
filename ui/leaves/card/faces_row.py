"""The faces of a card: one beside its head, or those of several decks side by side."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from PySide6.QtCore import QPoint, QRect, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QMenu, QSizePolicy, QVBoxLayout, QWidget

from binder.cards.facts import Card
from binder.cards.titles import STANDARD
from binder.page.address import Scheme
from binder.page.layout.boxes import RATIO
from binder.study.cards.imagery import Mark, on_picture
from binder.study.decks.shown_faces import Picture
from ui.kit.faces.faces import FaceCache
from ui.kit.guard import painting
from ui.kit.prose.prose import Prose
from ui.leaves.card.card_head import EDGE, printed
from ui.leaves.card.marked_face import MarkedFace
from ui.look.theme import Look

FACE = 154
"""The widest a face is, in pixels at scale 1."""
NARROWEST = 84
"""Faces side by side are not narrower; more of them make another row."""
GAP = 14
BETWEEN = 6
MARK, CHOOSE = Scheme.MARKS.prefix, Scheme.DECKS.prefix
"""Addresses of the links below the faces; after the first comes the uid of a deck, or nothing."""


class FacesRow(QWidget):
    """Faces with the names of their decks below, and what can be done with them."""

    followed = Signal(str)
    """MARK with a deck, or CHOOSE."""
    pointed = Signal(str)
    """Uid of the mark under the pointer, or ''."""
    clicked = Signal(str)
    """Uid of the mark that was clicked."""

    def __init__(self, look: Look, faces: FaceCache, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look, self._cache = look, faces
        self._pictures: list[Picture] = []
        self._each = self._room = 0
        self._said = ""
        self.titles = STANDARD
        """What the deck in use calls the cards."""
        self.faces: list[MarkedFace] = []
        self.row = _Named(look, self)
        self.faces.append(self._made())
        self.words = Prose(look, role="caption")
        self.words.setAccessibleName("What can be done with the picture")
        self.words.followed.connect(self.followed)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        column = QVBoxLayout(self)
        column.setSpacing(0)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.row)
        column.addWidget(self.words)

    @property
    def several(self) -> bool:
        """Whether more than one face is shown, which takes a row of the leaf's whole width."""
        return len(self._pictures) > 1

    def show_faces(
        self, card: Card | None, pictures: Sequence[Picture], marks: Sequence[Mark], *, choice: bool
    ) -> None:
        """Show a card in these pictures; `choice` where there are others to choose from."""
        self._pictures = list(pictures) if card else []
        while len(self.faces) < len(self._pictures):
            made = self._made()
            self.setTabOrder(self.faces[-1], made)
            self.faces.append(made)
        for face in self.faces[len(self._pictures) :]:
            face.hide()
        for face, picture in zip(self.faces, self._pictures, strict=False):
            face.show_card(card, picture.deck, self.titles)
            face.show_marks(on_picture(marks, picture.deck))
            if self.several and card:
                face.setAccessibleName(
                    f"The face of {self.titles.called(card.key)}, {picture.name}"
                )
        links = [_link(MARK, "Mark the picture…")]
        if choice:
            links.append(_link(CHOOSE, "Decks shown…"))
        said = f"<p>{' &nbsp; '.join(links)}</p>"
        if said != self._said:  # it is the same for nearly every card
            self._said = said
            self.words.show_html(said)
        self.setVisible(bool(self._pictures))
        self._fit()

    def _made(self) -> MarkedFace:
        face, at = MarkedFace(self._look, self._cache, self.row), len(self.faces)
        face.pointed.connect(self.pointed)
        face.clicked.connect(self.clicked)
        face.opened.connect(lambda: self.followed.emit(self._address(at)))
        face.menu_asked.connect(partial(self._menu, at))
        return face

    def _address(self, at: int) -> str:
        return f"{MARK}{self._pictures[at].deck}"

    def _menu(self, at: int, where: QPoint) -> None:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("&Mark the picture…", lambda: self.followed.emit(self._address(at)))
        menu.addAction("&Decks on card leaves…", lambda: self.followed.emit(CHOOSE))
        menu.popup(where)

    def ahead(self, card: Card, pictures: Sequence[Picture]) -> list[Callable[[], object]]:
        """What draws the faces of another card as this row would show them."""
        _, wide = self._measured(len(pictures))
        theme, ratio = self._look.theme, self.devicePixelRatioF()
        return [
            partial(
                self._cache.of(one.deck).face, card, wide, theme, ratio=ratio,
                **printed(card, self.titles),
            )
            for one in pictures
        ]  # fmt: skip

    def light(self, uid: str) -> None:
        """Let one mark stand out on whatever face it is."""
        for face in self.faces:
            face.light(uid)

    # Places

    def set_room(self, each: int, room: int) -> None:
        """`each` is the width of a single face, `room` that of the leaf, for several."""
        if (each, room) != (self._each, self._room):
            self._each, self._room = each, room
            self._fit()

    def _fit(self) -> None:
        """Give the faces their places, in one row or more."""
        if not self._pictures or not self._each:
            return
        theme, gap = self._look.theme, self._look.theme.px(GAP)
        across, wide = self._measured(len(self._pictures))
        line = round(theme.line("caption")) if self.several else 0
        pitch = round(wide * RATIO) + 2 * EDGE + line
        shown = self.faces[: len(self._pictures)]
        for at, face in enumerate(shown):
            face.set_width(wide)
            row, column = divmod(at, across)
            face.move(column * (wide + 2 * EDGE + gap), row * (pitch + theme.px(BETWEEN)))
        names = [one.name for one in self._pictures] if self.several else []
        width = self._room if self.several else wide + 2 * EDGE
        self.row.setFixedSize(width, shown[-1].y() + pitch)
        self.row.show_names(dict(zip(shown, names, strict=False)), line)
        self.setFixedWidth(width)

    def _measured(self, count: int) -> tuple[int, int]:
        """How many of so many faces stand in a row, and how wide each is."""
        if count < 2:
            return 1, self._each
        theme = self._look.theme
        gap = theme.px(GAP)
        fits = max(1, (self._room + gap) // (theme.px(NARROWEST) + gap))
        across = min(count, fits)
        most = (self._room - (across - 1) * gap) // across - 2 * EDGE
        return across, min(theme.px(FACE), most)


def _link(address: str, words: str) -> str:
    return f'<a href="{address}"><span class="soft">{words}</span></a>'


class _Named(QWidget):
    """Holds the faces and paints the names of their decks below them."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._names: dict[MarkedFace, str] = {}
        self._line = 0

    def show_names(self, names: dict[MarkedFace, str], line: int) -> None:
        """The name under each face, in a line so many pixels high."""
        self._names, self._line = names, line
        self.update()

    @painting
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Names too long for the width of a face are cut."""
        theme, painter = self._look.theme, QPainter(self)
        painter.setFont(theme.font("caption"))
        painter.setPen(theme["inksoft"])
        metrics = QFontMetrics(painter.font())
        for face, name in self._names.items():
            room = QRect(face.x() + EDGE, face.geometry().bottom(), face.width() - EDGE, self._line)
            words = metrics.elidedText(name, Qt.TextElideMode.ElideRight, room.width())
            painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter), words)
