"""What all actions start from: the window, its session, and what lies open."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TYPE_CHECKING, Concatenate, ParamSpec, Protocol, TypeVar, cast

from PySide6.QtWidgets import QDialog

from binder.errors import CanMend
from binder.store.file import Binder
from binder.study.leaves.leaves import LeafView
from binder.study.leaves.tabs import TabView
from ui.desk.window import Window
from ui.session.trail import Spot

if TYPE_CHECKING:
    from ui.kit.page.page import Page
    from ui.proof.proof import Proof

_P = ParamSpec("_P")
_R = TypeVar("_R")
_A = TypeVar("_A", bound="Base")


class Others(Protocol):
    """What actions of one kind ask of those of another; `Actions` has it all."""

    @property
    def proof(self) -> Proof: ...  # noqa: D102
    def across(self, key: str = "") -> None: ...  # noqa: D102
    def came(self) -> None: ...  # noqa: D102
    def card_faces(self) -> None: ...  # noqa: D102
    def change_reading(self) -> None: ...  # noqa: D102
    def draw_month(self, month: str) -> None: ...  # noqa: D102
    def draws(self) -> None: ...  # noqa: D102
    def finish_level(self) -> None: ...  # noqa: D102
    def follow(self, page: Page, address: str) -> None: ...  # noqa: D102
    def lay_proof(self, opened: Callable[[], None]) -> None: ...  # noqa: D102
    def look_back(self) -> None: ...  # noqa: D102
    def mark_picture(self, spot: Spot | None = None, deck: str = "") -> None: ...  # noqa: D102
    def new_reading(self) -> None: ...  # noqa: D102
    def pair_card(self, spot: Spot | None = None, which: str = "") -> None: ...  # noqa: D102
    def print_year(self, year: str) -> None: ...  # noqa: D102
    def recall(self) -> None: ...  # noqa: D102
    def sources(self) -> None: ...  # noqa: D102
    def sure(self, group: str = "") -> None: ...  # noqa: D102
    def new_leaf(self) -> None: ...  # noqa: D102
    def plan(self) -> None: ...  # noqa: D102
    def file_handouts(self) -> None: ...  # noqa: D102
    def take_sources(self) -> None: ...  # noqa: D102
    def drawer(self) -> None: ...  # noqa: D102
    def who_helps(self) -> None: ...  # noqa: D102
    def write(self) -> None: ...  # noqa: D102
    def year_sheet(self, year: str = "") -> None: ...  # noqa: D102


class Base:
    """A window's actions; each raises CanMend where what it needs does not lie open."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.session = window.session
        self.theme_look = window.look
        self.others = cast(Others, self)

    def ask(self, dialog: QDialog) -> bool:
        """Lay a dialog open until it is closed, True if it was taken; then it goes, and listens to
        nothing any more.
        """
        taken = dialog.exec()
        dialog.deleteLater()
        return bool(taken)

    def open_view(self) -> LeafView:
        """The leaf at the left."""
        view = self.session.leaf_of(self.session.left)
        if view is None:
            raise CanMend("Open a leaf first.")
        return view

    def open_binder(self) -> Binder:
        """The open binder."""
        if self.session.binder is None:
            raise CanMend("Open a binder first.")
        return self.session.binder

    def open_tab(self) -> TabView:
        """The tab whose leaf lies at the left."""
        if self.session.tab is None:
            raise CanMend("This binder has no tab yet; add one first.")
        return self.session.tab


def leaving(does: Callable[Concatenate[_A, _P], _R]) -> Callable[Concatenate[_A, _P], _R]:
    """An action before which what is being written at the left is saved."""

    @wraps(does)
    def saved_first(self: _A, /, *given: _P.args, **named: _P.kwargs) -> _R:
        self.session.leaving.emit()
        return does(self, *given, **named)

    return saved_first
