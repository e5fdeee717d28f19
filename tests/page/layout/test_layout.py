"""The picture of a layout: which cards it shows, how they lie, and what is written."""

import io
import re
import tomllib
from xml.etree import ElementTree

import pytest
import typst
from PIL import Image

from binder.cards.facts import CARDS, card, extra
from binder.cards.spreads import SPREADS, Place, spread
from binder.page.layout.layout import LaidCard, layout_svg
from binder.resources import resource

PALETTE = tomllib.loads(resource("palette.toml").read_text())
DAY = PALETTE["day"]["colours"]
SIZE = (560.0, 460.0)


def full(known, **more):
    laid = {place.n: LaidCard(CARDS[place.n]) for place in known.places}
    return layout_svg(known.places, laid, DAY, size=SIZE, **more)


def texts(svg):
    return [e.text for e in ElementTree.fromstring(svg).iter() if e.tag.endswith("}text")]


def turns(svg):
    """Turns of the cards, in the order they are drawn."""
    cards = re.findall(r"rotate\(([\d.]+)\) scale\([\d.]+\) translate\(-50 -84\)", svg)
    return [float(turn) for turn in cards]


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
@pytest.mark.parametrize("labels", ["none", "numbers", "full"])
def test_shows_every_card_and_is_no_larger_than_asked(known, labels):
    svg = full(known, labels=labels)
    root = ElementTree.fromstring(svg)
    assert float(root.get("width")) <= SIZE[0] + 0.01
    assert float(root.get("height")) <= SIZE[1] + 0.01
    for place in known.places:
        assert CARDS[place.n].title in texts(svg)
    assert len(turns(svg)) == len(known.places)


def test_reversed_and_crossing_cards_are_turned():
    cross = spread("five-card-cross")
    laid = {1: LaidCard(card("cups-02"), True), 2: LaidCard(card("wands-05"))}
    laid |= {3: LaidCard(card("major-01")), 4: LaidCard(card("major-02"), True)}
    svg = layout_svg(cross.places, laid, DAY, size=SIZE)
    assert turns(svg) == [180, 90, 0, 180]
    assert svg.count(f'fill="{DAY["ink"]}"/><path') == 2
    assert "reversed" not in texts(svg)
    laid[2] = LaidCard(card("wands-05"), True)
    assert turns(layout_svg(cross.places, laid, DAY, size=SIZE))[1] == 270


def test_an_empty_place_is_an_outline():
    svg = layout_svg(spread("three-card").places, {1: LaidCard(CARDS[3])}, DAY, size=SIZE)
    assert svg.count("stroke-dasharray") == 2
    assert len(turns(svg)) == 1


def test_the_picked_card_has_a_ring_and_a_dark_number():
    plain, picked = full(spread("horseshoe")), full(spread("horseshoe"), picked=4)
    assert DAY["red"] not in plain
    assert picked.count(f'stroke="{DAY["red"]}"') == 1
    assert len(re.findall(f'<circle[^>]*fill="{DAY["ink"]}"/>', picked)) == 1


def test_a_number_stands_on_paper_and_on_ink_where_it_is_picked():
    three = spread("three-card")
    on_paper = f'fill="{DAY["paper"]}" stroke="{DAY["ink"]}"'
    assert full(three, labels="numbers").count(on_paper) == 3
    assert full(three, labels="numbers", picked=2).count(on_paper) == 2


def test_labels_are_written_in_full():
    written = texts(full(spread("celtic-cross"), labels="full"))
    assert {"Ground", "Behind", "Outcome"} <= set(written)


def test_clarifying_cards_are_drawn_below_the_card_they_clarify():
    more = (LaidCard(card("cups-14")), LaidCard(card("major-19"), True))
    laid = {1: LaidCard(card("major-05"), clarifying=more)}
    svg = layout_svg(spread("one-card").places, laid, DAY, size=SIZE)
    assert turns(svg) == [180, 0, 0]
    assert texts(svg).index("The Sun") < texts(svg).index("The Hierophant")


def test_a_deck_s_own_titles_numbers_and_extra_cards():
    places = spread("three-card").places
    laid = {
        1: LaidCard(card("wands-03"), title="Three of Rods"),
        2: LaidCard(card("major-11"), title="Strength", number="XI"),
        3: LaidCard(extra("extra-01", "The Ferry & Co")),
    }
    written = texts(layout_svg(places, laid, DAY, size=SIZE))
    assert {"Rods", "Strength", "XI", "The Ferry & Co"} <= set(written)


def test_labels_are_never_markup():
    places = [Place(1, "<b>&</b>", "", 0, 0)]
    svg = layout_svg(places, {}, DAY, size=SIZE, labels="full")
    assert "<b>&</b>" in texts(svg)


@pytest.mark.parametrize("theme", ["day", "lamp"])
def test_typst_draws_it(theme, tmp_path):
    colours = PALETTE[theme]["colours"]
    cross = spread("celtic-cross")
    laid = {place.n: LaidCard(CARDS[place.n + 20], place.n % 2 == 0) for place in cross.places}
    (tmp_path / "layout.svg").write_text(
        layout_svg(cross.places, laid, colours, size=SIZE, picked=3, labels="full")
    )
    (tmp_path / "page.typ").write_text('#set page(width: auto, height: auto)\n#image("layout.svg")')
    drawn = Image.open(io.BytesIO(typst.compile(str(tmp_path / "page.typ"), format="png")))
    assert len(drawn.convert("RGB").getcolors(1 << 22)) > 100
