"""Keywords, as the student writes them on a card leaf."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.study.cards.keywords import keywords


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", {}),
        ("No such heading here, only words.", {}),
        ("Keywords: hope, clear sky; rest.", {"upright": ["hope", "clear sky", "rest"]}),
        ("**Keywords reversed:** doubt, drought", {"reversed": ["doubt", "drought"]}),
        ("## Keywords\n\n- hope\n- *rest*\n\n## Seen\n\n- a jug", {"upright": ["hope", "rest"]}),
        ("# Keywords (reversed)\nleaving, late\n", {"reversed": ["leaving", "late"]}),
        ("- Keywords upright: ho\nKeywords reversed: do", {"upright": ["ho"], "reversed": ["do"]}),
        ("Keywords: hope\n\nKeywords: hope, rest", {"upright": ["hope", "rest"]}),
        ("key words: hope", {"upright": ["hope"]}),
    ],
)  # fmt: skip
def test_where_keywords_stand(text, found):
    assert keywords(text) == found


@given(st.text(max_size=200))
def test_any_text_has_some_or_none(text):
    for way, words in keywords(text).items():
        assert way in ("upright", "reversed")
        assert words
        assert all(word.strip() for word in words)


def test_fields_come_before_what_stands_in_the_text():
    fields = {
        "keywords": "- hope\n- **rest**, sky",
        "keywords reversed": "drought",
        "questions": "?",
    }
    assert keywords("Keywords: water, hope", fields) == {
        "upright": ["hope", "rest", "sky", "water"],
        "reversed": ["drought"],
    }
