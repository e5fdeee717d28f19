"""Logging a reading: by keys alone, by the mouse alone, put by and taken up, put right."""

import re
from dataclasses import replace
from datetime import date, datetime

import pytest
from PySide6.QtCore import QMimeData, QPoint, Qt
from PySide6.QtTest import QTest

from binder.cards.shorthand import read
from binder.cards.spreads import SPREADS, spread
from binder.cards.titles import STANDARD
from binder.study.cards import appearances
from binder.study.decks import decks
from binder.study.leaves import leaves
from binder.study.readings import readings
from binder.study.readings.cautions import ASK_FIRST
from binder.study.readings.readings import Laid, NewReading
from tests.ui.driving import write_day
from ui.laying.places import spoken

ENTER, TAB, ESC = Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape
CTRL = Qt.KeyboardModifier.ControlModifier


def test_a_whole_reading_by_keys_alone(desk):
    desk.type("What does the winter ask?")
    desk.key(ENTER)
    assert desk.line.hasFocus()
    desk.type("3w, hermit r, qc")
    desk.key(ENTER)
    view = desk.reading()
    assert view.question == "What does the winter ask?"
    assert view.spread == spread("three-card")
    assert [(c.n, c.card, c.reversed) for c in view.laid] == [
        (1, "wands-03", False),
        (2, "major-09", True),
        (3, "cups-13", False),
    ]
    assert (view.deck_name, view.look_on, view.purpose) == ("Lantern Road deck", "", "")
    assert view.at.date() == desk.session.today


def test_every_field_by_keys(desk):
    desk.type("And the workshop?")
    desk.key(TAB)
    assert desk.host.focusWidget() is desk.head.spread
    desk.type("five")
    desk.key(TAB)
    desk.key(Qt.Key.Key_End)
    desk.key(TAB)
    desk.type("B. T.")
    desk.key(TAB)
    desk.type("work")
    desk.key(TAB)
    assert desk.host.focusWidget() is desk.head.looks
    desk.key(TAB)
    desk.type("aw, 2w, 3w, 4w, 5w")
    desk.key(ENTER, CTRL)
    view = desk.reading()
    assert (view.spread.key, view.deck_name) == ("five-card-cross", "")
    assert (view.querent, view.topic, view.look_on) == ("B. T.", "work", "")


def test_cards_by_the_mouse_alone(desk):
    desk.head.question.setPlainText("By hand?")
    QTest.mouseClick(desk.entry.left.switch.words[1], Qt.MouseButton.LeftButton)
    desk.click_face("wands-03")
    desk.click_face("major-09", Qt.MouseButton.RightButton)
    desk.click_place(3)
    desk.click_face("cups-13")
    assert desk.line.toPlainText() == "3w, hermit r, qc"
    QTest.mouseClick(desk.entry.right.keep_row.keep, Qt.MouseButton.LeftButton)
    assert [(c.card, c.reversed) for c in desk.reading().laid] == [
        ("wands-03", False),
        ("major-09", True),
        ("cups-13", False),
    ]


@pytest.mark.parametrize("key", [card.key for card in SPREADS])
def test_every_spread_can_be_laid_from_the_grid(desk, key):
    desk.head.question.setPlainText("All of it?")
    desk.head.spread.setCurrentIndex([s.key for s in SPREADS].index(key))
    desk.head.spread.activated.emit(desk.head.spread.currentIndex())
    desk.entry.left.pick_faces()
    desk.entry.left.to_cards()
    for _ in spread(key).places:
        desk.key(ENTER)
        desk.key(Qt.Key.Key_Right)
    desk.key(ENTER, CTRL)
    assert len(desk.reading().laid) == len(spread(key).places)


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("", "No card is laid yet"),
        ("3w, qc", "This spread takes three cards; this line has two."),
        ("3w, qc, star, moon", "This spread takes three cards; this line has four."),
        ("3w, qc, hermitz", "“hermitz” is not understood."),
        ("3w, qc, 3w", "Three of Wands is in this line twice"),
    ],
)
def test_what_is_wrong_is_said_by_the_line_and_nothing_is_lost(desk, line, sentence):
    desk.type("What of it?")
    desk.key(ENTER)
    desk.type(line)
    desk.key(ENTER, CTRL)
    slip = desk.line.choices.offer
    assert (desk.entry.left.wrong.text() or slip.problem).startswith(sentence)
    assert desk.line.hasFocus()
    assert desk.line.toPlainText() == line
    assert desk.head.question.toPlainText() == "What of it?"
    assert (desk.kept, appearances.readings_count(desk.session.shelf)) == ([], 0)
    desk.type("x")
    assert desk.entry.left.wrong.text() == ""


def test_the_mouse_alone_takes_the_question_that_is_offered(desk):
    desk.entry.left.to_cards()
    desk.type("3w, qc, star")
    QTest.mouseClick(desk.entry.right.keep_row.keep, Qt.MouseButton.LeftButton)
    desk.head.hints["question"].linkActivated.emit("ask")
    assert desk.head.hints["question"].text() == ""
    QTest.mouseClick(desk.entry.right.keep_row.keep, Qt.MouseButton.LeftButton)
    assert desk.reading().question == "What does today ask of me?"


def test_a_question_is_asked_for_beside_the_question(desk):
    desk.entry.left.to_cards()
    desk.type("3w, qc, star")
    desk.key(ENTER)
    assert desk.head.hints["question"].text().startswith("A reading needs a question")
    assert desk.head.question.hasFocus()
    desk.type("Now?")
    assert desk.head.hints["question"].text() == ""
    desk.key(ENTER, CTRL)
    assert desk.kept


def test_dates_from_1900_on_and_what_is_to_come_is_hinted(desk):
    when = desk.head.when
    assert desk.head.hints["at"].text() == ""
    write_day(when, "1 Feb 2027 8:00")
    assert when.text() == "1 February 2027, 08:00"
    assert desk.head.hints["at"].text() == "That moment is still to come."
    assert desk.head.weekday.text() == "Monday"
    QTest.mouseClick(desk.head.looks, Qt.MouseButton.LeftButton, pos=QPoint(8, 8))
    desk.head.question.setFocus()
    desk.type("Later?")
    desk.entry.left.to_cards()
    desk.type("3w, qc, star")
    desk.key(ENTER)
    view = desk.reading()
    assert (view.at, view.look_on) == (datetime(2027, 2, 1, 8, 0), "2027-03-03")


@pytest.mark.parametrize(
    ("typed", "at", "shown"),
    [
        ("3 Nov", date(2026, 11, 3), "3 November 2026"),
        ("last friday", date(2026, 11, 20), "20 November 2026"),
        ("3 Nov 0:00", datetime(2026, 11, 3), "3 November 2026, 00:00"),
        ("yesterday 9:15 pm", datetime(2026, 11, 24, 21, 15), "24 November 2026, 21:15"),
        ("21:15", datetime(2026, 11, 25, 21, 15), "25 November 2026, 21:15"),
        ("today, no hour", date(2026, 11, 25), "25 November 2026"),
    ],
)
def test_another_day_has_no_hour_until_one_is_given(desk, typed, at, shown):
    write_day(desk.head.when, typed)
    assert desk.head.when.text() == shown
    assert (desk.head.hints["at"].text() == "No hour noted.") is not isinstance(at, datetime)
    desk.head.question.setFocus()
    desk.type("And then?")
    desk.key(ENTER)
    desk.type("3w, qc, star")
    desk.key(ENTER)
    assert desk.reading().at == at
    assert isinstance(desk.reading().at, datetime) is isinstance(at, datetime)


def test_the_day_typed_is_told_at_once_and_what_is_no_day_is_refused(desk):
    desk.head.when.setFocus()
    desk.head.when.selectAll()
    desk.type("3 Nov")
    assert desk.head.hints["at"].text() == "Tuesday 3 November 2026, no hour noted"
    assert desk.head.weekday.text() == "Tuesday"
    desk.type("ch")
    assert (desk.head.hints["at"].text(), desk.head.weekday.text()) == ("", "")
    desk.head.question.setFocus()
    assert desk.head.hints["at"].text().startswith("“3 Novch” is no day")
    assert desk.head.hints["at"].wrong
    desk.type("And then?")
    desk.key(ENTER)
    desk.type("3w, qc, star")
    desk.key(ENTER, CTRL)
    assert (desk.kept, desk.head.when.hasFocus()) == ([], True)


def test_a_reading_without_an_hour_is_put_right_without_getting_one(desk):
    uid = readings.log(desk.binder, desk.tab, replace(OLD, at="2026-10-01"))
    desk.entry.amend(desk.binder, uid)
    desk.key(ENTER, CTRL)
    assert readings.reading(desk.binder, uid).at == date(2026, 10, 1)


def test_in_a_week_counts_from_the_day_of_the_reading(desk):
    desk.head.looks.click()
    write_day(desk.head.when, "3 Nov")
    assert desk.entry.draft().look_on == "2026-12-03"
    write_day(desk.head.look_on, "in a week")
    assert desk.entry.draft().look_on == "2026-11-10"


def test_a_chosen_day_of_looking_back_stays_when_the_date_changes(desk):
    desk.head.looks.click()
    write_day(desk.head.look_on, "1 May")
    write_day(desk.head.when, "20 Nov, 8 am")
    assert desk.entry.draft().look_on == "2027-05-01"


def test_a_full_name_is_hinted_at_quietly(desk):
    hint = desk.head.hints["querent"]
    desk.head.querent.setText("Ada Quillfeather")
    assert "Initials would do" in hint.text()
    assert hint.text().endswith("Write A. Q.</a>")
    hint.linkActivated.emit("initials")
    assert desk.head.querent.text() == "A. Q."
    assert "Initials would do" not in hint.text()


def test_consent_and_what_is_kept_are_told_once_where_it_is_for_another(desk):
    hint = desk.head.hints["querent"]
    for own in ("", "myself", "Me"):
        desk.head.querent.setText(own)
        assert not hint.isVisible()
    desk.head.querent.setText("B. T.")
    assert hint.text() == ASK_FIRST
    assert not hint.wrong
    desk.head.question.setPlainText("For B.?")
    desk.entry.left.to_cards()
    desk.type("3w, qc, star")
    desk.key(ENTER)
    assert desk.reading().querent == "B. T."
    desk.entry.begin(desk.binder, desk.tab)
    assert not hint.isVisible()


def test_the_card_for_a_month(desk):
    desk.entry.begin(desk.binder, desk.tab, month="2026-12")
    assert desk.entry.left.purpose.text().startswith(
        "The card for December 2026; look back on 31 December 2026."
    )
    assert desk.line.hasFocus()
    desk.type("star")
    desk.key(ENTER)
    view = desk.reading()
    assert (view.question, view.purpose, view.month, view.look_on) == (
        "Card for December 2026", "month", "2026-12", "2026-12-31",
    )  # fmt: skip
    assert view.spread.key == "one-card"


def test_put_by_and_taken_up_again(desk):
    desk.type("Half a question")
    desk.key(ENTER)
    desk.type("3w, herm")
    desk.key(ESC)
    if not desk.put_by:
        desk.key(ESC)
    assert desk.put_by == [True]
    desk.entry.begin(desk.binder, desk.tab, month="2026-12")
    assert desk.line.toPlainText() == ""
    desk.key(ESC)
    desk.entry.begin(desk.binder, desk.tab)
    assert desk.head.question.toPlainText() == "Half a question"
    assert desk.line.toPlainText() == "3w, herm"
    assert desk.entry.left.purpose.text().startswith("Taken up where you put it by.")
    desk.entry.left.purpose.linkActivated.emit("afresh")
    assert (desk.head.question.toPlainText(), desk.line.toPlainText()) == ("", "")


def test_turning_to_another_leaf_keeps_the_draft(desk):
    desk.type("Interrupted")
    desk.session.open_tab(desk.binder, desk.tab)
    desk.entry.begin(desk.binder, desk.tab)
    assert desk.head.question.toPlainText() == "Interrupted"


def test_what_was_kept_is_no_draft_any_more(desk):
    desk.type("Once?")
    desk.key(ENTER)
    desk.type("3w, qc, star")
    desk.key(ENTER)
    desk.session.leaving.emit()
    desk.entry.begin(desk.binder, desk.tab)
    assert (desk.head.question.toPlainText(), desk.line.toPlainText()) == ("", "")
    assert desk.entry.left.purpose.text() == ""


def test_an_untouched_reading_leaves_no_draft(desk):
    desk.key(ESC)
    desk.entry.begin(desk.binder, desk.tab)
    assert desk.entry.left.purpose.text() == ""


OLD = NewReading(
    at="2026-10-01T19:30", question="The kiln?", spread=spread("three-card"),
    laid=[Laid(1, "wands-03", note="Warm."), Laid(2, "major-09", True, note="Alone."),
          Laid(3, "cups-13")],
    text="Impressions.", querent="B. T.", topic="work", significator="cups-12",
    look_on="2026-10-31",
)  # fmt: skip


def test_putting_a_reading_right(desk):
    uid = readings.log(desk.binder, desk.tab, OLD)
    leaves.rename(desk.binder, uid, "Kiln, at last")
    desk.entry.amend(desk.binder, uid)
    assert desk.line.toPlainText() == "3w, hermit r, qc"
    assert desk.entry.right.keep_row.keep.text() == "Keep the correction"
    desk.line.selectAll()
    desk.type("hermit, 3w, 10c")
    desk.key(ENTER)
    assert desk.kept == [uid]
    view = desk.reading()
    assert [(c.card, c.reversed, c.note) for c in view.laid] == [
        ("major-09", False, "Alone."),
        ("wands-03", False, "Warm."),
        ("cups-10", False, ""),
    ]
    assert (view.significator, view.querent, view.look_on) == ("cups-12", "B. T.", "2026-10-31")
    leaf = leaves.leaf(desk.binder, uid)
    assert (leaf.title, leaf.text) == ("Kiln, at last", "Impressions.")


def test_a_title_that_was_the_question_follows_it(desk):
    uid = readings.log(desk.binder, desk.tab, OLD)
    desk.entry.amend(desk.binder, uid)
    desk.head.question.setPlainText("The new kiln?")
    desk.key(ENTER, CTRL)
    assert leaves.leaf(desk.binder, uid).title == "The new kiln?"


def test_a_reading_put_right_keeps_its_copies_of_spread_and_deck(desk):
    own = spread("three-card").to_dict()
    own["places"][0]["label"] = "Root"
    mine = type(spread("three-card")).from_dict(own)
    titles = decks.decks(desk.session.shelf)[0].titles
    old = replace(titles, suits=("Staves", "Cups", "Swords", "Coins"))
    deck = decks.decks(desk.session.shelf)[0].uid
    made = replace(OLD, spread=mine, titles=old, deck=deck, deck_name="Lantern Road deck")
    uid = readings.log(desk.binder, desk.tab, made)
    desk.entry.amend(desk.binder, uid)
    desk.key(ENTER, CTRL)
    view = desk.reading()
    assert (view.spread, view.titles) == (mine, old)
    assert view.laid[0].title == "Three of Staves"


def test_a_draft_of_putting_right_is_dropped_when_the_reading_has_changed_since(desk):
    uid = readings.log(desk.binder, desk.tab, OLD)
    desk.entry.amend(desk.binder, uid)
    desk.head.question.setPlainText("Half put right")
    desk.entry.put_away()
    desk.entry.amend(desk.binder, uid)
    assert desk.head.question.toPlainText() == "Half put right"
    desk.entry.put_away()
    readings.change_reading(desk.binder, uid, replace(OLD, question="Changed elsewhere?"))
    desk.entry.amend(desk.binder, uid)
    assert desk.head.question.toPlainText() == "Changed elsewhere?"


def test_a_deck_without_a_name_and_a_shelf_without_decks(desk):
    names = [desk.head.deck.itemText(n) for n in range(desk.head.deck.count())]
    assert names == ["Lantern Road deck", "no deck named"]


def test_a_binder_that_cannot_be_written_says_so_and_keeps_what_was_typed(desk):
    desk.type("Safe?")
    desk.key(ENTER)
    desk.type("3w, qc, star")
    desk.binder.writable = False
    desk.key(ENTER)
    assert "read-only" in desk.entry.left.wrong.text()
    assert desk.said
    assert desk.line.toPlainText() == "3w, qc, star"
    assert desk.kept == []


def test_the_example_for_pictures(desk):
    desk.entry.show_example()
    assert desk.entry.hand.progress() == "Laid so far: eight of ten"


def test_escape_puts_by_from_every_field(desk):
    left, right = desk.entry.left, desk.entry.right
    fields = (
        desk.head.when, desk.head.question, desk.head.spread, desk.head.querent, desk.head.looks,
        desk.head.look_on, left.line, left.switch.words[1], right.view, right.keep_row.keep,
    )  # fmt: skip
    for count, field in enumerate(fields, 1):
        field.setFocus()
        desk.key(ESC)
        assert len(desk.put_by) == count, field
        desk.entry.begin(desk.binder, desk.tab)


def test_ctrl_g_changes_between_line_and_grid(desk):
    desk.entry.left.to_cards()
    desk.key(Qt.Key.Key_G, CTRL)
    assert desk.entry.left.grid.hasFocus()
    desk.key(Qt.Key.Key_G, CTRL)
    assert desk.line.hasFocus()


def test_everything_is_an_action_for_the_menu(desk):
    actions = {a.text().replace("&", ""): a for a in desk.entry.edit_actions()}
    desk.entry.hand.write("3w, hermit")
    actions["Turn the card"].trigger()
    assert desk.entry.hand.text == "3w, hermit r, "
    actions["Take up the card"].trigger()
    assert desk.entry.hand.text == "3w, "
    actions["Pick faces or type"].trigger()
    assert desk.entry.left.picking
    actions["Keep the reading"].trigger()
    assert desk.head.hints["question"].text()
    actions["Begin afresh"].trigger()
    assert desk.entry.hand.text == ""
    actions["Put it by"].trigger()
    assert desk.put_by == [True]


def test_a_very_long_paste_stays_on_the_leaf(desk):
    desk.entry.left.to_cards()
    pasted = QMimeData()
    pasted.setText("3w qc " * 900_000)
    desk.line.insertFromMimeData(pasted)
    assert len(desk.line.toPlainText()) <= 4_000
    assert desk.line.height() < desk.host.height() / 2
    desk.key(ENTER)
    assert desk.kept == []


def test_the_feet_say_what_is_written(desk):
    heard = []
    desk.entry.opened.connect(lambda: heard.append(desk.entry.feet()))
    desk.entry.begin(desk.binder, desk.tab)
    uid = readings.log(desk.binder, desk.tab, OLD)
    desk.entry.amend(desk.binder, uid)
    assert heard == [("Readings log, new leaf", ""), ("Correcting a reading", "")]


def test_a_deck_with_two_suits_of_one_letter_shows_what_it_reads(desk, qtbot):
    coins = replace(STANDARD, suits=("Wands", "Cups", "Swords", "Coins"))
    decks.use_by_default(
        desk.session.shelf,
        desk.binder,
        decks.add_deck(desk.session.shelf, desk.binder, "Coins", coins),
    )
    desk.entry.begin(desk.binder, desk.tab)
    line, helped = desk.line, desk.entry.left.help.accessibleDescription()
    assert line.placeholderText() == "3w, hermit r, qcu"
    for typed in helped.split("; "):
        for words in re.split(", | ", typed.partition(": ")[0].removeprefix("4: ")):
            found = read(words, coins).parts
            assert words in ("pg", "kn", "q", "k", "r", "+", "4:") or found[0].card, words
    line.setFocus()
    qtbot.waitUntil(line.hasFocus)
    desk.type("qc, 3w")
    assert spoken(desk.entry.hand.seat(1), desk.entry.hand).endswith(
        "qc, Queen of Cups or Queen of Coins?"
    )
    line.selectAll()
    desk.type("qx")
    assert line.choices.sentence().endswith("Write a card as 3w, qcu, star or 17.")


def test_a_mark_being_typed_after_a_card_is_not_called_wrong(desk, qtbot):
    desk.line.setFocus()
    qtbot.waitUntil(desk.line.hasFocus)
    desk.type("3w, hermit reve")
    assert desk.entry.hand.slips == ()
    desk.key(Qt.Key.Key_Tab)
    assert desk.line.toPlainText() == "3w, hermit r"


def test_what_is_asked_about_stays_so_when_another_card_is_laid(desk):
    hand = desk.entry.hand
    hand.write("3 & 5w")
    hand.lay("cups-13")
    assert hand.text == "3 ??, 5w, qc"
    assert [mark.text for mark in hand.marks] == ["3 ??"]
