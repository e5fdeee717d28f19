"""What happens when a link on a leaf is followed."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from binder.errors import CanMend
from binder.study.leaves import leaves
from ui.actions.base import Base

if TYPE_CHECKING:
    from ui.kit.page.page import Page
    from ui.leaves.handout.filed import FiledPage
    from ui.session.trail import Spot


class LinkDeeds(Base):
    """Where each kind of address leads."""

    def follow(self, page: Page, address: str) -> None:
        """Go where a link on a page leads: `card:`, `leaf:`, `facing:`, `source:`, `tick:`, web."""
        scheme, _, rest = address.partition(":")
        if scheme == "card":
            self.session.face_card(rest)
        elif scheme == "leaf":
            self.session.open_leaf(rest)
        elif scheme == "facing":
            self.session.face_leaf(rest)
        elif scheme == "source":
            self._to_source(rest.partition("#")[0])
        elif scheme in ("year", "print-year", "came", "sure", "month", "draws"):
            self._counted(scheme, rest)
        elif scheme == "look" and page.spot:
            self.session.open_leaf(page.spot.leaf)
            self.window.deeds.look_back()
        elif scheme == "level":
            self.window.deeds.finish_level()
        elif scheme == "across":
            self.window.deeds.across(rest)
        elif scheme == "tick":
            self._tick(page, int(rest))
        elif scheme in ("marks", "pair", "decks") and page.spot:
            self._on_card(page.spot, scheme, rest)
        elif scheme == "file" and page.spot:
            self._to_file(page.spot, rest)
        elif scheme in ("http", "https", "mailto"):
            QDesktopServices.openUrl(QUrl(address))

    def _counted(self, scheme: str, rest: str) -> None:
        """What is counted from the whole log, and the draws for months."""
        deeds = self.window.deeds
        if scheme == "year":
            deeds.year_sheet(rest)
        elif scheme == "print-year":
            deeds.print_year(rest)
        elif scheme == "sure":
            deeds.sure(rest)
        elif scheme == "month":
            deeds.draw_month(rest)
        elif scheme == "came":
            deeds.came()
        else:
            deeds.draws()

    def _on_card(self, spot: Spot, scheme: str, rest: str) -> None:
        """What is done with the picture and the pairs of the card whose leaf that is."""
        deeds = self.window.deeds
        if scheme == "marks":
            deeds.mark_picture(spot, rest)
        elif scheme == "pair":
            deeds.pair_card(spot, rest)
        else:
            deeds.card_faces()

    def _to_source(self, key: str) -> None:
        from binder.study.sources.sources import sources

        found = sources(self.session.shelf).get(key)
        if found is None:
            raise CanMend(f"There is no source leaf with the key “{key}” on this shelf yet.")
        self.session.face_leaf(found.leaf_uid)

    @cached_property
    def filed(self) -> FiledPage:
        """The page that shows kept files, made once."""
        from ui.leaves.handout.filed import FiledPage

        made = FiledPage(self.session, self.window.look)
        made.done.connect(self.window.show_pair)
        return made

    def _to_file(self, spot: Spot, uid: str) -> None:
        """A kept picture or PDF lies facing the leaf that links to it."""
        self.filed.open(spot, uid)
        self.window.lay_stage("file", None, self.filed)
        self.filed.focus_in()

    def _tick(self, page: Page, number: int) -> None:
        from binder.page.lines import tick

        view = self.session.leaf_of(page.spot) if page.spot else None
        if view is not None:
            text = tick(view.text, number)
            leaves.write(view.binder, view.uid, title=view.title, text=text, seen=view.changed)
