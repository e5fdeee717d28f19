"""Plain leaves: links, rules about links, footnotes, marks, scrolling by key."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QMenu

from binder.cards.prose import LEFT_ALONE
from binder.study.cards import links
from tests.ui.driving import click, follow, on_link, words_of
from tests.ui.leaf_fixtures import plain, session_on, shown
from ui.kit.page.focus_mark import FocusMark
from ui.kit.prose.prose import Pointed
from ui.kit.prose.rendering import RENDERED
from ui.leaves.contents.plain import PlainPage

TEXT = "The Star over the water, and the star again, and The Moon. Justice was done."


@pytest.fixture
def session(course_shelf, qapp):
    return session_on(course_shelf)


@pytest.fixture
def page(session, qtbot, look, course_shelf):
    _, uid = plain(course_shelf, TEXT, day="2026-11-22T09:00")
    return shown(PlainPage(session, look), qtbot, session, uid)


def said(page):
    return [words_of(page.text, link) for link in page.text.links()]


def menu_of(page, words):
    """The actions of the menu of a linked name, by their words without marks for keys."""
    link = next(link for link in page.text.links() if words_of(page.text, link) == words)
    return by_words(page.text.menu_for(link))


def by_words(menu):
    return {action.text().replace("&", ""): action for action in menu.actions()}


def test_the_day_is_written_out(page):
    assert page.heading.accessibleDescription() == "Sunday 22 November 2026"


def test_a_click_on_a_name_comes_out_of_the_page(page, qtbot):
    link = page.text.links()[0]
    with qtbot.waitSignal(page.followed) as followed:
        follow(page.text, link)
    assert followed.args == ["card:major-17"]


def test_lay_the_star_facing(page, session, qtbot):
    with qtbot.waitSignal(session.faced):
        menu_of(page, "The Star")["Lay The Star facing"].trigger()
    assert session.leaf_of(session.facing).card == "major-17"


def test_not_a_card_here_unlinks_on_this_leaf_alone(page, session, course_shelf):
    menu_of(page, "The Moon")["Not a card on this leaf"].trigger()
    assert "The Moon" not in said(page)
    _, other = plain(course_shelf, "The Moon is up.")
    page.show_spot(session.spot_of(other))
    assert said(page) == ["The Moon"]


def test_one_name_is_unlinked_in_its_place_and_the_same_name_elsewhere_stays(page, course_shelf):
    _, uid = plain(course_shelf, "The Moon is up. **The Moon** again, and The Moon once more.")
    page.show_spot(page.session.spot_of(uid))
    again = page.text.links()[1]
    by_words(page.text.menu_for(again))["Not a card in this place"].trigger()
    page.show_spot(page.session.spot_of(uid))
    words = page.text.toPlainText().replace(LEFT_ALONE, "")
    assert said(page) == ["The Moon", "The Moon"]
    assert words.strip() == "The Moon is up. The Moon again, and The Moon once more."
    assert page.text.links()[1].start > again.start


def test_never_link_unlinks_everywhere_and_can_be_undone(page, session, course_shelf):
    menu_of(page, "The Moon")["Never link “the moon”"].trigger()
    assert "The Moon" not in said(page)
    _, other = plain(course_shelf, "The Moon is up.")
    page.show_spot(session.spot_of(other))
    assert said(page) == []
    _, _, leaf, word, rule = links.rules(course_shelf)[0]
    assert (leaf, word.removeprefix("the "), rule) == ("", "moon", links.NEVER)


def test_a_link_somebody_wrote_has_no_rules(page, session, course_shelf):
    _, uid = plain(course_shelf, "[The old man](card:major-09) with a lamp.")
    page.show_spot(session.spot_of(uid))
    words = menu_of(page, "The old man")
    assert "Lay The Hermit facing" in words
    assert "Not a card on this leaf" not in words


def test_selected_words_are_offered_only_when_they_are_a_title(page, session):
    from ui.kit.prose.link_menu import fill

    for words, offered in (("Justice", True), ("over the water", False), ("x" * 200, False)):
        menu = QMenu()
        fill(menu, session, page.spot, Pointed(None, "", words))
        assert bool(menu.actions()) is offered


def test_always_link_makes_a_link_of_a_word_that_was_none(page, session):
    assert "Justice" not in said(page)
    cursor = page.text.document().find("Justice")
    page.text.setTextCursor(cursor)
    words = by_words(page.text.menu_for(None))
    by_words(words["Always link “Justice” as a card…"].menu())["On this leaf"].trigger()
    assert "Justice" in said(page)


def test_a_footnote_call_scrolls_within_the_page(session, qtbot, look, course_shelf):
    text = "Called.[^1]\n\n" + "A paragraph to fill the leaf.\n\n" * 80 + "[^1]: The note itself."
    _, uid = plain(course_shelf, text)
    page = shown(PlainPage(session, look), qtbot, session, uid)
    with qtbot.assertNotEmitted(page.followed):
        page.text.followed.emit("#fn:1")
    bar = page.verticalScrollBar()
    assert bar.value() > bar.maximum() * 0.8
    page.text.followed.emit("#fnref:1")
    assert bar.value() == 0


def test_the_leaf_opens_at_the_first_word_found(session, qtbot, look, course_shelf):
    text = (
        "A paragraph to fill the leaf.\n\n" * 120 + "Here is zanzibar at last.\n\n" + "End. " * 200
    )
    _, uid = plain(course_shelf, text)
    page = shown(PlainPage(session, look), qtbot, session, uid, marks=("zanzibar",))
    page.show_spot(session.spot_of(uid), ("zanzibar",))
    top = page.text.mapTo(page.viewport(), page.text.pos()).y() + page.text.first_mark()
    assert 0 < top - page.text.y() < page.viewport().height()


@pytest.mark.parametrize(
    ("key", "moved"),
    [(Qt.Key.Key_PageDown, True), (Qt.Key.Key_Space, True), (Qt.Key.Key_End, True)],
)
def test_keys_scroll_a_long_leaf(session, qtbot, look, course_shelf, key, moved):
    _, uid = plain(course_shelf, "A paragraph to fill the leaf.\n\n" * 120)
    page = shown(PlainPage(session, look), qtbot, session, uid)
    page.focus_in()
    qtbot.keyClick(page, key)
    assert (page.verticalScrollBar().value() > 0) is moved
    qtbot.keyClick(page, Qt.Key.Key_Home)
    assert page.verticalScrollBar().value() == 0


def test_keys_that_turn_leaves_go_on_to_the_window(page, qtbot):
    from PySide6.QtGui import QKeyEvent

    for key in (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Down):
        event = QKeyEvent(QKeyEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(page, event)
        assert not event.isAccepted()


def test_focus_by_key_is_shown(page):
    page.activateWindow()
    page.focus_in()
    assert page.findChild(FocusMark).isVisible()
    page.text.setFocus(Qt.FocusReason.MouseFocusReason)
    assert not page.findChild(FocusMark).isVisible()


def test_tick_boxes_come_out_with_their_number(session, qtbot, look, course_shelf):
    _, uid = plain(course_shelf, "- [ ] one\n- [x] two")
    page = shown(PlainPage(session, look), qtbot, session, uid)
    link = page.text.links()[1]
    with qtbot.waitSignal(page.followed) as followed:
        click(page.text.viewport(), on_link(page.text, link, letters=0) + QPoint(4, 0))
    assert followed.args == ["tick:1"]


def test_the_width_of_the_text_is_the_same_with_and_without_a_bar(
    session, qtbot, look, course_shelf
):
    _, short = plain(course_shelf, "Short.")
    _, long = plain(course_shelf, "A paragraph to fill the leaf.\n\n" * 120)
    page = shown(PlainPage(session, look), qtbot, session, short)
    width = page.text.width()
    page.show_spot(session.spot_of(long))
    assert page.verticalScrollBar().isVisible()
    assert page.text.width() == width


def test_turning_back_renders_nothing_again(page, session, monkeypatch):
    from binder.page.markup import markdown

    RENDERED.forget()
    page.show_spot(page.spot)
    monkeypatch.setattr(markdown, "to_html", None)
    page.show_spot(page.spot)
    assert said(page)[:1] == ["The Star"]
