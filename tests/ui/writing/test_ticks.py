"""Ticks of printed handouts in the contents of their tab, and after printing; real clicks."""

import pytest
from PySide6.QtCore import Qt

from binder.study.handouts import on_paper
from binder.study.kinds import LeafKind
from binder.study.leaves import files, leaves, tabs
from tests.ui.driving import click, menu_of_row, pick, settle
from ui.actions.installed import actions_of
from ui.proof.proof import Proof


@pytest.fixture
def clippings(window):
    """The clippings of the second level, with two handouts more, open at their contents."""
    binder = window.session.shelf.binder("Practice")
    tab = tabs.tab(binder, "Clippings")
    file = files.keep_bytes(binder, "m.svg", "image/svg+xml", b"<svg xmlns='x' width='9'/>")
    text = files.markdown_for(file, "m.svg")
    uids = [
        leaves.add_leaf(binder, tab, title, text, kind=LeafKind.HANDOUT) for title in ("A", "B")
    ]
    window.session.open_tab(binder, tab)
    settle()
    return window, binder, tab, uids


def row_of(page, uid):
    model = page.model
    return next(row for row in range(model.rowCount()) if model.entry(row).uid == uid)


def said(page, uid):
    index = page.model.index(row_of(page, uid), 0)
    return index.data(Qt.ItemDataRole.AccessibleTextRole)


def test_the_contents_say_what_is_still_to_print(clippings):
    window, binder, _, uids = clippings
    page = window.cover.leaf("left")
    assert page.heading.accessibleDescription().endswith("3 still to print")
    assert said(page, uids[0]).endswith("still to print")
    on_paper.tick_off(binder, uids)
    settle()
    assert page.heading.accessibleDescription().endswith("1 still to print")
    assert said(page, uids[0]).endswith("printed and filed on paper")
    index = page.model.index(row_of(page, uids[0]), 0)
    assert index.data(Qt.ItemDataRole.ToolTipRole) == "Printed and filed on paper"
    page.list.grab()


def test_ticking_from_the_menu_and_taking_it_away(clippings):

    window, binder, _, uids = clippings
    page = window.cover.leaf("left")
    for words, ticked in (("Tick off as printed", True), ("Untick as printed", False)):
        pick(menu_of_row(page.list, row_of(page, uids[1])), words)
        assert bool(on_paper.ticked(binder, uids[1])) is ticked


def test_leaves_left_out_of_print_are_not_ticked_off(clippings, tmp_path, qtbot):
    window, binder, _, uids = clippings
    leaves.rename(binder, uids[0], "Private: A")
    actions_of(window).print()
    proof = window.desk.stage()
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=20_000)
    proof.printed = None
    proof.no_private.click()
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=20_000)
    proof.save_to(tmp_path / "tab.pdf")
    settle()
    assert proof.tick_button.text() == "Tick 2 handouts off"


def test_ticks_are_offered_after_printing(clippings, tmp_path, qtbot):
    window, binder, tab, _ = clippings
    actions_of(window).print()
    proof = window.desk.stage()
    assert isinstance(proof, Proof)
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=20_000)
    assert not proof.tick_button.isVisible()
    proof.save_to(tmp_path / "tab.pdf")
    settle()
    assert proof.tick_button.text() == "Tick 3 handouts off"
    click(proof.tick_button)
    assert all(on_paper.handouts(binder, tab).values())
    assert not proof.tick_button.isVisible()
    assert binder.gate.undo() == "Tick off as printed"
