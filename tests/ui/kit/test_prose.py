"""Running text on a leaf: links by pointer and key, menus, marks, pictures, long leaves."""

import pytest
from PySide6.QtCore import QBuffer, QIODevice, QPoint, Qt
from PySide6.QtGui import QColor, QContextMenuEvent, QImage, QTextCursor
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from tests.ui.driving import on_link, settle
from ui.kit.prose.prose import AT_ONCE, Prose
from ui.session.picture import natural_size, scaled

SAID = '<a href="card:major-17" class="said">The Star</a>'
HTML = (
    f'<p>First {SAID} and then <a href="card:major-09">the old man</a>, '
    '<a href="https://example.org/">outside</a>.</p>'
    '<ul>\n<li><a href="tick:0">□</a> buy candles</li>\n</ul>'
    "<blockquote><p>One.</p><p>Two.</p></blockquote>"
)


@pytest.fixture
def prose(qtbot, look):
    holder = QWidget()
    qtbot.addWidget(holder)
    column = QVBoxLayout(holder)
    made = Prose(look)
    column.addWidget(made)
    column.addStretch(1)
    holder.resize(524, 400)
    holder.show()
    qtbot.waitExposed(holder)
    made.show_html(HTML)
    made.holder = holder
    return made


def at(prose, address):
    """A point on the first link to an address."""
    link = next(link for link in prose.links() if link.address == address)
    return on_link(prose, link, letters=0) + QPoint(4, 0)


@pytest.mark.parametrize("address", ["card:major-17", "card:major-09", "tick:0"])
def test_a_click_follows_a_link(prose, qtbot, address):
    with qtbot.waitSignal(prose.followed) as followed:
        qtbot.mouseClick(prose.viewport(), Qt.MouseButton.LeftButton, pos=at(prose, address))
    assert followed.args == [address]


def test_tab_walks_the_links_and_enter_follows(prose, qtbot):
    prose.setFocus()
    qtbot.keyClick(prose, Qt.Key.Key_Tab)
    with qtbot.waitSignal(prose.reached):
        qtbot.keyClick(prose, Qt.Key.Key_Tab)
    with qtbot.waitSignal(prose.followed) as followed:
        qtbot.keyClick(prose, Qt.Key.Key_Return)
    assert followed.args == ["card:major-09"]


def test_recognised_names_are_told_from_links_somebody_wrote(prose):
    told = {link.address: link.said for link in prose.links()}
    assert told["card:major-17"]
    assert not told["card:major-09"]


def pixels_under(prose, address, colour):
    image = prose.viewport().grab().toImage()
    link = next(link for link in prose.links() if link.address == address)
    cursor = QTextCursor(prose.document())
    cursor.setPosition(link.start)
    rect = prose.cursorRect(cursor)
    ratio = image.devicePixelRatio()
    found = 0
    for y in range(round(rect.center().y() * ratio), round((rect.bottom() + 4) * ratio)):
        for x in range(round((rect.left() + 2) * ratio), round((rect.left() + 40) * ratio)):
            pixel = image.pixelColor(x, y)
            found += pixel.alpha() > 120 and near(pixel, colour)
    return found


def near(one: QColor, other: QColor) -> bool:
    pairs = zip(one.getRgb()[:3], other.getRgb()[:3], strict=True)
    return all(abs(a - b) < 40 for a, b in pairs)


def test_names_of_the_picked_card_are_underlined_in_red(prose, look):
    assert pixels_under(prose, "card:major-17", look.theme["red"]) == 0
    prose.pick("major-17")
    assert pixels_under(prose, "card:major-17", look.theme["red"]) > 20
    assert pixels_under(prose, "card:major-09", look.theme["red"]) == 0
    prose.pick("")
    assert pixels_under(prose, "card:major-17", look.theme["red"]) == 0


def test_words_found_are_marked_whole(prose, look):
    prose.show_html("<p>The star, and stars; starling. A Star.</p>", ["star"])
    text = prose.toPlainText()
    assert [text[start:end] for start, end in prose.marked] == ["star", "Star"]
    assert prose.first_mark() is not None
    prose.show_html("<p>Nothing.</p>", ["star"])
    assert prose.first_mark() is None


def test_the_menu_of_the_text_offers_to_copy(prose, qtbot):
    prose.selectAll()
    menu = prose.menu_for(None)
    copy = next(action for action in menu.actions() if "Copy" in action.text())
    copy.trigger()
    assert "buy candles" in QApplication.clipboard().text()


def test_the_menu_key_opens_the_menu_of_the_link_that_has_the_keyboard(prose, qtbot):
    prose.setFocus()
    qtbot.keyClick(prose, Qt.Key.Key_Tab)
    with qtbot.waitSignal(prose.menu_opening) as opening:
        keyboard, none = QContextMenuEvent.Reason.Keyboard, Qt.KeyboardModifier.NoModifier
        event = QContextMenuEvent(keyboard, QPoint(0, 0), QPoint(0, 0), none)
        QApplication.sendEvent(prose.viewport(), event)
    menu, pointed = opening.args
    menu.close()
    assert pointed.link.address == "card:major-17"
    assert pointed.words == "The Star"
    assert pointed.selected == ""


def test_a_long_leaf_comes_to_its_full_height(prose, qtbot):
    html = "".join(f"<p>Paragraph {n}, with some words to fill a line or two of it.</p>"
                   for n in range(700))  # fmt: skip
    prose.show_html(html)
    assert prose.document().characterCount() > AT_ONCE
    qtbot.waitUntil(lambda: prose.height() == round(prose.document().size().height()) + 2)


def test_the_guess_of_a_long_leaf_is_not_far_off(prose):
    prose.show_html("".join(f"<p>Paragraph {n}, a line of it.</p>" for n in range(900)))
    guessed = prose.height()
    assert guessed == pytest.approx(prose.document().size().height(), rel=0.25)


def picture(width, height):
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(QColor("teal"))
    image.save(buffer, "PNG")
    return bytes(buffer.data())


UID = "018f3c2e-7a10-7c3b-9d55-0242ac120002"


def test_a_kept_picture_is_shown_no_wider_than_the_leaf(prose, qtbot):
    asked = []
    data = picture(1600, 800)
    prose.load = lambda uid: asked.append(uid) or data
    prose.show_html(f'<p><img src="file:{UID}" alt="Layout" width="1600" height="800"></p>')
    shown = prose.viewport().grab().toImage()
    assert near(shown.pixelColor(40, 40), QColor("teal"))
    assert set(asked) == {UID}
    wide = prose.viewport().width()
    assert wide / 2 < prose.height() < wide / 2 + 60
    prose.window().resize(330, 400)
    qtbot.waitUntil(lambda: prose.height() < 165 + 60)


def test_a_small_picture_stays_as_it_is():
    data = picture(60, 30)
    assert natural_size(data).toTuple() == (60, 30)
    assert scaled(data, 500, 2.0).size().toTuple() == (120, 60)
    assert scaled(b"no picture", 500, 1.0).isNull()


@pytest.mark.parametrize(
    "source", ["https://example.org/a.png", "file:///etc/passwd", "data:image/png;base64,AAAA"]
)
def test_nothing_outside_the_binder_is_loaded(prose, source):
    asked = []
    prose.load = lambda uid: asked.append(uid)
    prose.show_html(f'<p><img src="{source}" width="20" height="20"></p>')
    prose.viewport().grab()
    assert asked == []


def test_the_wheel_and_the_keys_that_scroll_are_left_to_the_leaf(prose, qtbot):
    prose.setFocus()
    heard = []
    prose.parentWidget().keyPressEvent = lambda event: heard.append(event.key())
    for key in (Qt.Key.Key_PageDown, Qt.Key.Key_Left, Qt.Key.Key_Space):
        qtbot.keyClick(prose, key)
    assert heard == [Qt.Key.Key_PageDown, Qt.Key.Key_Left, Qt.Key.Key_Space]


def test_headings_have_the_sizes_of_the_style_sheet(prose, look):
    prose.show_html("<h1>One</h1><h2>Two</h2><p>Body.</p>")
    block, sizes = prose.document().begin(), []
    while block.isValid():
        sizes += [piece.fragment().charFormat().fontPointSize() for piece in block]
        block = block.next()
    body = look.theme.font("body").pointSizeF()
    assert [round(size / body, 2) for size in sizes[:2]] == [1.45, 1.22]
    leaf_title = look.theme.font("leaf_title").pointSizeF()
    assert sizes[0] < leaf_title


def test_somebody_elses_words_stay_in_ink_among_own_words(qtbot, look):
    made = Prose(look, own=True)
    qtbot.addWidget(made)
    made.show_html("<p>Mine.</p><blockquote><p>Theirs.</p></blockquote>")
    inks = []
    block = made.document().begin()
    while block.isValid():
        inks += [piece.fragment().charFormat().foreground().color() for piece in block]
        block = block.next()
    assert inks == [look.theme["own"], look.theme["ink"]]


def test_a_tick_box_hangs_where_the_bullet_would_stand(prose):
    """All lines of an entry begin below each other, with a box or without."""
    long = "words that go on and on into a second line of the leaf, " * 3
    prose.show_html(
        f'<ul><li>{long}</li></ul><ul><li><a href="tick:0">□</a> {long}</li></ul>'
        f'<ul><li><p><a href="tick:1">■</a> {long}</p></li></ul>'
    )
    settle()
    starts = []
    block = prose.document().begin()
    while block.isValid():
        boxed = "□" in block.text() or "■" in block.text()
        lines = [block.layout().lineAt(n) for n in range(block.layout().lineCount())]
        assert len(lines) > 1
        starts.append(round(lines[0].cursorToX(2 if boxed else 0)[0]))
        starts.append(round(lines[1].cursorToX(lines[1].textStart())[0]))
        block = block.next()
    assert len(starts) == 6
    assert max(starts) - min(starts) <= 1
