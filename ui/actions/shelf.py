"""The menu Shelf: binders and folders of binders."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog

from binder.store.clock import new_uid
from binder.study.leaves import tabs
from ui.actions.base import Base, leaving
from ui.desk.colours_offered import SPINES
from ui.kit.forms import asking

COURSE = (
    "Three binders, Foundations, Practice and Mastery, with a leaf for each of the 78 cards and a "
    "plan of seven units, will be kept in the folder\n\n{}"
)
NAME = "Name of the course, to stand above its binders:"
TAKE_OFF = (
    "Set “{}” aside? Its file goes into the folder “Set aside” beside the others; move it back to "
    "have it on the shelf again."
)


class ShelfActions(Base):
    """A uid of '' stands for the open binder."""

    def _uid(self, uid: str) -> str:
        return uid or self.open_binder().uid

    def find(self) -> None:
        """Put the keyboard into the find box."""
        self.window.bar.find_field.setFocus()
        self.window.bar.find_field.selectAll()

    def older(self) -> None:
        """Look into an older copy of a binder, and bring back from it."""
        from ui.dialogs.older_dialog import OlderDialog

        self.ask(OlderDialog(self.session, self.theme_look, self.window))

    def new_binder(self) -> None:
        """Add a binder at the right end of the shelf."""
        name = asking.line(self.window, "New binder", "Name on its spine:")
        if name:
            colours = list(SPINES)
            count = len(self.session.shelf.binders)
            binder = self.session.shelf.add(name, colours[count % len(colours)])
            tabs.add_tab(binder, "Notes")
            self.session.open_binder(binder.uid)

    def rename_binder(self, uid: str = "") -> None:
        """Another name on the spine."""
        binder = self.session.shelf.binder(self._uid(uid))
        name = asking.line(self.window, "Rename binder", "Name on its spine:", binder.name)
        if name and name != binder.name:
            with binder.change("Rename binder") as change:
                change.put_info("name", name)

    def recolour_binder(self, uid: str = "", colour: str = "") -> None:
        """Another colour of the spine; asked for when none is given."""
        binder = self.session.shelf.binder(self._uid(uid))
        title = "Colour of the binder"
        if colour == asking.ANOTHER:
            chosen = asking.any_colour(self.window, title, self._shade(binder.colour))
        else:
            chosen = colour or asking.named_colour(self.window, title, SPINES, binder.colour)
        if chosen and chosen != binder.colour:
            with binder.change("Recolour binder") as change:
                change.put_info("colour", chosen)

    def _shade(self, colour: str) -> str:
        return self.theme_look.theme.spine_fill(colour).name()

    def move_spine(self, uid: str, index: int) -> None:
        """Stand a binder elsewhere on the shelf."""
        shelf = self.session.shelf
        others = [binder for binder in shelf.binders if binder.uid != uid]
        others.insert(index, shelf.binder(uid))
        joined = new_uid()
        for place, binder in enumerate(others, start=1):
            if binder.place != place:
                with binder.change("Move binder", joined) as change:
                    change.put_info("place", str(float(place)))

    @leaving
    def take_off(self, uid: str = "") -> None:
        """Set a binder aside; its file stays, in a folder beside it."""
        binder = self.session.shelf.binder(self._uid(uid))
        question = TAKE_OFF.format(binder.name)
        if asking.sure(self.window, "Set binder aside", question, "Set it aside"):
            where = self.session.shelf.remove(binder)
            self.session.said.emit(f"“{binder.name}” lies in {where} now.")
            self.window.show_spines()
            self.session.mend()

    # Shelves

    def open_shelf(self) -> None:
        """Another folder of binders."""
        start = str(self.session.shelf.path.parent)
        folder = QFileDialog.getExistingDirectory(self.window, "Open a shelf", start)
        if folder:
            self.window.changing_shelf.emit(Path(folder))

    def sample(self) -> None:
        """The shelf that came with the program."""
        from ui.session.places import sample_shelf

        self.window.changing_shelf.emit(sample_shelf(self.session.now))

    @leaving
    def decks(self) -> None:
        """The register of decks."""
        from ui.decks.decks import DecksDialog

        self.ask(DecksDialog(self.session, self.theme_look, self.window))

    @leaving
    def spreads(self) -> None:
        """The library of spreads."""
        from ui.laying.spreads.spreads import SpreadsDialog

        self.ask(SpreadsDialog(self.session, self.theme_look, self.window))

    def new_course(self) -> None:
        """Three new binders under a name and in a folder of the user's choice."""
        from ui.session import places

        name = asking.line(self.window, "Begin a course", NAME, places.COURSE)
        if not name:
            return
        folder = places.own_shelf(name)
        words = COURSE.format(folder)
        ways = ("Begin there", "Choose another folder…")
        chosen = asking.decide(self.window, "Begin a course", words, ways)
        if chosen == 1:
            picked = QFileDialog.getExistingDirectory(
                self.window, "Folder for the course", str(folder.parent)
            )
            folder, chosen = Path(picked), 0 if picked else None
        if chosen is not None:
            places.begin_course(folder, self.session.today)
            self.window.changing_shelf.emit(folder)

    def quit(self) -> None:
        """Close the window."""
        self.window.close()
