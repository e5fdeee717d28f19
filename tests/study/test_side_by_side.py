"""What sources say of a card: cells put right, taken out, and sources made on the way."""

import pytest

from binder.errors import CanMend
from binder.study import leaves, sources, tabs


@pytest.fixture
def star(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    sources.note(binder, uid, "lisle", "Upright", "A light.", "12")
    sources.note(binder, uid, "lisle", "Reversed", "A light, gone elsewhere.")
    return binder, uid


def told(star):
    return [(n.source, n.aspect, n.text, n.locator) for n in sources.notes(*star)]


def test_a_cell_is_put_right_in_its_place(star):
    first = sources.notes(*star)[0]
    sources.change_note(
        star[0], first.uid, source="lisle", aspect=" Imagery ", text=" A jug. ", locator=" p. 12 "
    )
    assert told(star) == [
        ("lisle", "Imagery", "A jug.", "p. 12"),
        ("lisle", "Reversed", "A light, gone elsewhere.", ""),
    ]


def test_two_cells_never_share_a_place(star):
    first = sources.notes(*star)[0]
    with pytest.raises(CanMend, match="under “Reversed” already"):
        sources.change_note(
            star[0], first.uid, source="lisle", aspect="Reversed", text="A light.", locator=""
        )
    assert told(star)[0][1] == "Upright"


@pytest.mark.parametrize(("aspect", "text"), [("", "A light."), ("Upright", " ")])
def test_a_cell_has_an_aspect_and_words(star, aspect, text):
    first = sources.notes(*star)[0]
    with pytest.raises(CanMend, match="under which aspect"):
        sources.change_note(
            star[0], first.uid, source="lisle", aspect=aspect, text=text, locator=""
        )


def test_a_cell_taken_out_comes_back_by_undo(star):
    before = told(star)
    sources.remove_note(star[0], sources.notes(*star)[0].uid)
    assert told(star) == before[1:]
    star[0].gate.undo()
    assert told(star) == before


def test_a_new_source_is_a_leaf_of_the_first_sources_tab(course_shelf):
    made = sources.new_source(course_shelf, "Oriel  Sänger", "The Slow Table")
    again = sources.new_source(course_shelf, "Bo Sanger", "Another")
    alone = sources.new_source(course_shelf, "", "Leaflet from the tin")
    assert (made.key, again.key, alone.key) == ("sanger", "sanger2", "leafletfromthetin")
    assert made.author == "Oriel Sänger"
    binder = course_shelf.home_of(made.leaf_uid)
    view = leaves.leaf(binder, made.leaf_uid)
    assert (binder.name, view.tab, view.kind, view.title) == (
        "Practice", "Sources", "source", "The Slow Table",
    )  # fmt: skip
    assert sources.sources(course_shelf)["sanger"].title == "The Slow Table"
    binder.gate.undo()
    assert "leafletfromthetin" not in sources.sources(course_shelf)


def test_a_shelf_without_a_sources_tab_says_so(shelf):
    tabs.add_tab(shelf.add("One", "spineF"), "Notes")
    with pytest.raises(CanMend, match="tab for sources"):
        sources.new_source(shelf, "A", "B")
