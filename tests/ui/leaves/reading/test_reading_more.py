"""What stands on a reading's leaf besides its cards: sky, clarifying cards, photographs."""

import struct
import zlib

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDragEnterEvent, QDropEvent, QImage
from PySide6.QtWidgets import QApplication, QMenu

from binder.study.leaves import files
from binder.study.readings import details, readings
from tests.ui.leaf_fixtures import log, session_on, shown
from ui.kit.forms import asking
from ui.leaves.reading import reading_menu
from ui.leaves.reading.photo_import import LONGEST, prepared
from ui.leaves.reading.reading import ReadingPage
from ui.session.picture import natural_size

ROTATED = 6
"""EXIF orientation: the camera was held on its side (CIPA DC-008, tag 0x0112)."""


@pytest.fixture
def session(course_shelf):
    made = session_on(course_shelf)
    yield made
    made.deleteLater()


@pytest.fixture
def reading(session, qtbot, look, course_shelf):
    """A page on a reading, its binder and uid."""
    binder, uid = log(course_shelf)
    return shown(ReadingPage(session, look), qtbot, session, uid), binder, uid


def jpeg(path, size=(300, 200), orientation=1):
    """A photograph whose left half is red, taken with the camera held so."""
    image = Image.new("RGB", size, "blue")
    image.paste("red", (0, 0, size[0] // 2, size[1]))
    exif = image.getexif()
    exif[0x0112] = orientation
    image.save(path, exif=exif, quality=95)
    return path


def huge_png(path):
    """A PNG that says it is 20,000 by 20,000 pixels; there are none in it."""

    def chunk(name, data):
        return (
            struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        )

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", 20000, 20000, 8, 2, 0, 0, 0))
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"")))
    return path


def kept(binder, uid):
    return [files.kept(binder, photo.file) for photo in readings.reading(binder, uid).photos]


def taken(page, qtbot, paths):
    with qtbot.waitSignal(page.importing.job.done, timeout=20000):
        page.take_photos(paths)
    QApplication.processEvents()


def test_the_sky_is_that_of_the_readings_own_moment(session, qtbot, look, course_shelf):
    """On a day that lies in one decan in whatever zone the reading was laid."""
    _, uid = log(course_shelf, at="2026-11-26T20:15")
    page = shown(ReadingPage(session, look), qtbot, session, uid)
    page.finish()
    assert not page.sky.isHidden()
    assert "Sun in Sagittarius, first decan" in page.sky.toPlainText()
    assert "card:wands-08" in page.sky.html


# Clarifying cards and how the layout is shown


def entries(menu):
    return {action.text().replace("&", ""): action for action in menu.actions()}


def menu_of(page, key):
    made = QMenu(page)
    reading_menu.fill(made, page.session, page.session.leaf_of(page.spot), key)
    return made


def test_a_clarifying_card_is_laid_from_the_menu_and_taken_away(reading, monkeypatch):
    page, binder, uid = reading
    answers = iter(["no such card", "hermit r"])
    monkeypatch.setattr(asking, "line", lambda *_words: next(answers))
    entries(menu_of(page, "wands-05"))["Lay a clarifying card…"].trigger()
    assert details.clarifying(readings.reading(binder, uid)) == {"major-09"}
    assert "with The Hermit, reversed" in page.cards.places()[1].accessibleName()
    entries(menu_of(page, "wands-05"))["Take The Hermit away"].trigger()
    assert details.clarifying(readings.reading(binder, uid)) == set()


@pytest.mark.parametrize(("words", "way"), [("Diagram only", "layout"), ("List only", "list")])
def test_the_layout_is_shown_as_the_menu_says(reading, words, way):
    page, binder, uid = reading
    both = page.cards.height()
    entries(menu_of(page, "wands-05"))[words].trigger()
    assert readings.reading(binder, uid).shown == way
    assert (page.cards.laid_out.rows == ()) is (way == "layout")
    assert page.cards.laid_out.pictured is (way == "layout")
    assert page.cards.height() <= both or way == "layout"
    assert entries(menu_of(page, "wands-05"))[words].isChecked()


def test_in_a_list_alone_places_answer_to_clicks_and_keys(reading, qtbot):
    page, binder, uid = reading
    details.show_as(binder, uid, "list")
    at = page.cards.place_rect(4).center().toPoint()
    with qtbot.waitSignal(page.followed) as followed:
        qtbot.mouseClick(page.cards, Qt.MouseButton.LeftButton, pos=at)
    assert followed.args == ["card:swords-06"]


# Photographs


def test_a_photograph_is_turned_upright(reading, qtbot, tmp_path):
    page, binder, uid = reading
    taken(page, qtbot, [jpeg(tmp_path / "table.jpg", orientation=ROTATED)])
    (file,) = kept(binder, uid)
    image = QImage.fromData(file.data)
    assert (image.width(), image.height()) == (200, 300)
    top, foot = image.pixelColor(100, 40), image.pixelColor(100, 260)
    assert top.red() > 200
    assert foot.blue() > 200
    assert len(page.photos.views) == 1
    assert not page.photos_head.isHidden()


def test_an_upright_small_photograph_is_kept_as_it_is(tmp_path):
    path = jpeg(tmp_path / "table.jpg")
    assert prepared(path).data == path.read_bytes()


def test_a_large_one_is_made_smaller_and_its_original_kept_on_request(tmp_path):
    path = jpeg(tmp_path / "table.jpg", (3000, 4000))
    ready = prepared(path, with_original=True)
    size = natural_size(ready.data)
    assert (size.width(), size.height()) == (LONGEST * 3 // 4, LONGEST)
    assert ready.original == path.read_bytes()
    assert prepared(path).original == b""


def test_what_is_no_picture_gets_one_sentence_and_the_rest_is_kept(reading, qtbot, tmp_path):
    page, binder, uid = reading
    said = []
    page.session.said.connect(said.append)
    words = tmp_path / "notes.jpg"
    words.write_text("no picture")
    paths = [words, huge_png(tmp_path / "huge.png"), jpeg(tmp_path / "table.jpg")]
    taken(page, qtbot, paths)
    assert said == [
        "“notes.jpg” is no picture; choose another.",
        "“huge.png” has more than 200 million pixels; make it smaller first.",
    ]
    assert len(kept(binder, uid)) == 1
    assert page.photos.going.isHidden()


@pytest.mark.qt_log_ignore("Corrupt JPEG data", extend=True)
def test_a_photograph_that_is_cut_short_is_kept_and_it_is_said(reading, qtbot, tmp_path):
    page, binder, uid = reading
    said = []
    page.session.said.connect(said.append)
    whole = jpeg(tmp_path / "table.jpg")
    (tmp_path / "half.jpg").write_bytes(whole.read_bytes()[:-400])
    taken(page, qtbot, [tmp_path / "half.jpg", whole])
    assert said == ["“half.jpg” is cut short: what there is of it was kept. Copy it once more."]
    assert len(kept(binder, uid)) == 2


def test_an_import_can_be_stopped_and_what_was_kept_stays(reading, qtbot, tmp_path):
    page, binder, uid = reading
    paths = [jpeg(tmp_path / f"{n}.jpg", (2500 + n, 1800)) for n in range(6)]
    page.importing.going.connect(lambda done, of: page.photos.stop.click() if done == 2 else None)
    page.importing.start(binder, uid, paths, False)
    assert not page.photos.going.isHidden()
    qtbot.waitUntil(lambda: page.photos.going.isHidden(), timeout=20000)
    page.importing.job.wait()
    QApplication.processEvents()
    assert len(readings.reading(binder, uid).photos) == 2


def test_a_photograph_is_dropped(reading, qtbot, tmp_path):
    page, binder, uid = reading
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(jpeg(tmp_path / "table.jpg")))])
    none, buttons = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.LeftButton
    enter = QDragEnterEvent(QPoint(50, 50), Qt.DropAction.CopyAction, data, buttons, none)
    QApplication.sendEvent(page.viewport(), enter)
    assert enter.isAccepted()
    with qtbot.waitSignal(page.importing.job.done, timeout=20000):
        drop = QDropEvent(QPointF(50, 50), Qt.DropAction.CopyAction, data, buttons, none)
        QApplication.sendEvent(page.viewport(), drop)
    QApplication.processEvents()
    assert len(kept(binder, uid)) == 1


def test_a_photograph_is_pasted_by_key_and_taken_away(reading, qtbot):
    page, binder, uid = reading
    image = QImage(60, 40, QImage.Format.Format_RGB32)
    image.fill(QColor("teal"))
    QApplication.clipboard().setImage(image)
    qtbot.keyClick(page, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert len(kept(binder, uid)) == 1
    page.photos.take_away(readings.reading(binder, uid).photos[0])
    assert page.photos.isHidden()
    binder.gate.undo()
    assert len(page.photos.views) == 1
