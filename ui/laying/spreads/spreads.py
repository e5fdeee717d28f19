"""The library of spreads: how each lies, what its places ask, and where it is published."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFileDialog,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from binder.cards.spreads import Spread
from binder.counting import counted, spelled_out
from binder.errors import CanMend
from binder.study.spreads import spread_files, spreads
from binder.study.spreads.spreads import SpreadView
from ui.kit.forms import asking
from ui.kit.forms.flow import Flow
from ui.kit.forms.room import open_at
from ui.kit.layout.layout_view import LayoutView
from ui.kit.lists.register import Entry
from ui.kit.lists.register_dialog import RegisterDialog
from ui.kit.page.heads import Heading, SectionHead
from ui.kit.scroll import ScrollArea
from ui.laying.spreads.spread_editor import SpreadEditor
from ui.look.theme import Look
from ui.session.session import Session

NEW = Spread("", "", "", ())
FILES = f"Spreads (*{spread_files.SUFFIX});;All files (*)"


class SpreadsDialog(RegisterDialog):
    """Spreads of the program can be duplicated; the owner's own can be changed and retired."""

    touched = ("own_spread", "reading")
    no_binder = "Add a binder to the shelf first; a spread of your own is kept in one."

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(session, look, "Spreads", parent)
        self._views: dict[str, SpreadView] = {}
        self._make()
        self._lay_out()
        self._connect()
        self.restyle()
        open_at(self, look, 980, 660)
        self.refresh()

    def _make(self) -> None:
        look = self._look
        self.heading = Heading(look, role="section_title")
        self.layout_view = LayoutView(look)
        self.places_head, self.places = SectionHead(look, "What each place asks"), QLabel()
        self.places.setTextFormat(Qt.TextFormat.PlainText)
        self.places.setWordWrap(True)
        self.places.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        named = {
            "new": "New spread…", "open": "Open a file…", "change": "Change…",
            "duplicate": "Duplicate", "rename": "Rename…", "retire": "Set aside",
            "save": "Save to a file…", "shut": "Close",
        }  # fmt: skip
        self.buttons = {name: QPushButton(words) for name, words in named.items()}
        for button in self.buttons.values():
            button.setAutoDefault(False)

    def _lay_out(self) -> None:
        left = QVBoxLayout()
        left.addWidget(self.list, 1)
        left.addWidget(self.buttons["new"])
        left.addWidget(self.buttons["open"])
        page = QWidget()
        leaf = QVBoxLayout(page)
        for widget in (self.heading, self.layout_view, self.places_head, self.places):
            leaf.addWidget(widget)
        leaf.addStretch(1)
        scroll = ScrollArea()
        scroll.hold(page)
        self._tools = Flow()
        for name in ("change", "duplicate", "rename", "retire", "save", "shut"):
            self._tools.addWidget(self.buttons[name])
        right = QVBoxLayout()
        right.addWidget(scroll, 1)
        right.addWidget(self.wrong)
        right.addWidget(self._tools)
        self._both.addLayout(left, 4)
        self._both.addLayout(right, 9)
        self._columns = (left, leaf, right)

    def _connect(self) -> None:
        doing: dict[str, Callable[[], None]] = {
            "new": self.make_new, "open": self._ask_open, "change": self.change,
            "duplicate": self.duplicate, "rename": self.rename, "retire": self.retire,
            "save": self._ask_save,
        }  # fmt: skip
        for name, verb in doing.items():
            self.buttons[name].clicked.connect(lambda _checked=False, verb=verb: self.guard(verb))
        self.buttons["shut"].clicked.connect(self.reject)
        self.list.picked.connect(self._show)
        self.list.doubleClicked.connect(lambda _index: self.guard(self.change))

    def restyle(self) -> None:
        """Take up the theme of now."""
        super().restyle()
        px = self._look.theme.px
        self._tools.set_gaps(px(8), px(6))
        self.places.setFont(self._look.theme.font("list"))

    def guard(self, verb: Callable[..., None], *values: object) -> None:
        """What was wrong before is wrong no longer."""
        self.wrong.say("")
        super().guard(verb, *values)

    def _here(self) -> SpreadView:
        return self._views[self.list.key]

    def _own(self) -> SpreadView:
        view = self._here()
        if not view.own:
            raise CanMend(f"{view.spread.name} came with the program; duplicate it to change it.")
        return view

    # Showing

    def refresh(self, key: str = "") -> None:
        """List the library anew, keeping the spread that is shown."""
        uses = spreads.uses(self._session.shelf)
        found = spreads.library(self._session.shelf, retired=True)
        self._views = {view.spread.key: view for view in found}
        listed = [
            Entry(key, view.spread.name, _told(view, uses.get(key, 0)), bool(view.retired))
            for key, view in self._views.items()
        ]
        self.list.show_entries(listed, key)

    def _show(self, key: str) -> None:
        view = self._views.get(key)
        if view is None:
            return
        spread = view.spread
        whose = "Your own" if view.own else "Came with the program"
        self.heading.say(whose, spread.name, spread.source)
        self.layout_view.show_reading(spread, ())
        self.places.setText("\n".join(_line(place.n, place.label, place.asks)
                                      for place in spread.places))  # fmt: skip
        for name in ("change", "rename", "retire"):
            self.buttons[name].setEnabled(view.own)
        self.buttons["retire"].setText("Bring back" if view.retired else "Set aside")
        self.wrong.say("")

    # Doing

    def make_new(self) -> None:
        """Make a spread from an empty table."""
        self._edit(NEW, self._add)

    def _add(self, spread: Spread) -> None:
        self._pick(spreads.add_spread(self._session.shelf, self.binder(), spread))

    def change(self) -> None:
        """Change the spread that is shown, if it is the owner's."""
        view = self._own()

        def write(spread: Spread) -> None:
            spreads.change_spread(self._session.shelf, self.binder(), view.uid, spread)

        self._edit(view.spread, write)

    def _edit(self, spread: Spread, write: Callable[[Spread], None]) -> None:
        editor = SpreadEditor(self._look, spread, write, self)
        editor.exec()
        editor.deleteLater()

    def duplicate(self) -> None:
        """Put a copy into the library."""
        spread = self._here().spread
        self._pick(spreads.duplicate(self._session.shelf, self.binder(), spread))

    def rename(self) -> None:
        """Ask for another name."""
        view = self._own()
        name = asking.line(self, "Rename spread", "Name of the spread:", view.spread.name)
        if name:
            spreads.rename(self._session.shelf, self.binder(), view.uid, name)

    def retire(self) -> None:
        """Offer it no longer, or again."""
        view = self._own()
        verb = spreads.bring_back if view.retired else spreads.retire
        verb(self._session.shelf, self.binder(), view.uid)

    def _pick(self, uid: str) -> None:
        self.refresh(spreads.spread_called(self._session.shelf, uid).key)

    # Files

    def _ask_save(self) -> None:
        spread = self._here().spread
        start = spread.key + spread_files.SUFFIX
        chosen, _ = QFileDialog.getSaveFileName(self, "Save the spread", start, FILES)
        if chosen:
            self.save_to(Path(chosen))

    def save_to(self, path: Path) -> None:
        """Save the spread that is shown to a file."""
        self.wrong.say(f"Saved as {spread_files.save(self._here().spread, path)}.")

    def _ask_open(self) -> None:
        chosen, _ = QFileDialog.getOpenFileName(self, "Open a spread", "", FILES)
        if chosen:
            self.open_from(Path(chosen))

    def open_from(self, path: Path) -> None:
        """Put the spread in a file into the library; where its name is taken it gets another."""
        spread = spread_files.opened(path)
        known = {view.spread.name.casefold(): view.spread for view in self._views.values()}
        same = known.get(spread.name.casefold())
        if same is not None and same.places == spread.places:
            raise CanMend(f"“{spread.name}” is in the library already, just as in this file.")
        name, number = spread.name, 2
        while name.casefold() in known:
            name, number = f"{spread.name} {number}", number + 1
        self._pick(
            spreads.add_spread(self._session.shelf, self.binder(), replace(spread, name=name))
        )


def _told(view: SpreadView, times: int) -> str:
    """'ten places; 12 readings'."""
    count = len(view.spread.places)
    told = spelled_out(count, "place")
    if times:
        told += f"; {counted(times, 'reading')}"
    return f"retired; {told}" if view.retired else told


def _line(n: int, label: str, asks: str) -> str:
    return f"{n}  {label}: {asks}" if asks else f"{n}  {label}"
