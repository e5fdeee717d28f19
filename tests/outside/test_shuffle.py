"""The on-screen shuffle against chance, by chi-square at fixed seeds of a test generator.

Critical values: the quantity tabulated in NIST/SEMATECH, e-Handbook of Statistical Methods, section
1.3.6.7.4 (upper tail), to three decimals; computed with scipy 1.17.1, `chi2.isf`.
Expected shares are exact counts of pairs and places. A single statistic is held to the 1 % point;
of many, no more may pass a point than chance lets pass.
"""

import random
from collections import Counter
from itertools import combinations

import pytest
from scipy.stats import chi2, chisquare

from binder.cards.facts import CARDS, SUITS
from binder.cards.titles import STANDARD
from binder.study.readings.drawing import DeckPart, Pack, keys_of

FIVE, ONE = (
    {1: 3.841, 3: 7.815, 5: 11.07, 13: 22.362, 21: 32.671, 55: 73.311, 77: 98.484},
    {1: 6.635, 3: 11.345, 5: 15.086, 13: 27.688, 21: 38.932, 55: 82.292, 77: 108.771},
)
"""Critical values at 5 % and at 1 %, by degrees of freedom."""

SHUFFLES = 7_800
ARCANA = {card.key: card.arcana for card in CARDS}
SUIT = {card.key: card.suit for card in CARDS}


def order(pack):
    """The cards of a pack, from the top."""
    return [pack.turn() for _ in range(pack.left)]


def shuffled(part=DeckPart.WHOLE, *, count=SHUFFLES, seed=20261122, cut=0, made=Pack):
    """So many orders of a part of the deck, each of a fresh pack on one seeded generator."""
    chance = random.Random(seed)
    orders = []
    for _ in range(count):
        pack = made(keys_of(part), chance=chance)
        if cut:
            pack.cut(cut)
        orders.append(order(pack))
    return orders


@pytest.fixture(scope="module")
def whole():
    return shuffled()


def chi_square(observed, expected):
    """Pearson's statistic; both are sequences of counts in the same order."""
    return sum((o - e) ** 2 / e for o, e in zip(observed, expected, strict=True))


def even(counts, classes):
    """The statistic of counts that should all be alike, and its degrees of freedom."""
    total = sum(counts.values())
    observed = [counts[each] for each in classes]
    return chi_square(observed, [total / len(classes)] * len(classes)), len(classes) - 1


def above(statistics, table):
    """How many statistics lie above their critical value."""
    return sum(value > table[df] for value, df in statistics)


def by_card(orders):
    """For each card, the statistic of the places it came to."""
    places = {card.key: Counter() for card in orders[0]}
    for cards in orders:
        for place, card in enumerate(cards):
            places[card.key][place] += 1
    return [even(counts, range(len(places))) for counts in places.values()]


def test_the_statistic_itself():
    """By hand: (100 + 36 + 0 + 16) / 20; below the critical value 7.815 of three degrees."""
    value, df = even(Counter({"a": 30, "b": 14, "c": 20, "d": 16}), "abcd")
    assert (round(value, 6), df) == (7.6, 3)


def test_the_statistic_and_its_table_against_scipy():
    observed = [30, 14, 20, 16]
    assert chi_square(observed, [20] * 4) == pytest.approx(chisquare(observed).statistic)
    for share, table in ((0.05, FIVE), (0.01, ONE)):
        assert {df: round(float(chi2.isf(share, df)), 3) for df in table} == table


def test_every_card_comes_to_every_place(whole):
    """Of 78 statistics about 4 pass the 5 % point by chance alone, and about 1 the 1 % point."""
    statistics = by_card(whole)
    assert len(statistics) == 78
    assert above(statistics, FIVE) <= 9
    assert above(statistics, ONE) <= 3


@pytest.mark.parametrize(("part", "df"), [("majors", 21), ("wands", 13), ("minors", 55)])
def test_parts_of_the_deck_are_mixed_as_well(part, df):
    statistics = by_card(shuffled(DeckPart(part), count=3_000, seed=1911))
    assert {freedom for _, freedom in statistics} == {df}
    assert above(statistics, FIVE) <= 0.05 * len(statistics) + 4
    assert above(statistics, ONE) <= 3


def test_a_cut_favours_no_card():
    statistics = by_card(shuffled(DeckPart.MAJORS, count=3_000, seed=5, cut=9))
    assert above(statistics, ONE) <= 2


def test_reversals_are_even(whole):
    turns = Counter(card.reversed for cards in whole for card in cards)
    value, df = even(turns, (False, True))
    assert value < ONE[df]
    top = Counter(cards[0].reversed for cards in whole)
    assert even(top, (False, True))[0] < ONE[1]


def test_reversals_fall_on_every_card_alike(whole):
    """A table of 78 cards by two ways, against its own margins: 77 degrees of freedom."""
    turns = Counter((card.key, card.reversed) for cards in whole for card in cards)
    share = sum(turns[key, True] for key in STANDARD.keys) / turns.total()
    observed = [turns[key, way] for key in STANDARD.keys for way in (True, False)]
    expected = [SHUFFLES * each for _ in STANDARD.keys for each in (share, 1 - share)]
    assert chi_square(observed, expected) < ONE[77]


def test_neighbours_have_nothing_to_do_with_each_other(whole):
    """Two neighbours are Majors or Minors as often as two cards drawn without looking."""
    pairs = Counter((ARCANA[a.key], ARCANA[b.key]) for a, b, *_ in whole)
    sizes = {"major": 22, "minor": 56}
    classes = [(one, two) for one in sizes for two in sizes]
    expected = [
        SHUFFLES * sizes[one] * (sizes[two] - (one == two)) / (78 * 77) for one, two in classes
    ]
    assert chi_square([pairs[each] for each in classes], expected) < ONE[3]


def test_neighbours_of_two_suits_pair_evenly():
    orders = shuffled(DeckPart.MINORS, count=6_000, seed=78)
    both = [tuple(sorted((SUIT[a.key], SUIT[b.key]))) for a, b, *_ in orders]
    classes = list(combinations(sorted(SUITS), 2))
    value, df = even(Counter(pair for pair in both if pair in classes), classes)
    assert df == 5
    assert value < ONE[df]
    same = sum(one == two for one, two in both)
    share = 13 / 55
    expected = [6_000 * share, 6_000 * (1 - share)]
    assert chi_square([same, 6_000 - same], expected) < ONE[1]


def test_no_card_keeps_its_neighbour_of_the_new_deck(whole):
    """77 of the 78 x 77 ordered pairs are neighbours in a new deck: one in 78."""
    after = dict(zip(STANDARD.keys, STANDARD.keys[1:], strict=False))
    kept = sum(after.get(a.key) == b.key for a, b, *_ in whole)
    assert chi_square([kept, SHUFFLES - kept], [SHUFFLES / 78, SHUFFLES * 77 / 78]) < ONE[1]


class Swapped(random.Random):
    """A shuffle many have written by mistake: each card changes places with any card at all."""

    def shuffle(self, x):
        for place in range(len(x)):
            other = self.randrange(len(x))
            x[place], x[other] = x[other], x[place]


def test_the_check_catches_a_poor_shuffle():
    chance = Swapped(20261122)
    orders = [order(Pack(keys_of(DeckPart.MAJORS), chance=chance)) for _ in range(3_000)]
    assert above(by_card(orders), ONE) > 10


def test_the_check_catches_a_coin_that_leans():
    class Leaning(random.Random):
        def getrandbits(self, k):
            return int(self.random() < 0.52) if k == 1 else super().getrandbits(k)

    chance = Leaning(20261122)
    orders = [order(Pack(keys_of(DeckPart.WHOLE), chance=chance)) for _ in range(300)]
    turns = Counter(card.reversed for cards in orders for card in cards)
    assert even(turns, (False, True))[0] > ONE[1]
