"""The cards of a reading while they are laid: one line, read the same whoever changes it."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.cards.spreads import SPREADS, spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.hand import Hand, line_of

TEN = "3w, hermit r, qc, 7p r, 2s, star, 10c, knw, "


def hand(line: str = "", key: str = "celtic-cross") -> Hand:
    made = Hand(spread(key))
    made.write(line)
    return made


def lying(of: Hand) -> dict[int, tuple[str, bool]]:
    return {seat.n: (seat.card.key, seat.reversed) for seat in of.seats if seat.card}


def test_a_typed_line_fills_seats_and_names_the_next():
    of = hand(TEN)
    assert lying(of)[2] == ("major-09", True)
    assert (len(of.taken), of.aim, of.last) == (8, 9, 8)
    assert of.progress() == "Laid so far: eight of ten"
    assert of.wrong() == "A Celtic Cross takes ten cards; this line has eight."


def test_a_place_typed_last_is_where_the_next_card_goes():
    of = hand("3w, 7:")
    assert (of.aim, of.marks) == (7, ())
    of.lay("major-17")
    assert of.text == "3w, 7: star, "
    assert of.aim == 2


def test_choosing_a_seat_writes_it_and_choosing_the_next_one_takes_it_out():
    of = hand("3w, ")
    of.aim_at(5)
    assert of.text == "3w, 5: "
    of.aim_at(2)
    assert of.text == "3w, "
    of.aim_at(1)
    assert (of.text, of.aim) == ("3w, ", 2)


def test_faces_picked_write_the_line():
    of = hand(key="three-card")
    of.lay("wands-03")
    of.lay("major-09", reversed=True)
    assert (of.text, of.aim, of.last) == ("3w, hermit r, ", 3, 2)
    of.lay("cups-13")
    assert (of.text, of.aim, of.wrong()) == ("3w, hermit r, qc", None, "")
    assert of.progress() == "All three are laid"
    with pytest.raises(CanMend, match="Every place has its card"):
        of.lay("cups-12")


def test_a_card_lies_laid():
    of = hand("3w, qc, ")
    with pytest.raises(CanMend, match="Three of Wands lies in place 1 already"):
        of.lay("wands-03")
    assert of.text == "3w, qc, "


def test_what_was_typed_for_other_cards_stays_as_typed():
    of = hand("three of wands, the hermit reversed, qc")
    of.turn(3)
    assert of.text == "three of wands, the hermit reversed, qc r, "
    of.turn(2)
    assert of.text == "three of wands, hermit, qc r, "


def test_taking_up_leaves_the_others_where_they_lie():
    of = hand("3w, hermit r, qc")
    of.take_up(2)
    assert of.text == "3w, 3: qc, "
    assert (lying(of), of.aim) == ({1: ("wands-03", False), 3: ("cups-13", False)}, 2)


def test_moving_to_a_free_seat_and_changing_places():
    of = hand("3w, hermit r")
    of.move(1, 4)
    assert lying(of) == {2: ("major-09", True), 4: ("wands-03", False)}
    of.move(4, 2)
    assert lying(of) == {2: ("wands-03", False), 4: ("major-09", True)}
    of.move(4, 40)
    assert len(lying(of)) == 2


def test_words_not_understood_hold_their_seat_and_are_never_lost():
    of = hand("3w, zzqq, qc, 3w")
    assert [mark.text for mark in of.marks] == ["zzqq", "3w"]
    of.lay("major-17")
    assert of.text == "3w, zzqq, qc, star, 3w, "
    assert lying(of)[4] == ("major-17", False)
    of.take_up(2)
    assert of.text == "3w, 3: qc, 4: star, 3w, "


def test_another_spread_keeps_cards_and_words():
    of = hand("3w, hermit r, qc, 7p r")
    of.change_spread(spread("three-card"))
    assert of.text == "3w, hermit r, qc, 7p r"
    assert len(lying(of)) == 3
    assert of.marks[0].problem == "This spread has three places; “7p r” is one card too many."
    assert of.wrong() == "This spread takes three cards; this line has four."
    of.change_spread(spread("five-card-cross"))
    assert (of.marks, len(lying(of))) == ((), 4)


def test_a_place_the_spread_has_not():
    of = hand("12: star", "three-card")
    assert of.marks[0].problem == "This spread has three places; there is no place 12."


def test_another_deck_keeps_the_cards():
    old = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})
    of = hand("3w, ace of pentacles, qc")
    of.change_titles(old)
    assert [key for key, _ in lying(of).values()] == ["wands-03", "pentacles-01", "cups-13"]
    assert of.laid()[0].title == "Three of Staves" if not of.wrong() else of.wrong()


def test_nothing_laid_is_said_in_its_own_words():
    assert hand().wrong().startswith("No card is laid yet")
    with pytest.raises(CanMend, match="No card is laid yet"):
        hand().laid()


def test_a_whole_hand_becomes_laid_cards():
    of = hand("3w, hermit r, qc", "three-card")
    assert [(one.n, one.card, one.reversed, one.label, one.title) for one in of.laid()] == [
        (1, "wands-03", False, "Past", "Three of Wands"),
        (2, "major-09", True, "Present", "The Hermit"),
        (3, "cups-13", False, "Future", "Queen of Cups"),
    ]


def test_listeners_hear_every_change_laid():
    of, heard = Hand(spread("three-card")), []
    of.listen(lambda: heard.append(of.text))
    of.write("3w")
    of.write("3w")
    of.turn(1)
    of.turn(2)
    assert heard == ["3w", "3w r, "]


KEYS = [card.key for card in CARDS]
DEEDS = st.one_of(
    st.tuples(st.just("lay"), st.sampled_from(KEYS), st.booleans()),
    st.tuples(st.just("turn"), st.integers(1, 10)),
    st.tuples(st.just("take_up"), st.integers(1, 10)),
    st.tuples(st.just("move"), st.integers(1, 10), st.integers(1, 10)),
    st.tuples(st.just("aim_at"), st.integers(1, 10)),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(DEEDS, max_size=25))
def test_the_line_always_says_what_lies_there(deeds):
    of, table, aim = Hand(spread("celtic-cross")), {}, 1
    for name, *given_ in deeds:
        if name == "lay":
            key, turned = given_
            if of.aim is None or key in {k for k, _ in table.values()}:
                continue
            aim = of.aim
            of.lay(key, reversed=turned)
            table[aim] = (key, turned)
            continue
        getattr(of, name)(*given_)
        if name == "turn" and given_[0] in table:
            key, turned = table[given_[0]]
            table[given_[0]] = (key, not turned)
        elif name == "take_up":
            table.pop(given_[0], None)
        elif name == "move" and given_[0] in table and given_[0] != given_[1]:
            moved, other = table.pop(given_[0]), table.pop(given_[1], None)
            table[given_[1]] = moved
            if other:
                table[given_[0]] = other
        elif name == "aim_at" and given_[0] not in table:
            assert of.aim == given_[0]
    assert lying(of) == table
    again = hand(of.text)
    assert lying(again) == table
    assert of.marks == ()


@given(st.text("3wqcr hermitstazx:,;123 ", max_size=60), st.sampled_from(SPREADS))
@example("1 1:c", SPREADS[1])
@settings(max_examples=200, deadline=None)
def test_no_typed_word_is_lost_by_laying(text, pattern):
    of = Hand(pattern)
    of.write(text)
    marked = [mark.text.partition(":")[2].strip() or mark.text for mark in of.marks]
    free = next(key for key in KEYS if key not in of.taken)
    if of.aim is None:
        return
    of.lay(free)
    for words in marked:
        assert words in of.text or words.rstrip(": ").isdigit()


@given(st.dictionaries(st.integers(1, 10), st.tuples(st.sampled_from(KEYS), st.booleans())))
def test_a_line_written_from_laid_cards_reads_back(laid):
    if len({key for key, _ in laid.values()}) != len(laid):
        return
    assert lying(hand(line_of(laid, spread("celtic-cross"), STANDARD))) == laid
