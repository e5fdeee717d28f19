from dataclasses import replace

import pytest

from binder.cards.shorthand import LONGEST, CardLine, fit, read, shortest
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles


def laid(text: str, titles: DeckTitles = STANDARD) -> list[str]:
    """Key and r of every card in the order of the places, for short comparisons."""
    places = sorted(read(text, titles).laid.items())
    return [f"{part.card.key}{' r' if part.reversed else ''}" for _, part in places if part.card]


THREE = ["wands-03", "major-09 r", "cups-13"]


@pytest.mark.parametrize(
    "text",
    [
        "3w, hermit r, qc",
        "3w; hermit rev; qc",
        "3w\nhermit reversed\nqc\n",
        "3w hermit r qc",
        " 3 of wands , The Hermit (reversed), Queen of Cups, ",
        "3W, HERMIT R, QC",
        "iii of wands, ix inverted, q of cups",
        "three wands / hermit ↓ / queen cups",
        "3w, ixr, qc.",
        "1: 3w, 2: hermit r, 3: qc",
        "3: qc 1: 3w 2: hermit r",
        "2: hermit r, 3w, qc",
        "place 2 = reversed hermit, 3w upright, qc",
    ],
)
def test_ways_to_write_one_line(text: str) -> None:
    assert laid(text) == THREE
    assert not read(text).problems


@pytest.mark.parametrize(
    ("text", "cards"),
    [
        ("ac", ["cups-01"]),
        ("10 sw r", ["swords-10 r"]),
        ("10swr", ["swords-10 r"]),
        ("wof, hm", ["major-10", "major-12"]),
        ("reversed star moon", ["major-17 r", "major-18"]),
        ("0, XXI, xvii", ["major-00", "major-21", "major-17"]),
        ("IIII, VIIII", ["major-04", "major-09"]),
        ("pgp, kn of cups, knw", ["pentacles-11", "cups-12", "wands-12"]),
        ("qs, kp", ["swords-13", "pentacles-14"]),
        ("star 3 of cups the sun", ["major-17", "cups-03", "major-19"]),
        ("4, xvii", ["major-04", "major-17"]),
        ("", []),
        (" ,;\n ", []),
    ],
)  # fmt: skip
def test_cards_by_shorthand(text: str, cards: list[str]) -> None:
    assert laid(text) == cards
    assert not read(text).problems


@pytest.mark.parametrize(
    ("text", "cards"),
    [
        ("3. hermit", {3: "major-09"}),
        ("3) hermit r", {3: "major-09 r"}),
        ("(3) hermit", {3: "major-09"}),
        ("1. 3w 2. hermit 3. qc", {1: "wands-03", 2: "major-09", 3: "cups-13"}),
        ("1 -> 3w, 2 -> hermit", {1: "wands-03", 2: "major-09"}),
        ("1 - 3w, 2 - hermit", {1: "wands-03", 2: "major-09"}),
        ("9. hermit, 3. 3w", {9: "major-09", 3: "wands-03"}),
        ("xvi. tower", {1: "major-16"}),
        ("0. fool", {1: "major-00"}),
        ("place 16: tower", {16: "major-16"}),
    ],
)
def test_a_number_before_a_point_or_bracket_is_a_place(text: str, cards: dict[int, str]) -> None:
    line = read(text)
    assert not line.problems
    found = {n: f"{p.card.key}{' r' * p.reversed}" for n, p in line.laid.items() if p.card}
    assert found == cards


@pytest.mark.parametrize(
    ("text", "cards"),
    [
        ("3w rx, hermit rv, qc rev'd", ["wands-03 r", "major-09 r", "cups-13 r"]),
        ("3w upside down, hermit reverse, qc, reversed", ["wands-03 r", "major-09 r", "cups-13 r"]),
        ("w3, c10, 3 pents, pg pents", ["wands-03", "cups-10", "pentacles-03", "pentacles-11"]),
        ("3 disk, 4 rod r", ["pentacles-03", "wands-04 r"]),
        ("knt c, QoC, 3ofwands", ["cups-12", "cups-13", "wands-03"]),
        ("3w → hermit; qc & star and moon",
         ["wands-03", "major-09", "cups-13", "major-17", "major-18"]),
        ("3w - hermit – qc", ["wands-03", "major-09", "cups-13"]),
        ("hermit ix, xvi tower r", ["major-09", "major-16 r"]),
    ],
)  # fmt: skip
def test_other_hands(text: str, cards: list[str]) -> None:
    assert laid(text) == cards
    assert not read(text).problems


@pytest.mark.parametrize(
    ("text", "said", "first"),
    [
        ("hp", "may be The High Priestess or The Hierophant", ["priestess", "hierophant"]),
        ("str", "may be Strength or The Star", ["strength", "star"]),
        ("hermit 5", "has a number beside a card", ["hermit", "5: hermit"]),
        ("hermit x", "has a number beside a card", ["hermit", "hermit r"]),
        ("0 XXI xvii", "has a number beside a card", []),
        ("4 qc", "has a number beside a card", ["qc", "4: qc"]),
        ("4 → qc", "has a number beside a card", ["qc", "4: qc"]),
        ("4 - qc", "has a number beside a card", ["qc", "4: qc"]),
        ("16. tower", "may be The Tower for place 16", ["tower", "place 16: tower"]),
        ("star reversed moon", "does not say which card is reversed", []),
        ("3r", "may be The Empress reversed, Three of Wands,", ["empress r", "3w"]),
        ("tower reveresd", "is not understood.", ["tower r"]),
        ("past: 3w", "is not understood.", ["3w"]),
        ("3 cups wands", "is not understood.", ["3c"]),
        ("queens", "may be Queen of Wands, Queen of Cups", ["qw", "qc"]),
        ("15w", "is not understood.", ["5w", "aw"]),
        ("12s", "is not understood.", ["kns", "2s", "as"]),
        ("fiev of wands", "is not understood.", ["5w"]),
        ("ace of spoons", "is not understood.", ["as"]),
        ("hermitr", "is not understood.", ["hermit r"]),
        ("3 ??", "may be The Empress, Three of Wands", ["empress", "3w"]),
        ("hermit ??", "may be The Hermit or The Hermit reversed", ["hermit", "hermit r"]),
        ("tower r?", "may be The Tower or The Tower reversed", ["tower", "tower r"]),
        ("tower ?", "may be The Tower or The Tower reversed", ["tower", "tower r"]),
        ("hermit t", "is not understood.", ["hermit", "hermit r"]),
        ("kin of wands", "may be Knight of Wands or King of Wands", ["knw", "kw"]),
        ("knig of wands", "may be Knight of Wands or King of Wands", ["knw", "kw"]),
        ("whe star", "is not understood.", []),
        ("kinght of wands", "is not understood.", []),
        ("wofds", "is not understood.", []),
    ],
)
def test_what_could_be_two_cards_is_asked_about_as_one_entry(
    text: str, said: str, first: list[str]
) -> None:
    line = read(f"justice, {text}, lovers")
    (asked,) = [part for part in line.parts if part.problem]
    assert (asked.text, asked.card) == (text, None)
    assert said in asked.problem
    assert [choice.text for choice in asked.choices][: len(first)] == first
    assert [part.place for part in line.parts] == [1, 2, 3]


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("3, 5, 7 of wands", ["3", "5"]),
        ("3 & 5w", ["3"]),
        ("3, of wands", ["3", "of wands"]),
        ("wands 3, 5", ["5"]),
        ("3w, 5c, all reversed", ["3w", "5c, all reversed"]),
        ("reversed: 3w, 5c", ["reversed: 3w", "5c"]),
        ("tower and star reversed", ["tower"]),
        ("1, 2, 3", []),
        ("5, 3w", []),
    ],
)
def test_what_another_entry_casts_doubt_on_is_asked_about(text: str, asked: list[str]) -> None:
    assert [part.text for part in read(text).parts if part.problem] == asked


@pytest.mark.parametrize(
    ("text", "cards"),
    [
        ("judgemnt, heirophant r", ["major-20", "major-05 r"]),
        ("3 of pentacels hermitt qc", ["pentacles-03", "major-09", "cups-13"]),
        ("2: the wrold, wheel of fourtune", ["major-10", "major-21"]),
        ("knigth of wands, eigth of sowrds rev", ["wands-12", "swords-08 r"]),
    ],
)
def test_a_slip_that_can_be_no_other_word_is_read(text: str, cards: list[str]) -> None:
    assert laid(text) == cards
    assert not read(text).problems


def test_a_slip_is_read_only_as_a_word_of_the_deck_in_use() -> None:
    french = next(deck for deck in TRADITIONS if "Reine" in deck.ranks)
    assert read("3 wnads", french).problems
    own = replace(STANDARD, extras=(("extra-01", "Hermitt"),))
    assert laid("hermitt, hermit", own) == ["extra-01", "major-09"]
    near = replace(STANDARD, extras=(("extra-01", "Hermits"),))
    assert read("hermitt", near).problems


@pytest.mark.parametrize("deck", TRADITIONS, ids=lambda deck: deck.name)
def test_another_decks_trump_is_never_parted_into_rank_and_suit(deck: DeckTitles) -> None:
    assert laid("pope, papess, juggler", deck) == ["major-05", "major-02", "major-01"]
    assert laid("magus", deck) == ["major-01"]
    assert read("kinc, pac", deck).problems


def test_a_card_given_twice_keeps_later_ones_where_they_are() -> None:
    found = {place: part.text for place, part in read("3w, 5c, 3w, qc").laid.items()}
    assert found == {1: "3w", 2: "5c", 4: "qc"}


def test_a_typed_place_holds_and_others_fill_the_lowest_free() -> None:
    line = read("5: star, qc, 4: xvii r, knw")
    assert {place: part.text for place, part in line.laid.items()} == {
        5: "5: star",
        1: "qc",
        2: "knw",
    }
    assert line.problems == (
        "The Star is in this line twice; a deck has it once, so change one of the two.",
    )


def test_numbers_follow_the_deck() -> None:
    older = replace(STANDARD, eleven_is="strength")
    assert laid("8, xi") == ["major-08", "major-11"]
    assert laid("8, xi", older) == ["major-11", "major-08"]


def test_parts_say_where_they_stand_in_the_line() -> None:
    text = "3w,  4 : hermyt r ;(the moon)"
    parts = read(text).parts
    assert [text[part.start : part.end] for part in parts] == [part.text for part in parts]
    assert [part.text for part in parts] == ["3w", "4 : hermyt r", "the moon"]


def test_what_is_not_understood_keeps_its_place() -> None:
    line = read("3w, hermyt, qc")
    assert [part.place for part in line.parts] == [1, 2, 3]
    assert sorted(line.laid) == [1, 3]


PROBLEMS = [
    ("hermyt", "“hermyt” is not understood.", ["hermit"]),
    ("4: hermyt r", "“hermyt r” is not understood.", ["4: hermit r"]),
    ("quen of cups", "“quen of cups” is not understood.", ["qc"]),
    ("3 of wamds", "“3 of wamds” is not understood.", ["3w"]),
    ("3 wamds", "“3 wamds” is not understood.", ["3w"]),
    ("xviiii1", "“xviiii1” is not understood.", ["sun"]),
    ("emp", "“emp” may be The Empress or The Emperor; write a little more.", ["empress"]),
    ("queen", "“queen” needs a suit after it, as in “qc”.", ["qw", "qc", "qs", "qp"]),
    ("kn r", "“kn r” needs a suit after it, as in “knc”.", ["knw r", "knc r", "kns r", "knp r"]),
    ("3x", "“3x” is not understood.", ["3w", "3c", "3s", "3p"]),
    ("12w", "“12w” is not understood.", ["knw"]),
    ("cups", "“cups” is a suit; write a number or a court card before it.", []),
    ("22", "“22” is no card; the Majors run from 0 to 21.", []),
    ("r", "“r” turns the card before it, and there is none to turn.", []),
    ("0: star", "Places are numbered from 1; there is no place 0.", []),
    ("4:", "Place 4 has no card after it; write one, as in “4: 3w”.", []),
    ("?!", "“?!” is not understood.", []),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence", "first"), PROBLEMS)
def test_one_plain_sentence_and_what_may_be_meant(
    text: str, sentence: str, first: list[str]
) -> None:
    (part,) = read(text).parts
    assert part.problem == sentence
    offered = [choice.text for choice in part.choices]
    assert offered[: len(first)] == first
    assert bool(offered) == bool(first)


def test_only_the_word_that_is_wrong_is_marked_among_spaces() -> None:
    parts = read("3w hermyt qc star").parts
    assert [(part.text, bool(part.problem)) for part in parts] == [
        ("3w", False),
        ("hermyt", True),
        ("qc", False),
        ("star", False),
    ]


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("3w hermit? qc star", ["hermit?"]),
        ("3w hermit r? qc", ["hermit r?"]),
        ("3w qc star ?", ["star ?"]),
        ("? 3w qc", ["3w qc"]),
    ],
)
def test_a_question_mark_asks_about_the_card_before_it(text: str, asked: list[str]) -> None:
    assert [part.text for part in read(text).parts if part.problem] == asked


def test_a_word_that_is_a_slip_for_another_rank_is_asked_about() -> None:
    assert read("dix of wands").problems
    thoth = next(deck for deck in TRADITIONS if "Princess" in deck.ranks)
    assert read("princes of cups", thoth).problems
    assert laid("princess of cups, prince of cups", thoth) == ["cups-11", "cups-12"]


def test_a_card_laid_twice_is_marked_where_it_comes_again() -> None:
    first, second = read("hermit, ix r").parts
    assert first.problem == ""
    assert second.card == first.card
    assert second.place is None
    assert second.problem.startswith("The Hermit is in this line twice")


def test_a_place_given_twice_is_marked_where_it_comes_again() -> None:
    line = read("4: star, 4: moon, sun, 1: qc")
    assert line.problems == (
        "Place 4 already holds The Star; give this card another place.",
        "Place 1 already holds The Sun; give this card another place.",
    )
    assert read("4: starr, 4: moon").problems[1].startswith("Place 4 is already taken")


@pytest.mark.parametrize(
    ("text", "size", "spread", "sentence"),
    [
        ("3w 2c star sun moon r 1p", 5, "Five-card cross",
         "A five-card cross takes five cards; this line has six."),
        ("star", 10, "Celtic Cross", "A Celtic Cross takes ten cards; this line has one."),
        ("", 7, "Horseshoe", "A horseshoe takes seven cards; this line has none."),
        ("star", 3, "Three cards", "This spread takes three cards; this line has one."),
        ("star moon", 1, "One card", "This spread takes one card; this line has two."),
        ("star", 13, "Open ring", "An open ring takes 13 cards; this line has one."),
        ("star", 2, "", "This spread takes two cards; this line has one."),
        ("3w, 7: star, qc", 3, "", "This spread has places 1 to 3; there is no place 7."),
        ("3w, hermit r, zzz", 3, "Three cards", ""),
    ],
)  # fmt: skip
def test_whether_a_line_fits_its_spread(text: str, size: int, spread: str, sentence: str) -> None:
    assert fit(read(text), size, spread) == sentence


def test_the_shortest_is_what_one_would_jot() -> None:
    keys = ["major-17", "major-12", "major-10", "wands-03", "cups-01", "cups-12", "swords-10"]
    jotted = [shortest(STANDARD.card(key), False) for key in keys]
    assert jotted == ["star", "hanged", "wheel", "3w", "ac", "knc", "10s"]
    assert shortest(STANDARD.card("major-09"), True) == "hermit r"


def test_a_line_far_too_long_says_so_and_is_not_read_to_its_end() -> None:
    line = read("zyx " * 1_000_000)
    assert (
        line.parts[-1].problem == "This line is too long; write one card a place, parted by commas."
    )
    assert line.parts[-1].start == LONGEST
    assert isinstance(line, CardLine)


def test_a_spread_without_a_name_is_this_one():
    assert fit(read("3w"), 3) == "This spread takes three cards; this line has one."
    assert fit(read("3w, qc, 4: star"), 3) == "This spread has places 1 to 3; there is no place 4."
