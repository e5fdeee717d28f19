"""Photographs matched to cards by the names of their files."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import CARDS
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles
from binder.study.decks.photo_names import BY_ORDER, MANY, NO_CARD, matched, still_bare

SALTINGS = DeckTitles.from_dict(
    {"eleven_is": "strength", "suits": ["Staves", "Cups", "Swords", "Coins"],
     "extras": {"extra-01": "The Tide"}}
)  # fmt: skip


def keys(files, titles=STANDARD):
    return {match.file: match.key for match in matched(files, titles)}


@pytest.mark.parametrize(
    ("file", "key"),
    [
        ("The Star.jpg", "major-17"),
        ("17 the star.JPG", "major-17"),
        ("TheFool.jpeg", "major-00"),
        ("02_Magician.jpg", "major-01"),
        ("XVIII.png", "major-18"),
        ("wands_03.jpg", "wands-03"),
        ("major-16.png", "major-16"),
        ("Wands 07.png", "wands-07"),
        ("3c.webp", "cups-03"),
        ("three-of-swords.png", "swords-03"),
        ("kn cups.jpg", "cups-12"),
        ("45 nine of cups.jpg", "cups-09"),
        ("queen_of_pentacles (1).jpg", "pentacles-13"),
        ("AceOfCups2.png", "cups-01"),
        ("scan of the hermit.tif", "major-09"),
        ("Le Soleil.png", "major-19"),
        ("8.jpg", "major-08"),
        ("café.jpg", ""),
        ("back.jpg", ""),
        (".jpg", ""),
    ],
)
def test_a_card_is_told_from_a_files_name(file, key):
    assert keys([file]) == {file: key}


def test_the_decks_own_titles_and_numbers_count():
    extra = ["extra-01.jpg", "extra_01.png", "Extra 01.png"]
    assert [keys([file], SALTINGS)[file] for file in extra] == ["extra-01"] * 3
    found = keys(["coins-3.jpg", "The Tide.jpg", "11.jpg", "five of staves.jpg"], SALTINGS)
    assert found == {
        "coins-3.jpg": "pentacles-03", "The Tide.jpg": "extra-01", "11.jpg": "major-08",
        "five of staves.jpg": "wands-05",
    }  # fmt: skip


@pytest.mark.parametrize("deck", [*TRADITIONS, SALTINGS], ids=lambda deck: deck.name)
def test_every_title_of_every_deck_as_a_file_name(deck):
    files = {f"{deck.title(key)}.jpg": key for key in deck.keys}
    assert keys(list(files), deck) == files
    assert all(match.sure for match in matched(list(files), deck))


@pytest.mark.parametrize("deck", [STANDARD, SALTINGS], ids=["standard", "saltings"])
def test_every_key_as_a_file_name(deck):
    files = {f"{key}.png": key for key in deck.keys}
    assert keys(list(files), deck) == files


def test_a_row_of_numbers_is_the_deck_in_its_order():
    files = [f"IMG_{number}.jpg" for number in range(1041, 1041 + 78)]
    found = matched(files, STANDARD)
    assert [match.key for match in found] == [card.key for card in CARDS]
    assert not any(match.sure for match in found)
    assert {match.note for match in found} == {BY_ORDER}


def test_twenty_two_numbers_are_the_majors_as_the_deck_numbers_them():
    found = matched([f"scan{number}.jpg" for number in range(1, 23)], SALTINGS)
    assert [match.key for match in found][7:12] == [
        "major-07", "major-11", "major-09", "major-10", "major-08",
    ]  # fmt: skip


def test_numbers_with_gaps_count_from_the_first():
    files = [f"{number:02}.jpg" for number in range(1, 79) if number not in (5, 40)]
    found = keys(files)
    assert (found["01.jpg"], found["78.jpg"]) == ("major-00", "pentacles-14")
    found = keys([f"{number}.jpg" for number in range(0, 78, 3)])
    assert (found["0.jpg"], found["24.jpg"]) == ("major-00", "wands-03")
    assert keys(["30.jpg", "99.jpg"])["99.jpg"] == ""


def test_one_picture_a_card_the_titled_one_first():
    found = {
        match.file: match for match in matched(["8.jpg", "strength.png", "back.png"], STANDARD)
    }
    assert found["strength.png"].sure
    assert (found["8.jpg"].key, found["8.jpg"].note) == (
        "", "there is another picture of Strength",
    )  # fmt: skip
    assert found["back.png"].note == NO_CARD


def test_what_could_be_two_cards_is_left_to_the_owner():
    (match,) = matched(["high priest.jpg"], STANDARD)
    assert (match.key, match.note) == ("", MANY)


def test_cards_without_a_picture_are_named():
    chosen = {f"{key}.jpg": key for key in STANDARD.keys if key not in ("major-17", "cups-02")}
    assert still_bare(chosen, STANDARD) == ["The Star", "Two of Cups"]


@given(st.lists(st.text(max_size=20).map(lambda name: f"{name}.jpg"), max_size=12, unique=True))
def test_any_names_at_all_give_each_card_once(files):
    found = matched(files, STANDARD)
    assert sorted(match.file for match in found) == sorted(files)
    given_keys = [match.key for match in found if match.key]
    assert len(given_keys) == len(set(given_keys))
    assert set(given_keys) <= set(STANDARD.keys)
