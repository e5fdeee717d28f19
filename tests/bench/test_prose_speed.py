"""Card names in prose, timed against a bare scan for words over the same text."""

import re
from time import process_time

import pytest

from binder.cards.prose import Lexicon, find
from tests.cards.prose_corpus import leaves

WORDS = re.compile(r"\w+")
LEXICON = Lexicon()
HOSTILE = {
    "articles": "the ",
    "titles": "the Star ",
    "lists": "Star, XVII, 3w, ",
    "sentences": "Death. ",
    "items": "\n- Death",
    "ranks": "3 3 of ",
    "brackets": "[",
    "half links": "[a](",
    "backticks": "`",
    "mixed backticks": "`` ` ```x ",
    "fences": "```\n~~~\n",
    "angles": "<a",
    "blanks": "star" + " " * 70,
    "line ends": "star" + " \n" * 35,
    "stars": "*" * 70 + "Star",
    "quotes": "'" * 70 + "Death",
    "one word": "a",
}


def took(work, times):
    """Least processor seconds of some runs; others on the machine matter little."""
    spent = []
    for _ in range(times):
        before = process_time()
        work()
        spent.append(process_time() - before)
    return min(spent)


def three_thousand_words():
    text = "\n\n".join(leaf.text for leaf in leaves("diary.txt")) * 2
    return text[: [match.end() for match in WORDS.finditer(text)][2999]]


def test_a_long_leaf_costs_a_few_scans_for_words(capsys):
    text = three_thousand_words()
    find(text, LEXICON)
    spent, scan = took(lambda: find(text, LEXICON), 60), took(lambda: WORDS.findall(text), 60)
    with capsys.disabled():
        print(f"\n3,000 words: {spent * 1000:.1f} ms, {spent / scan:.1f} scans for words")
    assert spent < 15 * scan


def test_a_leaf_of_five_megabytes_is_read_at_the_same_pace():
    leaf = three_thousand_words()
    text = leaf * (5_000_000 // len(leaf) + 1)
    assert took(lambda: find(text, LEXICON), 1) < 20 * took(lambda: WORDS.findall(text), 1)


@pytest.mark.parametrize("piece", HOSTILE.values(), ids=HOSTILE.keys())
def test_time_grows_with_the_text_and_no_faster(piece):
    small, large = (piece * (size // len(piece)) for size in (60_000, 480_000))
    spent = took(lambda: find(small, LEXICON), 3)
    assert took(lambda: find(large, LEXICON), 2) < 8 * 2.5 * max(spent, 0.002)
