"""The cache of card faces."""

import pytest
from PySide6.QtGui import QColor, QPixmapCache

from binder.cards.facts import CARDS, card
from ui.kit.faces.faces import FaceCache
from ui.look import theme


@pytest.fixture
def faces(look):
    QPixmapCache.clear()
    return FaceCache()


def test_a_face_is_drawn_once_and_then_handed_out(faces, look):
    first = faces.face(card("major-17"), 92, look.theme)
    assert faces.face(card("major-17"), 92, look.theme).cacheKey() == first.cacheKey()


@pytest.mark.parametrize(
    "other",
    [
        {"width": 93},
        {"turn": 180},
        {"title": "The Pole Star"},
        {"number": "16"},
        {"ratio": 2.0},
        {"theme": theme.load("lamp")},
    ],
)
def test_all_it_depends_on_makes_another_face(faces, look, other):
    plain = {"width": 92, "theme": look.theme}
    one = faces.face(card("major-17"), **plain)
    two = faces.face(card("major-17"), **(plain | other))
    assert one.toImage() != two.toImage()


def test_a_card_lying_across_is_as_wide_as_it_was_tall(faces, look):
    upright = faces.face(card("wands-05"), 100, look.theme).deviceIndependentSize()
    across = faces.face(card("wands-05"), 100, look.theme, turn=90).deviceIndependentSize()
    assert (upright.width(), upright.height()) == (100, 168)
    assert (across.width(), across.height()) == (168, 100)


def test_a_reversed_card_is_the_same_face_upside_down(faces, look):
    up = faces.face(card("major-17"), 100, look.theme).toImage()
    down = faces.face(card("major-17"), 100, look.theme, turn=180).toImage()
    x, y = 14, 122
    assert close(up.pixelColor(x, y), down.pixelColor(99 - x, 167 - y))
    assert not close(up.pixelColor(x, y), down.pixelColor(x, y))


def close(one: QColor, other: QColor) -> bool:
    return all(abs(a - b) < 40 for a, b in zip(one.getRgb(), other.getRgb(), strict=True))


def test_corners_are_clear(faces, look):
    assert faces.face(card("cups-01"), 92, look.theme).toImage().pixelColor(0, 0).alpha() == 0


def test_a_face_drawn_once_is_handed_out_again(faces, look):
    drawn = [faces.face(each, 92, look.theme).cacheKey() for each in CARDS[:10]]
    assert [faces.face(each, 92, look.theme).cacheKey() for each in CARDS[:10]] == drawn
    assert len(set(drawn)) == 10
