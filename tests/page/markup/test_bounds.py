"""Long and tangled leaves: set, or given up and shown as they were typed; never a word lost.

How long that takes at most is measured by `bench/bench_bounds.py`.
"""

import re
from html import unescape

import pytest

from binder.page.markup import watch
from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import LONGEST, TOO_LONG, TOO_TANGLED, plain, to_html
from tests.page.hostile import HOSTILE


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
