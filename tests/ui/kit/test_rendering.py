"""What needs no Markdown is set without it, and looks the same."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.markdown import to_html
from binder.study.cards.links import Linker
from ui.kit.prose.rendering import Rendered, is_plain


@pytest.mark.parametrize(
    "text", ["hope", "A small fish, in a cup.", "Who pours? The Moon", "l’Étoile"]
)
def test_words_are_plain(text):
    assert is_plain(text)


@pytest.mark.parametrize(
    "text",
    ["", "*hope*", "1. One", "2) Two", "3 of wands", "a\nb", "# Head", "www.example.org", "a@b.org",
     "a  b ", "http://x.org", "- one", "a & b", "a_b", "`code`", "[x](y)", "> said",
     "a\\b", "  indented"],
)  # fmt: skip
def test_marks_are_not(text):
    assert not is_plain(text)


@given(st.text(st.sampled_from("aZ é9,;.!?'()’- _*#\n"), max_size=40))
def test_what_is_plain_is_set_as_markdown_would(text):
    if is_plain(text):
        assert to_html(text) == f"<p>{text}</p>"


def test_card_names_in_it_are_linked_alike(course_shelf):
    linker = Linker(course_shelf)
    text = "Like the Moon, or 3w."
    find = lambda words: linker.find(words, "x")  # noqa: E731
    assert Rendered().html(linker, "x", text) == to_html(text, link_cards=find)
