"""Whatever marks stand around them, the words of a leaf are on the read leaf and in print."""

import json
import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import plain, to_html

MARKS = st.sampled_from(
    [
        *(
            " ",
            "  ",
            "\n",
            "\n\n",
            "    ",
            "\t",
            "- ",
            "1. ",
            "# ",
            "> ",
            "* ",
            "\n> ",
            "\n\n  ",
            "  \n",
        ),
        *(
            "*",
            "**",
            "***",
            "_",
            "__",
            "`",
            "~~",
            "|",
            "|-|-|",
            "---",
            "===",
            "!",
            "[",
            "]",
            "\n```\n",
        ),
        *(
            "- [ ] ",
            "- [x] ",
            "<b>",
            "</b>",
            "<p>",
            "</p>",
            "<div>",
            "</div>",
            "<td>",
            "<",
            "<foo>",
        ),
    ]
)
LANGUAGE = re.compile(r"(?:```|~~~)\w")
"""A word right after the head of some code names its language, and is not shown."""


@given(st.lists(st.lists(MARKS, min_size=1, max_size=3).map("".join), min_size=1, max_size=8))
def test_no_word_is_lost(marks: list[str]) -> None:
    words = [f"w{n}w" for n in range(len(marks))]
    text = "".join(f"{mark}{word} " for mark, word in zip(marks, words, strict=True))
    assume(not LANGUAGE.search(text))
    html = to_html(text)
    printed = json.dumps(blocks(html))
    for word in words:
        assert word in html
        assert word in printed
        assert word in plain(text)


@pytest.mark.parametrize(
    "text", ["*a **b*c", "*a***b****c*", "*a **b `x`*c", "| a |\n|---|\n| b | c |", "a\n\n[^x]: c"]
)
def test_mistyped_marks_and_stray_cells_keep_their_letters(text: str) -> None:
    assert "c" in plain(text)
    assert "c" in json.dumps(blocks(to_html(text)))
