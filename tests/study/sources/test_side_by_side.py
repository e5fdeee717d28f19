"""What sources say of a card: cells put right, put in order, taken out; sources made on the way."""

import pytest

from binder.errors import CanMend
from binder.store.schema import SourceNote
from binder.study.leaves import leaves, tabs
from binder.study.sources import sources, tables


@pytest.fixture
def star(course_shelf):
    binder, uid = course_shelf.card_leaf("major-17")
    sources.note(binder, uid, "lisle", "Upright", "A light.", "12")
    sources.note(binder, uid, "lisle", "Reversed", "A light, gone elsewhere.")
    sources.note(binder, uid, "orme", "Reversed", "A lamp out.", "7")
    return binder, uid


def told(star):
    return [(n.source, n.aspect, n.text, n.locator) for n in sources.notes(*star) if n.text]


def shape(star):
    table = sources.side_by_side(*star, {})
    return [one.key for one in table.sources], list(table.aspects)


def test_a_cell_is_put_right_in_its_place(star):
    sources.note(*star, "lisle", " Upright ", " A jug. ", " p. 12 ")
    assert told(star)[0] == ("lisle", "Upright", "A jug.", "p. 12")
    with pytest.raises(CanMend, match="under which aspect"):
        sources.note(*star, "lisle", " ", "Words")


def test_rows_begun_stand_in_the_table_but_say_nothing(star):
    said = shape(star)
    sources.begin(*star, [("bede", "Upright"), ("orme", "At night")], "Add a column")
    table = sources.side_by_side(*star, {}, empty=True)
    assert [one.key for one in table.sources] == ["lisle", "orme", "bede"]
    assert "At night" in table.aspects
    assert shape(star) == said
    sources.begin(*star, [("lisle", "Upright")], "Add a row")
    assert told(star)[0][2] == "A light."


def test_a_new_cell_stands_with_its_source_and_its_aspect(star):
    sources.note(*star, "orme", "Upright", "A lamp.")
    sources.note(*star, "lisle", "Imagery", "Two jugs.")
    assert [one[:2] for one in told(star)] == [
        ("lisle", "Upright"), ("lisle", "Reversed"), ("lisle", "Imagery"),
        ("orme", "Upright"), ("orme", "Reversed"),
    ]  # fmt: skip


def test_sets_of_cards_are_those_the_pack_is_made_of():
    """Twenty-two trumps, four suits of fourteen, four courts of each, four cards of each rank."""
    courts = ["wands-11", "wands-12", "wands-13", "wands-14"]
    assert list(tables.SETS["Courts of Wands"]) == courts
    assert [len(tables.SETS[f"Courts of {suit}"]) for suit in ("Cups", "Swords", "Pentacles")] == [
        4, 4, 4,
    ]  # fmt: skip
    assert len(tables.SETS["Major Arcana"]) == 22
    assert set(tables.SETS["Sixes"]) == {"wands-06", "cups-06", "swords-06", "pentacles-06"}
    assert set(tables.SETS["Pages"]) == {"wands-11", "cups-11", "swords-11", "pentacles-11"}
    assert set(tables.SETS["Aces"]) == {"wands-01", "cups-01", "swords-01", "pentacles-01"}


def test_one_source_across_a_set(course_shelf, star):
    moon = course_shelf.card_leaf("major-18")
    sources.note(*moon, "lisle", "Imagery", "Two dogs.", "14")
    sources.note(*moon, "lisle", "Upright", "A path.")
    made = sources.SourceView("", "lisle", "Upside Down", {})
    table = tables.across(course_shelf, made, ["major-18", "major-17", "extra-01"])
    assert [one.key for one in table.cards] == ["major-18", "major-17"]
    assert [(one.binder, one.leaf_uid) for one in table.cards] == [moon, star]
    assert table.aspects == (*sources.USUAL, *(a for a in ("Imagery",) if a not in sources.USUAL))
    said = {where: (cell.text, cell.locator) for where, cell in table.cells.items()}
    assert said == {
        ("major-18", "Imagery"): ("Two dogs.", "14"), ("major-18", "Upright"): ("A path.", ""),
        ("major-17", "Upright"): ("A light.", "12"),
        ("major-17", "Reversed"): ("A light, gone elsewhere.", ""),
    }  # fmt: skip
    assert tables.spoken_of(course_shelf, "lisle") == ("major-17", "major-18")
    assert tables.spoken_of(course_shelf, "orme") == ("major-17",)
    assert tables.spoken_of(course_shelf, "nobody") == ()


def test_a_cell_emptied_comes_back_by_undo(star):
    before = told(star)
    sources.note(*star, "lisle", "Upright", " ")
    assert told(star) == before[1:]
    star[0].gate.undo()
    assert told(star) == before


def test_a_new_cell_stands_with_its_source_and_aspect(star):
    sources.note(*star, "orme", "Imagery", "Two jugs.")
    sources.note(*star, "bede", "Upright", "A guide.")
    assert shape(star) == (["lisle", "orme", "bede"], ["Upright", "Reversed", "Imagery"])


def test_columns_and_rows_stand_as_they_are_arranged(star):
    tables.arrange(*star, ["orme", "lisle"], ["Reversed", "Upright"])
    assert shape(star) == (["orme", "lisle"], ["Reversed", "Upright"])
    sources.note(*star, "orme", "Upright", "Dawn.")
    sources.note(*star, "bede", "Imagery", "A bird.")
    assert shape(star) == (["orme", "lisle", "bede"], ["Reversed", "Upright", "Imagery"])
    star[0].gate.undo()
    star[0].gate.undo()
    star[0].gate.undo()
    assert shape(star) == (["lisle", "orme"], ["Upright", "Reversed"])


def test_cells_of_an_older_file_stand_as_they_were_written(star):
    order = {("lisle", "Reversed"): 4.0, ("orme", "Reversed"): 5.0, ("lisle", "Upright"): 6.0}
    with star[0].change("Write as before") as change:
        for cell in sources.notes(*star):
            change.edit(SourceNote, cell.uid, place=order[cell.source, cell.aspect])
    assert shape(star) == (["lisle", "orme"], ["Reversed", "Upright"])
    sources.note(*star, "orme", "Upright", "Dawn.")
    assert shape(star) == (["lisle", "orme"], ["Reversed", "Upright"])
    tables.arrange(*star, ["orme", "lisle"], ["Upright", "Reversed"])
    assert shape(star) == (["orme", "lisle"], ["Upright", "Reversed"])


def test_a_row_gets_another_name(star):
    tables.rename_aspect(*star, "Reversed", " Turned  over ")
    assert shape(star)[1] == ["Upright", "Turned over"]
    with pytest.raises(CanMend, match="a row “Upright” already"):
        tables.rename_aspect(*star, "Turned over", "Upright")
    with pytest.raises(CanMend, match="needs a name"):
        tables.rename_aspect(*star, "Upright", " ")


@pytest.mark.parametrize(
    ("verb", "name", "left"),
    [
        (tables.remove_aspect, "Reversed", (["lisle"], ["Upright"])),
        (tables.remove_source, "lisle", (["orme"], ["Reversed"])),
    ],
)
def test_rows_and_columns_go_and_come_back_by_undo(star, verb, name, left):
    before = told(star)
    verb(*star, name)
    assert shape(star) == left
    star[0].gate.undo()
    assert told(star) == before


def test_what_the_reader_says_of_them_all_stands_apart(star):
    before = shape(star)
    sources.note(*star, sources.OWN, sources.DIFFER, "Whether it comforts.")
    sources.note(*star, sources.OWN, sources.AGREE, "It is a light.")
    tables.arrange(*star, ["orme", "lisle"], ["Reversed", "Upright"])
    table = sources.side_by_side(*star, {})
    assert table.own == {"They agree": "It is a light.", "They differ": "Whether it comforts."}
    assert shape(star) == tuple(side[::-1] for side in before)
    tables.remove_aspect(*star, sources.DIFFER)
    assert len(sources.side_by_side(*star, {}).own) == 2


def test_one_source_across_a_set_of_cards(course_shelf, star):
    made = sources.new_source(course_shelf, "Perpetua Lisle", "Upside Down")
    sources.note(*course_shelf.card_leaf("major-16"), "lisle", "Imagery", "A crown falls.", "11")
    table = tables.across(course_shelf, made, tables.SETS["Third septenary"])
    assert [card.key for card in table.cards] == [f"major-{n}" for n in range(15, 22)]
    assert table.aspects == ("Upright", "Reversed", "Imagery")
    assert table.cells["major-16", "Imagery"].locator == "11"
    assert ("major-17", "Imagery") not in table.cells
    assert tables.spoken_of(course_shelf, "lisle") == ("major-16", "major-17")


def test_the_sets_are_as_common_practice_has_them():
    # Common practice: 22 Majors, the Fool before three septenaries of seven, four suits of
    # fourteen with four
    # court cards each, fourteen ranks of four.
    sizes = [len(keys) for keys in tables.SETS.values()]
    assert sizes == [22, 8, 7, 7, *[14] * 4, *[4] * 4, *[4] * 14]
    assert tables.SETS["Aces"] == ("wands-01", "cups-01", "swords-01", "pentacles-01")
    assert tables.SETS["Courts of Cups"] == ("cups-11", "cups-12", "cups-13", "cups-14")
    assert "Sixes" in tables.SETS


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
