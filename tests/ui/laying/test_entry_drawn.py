"""A reading drawn on screen, and one laid in a spread of the owner's own, by keys."""

from dataclasses import replace

from PySide6.QtCore import Qt

from binder.cards.spreads import Place, Spread, spread
from binder.study.decks import decks
from binder.study.spreads import spreads

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
SPACE, ENTER, ESC = Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Escape


def draw_three(desk):
    """Shuffle, leave the pack uncut, turn a card into each of three places."""
    desk.type("What does the winter ask?")
    desk.key(Qt.Key.Key_G, CTRL | SHIFT)
    panel = desk.entry.left.draw
    assert panel.isVisible()
    assert panel.shuffle.hasFocus()
    desk.key(SPACE)
    panel.going_on.setFocus()
    for _ in range(4):
        desk.key(SPACE)


def test_a_reading_drawn_on_screen_says_so(desk):
    draw_three(desk)
    assert len(desk.entry.hand.taken) == 3
    desk.key(ENTER, CTRL)
    view = desk.reading()
    assert view.on_screen
    assert len({one.card for one in view.laid}) == 3


def test_it_still_does_when_taken_up_again(desk):
    draw_three(desk)
    desk.key(ESC)
    desk.entry.begin(desk.binder, desk.tab)
    desk.entry.keep()
    assert desk.reading().on_screen


def test_cards_taken_up_and_laid_by_hand_do_not(desk):
    draw_three(desk)
    desk.entry.hand.write("")
    desk.entry.hand.write("3w, hermit, qc")
    desk.entry.keep()
    assert not desk.reading().on_screen


def test_own_spreads_are_offered(desk):
    places = (Place(1, "Root", "", 0, 0, 0), Place(2, "Leaf", "", 0, 2, 0))
    spreads.add_spread(desk.session.shelf, desk.binder, Spread("", "Root and leaf", "", places))
    desk.entry.begin_afresh()
    box = desk.head.spread
    box.setCurrentText("Root and leaf")
    box.activated.emit(box.currentIndex())
    assert desk.entry.hand.size == 2
    desk.head.question.setPlainText("And now?")
    desk.entry.hand.write("3w, qc")
    desk.entry.keep()
    view = desk.reading()
    assert view.spread.name == "Root and leaf"
    assert [one.label for one in view.laid] == ["Root", "Leaf"]


def test_a_spread_and_a_deck_made_meanwhile_can_be_chosen(desk):
    desk.type("What now?")
    chosen = desk.head.spread.currentText(), desk.head.deck.currentText()
    made = replace(spread("three-card"), name="Three stairs")
    spreads.add_spread(desk.session.shelf, desk.binder, made)
    decks.add_deck(desk.session.shelf, desk.binder, "Saltings deck")
    assert (desk.head.spread.currentText(), desk.head.deck.currentText()) == chosen
    assert desk.head.spread.findText("Three stairs") >= 0
    assert desk.head.deck.findText("Saltings deck") >= 0
    assert desk.head.question.toPlainText() == "What now?"


def test_a_spread_changed_meanwhile_stays_as_it_was_for_this_reading(desk):
    made = replace(spread("three-card"), name="Three stairs")
    uid = spreads.add_spread(desk.session.shelf, desk.binder, made)
    stairs = spreads.spread_called(desk.session.shelf, "three-stairs")
    desk.head.choose_spread(stairs)
    desk.head.spread_changed.emit(stairs)
    shorter = replace(made, places=made.places[:2])
    spreads.change_spread(desk.session.shelf, desk.binder, uid, shorter)
    assert desk.head.fields().spread == stairs
    assert desk.entry.hand.size == 3
