"""Pasting and dropping onto a leaf, through the real clipboard."""
# ruff: noqa: F811

import re

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDragEnterEvent, QDropEvent, QImage
from PySide6.QtWidgets import QApplication

from binder.study.leaves import files
from tests.ui.writing_desk import CTRL, SHIFT, desk, own_data  # noqa: F401
from ui.writing.editor.pasting import LARGE, LONGEST_SIDE, LONGEST_WORD, TOO_LONG, encoded

K = Qt.Key
FILE = re.compile(r"!?\[([^\]]*)\]\(file:([0-9a-f-]{36})\)")
TINY_GIF = b"GIF89a\x01\x00\x01\x00\x80\x00\x00\xff\xff\xff\x00\x00\x00,\x00\x00\x00\x00\x01\x00\x01\x00\x00\x02\x02D\x01\x00;"  # noqa: E501


def paste(desk, *, html="", text="", image=None, urls=(), plain=False):
    data = QMimeData()
    if html:
        data.setHtml(html)
    if text:
        data.setText(text)
    if image is not None:
        data.setImageData(image)
    if urls:
        data.setUrls([QUrl.fromLocalFile(str(path)) for path in urls])
    QApplication.clipboard().setMimeData(data)
    desk.press(K.Key_V, CTRL | SHIFT if plain else CTRL)


def picture(side=40, alpha=False):
    image = QImage(side, side, QImage.Format.Format_ARGB32 if alpha else QImage.Format.Format_RGB32)
    image.fill(QColor(120, 40, 40))
    return image


@pytest.fixture
def said(desk):
    told = []
    desk.session.said.connect(told.append)
    return told


@pytest.mark.parametrize("plain", [True, False])
def test_a_word_too_long_to_lay_out_is_not_put_in_and_said(desk, said, plain):
    desk.leaf("kept")
    paste(desk, text="before " + "a" * (LONGEST_WORD + 1), plain=plain)
    assert desk.text() == "kept"
    assert said == [TOO_LONG]


def test_rich_text_becomes_markdown(desk):
    desk.leaf()
    paste(desk, html="<h2>Kiln</h2><p>It is <b>hot</b> and <i>dry</i>.</p><ul><li>one<li>two</ul>")
    assert desk.text().strip() == "## Kiln\n\nIt is **hot** and *dry*.\n\n- one\n- two"


def test_a_few_rich_words_stay_in_their_line(desk):
    desk.leaf("It is  today.")
    desk.caret(6)
    paste(desk, html="<b>hot</b>", text="hot")
    assert desk.text() == "It is **hot** today."


def test_paragraphs_pasted_into_a_line_stand_apart(desk):
    desk.leaf("before after")
    desk.caret(7)
    paste(desk, html="<p>one</p><p>two</p>")
    assert desk.text() == "before \n\none\n\ntwo\n\nafter"


def test_plain_words_only(desk):
    desk.leaf()
    paste(desk, html="<b>hot</b>", text="hot", plain=True)
    assert desk.text() == "hot"


def test_copied_markdown_comes_back_as_it_was(desk):
    desk.leaf("a **word** and [a card](card:major-17)")
    desk.press(K.Key_A, CTRL)
    desk.press(K.Key_C, CTRL)
    desk.press(K.Key_End)
    desk.type(" ")
    desk.press(K.Key_V, CTRL)
    text = "a **word** and [a card](card:major-17)"
    assert desk.text() == f"{text} {text}"


def test_an_address_becomes_a_link(desk):
    desk.leaf("see here")
    desk.caret(4, 8)
    paste(desk, text="https://example.org/kiln")
    assert desk.text() == "see [here](https://example.org/kiln)"
    desk.type(" ")
    paste(desk, text="https://example.org/glaze")
    assert desk.text().endswith(" <https://example.org/glaze>")


def test_a_picture_on_the_clipboard_is_kept_in_this_binder(desk):
    desk.leaf("above")
    desk.press(K.Key_End)
    paste(desk, image=picture())
    name, uid = FILE.search(desk.text()).groups()
    assert desk.text().startswith("above\n\n![Pasted picture]")
    view = files.kept(desk.binder, uid)
    assert (name, view.media) == ("Pasted picture", "image/png")
    assert QImage.fromData(view.data).size() == picture().size()
    desk.until(lambda: uid in desk.saved().text)


def test_a_picture_is_seen_below_its_line_and_words_go_on_below_it(desk):
    desk.leaf()
    paste(desk, image=picture(120))
    block = desk.editor.document().begin()
    assert block.blockFormat().bottomMargin() > 120
    desk.type("After it.")
    assert desk.text().endswith(")\n\nAfter it.\n")
    seen = desk.editor.grab().toImage()
    rect = desk.editor.document().documentLayout().blockBoundingRect(block)
    at = (30 * seen.devicePixelRatio(), (rect.bottom() + 40) * seen.devicePixelRatio())
    assert seen.pixelColor(*(round(place) for place in at)) == QColor(120, 40, 40)
    for _ in range(4):
        desk.press(K.Key_Z, CTRL)
    assert desk.text() == ""
    assert desk.editor.document().begin().blockFormat().bottomMargin() == 0


def test_a_picture_within_rich_text_is_kept_too(desk):
    import base64

    desk.leaf()
    shown = base64.b64encode(TINY_GIF).decode()
    paste(desk, html=f'<p>Look: <img alt="dot" src="data:image/gif;base64,{shown}"></p>')
    name, uid = FILE.search(desk.text()).groups()
    assert (name, files.kept(desk.binder, uid).data) == ("dot", TINY_GIF)


def test_files_are_kept_and_what_is_no_picture_gets_a_sentence(desk, tmp_path, said):
    desk.leaf()
    picture().save(str(tmp_path / "one.png"))
    picture(30).save(str(tmp_path / "two.jpg"))
    picture(20).save(str(tmp_path / "three.bmp"))
    (tmp_path / "four.pdf").write_bytes(b"%PDF-1.4\n%%EOF\n")
    (tmp_path / "five.exe").write_bytes(b"MZ")
    names = ("one.png", "five.exe", "two.jpg", "three.bmp", "four.pdf", "six.png")
    paste(desk, urls=[tmp_path / name for name in names])
    found = FILE.findall(desk.text())
    media = [files.kept(desk.binder, uid).media for _, uid in found]
    assert [name for name, _ in found] == ["one", "two", "three", "four"]
    assert media == ["image/png", "image/jpeg", "image/png", "application/pdf"]
    assert "![one]" in desk.text()
    assert "\n[four]" in desk.text()
    assert len(said) == 1
    assert "“five.exe” is neither a picture nor a PDF" in said[0]
    assert "“six.png” could not be read" in said[0]


def test_files_are_dropped_where_the_pointer_is(desk, tmp_path):
    desk.leaf("above\n\nbelow")
    picture().save(str(tmp_path / "one.png"))
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(tmp_path / "one.png"))])
    desk.caret(5)
    at = QPointF(desk.editor.cursorRect().center())
    for kind, place in ((QDragEnterEvent, at.toPoint()), (QDropEvent, at)):
        event = kind(
            place, Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )  # fmt: skip
        QApplication.sendEvent(desk.editor.viewport(), event)
    assert re.fullmatch(r"above\n\n!\[one\]\(file:[^)]*\)\n\nbelow", desk.text())


def test_a_picture_that_cannot_be_kept_leaves_the_text_as_it_was(desk, said):
    desk.leaf("words")
    desk.binder.writable = False
    paste(desk, image=picture())
    desk.binder.writable = True
    assert desk.text() == "words"
    assert "read but not written" in said[0]


def test_an_empty_clipboard_changes_nothing(desk):
    desk.leaf("words")
    QApplication.clipboard().clear()
    desk.press(K.Key_V, CTRL)
    assert desk.text() == "words"


def noise(side):
    import random

    image = QImage(side, side, QImage.Format.Format_RGB32)
    some = random.Random(3)
    bits = image.bits()
    bits[:] = some.randbytes(len(bits))
    return image


def test_large_pictures_are_kept_sensibly():
    name, media, data = encoded(noise(900), "Pasted picture")
    assert (name, media) == ("Pasted picture.jpg", "image/jpeg")
    assert len(data) < LARGE
    assert encoded(picture(200, alpha=True), "x")[1] == "image/png"
    wide = QImage(LONGEST_SIDE * 2, 10, QImage.Format.Format_RGB32)
    wide.fill(QColor("white"))
    assert QImage.fromData(encoded(wide, "x")[2]).width() == LONGEST_SIDE
