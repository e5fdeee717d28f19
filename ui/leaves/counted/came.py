"""What came of it: how everything stated came out, in groups, and against how sure one was."""

from __future__ import annotations

from html import escape

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu, QWidget

from binder.counting import noun_for, times
from binder.page.address import Scheme
from binder.reckon import wording
from binder.store.shelf import Shelf
from binder.study.cards import appearances
from binder.study.overview import came
from binder.study.overview.came import By, Came, Group
from ui.kit.figures.group_address import MARK, group_address
from ui.kit.figures.outcomes import OutcomeBar
from ui.kit.figures.sure_picture import SurePicture
from ui.kit.forms.switch import Switch
from ui.kit.lists.tall_list import TallList
from ui.kit.page.heads import Heading
from ui.kit.page.page import Page
from ui.leaves.counted.groups_rows import GroupsDelegate, GroupsHead, GroupsModel
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Spot

KINDS = (By.CARD, By.PLACE, By.SPREAD, By.DECK, By.TOPIC)
NAMES = ("By card", "Place", "Spread", "Deck", "Topic")
NOTHING = (
    "Nothing is stated yet. Say in a reading what you expect, how sure you are and by when; what "
    "came of it is counted here."
)
NONE_OF = {
    By.CARD: "No card lay in a reading with a statement yet.",
    By.PLACE: "No look back has named the card that said it best yet.",
    By.SPREAD: "No reading carries a statement yet.",
    By.DECK: "No reading with a statement names its deck.",
    By.TOPIC: "No reading with a statement names its topic.",
}


def whole(session: Session) -> Came:
    """What came of everything, counted once between changes."""
    return session.kept("came", lambda: came.came(session.shelf))


def group_at(shelf: Shelf, everything: Came, rest: str) -> tuple[By | None, Group]:
    """Kind and group that an address names (without its 'sure:'); all where it is gone."""
    kind, _, key = rest.partition(MARK)
    by = By(kind) if kind in KINDS else None
    for group in everything.groups.get(by, ()) if by else ():
        if group.key == key:
            return by, group
    return None, everything.whole


class CamePage(Page):
    """The left leaf: all that was stated, and the groups it falls into."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look)
        self.bar = OutcomeBar(look)
        self.words = self.prose("What the numbers bear", role="body")
        self.switch, self.head_row = Switch(look, NAMES), GroupsHead(look)
        self.model = GroupsModel(self)
        self.list = TallList(look, "Groups of statements")
        self.list.setModel(self.model)
        self.list.setItemDelegate(GroupsDelegate(look, self.list))
        self.care = self.prose("Read with care", role="caption")
        self.add(self.heading)
        self.add(self.bar, gap=10)
        self.add(self.words, gap=8)
        self.add(self.switch, gap=6)
        self.add(self.head_row, self.list)
        self.add(self.care, gap=8)
        self.rows.addStretch(1)
        self.switch.switched.connect(self._show_groups)
        self.list.chosen.connect(self._choose)
        self.list.menu_asked.connect(self._menu)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Count afresh what the log holds."""
        found, shelf = whole(self.session), self.session.shelf
        of = self.session.kept("readings", lambda: appearances.readings_count(shelf))
        stated = found.whole.stated
        word = noun_for(stated, "statement")
        log = f"{of:,} {noun_for(of, 'reading')}"
        self.heading.say(
            "All binders of this shelf", "What came of it",
            f"{stated:,} {word} in {log}" if stated else log,
        )  # fmt: skip
        self.bar.show_group(found.whole)
        for part in (self.bar, self.switch, self.head_row, self.list, self.care):
            part.setVisible(bool(stated))
        self.words.show_html(_told(self._sentences(found)) if stated else _told([NOTHING]), ())
        if stated:
            self._show_groups()

    def _sentences(self, found: Came) -> list[str]:
        said = [one for one in found.whole.words()[1:] if not one.startswith("Brier")]
        if found.put_off or found.let_go:
            put = f"put off {times(found.put_off)}" if found.put_off else ""
            gone = f"{found.let_go} let go" if found.let_go else ""
            said.append(f"Of the look backs asked for: {', '.join(filter(None, (put, gone)))}.")
        return said

    def _show_groups(self, *_number: int) -> None:
        by, found = KINDS[self.switch.chosen], whole(self.session)
        groups = found.groups.get(by, ())
        self.model.show(groups)
        self.list.fit()
        for part in (self.head_row, self.list):
            part.setVisible(bool(groups))
        said = found.warning(by) if groups else NONE_OF[by]
        self.care.show_html(_soft([wording.SHADED if groups else "", said]), ())

    def _choose(self, row: int) -> None:
        if row >= len(self.model.rows):
            self.model.expand()
            self.list.fit()
            self.list.setCurrentIndex(self.model.index(row, 0))
            return
        group = self.model.rows[row]
        self.followed.emit(group_address(KINDS[self.switch.chosen], group.key))

    def _menu(self, row: int, at: QPoint) -> None:
        if row >= len(self.model.rows):
            return
        group, by = self.model.rows[row], KINDS[self.switch.chosen]
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        ways = [
            ("How sure, how often", group_address(by, group.key)),
            ("All statements", Scheme.SURE.prefix),
        ]
        if by is By.CARD:
            ways.insert(1, ("Lay the card’s leaf facing", Scheme.CARD.to(group.key)))
        for words, where in ways:
            menu.addAction(words).triggered.connect(
                lambda _checked=False, where=where: self.followed.emit(where)
            )
        menu.popup(at)

    def focus_in(self) -> None:
        """The keyboard on the groups."""
        (self.list if not self.list.isHidden() else self).setFocus()


class SurePage(Page):
    """The right leaf: said against came, for all statements or for one group."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, parent)
        self.heading = Heading(look, role="section_title")
        self.picture = SurePicture(look)
        self.words = self.prose("What the numbers bear")
        self.care_head = self.head("Read with care")
        self.care = self.prose("Read with care", role="label")
        self.back = self.prose("All statements", role="label")
        self.add(self.heading)
        self.add(self.picture, gap=6)
        self.add(self.words, gap=8)
        self.add(self.care_head, self.care, gap=4)
        self.add(self.back, gap=6)
        self.rows.addStretch(1)

    def fill(self, spot: Spot, marks: tuple[str, ...]) -> None:
        """Show the group the spot names."""
        by, group = group_at(self.session.shelf, whole(self.session), spot.leaf)
        of = {
            By.CARD: "Readings with {}", By.PLACE: "Where {} said it best",
            By.SPREAD: "Laid as {}", By.DECK: "Laid with {}", By.TOPIC: "Topic: {}",
        }  # fmt: skip
        called = of.get(by, "All statements") if by else "All statements"
        self.heading.say(called.format(group.name), "How sure I was, how often it came")
        self.picture.show_group(group)
        bins = [wording.bin_words(one) for one in group.bins]
        counts = group.words()[0] if by else ""
        told = [_told([one]) for one in (counts, *bins) if one]
        self.words.show_html("".join(told) if bins else _told([counts or NOTHING]), ())
        said = [wording.HALVES, *(wording.score_words(group.record),)]
        for part in (self.care_head, self.care):
            part.setVisible(bool(bins))
        self.care.show_html(_soft(said), ())
        self.back.setVisible(bool(by))
        self.back.show_html(
            f'<p><a href="{Scheme.SURE.prefix}">All statements</a></p>' if by else "", ()
        )

    def foot(self) -> str:
        """Nothing here is kept; it is counted."""
        return "Counted afresh each time it is opened"


def _told(sentences: list[str]) -> str:
    return f"<p>{escape(' '.join(filter(None, sentences)))}</p>"


def _soft(sentences: list[str]) -> str:
    return f'<p class="soft">{escape(" ".join(filter(None, sentences)))}</p>'
