"""Finding words: any text is a valid query, and what is found is what a plain scan finds."""

import re
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.store.file import create
from binder.store.schema import Leaf
from binder.store.search import OPEN, SHUT, find, match
from binder.study.leaves import drawer, leaves, tabs
from tests.profiles import fewer

TEXTS = {
    "Über die Brücke": "She crossed the bridge at dusk.\nThe café was shut; naïve of me.",
    "The quay": "A line about the ferry.\nThe quay lies behind the glaze shed.\nEnd.",
    "Glaze order": "Cobalt, copper and a pound of dolomite for the kiln.",
    "Kiln log": "Bisque firing on Tuesday; the quay was flooded. Cone six.",
    "Empty": "",
}


@pytest.fixture
def full(binder):
    tab = tabs.tab(binder, "Notes")
    for title, text in TEXTS.items():
        leaves.add_leaf(binder, tab, title, text)
    return binder


def titles(binder, words):
    marked = (hit.title for hit in find(binder, match(words)))
    return {title.replace(OPEN, "").replace(SHUT, "") for title in marked}


def test_diacritics_are_folded_both_ways(full):
    assert titles(full, "uber") == {"Über die Brücke"}
    assert titles(full, "cafe") == {"Über die Brücke"}
    assert titles(full, "quáy") == {"The quay", "Kiln log"}


def test_the_last_word_is_a_beginning_and_the_others_are_whole(full):
    assert titles(full, "firing tue") == {"Kiln log"}
    assert titles(full, "fir tuesday") == set()


def test_a_phrase_in_quotes(full):
    assert titles(full, '"quay lies"') == {"The quay"}
    assert titles(full, '"lies quay"') == set()


def test_a_title_weighs_more_than_the_text(full):
    assert find(full, match("quay"))[0].title == f"The {OPEN}quay{SHUT}"


def test_the_hit_is_shown_in_its_line(full):
    line = find(full, match("glaze shed"))[0].line
    assert line == f"The quay lies behind the {OPEN}glaze{SHUT} {OPEN}shed{SHUT}."


def test_a_leaf_in_the_drawer_is_not_found_until_it_comes_back(full, stood):
    uid = find(full, match("dolomite"))[0].uid
    leaves.set_aside(full, uid)
    assert titles(full, "dolomite") == set()
    (aside,) = drawer.drawer(stood)
    drawer.bring_back(aside)
    assert titles(full, "dolomite") == {"Glaze order"}


def test_rewritten_and_removed_words_are_no_longer_found(full):
    uid = find(full, match("dolomite"))[0].uid
    leaves.write(full, uid, title="Glaze order", text="Only tin now.")
    assert titles(full, "dolomite") == set()
    assert titles(full, "tin") == {"Glaze order"}


@given(st.text(max_size=40))
def test_anything_typed_is_a_query_that_runs(any_binder, typed):
    find(any_binder, match(typed))


@pytest.fixture(scope="module")
def any_binder(tmp_path_factory):
    made = create(tmp_path_factory.mktemp("any") / "b.ringbound", "B", "spineP")
    tabs.add_tab(made, "Notes")
    leaves.add_leaf(made, tabs.tab(made, "Notes"), "A", "some words AND other words")
    yield made
    made.close()


def folded_words(text):
    plain = unicodedata.normalize("NFD", text.casefold())
    return re.findall(r"[a-z0-9]+", "".join(c for c in plain if not unicodedata.combining(c)))


WORDS = st.sampled_from(
    ["quay", "kiln", "ferry", "star", "tower", "glaze", "Über", "café", "naïve", "wand", "wands"]
)


@fewer(3)
@given(
    st.lists(st.lists(WORDS, min_size=1, max_size=8), min_size=1, max_size=12),
    st.lists(WORDS, min_size=1, max_size=2),
)
def test_find_agrees_with_a_scan_of_every_leaf(tmp_path_factory, texts, asked):
    binder = create(tmp_path_factory.mktemp("scan") / "b.ringbound", "B", "spineP")
    tab_uid = tabs.add_tab(binder, "Notes")
    tab = tabs.tab(binder, tab_uid)
    uids = [leaves.add_leaf(binder, tab, f"x{n}", " ".join(t)) for n, t in enumerate(texts)]
    *whole, last = folded_words(" ".join(asked))
    expected = {
        uid
        for uid, text in zip(uids, texts, strict=True)
        if set(whole) <= set(folded_words(" ".join(text)))
        and any(word.startswith(last) for word in folded_words(" ".join(text)))
    }
    assert {hit.uid for hit in find(binder, match(" ".join(asked)), 100)} == expected
    binder.close()


def test_the_index_is_kept_by_triggers_alone(full):
    full.db.execute_sql("UPDATE leaf SET text = 'zanzibar' WHERE title = 'Empty'")
    assert titles(full, "zanzibar") == {"Empty"}
    full.db.execute_sql("DELETE FROM leaf WHERE title = 'Empty'")
    assert titles(full, "zanzibar") == set()
    assert full.all(Leaf.select().where(Leaf.title == "Empty")) == []
