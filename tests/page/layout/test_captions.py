"""The words beside laid cards: where their lines stand."""

from xml.etree import ElementTree

import pytest

from binder.cards.faces.lettering import text_width
from binder.page.layout.boxes import about
from binder.page.layout.captions import caption_svg
from binder.page.layout.marks import Spot, caption_width

ROOM = about(2.0, 3.0, 1.0, 0.5)


def lines(spot, n=7):
    """(words, x, baseline) of each line of text."""
    svg = caption_svg(spot, n, 10.0, "#123456", 100.0)
    whole = ElementTree.fromstring(f"<svg>{svg}</svg>")
    return [(e.text, float(e.get("x")), float(e.get("y"))) for e in whole.iter("text")]


def test_lines_stand_about_the_middle_of_their_room():
    """One below the other, as far below the middle as above it: as one line alone stands."""
    ((_, x, alone),) = lines(Spot(ROOM, "middle", ("one",)))
    two = lines(Spot(ROOM, "middle", ("one", "two")))
    three = lines(Spot(ROOM, "middle", ("one", "two", "three")))
    assert x == 200
    assert alone == pytest.approx(300, abs=10)
    assert [words for words, *_ in three] == ["one", "two", "three"]
    assert two[0][2] < alone < two[1][2]
    assert (two[0][2] + two[1][2]) / 2 == pytest.approx(alone, abs=0.2)
    assert three[1][2] == pytest.approx(alone, abs=0.2)
    assert three[2][2] - three[1][2] == pytest.approx(three[1][2] - three[0][2], abs=0.2)
    assert three[1][2] - three[0][2] == pytest.approx(two[1][2] - two[0][2], abs=0.2)


def test_a_numbered_caption_begins_with_its_number():
    spot = Spot(ROOM, "middle", ("one", "two"), numbered=True)
    plain, numbered = lines(Spot(ROOM, "middle", ("one", "two"))), lines(spot)
    assert [words for words, *_ in numbered] == ["one", "two"]
    assert [y for *_, y in numbered] == [y for *_, y in plain]
    wider = lines(spot, 17)[0][1]
    assert wider > numbered[0][1] > 200 - 50


def test_the_number_of_a_caption_takes_room_for_each_of_its_figures():
    alone, two, words = (text_width(figures, 10.0) for figures in ("0", "00", "one"))
    assert caption_width(("",), 7, 10.0) == pytest.approx(alone)
    assert caption_width(("",), 12, 10.0) == pytest.approx(two)
    assert caption_width(("one",), 12, 10.0) > two + words
    assert caption_width(("", "one"), 7, 10.0) == pytest.approx(max(alone, words))
