"""What the faces say and what they are made of; how they look is proved by test_faces_drawn."""

import re
import tomllib
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.faces import back_svg, emblem_svg, face_svg, small_face_svg, suit_emblem_svg
from binder.cards.faces.cards import inks_of
from binder.cards.faces.lettering import text_width
from binder.cards.faces.pips import places
from binder.cards.faces.shapes import BEAD, around
from binder.cards.faces.suits import EMBLEMS
from binder.cards.facts import CARDS, SUITS, card, extra
from binder.resources import resource

PALETTE = tomllib.loads(resource("palette.toml").read_text())
DAY = PALETTE["day"]["colours"]
TINY = {"svg", "g", "path", "circle", "rect", "text"}
MAJORS = CARDS[:22]


def texts(svg):
    return [
        element.text or ""
        for element in ElementTree.fromstring(svg).iter()
        if element.tag.endswith("}text")
    ]


def panel(svg):
    """The drawing without number and title."""
    return re.sub(r"<text.*?</text>", "", svg)


@pytest.mark.parametrize("theme", ["day", "lamp"])
def test_only_plain_shapes_in_colours_of_the_palette(theme):
    colours = PALETTE[theme]["colours"]
    drawn = [draw(c, colours) for c in CARDS for draw in (face_svg, small_face_svg, emblem_svg)]
    for svg in [*drawn, back_svg(colours)]:
        tags = {e.tag.split("}")[1] for e in ElementTree.fromstring(svg).iter()}
        assert tags <= TINY
        assert set(re.findall(r"#[0-9A-Fa-f]{6}", svg)) <= set(colours.values())


@pytest.mark.parametrize("major", MAJORS, ids=lambda c: c.title)
def test_a_major_shows_as_many_beads_as_its_number(major):
    assert face_svg(major, DAY).count(f'r="{BEAD:g}"') == major.number


def test_every_major_has_a_motif_and_an_emblem_of_its_own():
    assert len({panel(face_svg(c, DAY)) for c in MAJORS}) == 22
    assert len({emblem_svg(c, DAY) for c in MAJORS}) == 22


def test_every_card_has_a_face_of_its_own():
    assert len({face_svg(c, DAY) for c in CARDS}) == 78
    assert len({small_face_svg(c, DAY) for c in CARDS}) == 78


@pytest.mark.parametrize("count", range(1, 11))
def test_pips_count_and_stand_apart(count):
    laid = places(count)
    assert len(set(laid)) == count
    mirrored = {(100 - x, y) for x, y in laid}
    assert mirrored == set(laid)


@pytest.mark.parametrize("suit", SUITS)
@pytest.mark.parametrize("number", range(1, 11))
def test_a_pip_card_repeats_its_emblem(suit, number):
    pip = card(f"{suit}-{number:02}")
    assert face_svg(pip, DAY).count(EMBLEMS[suit](inks_of(pip, DAY))) == number


def test_the_four_courts_have_four_frames():
    frames = {
        panel(face_svg(card(f"cups-{n}"), DAY)).split('<g transform="translate')[0]
        for n in (11, 12, 13, 14)
    }
    assert len(frames) == 4


@pytest.mark.parametrize(
    ("key", "title", "expected"),
    [
        ("major-17", None, ["XVII", "The Star"]),
        ("major-00", None, ["The Fool"]),
        ("wands-01", None, ["A", "Wands"]),
        ("swords-06", None, ["Swords"]),
        ("cups-13", None, ["Queen", "Cups"]),
        ("wands-03", "Three of Rods", ["Rods"]),
        ("pentacles-11", "Princess of Coins", ["Princess", "Coins"]),
        ("swords-10", "Ruin", ["Ruin"]),
        ("major-16", "The House of God", ["XVI", "The House of God"]),
    ],
)
def test_number_above_and_title_below(key, title, expected):
    assert texts(face_svg(card(key), DAY, title)) == expected


def test_a_deck_may_count_differently():
    assert texts(face_svg(card("major-08"), DAY, number="XI"))[0] == "XI"
    assert texts(face_svg(card("major-08"), DAY, number="")) == ["", "Strength"]


def test_an_extra_card_is_plain_and_bears_its_title():
    assert texts(face_svg(extra("extra-01", "The Ferry"), DAY))[-1] == "The Ferry"
    assert small_face_svg(extra("extra-01", "The Ferry"), DAY)


def test_titles_are_shown_as_written():
    assert texts(face_svg(card("major-06"), DAY, '<Love> & "Co"\'s')) == ["VI", '<Love> & "Co"\'s']


@pytest.mark.parametrize(
    "title", ["The High Priestess", "The Keeper of the Northern Lighthouse", "W" * 60, "M " * 80]
)
def test_long_titles_stay_on_the_card(title):
    for element in ElementTree.fromstring(face_svg(card("major-02"), DAY, title)).iter():
        if element.tag.endswith("}text"):
            assert text_width(element.text, float(element.get("font-size"))) <= 88
            assert float(element.get("font-size")) >= 7


def test_a_suit_has_an_emblem_and_so_have_the_majors():
    assert len({suit_emblem_svg(suit, DAY) for suit in ("", *SUITS)}) == 5


def test_points_on_an_arc_close_up_only_in_a_full_turn():
    assert len(set(around(4, 0, 0, 1))) == 4
    first, *_, last = around(3, 0, 0, 1, start=0, sweep=90)
    assert first == (1, 0)
    assert last == pytest.approx((0, 1))


@pytest.mark.parametrize(("key", "head"), [("major-17", ["XVII"]), ("wands-03", []),
                                           ("cups-13", []), ("extra-01", [])])  # fmt: skip
def test_a_deck_that_prints_no_titles_keeps_its_numbers(key, head):
    shown = extra(key, "The Tide") if key.startswith("extra") else card(key)
    assert [text for text in texts(face_svg(shown, DAY, "")) if text] == head


@given(st.text(max_size=30))
def test_any_title_makes_a_drawing_that_can_be_read(title):
    """Read back with the standard library's own parser."""
    ElementTree.fromstring(face_svg(card("major-17"), DAY, title))
