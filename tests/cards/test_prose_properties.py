"""Whatever the text, the places found are sane."""

from hypothesis import given
from hypothesis import strategies as st

from binder.cards.facts import card
from binder.cards.prose import Lexicon, find
from binder.cards.titles import STANDARD, TRADITIONS

ALL = Lexicon(TRADITIONS, chosen=frozenset({"the star", "i"}), banned=frozenset({"moon"}))
WORDS = (
    "the The Star star sun Sun XVII I V wands Wands 3w 10_s qc kn_of_cups three_of Three_of r"
    " reversed card Death death of and Street in_place_4 https:// @ İ ß ’ 's ` ``` [ ]( ) < > ** _"
    " Temperence Knigt Wnads as As 0 drew Towers two always_get"
)
MARKS = (" ", ", ", ". ", "\n", "\n\n", "- ", "* ", ":", ";", "—", "|", "1. ", "> ", "# ")
ODD = ("\u2060", "\ufffc", "\t", "\r\n", "\x00", "\u0301")
PIECES = st.sampled_from([*(each.replace("_", " ") for each in WORDS.split()), *MARKS, *ODD])
TEXTS = st.one_of(st.text(), st.lists(PIECES, max_size=60).map("".join))


@given(TEXTS)
def test_mentions_are_ordered_apart_and_inside_the_text(text):
    last = 0
    for each in find(text, ALL):
        assert last <= each.start < each.end <= len(text)
        assert card(each.key).key == each.key
        last = each.end


@given(TEXTS)
def test_the_words_found_are_a_name_of_that_card(text):
    titles = STANDARD.names()
    for each in find(text, Lexicon()):
        surface = " ".join(text[each.start : each.end].replace("’", "'").lower().split())
        if surface in titles:
            assert titles[surface] == each.key


@given(TEXTS)
def test_what_is_banned_stays_unlinked_and_nothing_new_appears(text):
    banned = Lexicon(banned=frozenset({"star", "three of wands", "death"}))
    for each in find(text, banned):
        surface = " ".join(text[each.start : each.end].lower().split())
        assert surface.removeprefix("the ") not in banned.banned
