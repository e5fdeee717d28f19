"""Faces with marks, keywords, imagery, related cards and open questions on a printed card leaf."""

import io

import pypdfium2
import pytest
from PIL import Image, ImageChops

from binder.paper.leaves.gather import gather
from binder.paper.sheets import Sheet
from binder.paper.typeset import typeset
from binder.study.cards import imagery, related
from binder.study.decks import deck_faces, decks, shown_faces
from binder.study.leaves import fields, files, leaves
from binder.study.leaves import tabs as tabs_of
from binder.study.readings.discretion import LeaveOut
from tests.paper.reading_back import bare, texts

SHEET = Sheet("a4", "none", False, guides=False)
STAR = "major-17"


@pytest.fixture
def majors(course_shelf):
    """A shelf, its first binder and the Majors' tab with the Star alone behind it."""
    binder, star = course_shelf.card_leaf(STAR)
    tab = tabs_of.first_of_kind(binder, "majors")
    for entry in leaves.contents(binder, tab):
        if entry.uid != star:
            leaves.set_aside(binder, entry.uid)
    return course_shelf, binder, tab, star


def printed(majors, leave_out=None):
    shelf, binder, tab, _ = majors
    more = [leave_out] if leave_out else []
    return typeset(gather(shelf, binder, tab, *more), SHEET)


def page_of(pdf, words):
    number = next(n for n, page in enumerate(texts(pdf)) if bare(words) in page)
    return pypdfium2.PdfDocument(pdf)[number].render(scale=3).to_pil().convert("RGB")


def test_a_leaf_on_which_nothing_is_written_is_a_sheet_to_study_by(majors):
    shelf, binder, tab, star = majors
    by_hand = bare("Keywords, upright Keywords, reversed What I see Side by side Source, page")
    printed_so = texts(printed(majors))
    assert by_hand in printed_so[-1]
    assert bare("Questions still open") in printed_so[-1]
    unlined = typeset(gather(shelf, binder, tab), SHEET, blank_lines=False)
    assert by_hand not in "".join(texts(unlined))
    fields.write_field(binder, star, fields.KEYWORDS, "hope")
    assert by_hand not in "".join(texts(printed(majors)))


def test_all_parts_are_printed(majors):
    shelf, binder, _, star = majors
    fields.write_field(binder, star, fields.KEYWORDS, "hope, *rest*")
    fields.write_field(binder, star, fields.KEYWORDS_REVERSED, "drought")
    fields.write_field(binder, star, fields.QUESTIONS, "Who pours?\n- [x] Why two jugs?")
    imagery.mark_spot(binder, star, 0.5, 0.4, "A great star")
    related.add_pair(shelf, STAR, "major-00", "Both < look > up")
    said = "".join(texts(printed(majors)))
    for words in (
        "Keywords hope, rest", "Keywords, reversed drought", "In the picture 1. A great star",
        "Neighbours: The Tower, The Moon", "Septenaries: The Empress, Wheel of Fortune",
        "With The Fool: Both < look > up", "Still open Who pours? Why two jugs?",
    ):  # fmt: skip
        assert bare(words) in said, words


def test_nothing_is_printed_of_empty_fields(majors):
    fields.write_field(majors[1], majors[3], fields.QUESTIONS, "Who pours?")
    said = "".join(texts(printed(majors)))
    for words in ("Keywords", "In the picture", "Side by side"):
        assert bare(words) not in said


def test_dots_stand_where_the_marks_are(majors):
    _, binder, _, star = majors
    imagery.mark_spot(binder, star, 0.25, 0.25)
    imagery.mark_spot(binder, star, 0.75, 0.75)
    with_dots = page_of(printed(majors), "Septenaries")
    for mark in imagery.marks(binder, star):
        imagery.move_mark(binder, mark.uid, 0.5, 0.5)
    others = page_of(printed(majors), "Septenaries")
    left, top, right, bottom = ImageChops.difference(with_dots, others).getbbox()
    # Dots 12.2 units wide, half the face of 100 by 168 apart in both directions.
    assert (bottom - top) / (right - left) == pytest.approx((84 + 12.2) / (50 + 12.2), rel=0.04)


def test_the_pictures_of_several_decks_are_printed_with_their_marks(majors):
    shelf, binder, _, star = majors
    made = io.BytesIO()
    Image.new("RGB", (200, 336), (20, 60, 200)).save(made, "JPEG")
    for name in ("Lantern Road", "Saltmarsh"):
        deck = decks.register(binder, name)
        uid = files.keep_bytes(binder, f"{name}.jpg", "image/jpeg", made.getvalue())
        deck_faces.set_faces(shelf, binder, deck, {STAR: uid})
        imagery.mark_spot(binder, star, 0.5, 0.5, f"On {name}", deck=deck)
    (leaf,) = gather(*majors[:3]).leaves
    assert [face.name for face in leaf.faces] == ["Lantern Road", "Saltmarsh"]
    pdf = printed(majors)
    said = "".join(texts(pdf))
    assert bare("In the picture, Saltmarsh 1. On Saltmarsh") in said
    blue = sum(
        count
        for count, (r, g, b) in page_of(pdf, "Septenaries").getcolors(1 << 20)
        if r < 60 and b > 150
    )
    assert blue > 20_000
    shown_faces.choose(shelf, binder, [""])
    (leaf,) = gather(*majors[:3]).leaves
    assert leaf.faces == ()
    assert "faces/" not in leaf.svg


def test_private_passages_are_left_out_of_them(majors):
    _, binder, _, star = majors
    fields.write_field(binder, star, fields.KEYWORDS, "Private: her name")
    fields.write_field(binder, star, fields.QUESTIONS, "Who pours?\n\nPrivate: is it she?")
    imagery.mark_spot(binder, star, 0.5, 0.4, "Private: her house")
    said = "".join(texts(printed(majors, LeaveOut(private=True))))
    for words in ("her name", "is it she", "her house"):
        assert bare(words) not in said
    assert bare("Who pours?") in said
