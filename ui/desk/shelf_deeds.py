"""What the actions of shelf, look and help do."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from binder.errors import CanMend
from binder.study import tabs
from binder.study.kinds import TAB_KINDS
from ui.desk import asking

if TYPE_CHECKING:
    from ui.desk.window import Window
    from ui.session import Session
    from ui.theme import Look

SPINE_COLOURS = ("spineF", "spineP", "spineM", "major", "cups", "pents", "swords", "wands")
STEP = 0.1


class ShelfDeeds:
    """The verbs of shelf, binders and tabs, of the look of things, and of help."""

    window: Window
    session: Session
    look_: Look

    # Binders

    def new_binder(self) -> None:
        """Add a binder at the right end of the shelf."""
        name = asking.line(self.window, "New binder", "Name on its spine:")
        if name:
            count = len(self.session.shelf.binders)
            binder = self.session.shelf.add(name, SPINE_COLOURS[count % len(SPINE_COLOURS)])
            tabs.add_tab(binder, "Notes")
            self.session.open_binder(binder.uid)

    def rename_binder(self, uid: str) -> None:
        """Another name on the spine."""
        binder = self.session.shelf.binder(uid)
        name = asking.line(self.window, "Rename binder", "Name on its spine:", binder.name)
        if name:
            with binder.change("Rename binder") as change:
                change.put_info("name", name)

    def recolour_binder(self, uid: str, colour: str = "") -> None:
        """Another colour of the spine; asked for when none is given."""
        chosen = colour or asking.colour(self.window, "Colour of the spine")
        if chosen:
            with self.session.shelf.binder(uid).change("Recolour binder") as change:
                change.put_info("colour", chosen)

    def move_spine(self, uid: str, index: int) -> None:
        """Stand a binder elsewhere on the shelf."""
        shelf = self.session.shelf
        others = [binder for binder in shelf.binders if binder.uid != uid]
        others.insert(index, shelf.binder(uid))
        for place, binder in enumerate(others, start=1):
            if binder.place != place:
                with binder.change("Move binder") as change:
                    change.put_info("place", str(float(place)))

    def take_off(self, uid: str) -> None:
        """Take a binder off the shelf; its file stays, in a folder beside it."""
        binder = self.session.shelf.binder(uid)
        question = (
            f"Take “{binder.name}” off the shelf? Its file goes into the folder “Taken off” "
            "beside the others; put it back there to have it on the shelf again."
        )
        if asking.sure(self.window, "Take off the shelf", question, "Take it off"):
            where = self.session.shelf.remove(binder)
            self.session.said.emit(f"“{binder.name}” lies in {where} now.")
            if self.session.shelf.binders:
                self.session.open_binder(self.session.shelf.binders[0].uid)

    # Tabs

    def new_tab(self) -> None:
        """Add a divider to the open binder."""
        binder = self.session.binder
        if binder is None:
            raise CanMend("Open a binder first.")
        kinds = list(TAB_KINDS.values())
        words = [kind.name if kind.key != "plain" else "Plain leaves" for kind in kinds]
        chosen = asking.choice(self.window, "New tab", "What it holds:", words, len(words) - 1)
        if chosen is None:
            return
        usual = kinds[chosen].name
        name = asking.line(self.window, "New tab", "Name on the divider:", usual)
        if name:
            uid = tabs.add_tab(binder, name, kinds[chosen].key)
            self.session.open_tab(binder, tabs.tab(binder, uid))

    def rename_tab(self, uid: str) -> None:
        """Another name on a divider."""
        binder = self.session.binder
        if binder is not None:
            tab = tabs.tab(binder, uid)
            name = asking.line(self.window, "Rename tab", "Name on the divider:", tab.name)
            if name:
                tabs.rename_tab(binder, uid, name)

    def recolour_tab(self, uid: str, colour: str = "") -> None:
        """Another colour of a divider; asked for when none is given."""
        chosen = colour or asking.colour(self.window, "Colour of the divider")
        if chosen and self.session.binder is not None:
            tabs.recolour_tab(self.session.binder, uid, chosen)

    def move_tab(self, uid: str, index: int) -> None:
        """Put a divider in another place."""
        if self.session.binder is not None:
            tabs.move_tab(self.session.binder, uid, index)

    def set_tab_aside(self, uid: str) -> None:
        """Put a divider and all behind it into the drawer."""
        binder = self.session.binder
        if binder is None:
            return
        if len(tabs.tabs(binder)) == 1:
            raise CanMend("A binder keeps at least one tab; add another before setting this aside.")
        name = tabs.tab(binder, uid).name
        tabs.set_tab_aside(binder, uid)
        self.session.said.emit(f"“{name}” lies in the drawer now; Undo brings it back.")
        if self.session.left.tab == uid:
            self.session.open_binder(binder.uid)

    # Shelves

    def open_shelf(self) -> None:
        """Another folder of binders."""
        start = str(self.session.shelf.path.parent)
        folder = QFileDialog.getExistingDirectory(self.window, "Open a shelf", start)
        if folder:
            self.window.changing_shelf.emit(Path(folder))

    def sample(self) -> None:
        """The shelf that came with the program."""
        from ui.places import sample_shelf

        self.window.changing_shelf.emit(sample_shelf())

    def new_course(self) -> None:
        """Three new binders in a folder of the user's choice."""
        from ui.places import begin_course, own_shelf

        words = (
            f"Three binders, Foundations, Practice and Mastery, with a leaf for each of the 78 "
            f"cards and a plan of seven units, will be kept in the folder\n\n{own_shelf()}"
        )
        answers = ("Begin there", "Choose another folder…")
        chosen = asking.choice(self.window, "Begin a course", words, answers)
        if chosen is None:
            return
        folder = own_shelf()
        if chosen == 1:
            picked = QFileDialog.getExistingDirectory(
                self.window, "Folder for the course", str(folder.parent)
            )
            if not picked:
                return
            folder = Path(picked)
        begin_course(folder, self.session.today)
        self.window.changing_shelf.emit(folder)

    # Look and help

    def lamp(self) -> None:
        """The dark theme, or the light one."""
        name = "day" if self.look_.theme.lamp else "lamp"
        self.look_.set_name(name)
        self.window.memory.theme = name

    def larger(self) -> None:
        """Larger letters."""
        self._scale(STEP)

    def smaller(self) -> None:
        """Smaller letters."""
        self._scale(-STEP)

    def _scale(self, step: float) -> None:
        self.look_.set_scale(round(self.look_.theme.scale + step, 2))
        self.window.memory.scale = self.look_.theme.scale

    def full_screen(self) -> None:
        """The whole screen, or back."""
        if self.window.isFullScreen():
            self.window.showNormal()
        else:
            self.window.showFullScreen()

    def find(self) -> None:
        """Put the keyboard into the find box."""
        self.window.bar.find.setFocus()
        self.window.bar.find.selectAll()

    def quit(self) -> None:
        """Close the window."""
        self.window.close()

    def link_choices(self) -> None:
        """The words the user chose to link or not."""
        from ui.desk.choices import LinkChoices

        LinkChoices(self.session, self.window).exec()

    def keys(self) -> None:
        """All keys."""
        from ui.desk.help import KeysDialog

        KeysDialog(self.window).exec()

    def about(self) -> None:
        """Version and places."""
        from ui.desk.help import about_words

        asking.tell(self.window, "About Ringbound", about_words(self.session.shelf))
