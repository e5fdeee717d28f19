"""Words that no line can hold."""

from hypothesis import given
from hypothesis import strategies as st

from ui.kit.prose.breaking import BREAK, LONGEST, breakable


def test_a_long_word_can_be_broken_and_short_ones_are_left():
    assert breakable(f"<p>short {'x' * 299} words</p>").count(BREAK) == 0
    shown = breakable(f"<p>{'x' * 1000}</p>")
    assert max(map(len, shown.split(BREAK))) <= LONGEST + len("<p></p>")
    assert shown.replace(BREAK, "") == f"<p>{'x' * 1000}</p>"


def test_addresses_and_entities_stay_whole():
    address = f'<a href="https://example.org/{"y" * 900}">a link</a>'
    assert breakable(address) == address
    shown = breakable("&amp;" * 700)
    assert all(part.count("&") == part.count(";") for part in shown.split(BREAK))


@given(st.lists(st.sampled_from(["<p>", "</p>", "&lt;", "x" * 290, "word ", "y" * 700])))
def test_only_breaks_are_added(parts):
    html = "".join(parts)
    assert breakable(html).replace(BREAK, "") == html
