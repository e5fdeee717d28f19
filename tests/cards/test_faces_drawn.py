"""The faces drawn by Qt and by typst: alike, inside their panels, and different from each other."""

import io
import tomllib

import pytest
import typst
from fontpkg_vollkorn import ROOT as LETTERS
from PIL import Image, ImageChops, ImageStat
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from binder.cards.faces import back_svg, face_svg, small_face_svg
from binder.cards.facts import CARDS, card
from binder.resources import resource

DAY = tomllib.loads(resource("palette.toml").read_text())["day"]["colours"]
WIDE, TALL = 200, 336
PANEL = (16, 52, 184, 280)


def by_qt(svg, width=WIDE, height=TALL):
    """The picture Qt draws, as an RGB image on white."""
    renderer = QSvgRenderer(svg.encode())
    assert renderer.isValid()
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")
    return Image.open(io.BytesIO(buffer.data().data())).convert("RGB")


def by_typst(svgs, tmp_path):
    """The pictures typst draws, one a page."""
    for n, svg in enumerate(svgs):
        (tmp_path / f"{n}.svg").write_text(svg)
    source = "#set page(width: 100pt, height: 168pt, margin: 0pt)\n" + "#pagebreak()\n".join(
        f'#image("{n}.svg", width: 100pt)\n' for n in range(len(svgs))
    )
    (tmp_path / "faces.typ").write_text(source)
    pages = typst.compile(
        str(tmp_path / "faces.typ"), format="png", ppi=144, font_paths=[str(LETTERS / "files")]
    )
    pages = pages if isinstance(pages, list) else [pages]
    return [Image.open(io.BytesIO(page)).convert("RGB") for page in pages]


def difference(one, two):
    """Mean difference of two pictures, 0 to 255."""
    return sum(ImageStat.Stat(ImageChops.difference(one, two)).mean) / 3


def test_qt_and_typst_draw_the_same_panels(qapp, tmp_path):
    svgs = [face_svg(c, DAY) for c in CARDS]
    for c, svg, page in zip(CARDS, svgs, by_typst(svgs, tmp_path), strict=True):
        assert difference(by_qt(svg).crop(PANEL), page.crop(PANEL)) < 2.5, c.key


def test_nothing_is_drawn_on_the_margin_beside_the_panel(qapp):
    paper = tuple(int(DAY["card"][i : i + 2], 16) for i in (1, 3, 5))
    for c in CARDS:
        picture = by_qt(face_svg(c, DAY))
        for strip in ((6, 40, 14, 290), (186, 40, 194, 290)):
            assert picture.crop(strip).getcolors() == [((strip[2] - strip[0]) * 250, paper)], c.key


def test_majors_can_be_told_apart_when_small(qapp):
    small = [by_qt(small_face_svg(c, DAY), 26, 44).crop((3, 14, 23, 36)) for c in CARDS[:22]]
    for n, one in enumerate(small):
        for other in small[:n]:
            assert difference(one, other) > 8


def test_the_back_is_the_same_upside_down(qapp):
    picture = by_qt(back_svg(DAY))
    assert difference(picture, picture.rotate(180)) < 0.5


@pytest.mark.parametrize("width", [26, 80, 100, 400])
def test_any_size_is_valid(qapp, width):
    picture = by_qt(face_svg(card("major-19"), DAY), width, round(width * 1.68))
    assert len(picture.getcolors(1 << 20)) > 3
