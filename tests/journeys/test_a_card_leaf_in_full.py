"""A card leaf filled by keys and mouse: words, keywords, a question, a mark, a pair; then found,
asked in a recall round, and printed.
"""

import pypdf
import pytest
from PySide6.QtCore import QPoint
from PySide6.QtTest import QTest

from binder.study.cards import imagery, related
from binder.study.leaves import fields
from binder.study.recall import questions
from tests.ui.driving import CTRL, K, answering, click, key, keys, settle
from ui.actions.installed import actions_of
from ui.leaves.card.card import CardPage

CARD = "cups-02"


@pytest.fixture(autouse=True)
def own_data(tmp_path, monkeypatch):
    """What would go into the user's own folders goes into a temporary one."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


@pytest.fixture
def home(window):
    """Binder and uid of a leaf nothing is written on, open at the left."""
    found = window.session.shelf.card_leaf(CARD)
    window.session.open_leaf(found[1])
    settle()
    return found


def page(window):
    made = window.cover.leaf("left")
    assert isinstance(made, CardPage)
    made.finish()
    return made


def test_everything_on_one_leaf(window, home, qtbot, tmp_path):
    shelf = window.session.shelf

    key(window, K.Key_E, CTRL)
    desk = window.cover.leaf("left")
    keys(window, "Two who drink from one spring.")
    named = desk.fields.named.editors
    for editor, words in zip(named, ("nearness, a pact", "a cold cup", "Who pours?"), strict=True):
        editor.setFocus()
        keys(window, words)
    key(window, K.Key_Escape)
    assert fields.fields(*home) == {
        "keywords": "nearness, a pact",
        "keywords reversed": "a cold cup",
        "questions": "Who pours?",
    }
    assert "a cold cup" in page(window).more.keywords.words.toPlainText()

    def marks(dialog):
        click(dialog.board, QPoint(120, 200))
        QTest.keyClicks(dialog.focusWidget(), "A heron between them")
        dialog.accept()

    answering(marks)
    window.actions_by_name["mark_picture"].trigger()
    assert [mark.text for mark in imagery.marks(*home)] == ["A heron between them"]

    def pairs(dialog):
        QTest.keyClicks(dialog.card, "lovers")
        QTest.keyClicks(dialog.why, "One is the small print of the other")
        click(dialog.yes)

    answering(pairs)
    window.actions_by_name["pair_card"].trigger()
    assert related.pairs(shelf, "major-06")[-1].across("major-06") == CARD
    assert "small print" in page(window).more.related.words.toPlainText()

    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    key(window, K.Key_F, CTRL)
    keys(window, "heron between")
    qtbot.waitUntil(lambda: window.finder.isVisible())
    key(window, K.Key_Return)
    assert window.session.leaf_of(window.session.left).card == CARD
    assert page(window).more.lines.first_mark() is not None

    asked = questions.askable(shelf, [CARD])
    assert asked[questions.Key(CARD, "keyword", "reversed")].turns == ("a cold cup",)

    actions_of(window).print()
    proof = window.desk.stage()
    qtbot.waitUntil(lambda: proof.printed is not None, timeout=60_000)
    proof.save_to(tmp_path / "minors.pdf")
    printed = "".join(p.extract_text() for p in pypdf.PdfReader(tmp_path / "minors.pdf").pages)
    for words in ("nearness, a pact", "A heron between them", "With The Lovers", "Who pours?"):
        assert words in " ".join(printed.split())
