"""Words said in quotes have one pair of them."""

import pytest

from ui.kit.quoted import quoted


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Ferry booking", "“Ferry booking”"),
        (" “Ferry booking” ", "“Ferry booking”"),
        ('"Ferry"', "“Ferry”"),
        ("What is “enough”?", "“What is “enough”?”"),
        ("”", "“””"),
        ("", "“”"),
    ],
)
def test_one_pair(words, said):
    assert quoted(words) == said
