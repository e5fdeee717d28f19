import pytest

from binder.cards.guess import ordered
from binder.cards.shorthand import suggest
from binder.cards.titles import STANDARD, TRADITIONS


def offered(text: str, cursor: int | None = None, taken: tuple[str, ...] = ()) -> list[str]:
    at = len(text) if cursor is None else cursor
    return [each.text for each in suggest(text, at, taken=taken)]


@pytest.mark.parametrize(
    ("text", "texts"),
    [
        ("he", ["hermit"]),
        ("st", ["strength", "star"]),
        ("the m", ["magician", "moon"]),
        ("q", ["qw", "qc", "qs", "qp"]),
        ("3", ["empress", "3w", "3c", "3s", "3p"]),
        ("xvi", ["tower", "star", "moon"]),
        ("priest", ["priestess"]),
        ("cup", ["ac", "2c", "3c", "4c", "5c", "6c"]),
        ("hermut", ["hermit"]),
        ("4: st", ["4: strength", "4: star"]),
        ("st r", ["strength r", "star r"]),
        ("3w hermit q", ["qw", "qc", "qs", "qp"]),
        ("star", []),
        ("3w", []),
        ("", []),
        ("3w, ", []),
        ("4:", []),
        ("zzqqzz", []),
    ],
)
def test_what_a_part_may_become(text: str, texts: list[str]) -> None:
    found = offered(text)
    assert found[: len(texts)] == texts
    assert bool(found) == bool(texts)


def test_only_the_part_at_the_cursor_is_completed() -> None:
    (found,) = suggest("3w, he, qc", 6)
    assert (found.text, found.start, found.end) == ("hermit", 4, 6)
    assert found.card == STANDARD.card("major-09")


def test_cards_already_out_are_not_offered() -> None:
    assert offered("star, st") == ["strength"]
    assert offered("qc, q") == ["qw", "qs", "qp"]
    assert offered("q", taken=("wands-13", "swords-13")) == ["qc", "qp"]


def test_a_deck_is_completed_in_its_own_words() -> None:
    french = next(deck for deck in TRADITIONS if "Reine" in deck.ranks)
    assert [each.text for each in suggest("et", 2, french)] == ["etoile"]


def test_meanings_are_told_in_the_order_of_the_deck_extra_cards_last():
    meant = [("extra-01", False), ("cups-02", True), ("major-01", False), ("wands-03", False)]
    assert [key for key, _ in ordered(meant)] == ["major-01", "wands-03", "cups-02", "extra-01"]
