"""The painted layout of a reading: places, pointer, keys, and those who hear the screen."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor, QContextMenuEvent, QHelpEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolTip

from binder.cards.facts import CARDS
from binder.cards.spreads import SPREADS, spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.study.readings.laying import laid_from
from binder.study.readings.readings import Laid
from tests.ui.leaf_fixtures import LINE
from ui.kit.layout.layout_view import LayoutView
from ui.look import theme

CELTIC = "3w, hermit r, qc, 7p r, 2s, star, 10c, knw, moon, ac"


def cards(key="five-card-cross", line=LINE):
    laid = laid_from(line, spread(key), STANDARD)
    return [Laid(one.n, one.card, one.reversed, "", STANDARD.title(one.card)) for one in laid]


@pytest.fixture
def view(qtbot, look):
    made = LayoutView(look)
    qtbot.addWidget(made)
    made.resize(524, 100)
    made.show()
    qtbot.waitExposed(made)
    made.show_reading(spread("five-card-cross"), cards())
    return made


def middle(view, n):
    return view.place_rect(n).center().toPoint()


def test_every_place_is_told_with_its_card_and_orientation(view):
    assert [button.accessibleName() for button in view.places()] == [
        "Place 1, The matter: Three of Pentacles",
        "Place 2, Crosses it: Five of Wands",
        "Place 3, Ground: Four of Pentacles, reversed",
        "Place 4, Behind: Six of Swords",
        "Place 5, Ahead: The Star",
    ]


def test_the_crossing_card_lies_across_the_card_it_crosses(view):
    under, over = view.place_rect(1), view.place_rect(2)
    assert under.height() > under.width()
    assert over.width() > over.height()
    assert over.center() == under.center()


def test_a_click_on_a_card_chooses_it(view, qtbot):
    with qtbot.waitSignal(view.chosen) as chosen:
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=middle(view, 5))
    assert chosen.args == ["major-17"]


def test_the_crossing_card_is_above_and_the_crossed_one_is_reached_at_its_ends(view, qtbot):
    with qtbot.waitSignal(view.chosen) as chosen:
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=middle(view, 2))
    assert chosen.args == ["wands-05"]
    top = view.place_rect(1)
    with qtbot.waitSignal(view.chosen) as chosen:
        spot = QPoint(round(top.center().x()), round(top.top()) + 6)
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=spot)
    assert chosen.args == ["pentacles-03"]


def test_a_click_in_the_list_chooses_too(view, qtbot):
    row = next(row for row in view.laid_out.rows if row.n == 4)
    with qtbot.waitSignal(view.chosen) as chosen:
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=row.room.center().toPoint())
    assert chosen.args == ["swords-06"]


def test_beside_the_cards_a_click_chooses_nothing(view, qtbot):
    with qtbot.assertNotEmitted(view.chosen):
        qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=QPoint(3, view.height() - 3))


def test_arrows_walk_the_places_and_enter_chooses(view, qtbot):
    first, *_, last = view.places()
    first.setFocus(Qt.FocusReason.TabFocusReason)
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Left):
        qtbot.keyClick(QApplication.focusWidget(), key)
    assert QApplication.focusWidget() is view.places()[1]
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_End)
    assert QApplication.focusWidget() is last
    with qtbot.waitSignal(view.chosen) as chosen:
        qtbot.keyClick(last, Qt.Key.Key_Return)
    assert chosen.args == ["major-17"]
    qtbot.keyClick(last, Qt.Key.Key_Home)
    assert QApplication.focusWidget() is first


def test_only_one_place_takes_the_tab_key(view, qtbot):
    view.places()[0].setFocus()
    qtbot.keyClick(view.places()[0], Qt.Key.Key_Right)
    takes = [b for b in view.places() if b.focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert takes == [view.places()[1]]


def test_focus_got_by_key_is_shown_and_by_pointer_is_not(view, qtbot):
    before = view.grab().toImage()
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=middle(view, 4))
    assert view.places()[3].hasFocus()
    assert not view.places()[3].shown_by_key
    qtbot.keyClick(view.places()[3], Qt.Key.Key_Right)
    QTest.mouseMove(view, QPoint(3, view.height() - 3))
    assert view.grab().toImage() != before


def test_the_pencil_ring_is_drawn_round_the_picked_card_and_taken_away(view, look):
    def red():
        image, box = view.grab().toImage(), view.place_rect(5)
        ratio = image.devicePixelRatio()
        y = round(box.center().y() * ratio)
        x = range(round((box.left() - 9) * ratio), round(box.left() * ratio))
        return sum(close(image.pixelColor(at, y), look.theme["red"]) for at in x)

    assert red() == 0
    view.pick("major-17")
    assert red() >= 1
    view.pick("")
    assert red() == 0


def close(one: QColor, other: QColor) -> bool:
    pairs = zip(one.getRgb()[:3], other.getRgb()[:3], strict=True)
    return all(abs(a - b) < 60 for a, b in pairs)


def test_what_a_place_asks_stands_in_its_tip(view, qtbot):
    at = middle(view, 3)
    QApplication.sendEvent(view, QHelpEvent(QHelpEvent.Type.ToolTip, at, view.mapToGlobal(at)))
    assert QToolTip.text() == spread("five-card-cross").place(3).asks
    QToolTip.hideText()


@pytest.mark.parametrize("reason", list(QContextMenuEvent.Reason)[:2])
def test_the_menu_is_asked_for_a_card_by_pointer_and_by_key(view, qtbot, reason):
    at = middle(view, 5)
    view.places()[4].setFocus()
    with qtbot.waitSignal(view.menu_asked) as asked:
        event = QContextMenuEvent(reason, at, view.mapToGlobal(at), Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(view, event)
    assert asked.args[0] == "major-17"


@pytest.mark.parametrize("known", SPREADS, ids=lambda known: known.key)
@pytest.mark.parametrize("width", [314, 524, 720])
@pytest.mark.parametrize("scale", [1.0, 1.5])
def test_every_spread_stays_on_the_leaf_and_nothing_overlaps(view, look, known, width, scale):
    look.set_scale(scale)
    view.setFixedWidth(round(width * scale))
    numbers = [f"{n}w" for n in range(2, 11)] + ["2c", "3c", "4c"]
    line = ", ".join(numbers[: len(known.places)])
    view.show_reading(known, cards(known.key, line))
    inside = view.rect().adjusted(-1, -1, 1, 1)
    boxes = [view.place_rect(place.n).toAlignedRect() for place in known.places]
    rows = [row.room.toAlignedRect() for row in view.laid_out.rows]
    assert all(inside.contains(room) for room in (*boxes, *rows))
    assert not any(row.intersects(box) for row in rows for box in boxes)
    for index, row in enumerate(rows):
        assert not any(row.intersects(other) for other in rows[index + 1 :])
    look.set_scale(1.0)


def test_long_titles_of_a_deck_wrap_within_the_list(view, look):
    long = "The Keeper of the Lighthouse at the Far End of the Sands"
    titles = DeckTitles.from_dict({"trumps": [long, *STANDARD.trumps[1:]]})
    laid = [Laid(1, "major-00", True, "", long)]
    view.show_reading(spread("one-card"), laid, titles)
    row = view.laid_out.rows[0]
    assert len(row.words) >= 3
    assert row.room.right() <= view.width()
    assert view.places()[0].accessibleName() == f"Place 1, The matter: {long}, reversed"


def test_a_place_without_a_card_is_told_and_cannot_be_chosen(view, qtbot):
    view.show_reading(spread("three-card"), cards("three-card", "3w, 4w, 5w")[:2])
    assert view.places()[2].accessibleName() == "Place 3, Future: no card"
    with qtbot.assertNotEmitted(view.chosen):
        view.places()[2].click()


def test_both_themes_paint_it_anew(view, look):
    day = view.grab().toImage()
    look.set_name("lamp")
    assert view.grab().toImage() != day
    look.set_name("day")


def test_buttons_are_used_again_for_the_next_reading(view):
    before = view.places()
    view.show_reading(spread("celtic-cross"), cards("celtic-cross", CELTIC))
    assert view.places()[:5] == before
    assert all(button.isVisible() for button in view.places())
    view.show_reading(spread("one-card"), cards("one-card", "star"))
    assert len(view.places()) == 1
    assert not before[1].isVisible()


def test_words_on_a_leaf_are_never_smaller_than_eleven_pixels(view, look):
    assert isinstance(look, theme.Look)
    for row in view.laid_out.rows:
        for words in row.words:
            screen = view.screen().logicalDotsPerInchY()
            assert words.font.pointSizeF() * screen / 72 >= 11


@pytest.mark.parametrize("key", ["celtic-cross", "twelve-month-wheel"])
def test_many_cards_use_the_width_and_can_be_read(view, key):
    known = spread(key)
    view.resize(560, 100)
    laid = [Laid(p.n, CARDS[p.n].key, title=CARDS[p.n].title) for p in known.places]
    view.show_reading(known, laid)
    assert view.place_rect(1).width() >= 58
    rooms = [view.place_rect(place.n) for place in known.places]
    assert max(r.right() for r in rooms) - min(r.left() for r in rooms) > 0.8 * 560
