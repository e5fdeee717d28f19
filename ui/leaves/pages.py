"""Which page shows which leaf. A page is made once a side and then refilled."""

from __future__ import annotations

from importlib import import_module

from binder.study.kinds import LeafKind
from ui.kit.page.page import Page
from ui.look.theme import Look
from ui.session.session import Session
from ui.session.trail import Show, Spot

CONTENTS = "contents"
PAGES: dict[str, tuple[str, str]] = {
    CONTENTS: ("ui.leaves.contents.contents", "ContentsPage"),
    Show.YEAR: ("ui.leaves.counted.year", "YearPage"),
    Show.CAME: ("ui.leaves.counted.came", "CamePage"),
    Show.SURE: ("ui.leaves.counted.came", "SurePage"),
    LeafKind.PLAIN: ("ui.leaves.contents.plain", "PlainPage"),
    LeafKind.READING: ("ui.leaves.reading.reading", "ReadingPage"),
    LeafKind.CARD: ("ui.leaves.card.card", "CardPage"),
    LeafKind.SOURCE: ("ui.leaves.source.source", "SourcePage"),
    LeafKind.HANDOUT: ("ui.leaves.handout.handout", "HandoutPage"),
    LeafKind.PLAN: ("ui.leaves.course.plan", "PlanPage"),
}
"""Module and class of each kind of page, imported when the first such leaf is opened."""


class Pages:
    """The pages of one side of the open binder."""

    def __init__(self, session: Session, look: Look) -> None:
        self._session, self._look = session, look
        self._made: dict[str, Page] = {}

    def page(self, spot: Spot) -> Page | None:
        """The page that can show `spot`, not yet filled; None where there is nothing to show."""
        if spot.show is Show.CONTENTS and spot.tab:
            return self._of(CONTENTS)
        if spot.show.counted:
            return self._of(spot.show)
        view = self._session.leaf_of(spot)
        return self._of(view.kind) if view else None

    def all(self) -> list[Page]:
        """The pages made so far."""
        return list(self._made.values())

    def _of(self, kind: str) -> Page:
        if kind not in self._made:
            module, name = PAGES[kind]
            self._made[kind] = getattr(import_module(module), name)(self._session, self._look)
        return self._made[kind]
