"""Lines as tired people write them: none is silently another card, few are asked in vain."""

from collections import Counter

from tests.cards.tired_lines import NEEDLESS, RIGHT, WRONG, tired_lines

MOST_NEEDLESS = 0.01
"""The share of lines that may be asked about though a careful reader would not; three of 370 are:
a short word with a slip in it, near too many others, and a sentence that is no card.
"""


def test_no_line_is_silently_read_as_another_card() -> None:
    assert [str(line) for line in tired_lines() if line.verdict() == WRONG] == []


def test_few_lines_are_asked_about_in_vain() -> None:
    lines = list(tired_lines())
    count = Counter(line.verdict() for line in lines)
    read = [line for line in lines if line.is_read()]
    right = sum(line.verdict() != WRONG for line in read)
    print(
        f"\n{len(lines)} lines: {count[RIGHT]} right, {count[NEEDLESS]} asked about in vain, "
        f"{count[WRONG]} silently wrong; of {len(read)} read without a question {right} are right, "
        f"precision {right / len(read):.3f}"
    )
    vain = [str(line) for line in lines if line.verdict() == NEEDLESS]
    assert len(vain) <= MOST_NEEDLESS * len(lines), vain


def test_an_entry_asked_about_keeps_its_place() -> None:
    for line in tired_lines():
        places = [place for place in line.places() if place is not None]
        assert len(places) == len(set(places)), line
