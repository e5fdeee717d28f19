"""An address taken apart and put together again."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.address import WEB, WRITTEN, Address, Scheme, leads_to

WORDS = st.text(max_size=30)
KEYS = st.text(st.characters(exclude_characters="#"), min_size=1, max_size=20)
ADDRESSES = st.one_of(
    st.builds(Address, st.sampled_from([s for s in Scheme if s is not Scheme.TICK]), WORDS),
    st.builds(Address, st.just(Scheme.TICK), st.integers(0, 10**6).map(str)),
    st.builds(Address.source, KEYS, WORDS),
)


@given(ADDRESSES)
def test_an_address_comes_back_as_it_was(address):
    assert Address.parse(str(address)) == address


@given(st.one_of(WORDS, st.builds("{}:{}".format, st.sampled_from([*Scheme, "Leaf"]), WORDS)))
def test_what_is_an_address_is_written_again_letter_for_letter(written):
    address = Address.parse(written)
    scheme, _, rest = written.partition(":")
    assert address is None or str(address) == f"{scheme.lower()}:{rest}"


@given(KEYS, WORDS)
def test_a_source_has_a_key_and_a_place(key, place):
    address = Address.source(key, place)
    assert (address.key, address.place) == (key, place)


@pytest.mark.parametrize(
    ("written", "scheme", "key", "place"),
    [
        ("card:major-09", Scheme.CARD, "major-09", ""),
        ("SOURCE:lisle-2019#p40", Scheme.SOURCE, "lisle-2019", "p40"),
        ("source:lisle-2019", Scheme.SOURCE, "lisle-2019", ""),
        ("file:0190#p", Scheme.FILE, "0190#p", ""),
        ("https://example.org/a#b", Scheme.HTTPS, "//example.org/a#b", ""),
        ("tick:3", Scheme.TICK, "3", ""),
    ],
)
def test_addresses_taken_apart(written, scheme, key, place):
    address = Address.parse(written)
    assert (address.scheme, address.key, address.place) == (scheme, key, place)


@pytest.mark.parametrize("words", ["", "card", "#fn:1", "tick:", "tick:x", "tick:²", "ftp:x", ":x"])
def test_other_words_are_no_address(words):
    assert Address.parse(words) is None


def test_a_box_is_told_by_its_number():
    assert Address.parse(Scheme.TICK.to(12)).number == 12


def test_what_an_address_of_one_scheme_leads_to():
    assert leads_to("leaf:abc", Scheme.LEAF) == "abc"
    assert leads_to("source:lisle#p4", Scheme.SOURCE) == "lisle"
    assert leads_to("leaf:abc", Scheme.FACING) == leads_to("abc", Scheme.LEAF) == ""


def test_nobody_writes_what_only_the_program_does():
    own = set(Scheme) - {*WRITTEN, *WEB}
    assert {Scheme.FACING, Scheme.TICK, Scheme.YEAR, Scheme.MARKS, Scheme.DECKS} <= own
    assert {scheme.value for scheme in own}.isdisjoint({"card", "leaf", "source", "file", "https"})
