"""Every kind of leaf and tab is known wherever kinds are dealt with."""

from importlib import import_module
from typing import get_args

import pytest

from binder.carry.leaf_fronts import FRONTS
from binder.carry.texts import Holds
from binder.paper.colours import print_colours
from binder.study.kinds import LOG, PLAN, SOURCES, TAB_KINDS, LeafKind
from ui.kit.page.page import Page
from ui.leaves.pages import PAGES


@pytest.mark.parametrize("kind", LeafKind)
def test_every_kind_of_leaf_is_printed_by_the_file_of_its_name(kind):
    assert callable(import_module(f"binder.paper.leaves.{kind}").printed)


@pytest.mark.parametrize("kind", LeafKind)
def test_every_kind_of_leaf_has_a_page(kind):
    module, name = PAGES[kind]
    assert issubclass(getattr(import_module(module), name), Page)


def test_every_kind_of_leaf_can_be_written_as_text():
    """The leaf of a plan is laid by the builder; what is written are its units."""
    texts = [one for one in get_args(Holds) if one is not type(None)]
    assert {one.kind_of_leaf for one in texts} | {LeafKind.PLAN} == set(LeafKind)
    assert len(FRONTS) == len(texts) + 1
    assert FRONTS[-1][0] == set()


def test_every_kind_of_tab_is_whole():
    assert all(key == kind.key and kind.name for key, kind in TAB_KINDS.items())
    assert {kind.colour for kind in TAB_KINDS.values()} <= print_colours().keys()
    assert {PLAN, LOG, SOURCES, "plain"} <= TAB_KINDS.keys()
    assert {kind.leaf for kind in TAB_KINDS.values() if kind.arcana} == {LeafKind.CARD}
