"""What happens when a link on a leaf is followed."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices

from binder.page.address import WEB, Address, Scheme
from binder.study.leaves import leaves
from ui.actions.base import Base
from ui.desk.stage import Stage
from ui.session.trail import Spot

if TYPE_CHECKING:
    from ui.kit.page.page import Page
    from ui.leaves.handout.filed import FiledPage


class LinkActions(Base):
    """Where an address leads; the session knows those of leaves."""

    def follow(self, page: Page, written: str) -> None:
        """Go where a link on a page leads; what is no address leads nowhere."""
        address = Address.parse(written)
        if address is None or self.session.go(address):
            return
        if address.scheme in WEB:
            QDesktopServices.openUrl(QUrl(written))
        elif address.scheme in self._done:
            self._done[address.scheme](address.rest)
        elif page.spot:
            self._on_leaf[address.scheme](page.spot, address)

    @cached_property
    def _done(self) -> dict[Scheme, Callable[[str], None]]:
        """What does not depend on the leaf the link stands on."""
        others = self.others
        return {
            Scheme.PRINT_YEAR: others.print_year,
            Scheme.MONTH: others.draw_month,
            Scheme.ACROSS: others.across,
            Scheme.SOURCES: lambda _: others.sources(),
            Scheme.DRAWS: lambda _: others.draws(),
            Scheme.LEVEL: lambda _: others.finish_level(),
            Scheme.DECKS: lambda _: others.card_faces(),
            Scheme.BEGIN: self._take_up,
        }

    @cached_property
    def _on_leaf(self) -> dict[Scheme, Callable[[Spot, Address], None]]:
        """What is done with the leaf the link stands on."""
        return {
            Scheme.LOOK_BACK: self._look_back,
            Scheme.TICK: self._tick,
            Scheme.FILE: self._to_file,
            Scheme.MARKS: lambda spot, address: self.others.mark_picture(spot, address.rest),
            Scheme.PAIR: lambda spot, address: self.others.pair_card(spot, address.rest),
        }

    def _take_up(self, what: str) -> None:
        """What an empty tab offers."""
        others = self.others
        offered: dict[str, Callable[[], None]] = {
            "leaf": others.new_leaf, "reading": others.new_reading, "plan": others.plan,
            "handouts": others.file_handouts, "sources": others.take_sources,
            "drawer": others.drawer,
        }  # fmt: skip
        if what in offered:
            offered[what]()

    def _look_back(self, spot: Spot, _address: Address) -> None:
        self.session.open_leaf(spot.leaf)
        self.others.look_back()

    @cached_property
    def filed(self) -> FiledPage:
        """The page that shows kept files, made once."""
        from ui.leaves.handout.filed import FiledPage

        made = FiledPage(self.session, self.window.look)
        made.done.connect(self.window.show_pair)
        return made

    def _to_file(self, spot: Spot, address: Address) -> None:
        """A kept picture or PDF lies facing the leaf that links to it."""
        self.filed.open(spot, address.key)
        self.window.lay_stage(Stage.FILE, None, self.filed)
        self.filed.focus_in()

    def _tick(self, spot: Spot, address: Address) -> None:
        from binder.page.lines import tick

        view = self.session.leaf_of(spot)
        if view is not None:
            text = tick(view.text, address.number)
            leaves.write(view.binder, view.uid, title=view.title, text=text, seen=view.changed)
