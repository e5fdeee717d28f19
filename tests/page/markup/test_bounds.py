"""Long and tangled leaves: set, or given up and shown as they were typed; never a word lost.

How long that takes at most is measured by `bench/bench_tangled.py`.
"""

import re
from html import unescape

import pytest

from binder.page.markup import watch
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import LONGEST, TOO_LONG, TOO_TANGLED, plain, to_html

HOSTILE = {
    "brackets": "[" * 100_000,
    "closed brackets": "[" * 50_000 + "]" * 50_000,
    "half links": "[a](" * 25_000,
    "pictures": "![" * 50_000,
    "brackets in a link": "[a](" + "(" * 50_000 + ")" * 50_000 + ")",
    "stars": "*" * 100_000,
    "stars and words": "*a " * 30_000,
    "mixed emphasis": "*a _b **c __d " * 8_000,
    "quotes": ">" * 100_000,
    "quotes in steps": "\n".join("> " * depth + "a" for depth in range(300)),
    "lists in steps": "\n".join("    " * depth + "- a" for depth in range(300)),
    "numbers in numbers": "1. " * 30_000,
    "backticks": "".join("`" * n + " " for n in range(1, 400)),
    "fences": "".join("`" * n + "\n" for n in range(3, 400)),
    "less than": "<" * 100_000,
    "half tags": "<a " * 30_000,
    "open tags": "<b>" * 30_000,
    "open tables": "<table><tr><td>" * 5_000,
    "half comments": "-->" + "<!--" * 25_000,
    "cdata": "<![CDATA[" * 10_000,
    "footnotes": "[^" * 50_000,
    "one footnote called often": "[^a] " * 10_000 + "\n\n[^a]: x",
    "notes calling each other": "[^a]\n\n[^a]: [^b]\n[^b]: [^a]",
    "a wide table": "|".join("a" * 3_000) + "\n" + "|".join("-" * 3_000) + "\n" + "|\n" * 9_000,
    "headings": "# a\n" * 25_000,
    "rules": "***\n" * 25_000,
    "backslashes": "\\" * 100_000,
    "struck": "~~a " * 25_000,
    "half entities": "&#" * 50_000,
    "definitions": "[a]: b\n" * 14_000,
}


@pytest.fixture
def hurried(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leaves may take a fifth of the time that they have in the program."""
    monkeypatch.setattr(watch, "AT_LEAST", watch.AT_LEAST / 5)
    monkeypatch.setattr(watch, "A_CHARACTER", watch.A_CHARACTER / 5)


@pytest.mark.usefixtures("hurried")
@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_leaf_is_set_or_shown_as_it_was_typed(name: str) -> None:
    html = to_html(HOSTILE[name])
    blocks(html)
    assert len(html) < 100 * len(HOSTILE[name]) + 1_000


@pytest.mark.usefixtures("hurried")
def test_a_tangled_leaf_says_so_and_keeps_every_character() -> None:
    html = to_html(HOSTILE["brackets"])
    assert html.startswith(f"<p><small>{TOO_TANGLED}</small></p>")
    assert html.count("[") == 100_000


def test_a_leaf_of_five_megabytes_comes_as_plain_paragraphs() -> None:
    text = "# One & <two>\n\nthree\nfour\r\n\r\n*five*\n\n" * 150_000
    assert len(text) > 5_000_000 > LONGEST
    html = to_html(text)
    assert html.startswith(f"<p><small>{TOO_LONG}</small></p>\n<p># One &amp; &lt;two&gt;</p>\n")
    words = unescape(re.sub(r"<[^>]*>", " ", html.split("</p>", 1)[1]))
    assert words.split() == text.split()
    assert [block["t"] for block in blocks(html[:2_000])][:3] == ["note", "p", "p"]


def test_the_sentences_carry_no_jargon() -> None:
    for sentence in (TOO_LONG, TOO_TANGLED):
        assert sentence.endswith(".")
        assert "Markdown" not in sentence


def test_plain_words_of_a_leaf_too_long_are_the_leaf() -> None:
    text = "*a* " * (LONGEST // 2)
    assert plain(text) == text.strip()


def test_a_long_honest_leaf_is_set_in_full() -> None:
    text = "\n\n".join(
        f"## Day {n}\n\nThe *Star* lay on the table, **upright**." for n in range(3_500)
    )
    assert len(text) < LONGEST
    html = to_html(text)
    assert html.count("<h2>") == 3_500
