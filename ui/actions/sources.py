"""Sources: one across cards, carried in and out as files."""

from __future__ import annotations

from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from binder.counting import counted
from binder.store.whole import meant
from binder.study.kinds import SOURCES
from binder.study.leaves.tabs import first_of_kind
from binder.study.sources.sources import home, source_of
from ui.actions.base import Base, leaving

if TYPE_CHECKING:
    from ui.leaves.source.across import AcrossScreen

READ = "Sources (*.bib *.json)"
WRITTEN = "BibTeX (*.bib);;CSL-JSON (*.json)"


class SourceActions(Base):
    """The screen is made when it is first asked for, and used again."""

    @cached_property
    def across_screen(self) -> AcrossScreen:
        """A source across cards."""
        from ui.leaves.source.across import AcrossScreen

        made = AcrossScreen(self.session, self.theme_look)
        made.closed.connect(self.window.back_to_leaves)
        made.card_wanted.connect(self.session.open_leaf)
        made.print_wanted.connect(lambda: self.window.guard(self.print_across))
        return made

    @leaving
    def sources(self) -> None:
        """The leaves of all sources, behind the tab for them: of this binder, else of the first."""
        shelf, here = self.session.shelf, self.session.binder
        tab = first_of_kind(here, SOURCES) if here is not None else None
        self.window.back_to_leaves()
        self.session.open_tab(*((here, tab) if here is not None and tab else home(shelf)))

    @leaving
    def across(self, key: str = "") -> None:
        """What the source at the left, or the one of that key, says of many cards."""
        view = self.session.leaf_of(self.session.left)
        open_source = source_of(view.binder, view.uid) if view is not None else None
        key = key or (open_source.key if open_source else "")
        self.window.back_to_leaves()
        self.across_screen.open(key)
        self.window.lay_instead(self.across_screen)

    def print_across(self) -> None:
        """The table that lies open, before it is printed."""
        screen = self.across_screen
        source, name, cards = screen.source, screen.set_name, screen.cards
        if source is not None:
            others = self.others
            others.lay_proof(lambda: others.proof.open_across(source, name, cards))

    @leaving
    def take_sources(self) -> None:
        """Read a file of sources, and take in what the user agrees to."""
        name, _ = QFileDialog.getOpenFileName(self.window, "Take sources in", "", READ)
        if not name:
            return
        from binder.carry import references
        from ui.dialogs.sources_dialog import SourcesDialog

        reviewed = references.review(self.session.shelf, Path(name))
        dialog = SourcesDialog(self.session, self.theme_look, reviewed, self.window)
        self.ask(dialog)
        if dialog.taken:
            binder, tab = home(self.session.shelf)
            self.session.said.emit(
                f"Took in {counted(len(dialog.taken), 'source')} behind {tab.name}, in "
                f"{binder.name}; Undo takes them out again."
            )

    def save_sources(self) -> None:
        """Write all sources of the shelf to a file that other programs can read."""
        start = str(Path.home() / "sources.bib")
        name, kind = QFileDialog.getSaveFileName(self.window, "Save sources as", start, WRITTEN)
        if not name:
            return
        from binder.carry import references

        suffix = ".json" if "json" in kind else ".bib"
        path = meant(Path(name), suffix, *references.SUFFIXES)
        count = references.carry_out(self.session.shelf, path)
        self.session.said.emit(f"Saved {counted(count, 'source')} as {path}.")
