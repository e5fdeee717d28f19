"""Pictures as a leaf shows them."""

import base64
import gzip
import os
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtGui import QColor

from ui.session.picture import picture_of, scaled

ROOT = Path(__file__).parents[3]


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


def test_pictures_read_on_several_threads_wait_for_each_other_only():
    """In a program of its own, which a standstill would end at its time limit."""
    program = (
        "from concurrent.futures import ThreadPoolExecutor\n"
        "from PySide6.QtGui import QGuiApplication, QImage\n"
        "from ui.session import picture\n"
        "app = QGuiApplication([])\n"
        "image = QImage(60, 40, QImage.Format.Format_RGB32)\n"
        "image.fill(3)\n"
        "data = picture.in_bytes(image, b'PNG')\n"
        "def read(times):\n"
        "    for _ in range(times):\n"
        "        assert not picture.scaled(data, 30, 1.0).isNull()\n"
        "with ThreadPoolExecutor(3) as pool:\n"
        "    jobs = [pool.submit(read, 100) for _ in range(3)]\n"
        "    for _ in range(300):\n"
        "        picture.natural_size(data), picture.picture_of(data)\n"
        "    [job.result() for job in jobs]\n"
    )
    subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, check=True, timeout=120,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
    )  # fmt: skip


def declared(prolog="", href="", more=""):
    return (
        f'{prolog}<svg xmlns="http://www.w3.org/2000/svg" width="40" height="40"'
        f' xmlns:xlink="http://www.w3.org/1999/xlink">{more}'
        f'<image width="40" height="40" {href}/></svg>'
    )


@pytest.mark.qt_log_ignore("Image filename is empty")
@pytest.mark.parametrize("way", ["attlist", "entity", "number", "comment", "packed", "wide"])
def test_no_drawing_shows_a_file_of_this_computer(qapp, tmp_path, way):
    """Attributes given by a declaration, entities and packed drawings among the ways."""
    secret = tmp_path / "secret.png"
    Image.new("RGB", (40, 40), "#ff0000").save(secret)
    named = f'xlink:href="{secret}"'
    given = f'<!DOCTYPE svg [<!ATTLIST image xlink:href CDATA "{secret}">]>'
    data = {
        "attlist": declared(given).encode(),
        "entity": declared(f'<!DOCTYPE svg [<!ENTITY a "{secret}">]>', 'xlink:href="&a;"').encode(),
        "number": declared("", f'xlink:href="&#47;{str(secret)[1:]}"').encode(),
        "comment": declared(given.replace("]>", "<!-- ]> -->]>")).encode(),
        "packed": gzip.compress(declared("", named).encode()),
        "wide": declared('<?xml version="1.0" encoding="utf-16"?>', named).encode("utf-16"),
    }[way]
    for image in (scaled(data, 40, 1.0), picture_of(data)):
        assert image.isNull() or image.pixelColor(20, 20).name() != "#ff0000"
