"""Pictures as a leaf shows them."""

import base64

import pytest
from PIL import Image
from PySide6.QtGui import QColor

from ui.session.picture import scaled


@pytest.fixture
def red(tmp_path):
    path = tmp_path / "red.png"
    Image.new("RGB", (8, 8), "#ff0000").save(path)
    return path


def drawing(href, quote='"'):
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
        f' width="8" height="8"><image xlink:href={quote}{href}{quote} width="8" height="8"/></svg>'
    ).encode()


def middle(data):
    return QColor(scaled(data, 8, 1.0).pixelColor(4, 4))


@pytest.mark.parametrize("quote", ['"', "'"])
@pytest.mark.parametrize("way", ["file://{}", "{}", "FILE:{}", " {}"])
def test_a_drawing_fetches_nothing_from_outside_itself(qapp, red, quote, way):
    assert middle(drawing(way.format(red), quote)).alpha() == 0


def test_what_lies_in_a_drawing_is_shown(qapp, red):
    inside = base64.b64encode(red.read_bytes()).decode()
    assert middle(drawing(f"data:image/png;base64,{inside}")) == QColor("#ff0000")
