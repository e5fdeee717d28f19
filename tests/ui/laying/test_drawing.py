"""Drawing on screen with real clicks and keys."""

import random

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QScrollArea, QVBoxLayout, QWidget

from binder.cards.spreads import spread
from binder.cards.titles import DeckTitles
from binder.study.readings.drawing import DeckPart, Pack, keys_of
from binder.study.readings.hand import Hand
from ui.laying.drawing import DrawPanel
from ui.laying.fan import CARD, Does

SALTINGS = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})
SEED = 1911


@pytest.fixture
def hand():
    return Hand(spread("three-card"))


@pytest.fixture
def panel(qtbot, look, hand):
    made = DrawPanel(look, hand, random.Random(SEED))
    qtbot.addWidget(made)
    made.resize(524, 320)
    made.show()
    qtbot.waitExposed(made)
    made.activateWindow()
    return made


def expected(part=DeckPart.WHOLE, cut=0, *, reversals=True):
    """What a pack on the same generator gives."""
    pack = Pack(keys_of(part), reversals=reversals, chance=random.Random(SEED))
    if cut:
        pack.cut(cut)
    return [pack.turn() for _ in range(3)]


def lying(hand):
    return [(seat.card.key, seat.reversed) for seat in hand.seats if seat.card]


def click(widget):
    QTest.mouseClick(widget, Qt.MouseButton.LeftButton)


def choose(panel, part):
    """Pick a part of the deck by keys."""
    panel.part.setFocus()
    QTest.keyClick(panel.part, Qt.Key.Key_Home)
    for _ in range(panel.part.findData(part)):
        QTest.keyClick(panel.part, Qt.Key.Key_Down)
    panel.part.activated.emit(panel.part.currentIndex())


def test_shuffle_cut_with_a_click_and_turn_with_clicks(qtbot, panel, hand):
    click(panel.shuffle)
    assert (panel.fan.count, panel.fan.does) == (78, Does.CUT)
    qtbot.waitUntil(lambda: panel.fan.settled)
    at = panel.fan.middle(29) + QPoint(CARD // 2, 0)
    QTest.mouseMove(panel.fan, at.toPoint())
    cut = panel.fan.at
    assert abs(cut - 30) <= 2
    QTest.mouseClick(panel.fan, Qt.MouseButton.LeftButton, pos=at.toPoint())
    assert panel.fan.does is Does.TURN
    assert lying(hand) == []
    with qtbot.waitSignal(panel.drawn) as done:
        for _ in range(3):
            QTest.mouseClick(panel.fan, Qt.MouseButton.LeftButton)
    cards = expected(cut=cut)
    assert lying(hand) == [(card.key, card.reversed) for card in cards]
    assert done.args[0] == [(n, card.key, card.reversed) for n, card in enumerate(cards, 1)]
    assert panel.fan.does is Does.NOTHING
    assert "Every place has its card." in panel.told.text()


def test_the_keyboard_alone(panel, hand):
    panel.shuffle.setFocus()
    QTest.keyClick(panel.shuffle, Qt.Key.Key_Space)
    assert QApplication.focusWidget() is panel.fan
    QTest.keyClick(panel.fan, Qt.Key.Key_Home)
    for _ in range(4):
        QTest.keyClick(panel.fan, Qt.Key.Key_Right)
    QTest.keyClick(panel.fan, Qt.Key.Key_PageDown)
    QTest.keyClick(panel.fan, Qt.Key.Key_Left)
    assert panel.fan.at == 14
    assert panel.fan.accessibleDescription() == "Cut after 14"
    QTest.keyClick(panel.fan, Qt.Key.Key_Return)
    for key in (Qt.Key.Key_Return, Qt.Key.Key_Space, Qt.Key.Key_Enter):
        QTest.keyClick(panel.fan, key)
    assert lying(hand) == [(card.key, card.reversed) for card in expected(cut=14)]


def test_cards_come_one_by_one_and_are_told(qtbot, panel, hand):
    click(panel.shuffle)
    assert panel.going_on.text() == "Leave uncut"
    click(panel.going_on)
    assert panel.going_on.text() == "Turn the next card"
    assert panel.told.text() == "Next: 1, Past."
    first = expected()[0]
    with qtbot.waitSignal(panel.turned) as turned:
        click(panel.going_on)
    assert turned.args == [1, first.key, first.reversed]
    title = hand.titles.title(first.key) + (", reversed" if first.reversed else "")
    assert panel.told.text() == f"1, Past: {title}. Next: 2, Present."
    assert panel.fan.count == 77


def test_nothing_is_turned_before_it_was_shuffled(panel, hand):
    QTest.mouseClick(panel.fan, Qt.MouseButton.LeftButton)
    QTest.keyClick(panel.fan, Qt.Key.Key_Return)
    assert lying(hand) == []
    assert not panel.going_on.isVisible()


def test_one_suit_without_reversals(panel, hand):
    choose(panel, DeckPart.CUPS)
    click(panel.reversals)
    assert panel.fan.count == 14
    click(panel.shuffle)
    click(panel.going_on)
    for _ in range(3):
        click(panel.going_on)
    assert lying(hand) == [(c.key, False) for c in expected(DeckPart.CUPS, reversals=False)]


def test_another_part_puts_the_shuffled_pack_down(panel):
    click(panel.shuffle)
    choose(panel, DeckPart.MAJORS)
    assert (panel.fan.count, panel.fan.does) == (22, Does.NOTHING)
    assert panel.shuffle.text() == "Shuffle"


def test_a_card_laid_by_hand_is_not_drawn_again(panel, hand):
    hand.write("star, moon")
    choose(panel, DeckPart.MAJORS)
    assert panel.fan.count == 20
    click(panel.shuffle)
    click(panel.going_on)
    hand.take_up(1)
    for _ in range(2):
        click(panel.going_on)
    keys = [key for key, _ in lying(hand)]
    assert len(set(keys)) == 3
    assert "major-18" in keys


def test_a_card_laid_meanwhile_is_passed_over(qtbot, look):
    hand = Hand(spread("twelve-month-wheel"))
    panel = DrawPanel(look, hand, random.Random(SEED))
    qtbot.addWidget(panel)
    choose(panel, DeckPart.CUPS)
    panel.shuffle_pack()
    panel.going_on.click()
    hand.write("ac, 2c, 3c, 4c, 5c, 6c, 7c, 8c")
    for _ in range(4):
        panel.turn()
    keys = [seat.card.key for seat in hand.seats]
    assert len(set(keys)) == 12


def test_a_part_may_be_used_up(qtbot, look):
    hand = Hand(spread("twelve-month-wheel"))
    panel = DrawPanel(look, hand)
    qtbot.addWidget(panel)
    hand.write("ac, 2c, 3c, 4c, 5c, 6c, 7c, 8c, 9c, 10c")
    choose(panel, DeckPart.CUPS)
    panel.shuffle_pack()
    panel.going_on.click()
    hand.write("pc, knc, qc, kc, ac")
    panel.turn()
    for _ in range(20):
        panel.turn()
    assert panel.wrong.wrong
    assert "used up" in panel.wrong.text()


def test_shuffling_again_starts_from_what_is_not_laid(panel, hand):
    click(panel.shuffle)
    click(panel.going_on)
    click(panel.going_on)
    click(panel.shuffle)
    assert (panel.fan.count, panel.fan.does) == (77, Does.CUT)


def test_another_deck_names_its_suits(panel, hand):
    click(panel.shuffle)
    hand.change_titles(SALTINGS)
    assert panel.part.itemText(panel.part.findData("pentacles")) == "Coins only"
    assert panel.fan.does is Does.NOTHING


def test_the_systems_own_chance_is_used_unless_another_is_given(qtbot, look, hand, monkeypatch):
    mixed = []

    class Heard(random.SystemRandom):
        def shuffle(self, x):
            mixed.append(len(x))
            super().shuffle(x)

    monkeypatch.setattr(random, "SystemRandom", Heard)
    panel = DrawPanel(look, hand)
    qtbot.addWidget(panel)
    click(panel.shuffle)
    assert mixed == [78]


def test_on_a_short_leaf_the_fan_comes_into_sight(qtbot, look, hand):
    area, column = QScrollArea(), QWidget()
    rows = QVBoxLayout(column)
    above = QWidget()
    above.setFixedHeight(500)
    panel = DrawPanel(look, hand)
    rows.addWidget(above)
    rows.addWidget(panel)
    area.setWidget(column)
    area.setWidgetResizable(True)
    area.resize(500, 300)
    qtbot.addWidget(area)
    area.show()
    qtbot.waitExposed(area)
    panel.shuffle_pack()
    bottom = panel.fan.rect().bottomLeft()
    qtbot.waitUntil(lambda: panel.fan.mapTo(area, bottom).y() <= area.height())
