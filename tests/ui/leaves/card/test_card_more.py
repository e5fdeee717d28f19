"""Keywords, imagery, related cards, open questions and several faces on the leaf of a card."""

import pytest
from PIL import Image
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QPixmapCache
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from binder.cards.facts import card
from binder.study.cards import imagery, related
from binder.study.decks import decks, shown_faces
from binder.study.decks.deck_faces import set_faces
from binder.study.leaves import fields, files
from binder.study.leaves.fields import QUESTIONS
from tests.ui import driving
from tests.ui.driving import K, answering, click, double_click, point, settle
from ui.actions.installed import actions_of
from ui.kit.faces.faces import FaceCache
from ui.leaves.card.card import CardPage
from ui.leaves.card.card_head import EDGE
from ui.leaves.card.in_picture import MARK
from ui.leaves.card.mark_dialog import MarkDialog
from ui.leaves.card.mark_paint import centre
from ui.session.photos import card_photo

STAR, MOON, BLANK = "major-17", "major-18", "cups-02"


def spot_of(session, key):
    return session.spot_of(session.shelf.card_leaf(key)[1])


@pytest.fixture
def star(session, look, lay):
    made = lay(CardPage(session, look), spot_of(session, STAR))
    session.changed.connect(lambda _notice: made.show_spot(made.spot))
    return made


@pytest.fixture
def photographed(session, tmp_path):
    """Both decks of the sample have a photograph of the Star."""
    QPixmapCache.clear()
    binder = session.shelf.binder("Practice")
    known = decks.decks(session.shelf)
    for deck, colour in zip(known, ("navy", "darkred"), strict=True):
        path = tmp_path / f"{colour}.png"
        Image.new("RGB", (300, 504), colour).save(path)
        uid = files.keep_bytes(binder, path.name, "image/jpeg", card_photo(path))
        set_faces(session.shelf, binder, deck.uid, {STAR: uid})
    session.photos.refresh()
    return known


def link_point(prose, address):
    """The middle of the first link to an address, in the viewport of a running text."""
    link = next(one for one in prose.links() if one.address == address)
    cursor = prose.textCursor()
    cursor.setPosition(link.start)
    left = prose.cursorRect(cursor)
    return QPoint(left.left() + 3, left.center().y())


# What is shown


def test_keywords_of_each_way(star):
    said = star.more.keywords.words.toPlainText()
    assert said.index("Upright") < said.index("clear weather") < said.index("Reversed")
    assert "a borrowed light" in said


def test_what_is_empty_stays_out_of_the_way(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, BLANK))
    more = page.more
    for section in (more.keywords, more.pictured, more.open):
        assert not section.isVisible()
    assert more.related.isVisible()
    assert page.quiet.isVisible()


def test_words_found_are_marked_in_the_sections(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    page.show_spot(page.spot, ("borrowed",))
    assert page.more.keywords.words.first_mark() is not None


def test_sections_keep_within_a_narrow_leaf(session, look, lay, photographed):
    for width in (330, 400, 524):
        page = lay(CardPage(session, look), spot_of(session, STAR), width, 700)
        settle()
        assert page.horizontalScrollBar().maximum() == 0
        for face in page.top.faces.faces:
            right = face.mapTo(page, QPoint(face.width(), 0)).x()
            assert face.width() >= 60
            assert right <= width


# Questions


def test_a_question_is_ticked_where_it_stands(star, session, qtbot):
    ask = star.more.ask
    assert star.more.open.head.accessibleName() == "Still open, 2 open"
    at = link_point(ask, "tick:1")
    qtbot.mouseClick(ask.viewport(), Qt.MouseButton.LeftButton, pos=at)
    text = fields.fields(*session.shelf.card_leaf(STAR))[QUESTIONS]
    assert text.splitlines()[1].startswith("- [x] Why eight points")
    assert star.more.open.head.accessibleName() == "Still open, 1 open"
    session.undo()
    assert star.more.open.head.accessibleName() == "Still open, 2 open"


def test_a_question_is_ticked_by_key(star, session, qtbot):
    ask = star.more.ask
    ask.setFocus()
    for key in (K.Key_Tab, K.Key_Tab, K.Key_Return):
        qtbot.keyClick(ask, key)
    text = fields.fields(*session.shelf.card_leaf(STAR))[QUESTIONS]
    assert text.count("[x]") == 2


# Imagery


def test_marks_stand_on_the_face_and_in_the_list(star):
    (face,) = star.top.faces.faces
    assert [mark.number for mark in face.marks] == [1, 2, 3]
    assert "2 A ring of small lights" in face.accessibleDescription()
    assert "Eight points" in star.more.lines.toPlainText()


def test_pointing_at_a_line_lights_its_mark(star, qtbot):
    (face,), lines = star.top.faces.faces, star.more.lines
    second = face.marks[1]
    at = link_point(lines, MARK + second.uid) + QPoint(60, 0)
    point(lines.viewport(), at)
    qtbot.waitUntil(lambda: face.lit == second.uid)
    qtbot.mouseClick(lines.viewport(), Qt.MouseButton.LeftButton, pos=at)
    point(star.viewport(), QPoint(2, 2))
    QApplication.sendEvent(lines, QEvent(QEvent.Type.Leave))
    assert face.lit == second.uid


def test_walking_the_list_by_key_lights_marks(star, qtbot):
    (face,), lines = star.top.faces.faces, star.more.lines
    lines.setFocus()
    qtbot.keyClick(lines, K.Key_Tab)
    assert face.lit == face.marks[0].uid
    qtbot.keyClick(lines, K.Key_Tab)
    assert face.lit == face.marks[1].uid
    qtbot.keyClick(lines, K.Key_Return)
    assert face.lit == face.marks[1].uid


def test_pointing_at_a_mark_tints_its_line(star, qtbot):
    (face,), lines = star.top.faces.faces, star.more.lines
    at = centre(face.marks[2], face.card_rect()).toPoint()
    point(face, at)
    qtbot.waitUntil(lambda: bool(lines.extraSelections()))
    assert "The road runs straight" in lines.extraSelections()[0].cursor.selectedText()
    assert face.toolTip().startswith("The road")


# Related cards


def test_related_cards_lead_to_their_leaves(star, qtbot):
    words = star.more.related.words
    said = words.toPlainText()
    for name in ("The Tower", "The Moon", "The Empress", "Wheel of Fortune"):
        assert name in said
    assert "Two lights at night" in said
    with qtbot.waitSignal(star.followed) as followed:
        qtbot.mouseClick(
            words.viewport(), Qt.MouseButton.LeftButton, pos=link_point(words, "card:major-16")
        )
    assert followed.args == ["card:major-16"]


def test_a_pair_stands_on_the_other_leaf_too(session, look, lay):
    page = lay(CardPage(session, look), spot_of(session, "wands-03"))
    assert "The Star: Both look out over distance." in page.more.related.words.toPlainText()


def test_a_pair_is_made_changed_and_taken_apart_in_the_window(window):
    session = window.session
    session.open_leaf(session.shelf.card_leaf(BLANK)[1])
    settle()

    def pairs(dialog):
        QTest.keyClicks(dialog.card, "the squirrel")
        QTest.keyClick(dialog.card, K.Key_Return)
        assert dialog.isVisible()
        assert dialog.wrong.isVisible() or dialog.named.isVisible()
        dialog.card.selectAll()
        QTest.keyClicks(dialog.card, "moon")
        assert dialog.named.text() == "The Moon"
        QTest.keyClicks(dialog.why, "Two of one mind")
        click(dialog.yes)

    answering(pairs)
    actions_of(window).follow(window.cover.leaf("left"), f"pair:{BLANK}")
    settle()
    (pair,) = related.pairs(session.shelf, BLANK)
    assert (pair.other, pair.text) == (MOON, "Two of one mind")
    words = window.cover.leaf("left").more.related.words
    assert "The Moon: Two of one mind" in words.toPlainText()

    def changes(dialog):
        assert not dialog.card.isEnabled()
        QTest.keyClicks(dialog.why, "Not of one mind. ")
        click(dialog.yes)

    answering(changes)
    click(words.viewport(), link_point(words, f"pair:{pair.uid}"))
    assert related.pairs(session.shelf, MOON)[-1].text.startswith("Not of one mind.")
    answering(lambda dialog: click(dialog.apart))
    click(words.viewport(), link_point(words, f"pair:{pair.uid}"))
    assert related.pairs(session.shelf, BLANK) == []
    actions_of(window).undo()
    assert len(related.pairs(session.shelf, BLANK)) == 1


# Faces of several decks


def test_faces_of_several_decks_stand_side_by_side(session, look, lay, photographed):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    row = page.top.faces
    shown = [face for face in row.faces if not face.isHidden()]
    names = [face.accessibleName() for face in shown]
    # The drawn face has marks on it, so it stays in sight.
    assert names == [
        "The face of The Star, Lantern Road deck",
        "The face of The Star, Saltmarsh deck",
        "The face of The Star, Drawn face",
    ]
    assert len({face.y() for face in shown}) == 1
    assert [len(face.marks) for face in shown] == [0, 0, 3]
    page.show_spot(spot_of(session, MOON))
    assert [face.accessibleName() for face in row.faces if not face.isHidden()] == [
        "The face of The Moon"
    ]


def test_the_decks_shown_are_chosen_by_key(window, photographed_in):
    session = window.session
    session.open_leaf(session.shelf.card_leaf(STAR)[1])
    settle()

    def unticks(dialog):
        dialog.list.setFocus()
        QTest.keyClick(dialog.list, K.Key_Space)
        QTest.keyClick(dialog.list, K.Key_Return)

    answering(unticks)
    window.actions_by_name["card_faces"].trigger()
    settle()
    kept = shown_faces.chosen(session.shelf)
    assert len(kept) == 2
    assert photographed_in[0].uid not in kept
    row = window.cover.leaf("left").top.faces
    assert [face.isHidden() for face in row.faces] == [False, False, True]
    answering(lambda dialog: dialog.reject())
    click(row.words.viewport(), link_point(row.words, "decks:"))
    assert shown_faces.chosen(session.shelf) == kept


@pytest.fixture
def photographed_in(window, tmp_path):
    """Both decks of the window's shelf have a photograph of the Star."""
    shelf = window.session.shelf
    binder, known = shelf.binder("Practice"), decks.decks(shelf)
    for deck in known:
        path = tmp_path / f"{deck.uid}.png"
        Image.new("RGB", (300, 504), "navy").save(path)
        uid = files.keep_bytes(binder, path.name, "image/jpeg", card_photo(path))
        set_faces(shelf, binder, deck.uid, {STAR: uid})
    return known


def test_a_deck_is_marked_on_its_own_picture(window, photographed_in):
    session = window.session
    home = session.shelf.card_leaf(STAR)
    session.open_leaf(home[1])
    settle()
    seen = []

    def marks(dialog):
        seen.append((type(dialog), dialog.deck))
        click(dialog.board, QPoint(60, 90))
        dialog.accept()

    answering(marks)
    face = window.cover.leaf("left").top.faces.faces[1]
    face.setFocus()
    QTest.keyClick(face, K.Key_Return)
    settle()
    assert seen == [(MarkDialog, photographed_in[1].uid)]
    assert photographed_in[1].uid in [mark.deck for mark in imagery.marks(*home)]
    assert "Saltmarsh deck" in window.cover.leaf("left").more.lines.toPlainText()


def test_only_a_card_leaf_is_marked(window):
    session = window.session
    session.open_tab(
        session.shelf.binder("Practice"), driving.tab_of(window, "Readings log", "Practice")
    )
    window.actions_by_name["mark_picture"].trigger()
    assert "Open the leaf of one of the 78 cards first." in window.said.text()


def test_the_face_has_a_menu(window, qtbot):
    session = window.session
    session.open_leaf(session.shelf.card_leaf(STAR)[1])
    settle()
    seen = []

    def shut(dialog):
        seen.append(type(dialog))
        dialog.reject()

    face = window.cover.leaf("left").top.faces.faces[0]
    menu = driving.ask_menu(face)
    answering(shut)
    driving.pick(menu, "Mark the picture…")
    qtbot.waitUntil(lambda: seen == [MarkDialog])


def test_double_click_on_the_face_opens_it_larger(star, qtbot):
    (face,) = star.top.faces.faces
    with qtbot.waitSignal(star.followed) as followed:
        double_click(face, QPoint(20, 20))
    assert followed.args == ["marks:"]


def test_its_tables_take_up_another_theme(star, look):
    words = star.more.related.words
    assert look.theme["own"].name() in words.html
    look.set_name("lamp")
    settle()
    assert look.theme["own"].name() in words.html
    look.set_scale(1.5)
    settle()
    assert 'width="162"' in words.html
    assert star.horizontalScrollBar().maximum() == 0


def test_tab_walks_the_faces_then_what_is_done_with_them(session, look, lay, photographed, qtbot):
    page = lay(CardPage(session, look), spot_of(session, STAR))
    row = page.top.faces
    row.faces[0].setFocus()
    walked = []
    for _ in range(3):
        qtbot.keyClick(QApplication.focusWidget(), K.Key_Tab)
        walked.append(QApplication.focusWidget())
    assert walked == [row.faces[1], row.faces[2], row.words]


def test_the_faces_of_the_next_cards_are_drawn_ahead(session, look, lay, photographed, qtbot):
    page = lay(CardPage(session, look), spot_of(session, "major-16"))
    page.finish()
    cache = FaceCache(session.photos)
    star = card(STAR)
    width = page.top.faces.faces[0].width() - 2 * EDGE
    decks_of = [deck.uid for deck in photographed]
    qtbot.waitUntil(
        lambda: all(cache.of(uid).made(star, width, look.theme) for uid in decks_of), timeout=3000
    )
