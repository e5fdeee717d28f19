"""Card leaves built from text: their fields, marks and pairs."""

import pytest

from binder.carry.building import build, uid_for
from binder.errors import CanMend
from binder.resources import samples
from binder.study.cards import imagery, related
from binder.study.leaves import fields
from binder.study.sources import sources

BINDER = """name = "Foundations"
colour = "spineF"

[[tab]]
folder = "majors"
name = "Major Arcana"
kind = "majors"
colour = "tabMajor"
"""
STAR = """+++
card = "major-17"
keywords = "hope"
questions = "Who pours?"
agree = "A light."

[[own_words]]
at = 2026-08-23T21:10:00
upright = "Hope."

[[mark]]
x = 0.5
y = 0.25
text = "A star"

[[mark]]
x = 0.1
y = 0.2
text = "A hill"
deck = "plain"

[[pair]]
card = "major-18"
text = "Two lights"
+++
"""


def built(at, star=STAR):
    source = at / "text"
    (source / "foundations" / "majors").mkdir(parents=True)
    (source / "shelf.toml").write_text('name = "S"\nbinders = ["foundations"]\n')
    (source / "decks.toml").write_text('[[deck]]\nkey = "plain"\nname = "Plain deck"\n')
    (source / "foundations" / "binder.toml").write_text(BINDER)
    (source / "foundations" / "majors" / "star.md").write_text(star)
    return build(source, at / "shelf")


def test_what_stands_on_the_leaf(tmp_path):
    shelf = built(tmp_path)
    home = shelf.card_leaf("major-17")
    assert fields.fields(*home) == {"keywords": "hope", "questions": "Who pours?"}
    assert [(m.deck, m.number, m.x, m.y, m.text) for m in imagery.marks(*home)] == [
        ("", 1, 0.5, 0.25, "A star"),
        (uid_for("deck/plain"), 1, 0.1, 0.2, "A hill"),
    ]
    assert sources.side_by_side(*home, {}).own == {sources.AGREE: "A light."}
    (pair,) = related.pairs(shelf, "major-18")
    assert (pair.card, pair.text) == ("major-17", "Two lights")
    shelf.close()


def test_a_mark_names_a_deck_that_is_there(tmp_path):
    with pytest.raises(
        CanMend, match=r"no deck “plane” in decks.toml; a mark names one of “plain”"
    ):
        built(tmp_path, STAR.replace('"plain"', '"plane"'))


def test_the_sample_shows_all_of_it(tmp_path):
    shelf = build(samples(), tmp_path / "sample")
    star = shelf.card_leaf("major-17")
    assert set(fields.fields(*star)) == set(fields.NAMES)
    assert len(imagery.marks(*star)) == 3
    assert len(related.pairs(shelf, "major-17")) == 3
    shelf.close()
