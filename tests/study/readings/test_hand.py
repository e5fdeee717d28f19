"""The cards of a reading while they are laid: one line, read the same whoever changes it."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.cards.spreads import SPREADS, spread
from binder.cards.titles import STANDARD, DeckTitles
from binder.errors import CanMend
from binder.study.readings.hand import Hand
from binder.study.readings.hand_line import line_of
from binder.study.readings.readings import Laid

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
    assert (len(of.taken), of.aim, of.last) == (8, 9, "wands-12")
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
    assert (of.text, of.aim, of.last) == ("3w, hermit r, ", 3, "major-09")
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


def test_a_new_hand_hushes_nothing_until_a_caret_says_so():
    of, heard = Hand(spread("three-card")), []
    of.listen(lambda: heard.append(of.slips))
    of.attend(None)
    assert (of.hushed, of.typing, heard) == (False, None, [])
    of.write("3w, hermz")
    assert [part.text for part in of.slips] == ["hermz"]
    of.attend(of.parts[1].start)
    assert [part.text for part in of.slips] == ["hermz"]
    of.attend(of.parts[1].start, hushed=True)
    assert of.slips == ()


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
    st.tuples(st.just("lay"), st.sampled_from(KEYS[:12]), st.booleans()),
    st.tuples(st.just("turn"), st.integers(1, 10)),
    st.tuples(st.just("take_up"), st.integers(1, 10)),
    st.tuples(st.just("move"), st.integers(1, 10), st.integers(1, 10)),
    st.tuples(st.just("aim_at"), st.integers(1, 10)),
    st.tuples(st.just("aim_beside"), st.integers(1, 10)),
    st.tuples(st.just("turn_card"), st.sampled_from(KEYS[:12])),
    st.tuples(st.just("take_card_up"), st.sampled_from(KEYS[:12])),
    st.tuples(st.just("move_card"), st.sampled_from(KEYS[:12]), st.integers(1, 10)),
)


class Table:
    """Cards on a real table, the simplest way: a pile for each seat, its own card first."""

    def __init__(self):
        self.piles: dict[int, list[tuple[str, bool]]] = {}

    def where(self, key):
        found = [
            (n, at) for n, pile in self.piles.items() for at, (k, _) in enumerate(pile) if k == key
        ]
        return found[0] if found else (0, 0)

    def turn(self, n):
        if n in self.piles:
            self.turn_card(self.piles[n][0][0])

    def turn_card(self, key):
        n, at = self.where(key)
        if n:
            self.piles[n][at] = (key, not self.piles[n][at][1])

    def take_up(self, n):
        self.piles.pop(n, None)

    def take_card_up(self, key):
        n, at = self.where(key)
        if n:
            self.take_up(n) if at == 0 else self.piles[n].pop(at)

    def move(self, n, to):
        if n in self.piles and n != to:
            moved, other = self.piles.pop(n), self.piles.pop(to, None)
            self.piles |= {to: moved} | ({n: other} if other else {})

    def move_card(self, key, to):
        n, at = self.where(key)
        if n and at == 0:
            self.move(n, to)
        elif n and n != to:
            self.piles.setdefault(to, []).append(self.piles[n].pop(at))


@given(st.lists(DEEDS, max_size=25))
def test_the_line_always_says_what_lies_there(deeds):
    of, table = Hand(spread("celtic-cross")), Table()
    for name, *given_ in deeds:
        if name == "lay":
            key, turned = given_
            if of.aim is None or table.where(key)[0]:
                continue
            assert of.beside == (of.aim in table.piles)
            table.piles.setdefault(of.aim, []).append((key, turned))
            of.lay(key, reversed=turned)
            continue
        getattr(of, name)(*given_)
        if name == "aim_at" and given_[0] not in table.piles:
            assert (of.aim, of.beside) == (given_[0], False)
        elif name == "aim_beside" and given_[0] in table.piles:
            assert (of.aim, of.beside) == (given_[0], True)
        elif not name.startswith("aim"):
            getattr(table, name)(*given_)
    assert piled(of) == table.piles
    assert piled(hand(of.text)) == table.piles
    assert of.marks == ()


def piled(of: Hand) -> dict[int, list[tuple[str, bool]]]:
    return {s.n: [(p.card.key, p.reversed) for p in s.parts] for s in of.seats if s.card}


@given(st.text("3wqcr hermitstazx:,;+123 ", max_size=60), st.sampled_from(SPREADS))
@example("1 1:c", SPREADS[1])
def test_no_typed_word_is_lost_by_laying(text, pattern):
    of = Hand(pattern)
    of.write(text)
    marked = [(mark.text.partition(":")[2].strip() or mark.text).strip(" +") for mark in of.marks]
    free = next(key for key in KEYS if key not in of.taken)
    if of.aim is None:
        return
    of.lay(free)
    for words in marked:
        assert words in of.text or words.strip(":+ ").isdigit()


@given(st.dictionaries(st.integers(1, 10), st.tuples(st.sampled_from(KEYS), st.booleans())))
def test_a_line_written_from_laid_cards_reads_back(laid):
    if len({key for key, _ in laid.values()}) != len(laid):
        return
    cards = [Laid(n, key, turned) for n, (key, turned) in laid.items()]
    assert lying(hand(line_of(cards, spread("celtic-cross"), STANDARD))) == laid


def beside(of: Hand) -> dict[int, list[str]]:
    return {seat.n: [p.text for p in seat.beside] for seat in of.seats if seat.beside}


def test_a_card_picked_after_a_plus_sign_lies_beside():
    of = hand("3w, hermit + ")
    assert (of.aim, of.beside, of.marks) == (2, True, ())
    of.lay("cups-13", reversed=True)
    assert of.text == "3w, hermit + qc r, "
    assert (of.aim, of.beside, of.count, of.taken["cups-13"]) == (3, False, 2, 2)
    of.aim_beside(1)
    assert of.text == "3w, hermit + qc r, 1: + "
    of.lay("major-17")
    assert of.text == "3w + star, hermit + qc r, "
    of.aim_beside(5)
    assert of.text == "3w + star, hermit + qc r, "


def test_a_card_beside_is_turned_taken_up_and_moved():
    of = hand("3w + star + 2s, hermit, ")
    of.turn_card("major-17")
    assert (of.text, of.last) == ("3w + star r + 2s, hermit, ", "major-17")
    of.take_card_up("swords-02")
    assert of.text == "3w + star r, hermit, "
    of.move_card("major-17", 2)
    assert of.text == "3w, hermit + star r, "
    of.move_card("major-17", 4)
    assert of.text == "3w, hermit, 4: star r, "
    of.turn_card("cups-01")
    of.take_card_up("cups-01")
    of.move_card("cups-01", 1)
    assert of.text == "3w, hermit, 4: star r, "


def test_what_lies_beside_goes_with_its_card():
    of = hand("3w + star, hermit")
    of.move(1, 2)
    assert of.text == "hermit, 3w + star, "
    of.move_card("wands-03", 5)
    assert of.text == "hermit, 5: 3w + star, "
    of.take_up(5)
    assert (of.text, of.taken) == ("hermit, 5: ", {"major-09": 1})


def test_a_plus_sign_left_open_is_said_and_cards_beside_are_laid_after_theirs():
    of = hand("3w, hermit r, qc + ", "three-card")
    assert of.wrong().startswith("“+” has no card after it")
    of.write("3w, hermit r, qc, 1: + star, 2: + 2s r")
    assert of.progress() == "All three are laid"
    assert [(one.n, one.card, one.label) for one in of.laid()] == [
        (1, "wands-03", "Past"),
        (1, "major-17", "Past"),
        (2, "major-09", "Present"),
        (2, "swords-02", "Present"),
        (3, "cups-13", "Future"),
    ]


def test_beside_a_card_that_has_no_place_in_the_spread():
    of = hand("3w, hermit r, qc, star + 2s", "three-card")
    assert [mark.text for mark in of.marks] == ["star"]
    of.change_spread(spread("five-card-cross"))
    assert (of.marks, beside(of)) == ((), {4: ["+ 2s"]})


def test_another_deck_keeps_what_lies_beside():
    old = DeckTitles.from_dict({"suits": ["Staves", "Cups", "Swords", "Coins"]})
    of = hand("3w, ace of pentacles + 4w, qc + five pentacles r")
    of.change_titles(old)
    assert list(of.taken) == ["wands-03", "pentacles-01", "wands-04", "cups-13", "pentacles-05"]
    assert of.marks == ()


PILES = st.lists(
    st.tuples(st.sampled_from(KEYS), st.booleans(), st.integers(1, 10)), unique_by=lambda it: it[0]
)


@given(PILES)
def test_a_line_written_from_cards_beside_others_reads_back(drawn):
    laid = [Laid(n, key, turned) for key, turned, n in drawn]
    again = hand(line_of(laid, spread("celtic-cross"), STANDARD))
    found = [(s.place.n, p.card.key, p.reversed) for s in again.seats for p in s.parts]
    assert found == [(o.n, o.card, o.reversed) for o in sorted(laid, key=lambda one: one.n)]
    assert again.marks == ()
