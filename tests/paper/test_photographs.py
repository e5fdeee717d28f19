"""The owner's photographs of the cards stand in printed layouts, turned as the cards lay."""

import io

import numpy as np
import pypdf
import pypdfium2
import pytest
from PIL import Image, ImageDraw

from binder.cards.spreads import spread
from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import pages_png, typeset
from binder.study.decks import deck_faces, decks
from binder.study.leaves import files, tabs
from binder.study.readings import details, readings
from binder.study.readings.laying import laid_from
from tests.paper.reading_back import bare, texts

CROSS = spread("five-card-cross")
SHEET = Sheet("a4", "none", False, guides=False)
INKS = {
    "cups-13": ((200, 30, 30), (30, 60, 200)),
    "wands-03": ((220, 200, 20), (20, 140, 60)),
    "major-17": ((220, 40, 220), (20, 190, 220)),
    "pentacles-01": ((90, 90, 90), (120, 60, 0)),
}
"""The colours of the upper and the lower half of each card's photograph."""
CARDS = "qc, 3w, star r, 5s, hermit"


def photograph(card="cups-13"):
    """Two colours, one above the other."""
    above, below = INKS[card]
    picture = Image.new("RGB", (200, 336), above)
    ImageDraw.Draw(picture).rectangle((0, 168, 200, 336), below)
    made = io.BytesIO()
    picture.save(made, "JPEG", quality=95)
    return made.getvalue()


@pytest.fixture
def log(course_shelf):
    """A shelf, Practice, its log, and a reading laid with a deck of which three cards are shown."""
    binder = course_shelf.binder("Practice")
    tab = tabs.first_of_kind(binder, "readings")
    deck = decks.register(binder, "Lantern Road deck", readings.STANDARD, favourite=True)
    keep(course_shelf, binder, deck, "cups-13", "wands-03", "major-17")
    uid = read(binder, tab, deck)
    return course_shelf, binder, tab, deck, uid


def keep(shelf, binder, deck, *cards):
    kept = {
        card: files.keep_bytes(binder, f"{card}.jpg", "image/jpeg", photograph(card))
        for card in cards
    }
    deck_faces.set_faces(shelf, binder, deck, kept)


def read(binder, tab, deck):
    laid = laid_from(CARDS, CROSS, readings.STANDARD)
    made = readings.NewReading("2026-11-22T20:15", "How?", CROSS, laid, deck=deck)
    return readings.log(binder, tab, made)


def printed(log):
    return typeset(gather(*log[:3]), SHEET)


def images(pdf):
    """Every picture object in the file."""
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    numbers = range(1, int(reader.trailer["/Size"]))
    found = (reader.get_object(pypdf.generic.IndirectObject(n, 0, reader)) for n in numbers)
    return [it for it in found if isinstance(it, dict) and it.get("/Subtype") == "/Image"]


def lies(pdf, page, card):
    """From the middle of a photograph's upper half to that of its lower, in points."""
    drawn = pypdfium2.PdfDocument(pdf)[page].render(scale=1).to_pil().convert("RGB")
    (x, y), (to_x, to_y) = (middle(drawn, colour) for colour in INKS[card])
    return round(to_x - x), round(to_y - y)


def middle(picture, colour):
    """The middle of all that has that colour."""
    off = np.abs(np.asarray(picture, int) - colour).sum(axis=2)
    y, x = np.argwhere(off < 60).mean(axis=0)
    return x, y


def test_photographs_are_in_the_file_and_the_other_faces_are_drawn(log):
    pdf = printed(log)
    assert len(images(pdf)) == 3
    assert {(it["/Width"], it["/Height"], it["/Filter"]) for it in images(pdf)} == {
        (200, 336, "/DCTDecode")
    }
    assert "IX" in "".join(texts(pdf))
    assert "XVII" not in "".join(texts(pdf))


def test_a_photograph_is_in_the_file_once_however_often_it_is_laid(log):
    _, binder, tab, deck, _ = log
    one = printed(log)
    for _ in range(5):
        read(binder, tab, deck)
    six = printed(log)
    assert len(images(six)) == len(images(one)) == 3


def test_cards_lie_as_they_lay(log):
    """Upright, across with the head to the right, and reversed."""
    pdf = printed(log)
    across, down = lies(pdf, 2, "cups-13")
    assert abs(across) < 3 < 20 < down
    across, down = lies(pdf, 2, "wands-03")
    assert abs(down) < 3 < 20 < -across
    across, down = lies(pdf, 2, "major-17")
    assert abs(across) < 3 < 20 < -down


def test_another_deck_has_its_drawn_faces(log):
    shelf, binder, tab, _, _ = log
    other = decks.register(binder, "Saltmarsh deck", readings.STANDARD)
    read(binder, tab, other)
    section = gather(shelf, binder, tab)
    shown = ["<image" in (leaf.svg or "") for leaf in section.leaves]
    assert sorted(shown) == [False, True]


def test_a_list_alone_brings_no_photograph_into_the_file(log):
    details.show_as(log[1], log[4], "list")
    assert images(printed(log)) == []


def test_a_clarifying_card_is_shown_and_named_beside_its_place(log):
    shelf, binder, _, deck, uid = log
    keep(shelf, binder, deck, "pentacles-01")
    details.clarify(binder, uid, 3, "ace of pentacles r")
    pdf = printed(log)
    assert len(images(pdf)) == 4
    assert bare("beside 3 Ace of Pentacles, reversed") in texts(pdf)[2]


@pytest.mark.parametrize("data", [b"\xff\xd8\xff nonsense", photograph()[:300]])
def test_a_broken_photograph_gives_way_to_the_drawn_face(log, data):
    shelf, binder, tab, deck, _ = log
    broken = files.keep_bytes(binder, "star.jpg", "image/jpeg", data)
    deck_faces.set_faces(shelf, binder, deck, {"major-17": broken})
    pdf = printed(log)
    assert len(images(pdf)) == 2
    assert bare("The Star") in texts(pdf)[2]
    assert len(pages_png(gather(shelf, binder, tab), SHEET)) == len(texts(pdf))


def test_a_card_leaf_shows_the_photograph_of_the_usual_deck(log):
    shelf = log[0]
    binder = shelf.binder("Foundations")
    tab = tabs.tab(binder, "Major Arcana")
    section = gather(shelf, binder, tab)
    assert len(section.photographs) == 1
    assert len(images(typeset(section, SHEET))) == 1
