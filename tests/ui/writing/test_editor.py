"""The styled field itself: what is hidden, what hangs, what stands in line, and how quick it is."""
# ruff: noqa: F811

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QTextCursor

from tests.ui.writing_desk import CTRL, desk, own_data  # noqa: F401
from ui.kit.prose.prose import Prose
from ui.kit.utf16 import units, whole
from ui.look import theme
from ui.look.colour import contrast
from ui.writing.editor.formats import HEADINGS, Formats

K = Qt.Key
UID = "0198a1b2-1234-7abc-8def-0123456789ab"


def blocks(editor):
    block = editor.document().begin()
    while block.isValid():
        yield block
        block = block.next()


def left_of(editor, place):
    """Where on its line the letter at a place stands, in pixels."""
    cursor = QTextCursor(editor.document())
    cursor.setPosition(place)
    return editor.cursorRect(cursor).left()


def test_letters_and_measure_are_those_of_the_read_leaf(desk, look, qtbot):
    words = "Words that go on until the line is full and has to be broken. " * 6
    desk.leaf(words.strip())
    prose = Prose(look)
    qtbot.addWidget(prose)
    prose.resize(desk.editor.width(), 400)
    prose.show_html(f"<p>{words.strip()}</p>")
    ours, theirs = desk.editor.document(), prose.document()
    assert ours.textWidth() == theirs.textWidth()
    layouts = [document.begin().layout() for document in (ours, theirs)]
    lines = [
        [layout.lineAt(n).textLength() for n in range(layout.lineCount())] for layout in layouts
    ]
    assert lines[0] == lines[1]
    heights = [layout.lineAt(1).y() - layout.lineAt(0).y() for layout in layouts]
    assert abs(heights[0] - heights[1]) <= 1


def test_items_hang_and_their_words_stand_in_line(desk, look):
    desk.leaf("- one\n    - inner\n- [ ] box\n1. first\n> said")
    text = desk.text()
    px = look.theme.px
    wanted = {"one": px(24), "inner": px(48), "box": px(24), "first": px(24), "said": px(16)}
    for word, left in wanted.items():
        assert abs(left_of(desk.editor, text.index(word)) - left) <= 2, word
    for block in blocks(desk.editor):
        shape = block.blockFormat()
        assert shape.textIndent() == -shape.leftMargin() != 0


def test_columns_of_a_table_stand_in_line(desk):
    desk.leaf("| Card | Suit |\n| --- | --- |\n| The **Star** | Air |\n| Queen of Cups | Water |")
    text = desk.text()
    lefts = [left_of(desk.editor, text.index(word)) for word in ("Suit", "Air", "Water")]
    assert max(lefts) - min(lefts) <= 2
    desk.caret(text.index("Queen") + 5)
    desk.type(" herself")
    text = desk.text()
    lefts = [left_of(desk.editor, text.index(word)) for word in ("Suit", "Air", "Water")]
    assert max(lefts) - min(lefts) <= 2


def test_the_cursor_passes_over_what_cannot_be_seen(desk):
    desk.leaf(f"see [her](leaf:{UID}) now")
    start = desk.text().index(":0198")
    desk.caret(start)
    desk.press(K.Key_Right)
    assert desk.selection_end() == start + 1 + len(UID)
    desk.press(K.Key_Left)
    assert desk.selection_end() == start
    shown = left_of(desk.editor, start + 1 + len(UID)) - left_of(desk.editor, start)
    assert 0 <= shown < 12


def test_the_cursor_passes_over_the_rule_of_a_table(desk):
    desk.leaf("| A | B |\n| --- | --- |\n| a | b |")
    desk.caret(2)
    desk.press(K.Key_Down)
    assert desk.text()[: desk.selection_end()].count("\n") == 2
    desk.press(K.Key_Up)
    assert desk.text()[: desk.selection_end()].count("\n") == 0


def test_marks_are_dim_but_can_be_read_in_both_themes():
    for name in theme.NAMES:
        made = theme.load(name)
        dim = Formats(made, "body", "ink").dim
        assert contrast(dim, made["paper"]) >= 3
        assert contrast(dim, made["paper"]) < contrast(made["inksoft"], made["paper"])


def test_another_theme_and_larger_letters_keep_text_cursor_and_undo(desk, look):
    desk.leaf("- one\n- two")
    desk.press(K.Key_End, CTRL)
    desk.type(" more")
    look.set_name("lamp")
    look.set_scale(1.5)
    assert desk.text() == "- one\n- two more"
    width = next(blocks(desk.editor)).blockFormat().leftMargin()
    assert abs(width - look.theme.px(24)) <= 1
    desk.press(K.Key_Z, CTRL)
    desk.press(K.Key_Z, CTRL)
    assert desk.text() == "- one\n- two"


def test_headings_are_larger_the_higher_they_are(desk):
    desk.leaf("# One\n\n## Two\n\n### Three\n\nwords")
    tops = [block.layout().boundingRect().height() for block in blocks(desk.editor) if block.text()]
    assert tops == sorted(tops, reverse=True)
    assert len(set(tops)) == 4
    assert sorted(HEADINGS.values(), reverse=True) == list(HEADINGS.values())


@pytest.mark.parametrize("text", ["", "plain", "é ü", "\U0001f0a1 \U0001f600x", "a\ud83d"])
def test_halves_are_made_whole_again(text):
    cut = units(text)
    assert len(cut) == len(text.encode("utf-16-le", "surrogatepass")) // 2
    assert whole(cut) == text.replace("\ud83d", "\N{REPLACEMENT CHARACTER}")
