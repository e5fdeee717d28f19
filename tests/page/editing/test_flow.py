"""Paragraphs brought onto one line; nothing reads differently for it."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing.flow import flowing
from binder.page.markup.markdown import to_html
from binder.resources import samples


def read(text):
    """What is shown of a leaf, with every gap outside code the same."""
    parts = re.split(r"(<pre>.*?</pre>)", to_html(text), flags=re.DOTALL)
    return [part if part.startswith("<pre>") else " ".join(part.split()) for part in parts]


@pytest.mark.parametrize(
    ("broken", "whole"),
    [
        ("One line\nand its end.\n\nAnother.", "One line and its end.\n\nAnother."),
        ("- an item\n  that goes on\n- next", "- an item that goes on\n- next"),
        ("1. one\n   two\n   three", "1. one two three"),
        ("> said\n> and said", "> said and said"),
        ("[^1]: a note\n    that goes on", "[^1]: a note that goes on"),
        ("a *soft\nstress* here", "a *soft stress* here"),
    ],
)
def test_paragraphs_flow(broken, whole):
    assert flowing(broken) == whole


@pytest.mark.parametrize(
    "text",
    [
        "verse  \nand verse",
        "# Head\nwords",
        "| a | b |\n| - | - |\n| c | d |",
        "a | b\n- | -\nc | d",
        "```\ncode\ncode\n```",
        "words\n\n    code\n    code",
        "words\n- item",
        "Title\n=====",
        "Title\n-----",
        "> said\n\nwords",
        "> said\nlazily",
        "[a]: https://example.org\n[b]: https://example.org",
        "<b>a</b>\nb",
        "",
        "\n\n",
        "one",
    ],
)
def test_lines_that_mean_something_stay(text):
    assert flowing(text) == text


@pytest.mark.parametrize("path", sorted(samples().glob("*/*/*.md")), ids=lambda path: path.stem)
def test_every_sample_leaf_reads_the_same(path):
    text = path.read_text(encoding="utf-8").split("+++\n", 2)[-1]
    assert read(flowing(text)) == read(text)


LINE = st.sampled_from(
    ["a b", "b *c", "c* d", "- x", "  y", "1. z", "   w", "> q", "> > r", "# h", "", "", "    deep",
     "|a|b|", "|-|-|", "```", "~~~", "[^1]: n", "v  ", "===", "---", "[x]: y", "`p", "q`", "2. t",
     "+ [ ] u", "s\\", "<i>k</i>", "\tt", "1986. year", "-no", "**b", "b**"]
)  # fmt: skip


@given(st.lists(LINE, max_size=8))
def test_any_leaf_reads_the_same(lines):
    text = "\n".join(lines)
    assert read(flowing(text)) == read(text)


@given(st.text(max_size=60))
def test_what_flows_already_stays(text):
    assert flowing(flowing(text)) == flowing(text)
