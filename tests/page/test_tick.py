"""Ticking a box changes one character and no other."""

import re

from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.markdown import tick, to_html

LINES = st.sampled_from(
    [
        *("- [ ] one", "* [x] two", "+ [X] three", "1. [ ] four", "    - [x] five", "> - [ ] six"),
        *(
            "- [ ]",
            "- [y] no",
            "[ ] no",
            "- [ ]no",
            "words",
            "",
            "```",
            "~~~",
            "    ```",
            "\t- [ ] tab",
        ),
        *(
            "- a",
            "  - [ ] deep",
            "# head",
            "| a | b |",
            "|---|---|",
            "<div>",
            "- \x02 [ ] odd",
            "- ```",
        ),
    ]
)
ENDS = st.sampled_from(["\n", "\r\n", "\r"])
LEAVES = st.lists(st.tuples(LINES, ENDS), max_size=14).map(
    lambda lines: "".join(line + end for line, end in lines)
)


def drawn(text: str) -> dict[int, str]:
    """The boxes of the read leaf by their number."""
    found = re.findall(r'<a href="tick:(\d+)">(.)</a>', to_html(text))
    return {int(number): glyph for number, glyph in found}


@given(LEAVES)
def test_each_box_drawn_turns_itself_over_and_nothing_else(text: str) -> None:
    boxes = drawn(text)
    for number, glyph in boxes.items():
        ticked = tick(text, number)
        changed = [at for at, (a, b) in enumerate(zip(text, ticked, strict=True)) if a != b]
        assert len(changed) == 1
        assert ticked[changed[0]] == ("x" if glyph == "□" else " ")
        assert drawn(ticked) == boxes | {number: "■" if glyph == "□" else "□"}


@given(LEAVES, st.integers(0, 20))
def test_ticking_twice_gives_the_leaf_back(text: str, number: int) -> None:
    assert tick(tick(text, number), number) == text.replace("[X]", "[x]") or (
        tick(tick(text, number), number).lower() == text.lower()
    )


def test_a_number_that_no_box_has_changes_nothing() -> None:
    assert tick("- [ ] one", 1) == "- [ ] one"
    assert tick("", 0) == ""


def test_line_ends_stay_as_they_were() -> None:
    assert tick("- [ ] a\r\n- [ ] b\r- [x] c\n", 2) == "- [ ] a\r\n- [ ] b\r- [ ] c\n"
