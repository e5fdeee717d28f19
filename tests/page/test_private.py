"""Passages marked private are left out whole, and nothing else is."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.markdown import to_html
from binder.page.private import is_private, without_private


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("One.\n\nPrivate: two\nand three.\n\nFour.", "One.\n\nFour."),
        ("One.\nPrivate: two\nthree\n\nFour.", "One.\n\nFour."),
        ("One.\n\n> Private: two\n> three\nfour\n\nFive.", "One.\n\nFive."),
        ("> Private: two\n>\n> three\n\n> four\n\nFive.", "Five."),
        ("> One.\n>\n> Private: two\n> three\n\nFour.", "> One.\n>\n\nFour."),
        ("- One\n- Private: two\n  more\n\n  and more\n  - deep\n- Five", "- One\n- Five"),
        ("1. One\n2. **Private:** two\nlazy\n3. Four", "1. One\n3. Four"),
        ("- [ ] Private: two\n- [ ] three", "- [ ] three"),
        ("- One\n  > Private: two\n\n- Three", "- One\n\n- Three"),
        ("One.\n\n## Private\n\ntwo\n\n### three\n\nfour\n\n## Five\n\nsix",
         "One.\n\n## Five\n\nsix"),
        ("One.\n\n## Private: of M.\n\ntwo\n\n## Three", "One.\n\n## Three"),
        ("One.\n\nPrivate\n-------\ntwo\n\n# Three", "One.\n\n# Three"),
        ("One.\n\nPrivate:\n\n- two\n- three\n\nfour\n\n#### Five", "One.\n\n#### Five"),
        ("Private: two\n```\nthree\n\nfour\n```\nfive\n\nSix.", "Six."),
        ("One[^a].\n\n[^a]: Private: two\n    three\n\nFour.", "One[^a].\n\nFour."),
        ("Private: two[^a] [b].\n\nThree.\n\n[^a]: four\n\n    five\n\n[b]: http://six.example",
         "Three."),
        ("Private: two[^a].\n\nThree[^a].\n\n[^a]: four", "Three[^a].\n\n[^a]: four"),
        ("| A | B |\n|---|---|\n| Private: two | three |\n| Four | five |",
         "| A | B |\n|---|---|\n| Four | five |"),
        ("*Private*: two.\n\nThree.", "Three."),
        ("Private\u00a0: two.\n\nThree.", "Three."),
        ("PRIVATE : two.\n\nThree.", "Three."),
        ("Private: all of it.", ""),
    ],
)  # fmt: skip
def test_what_is_left(text, left):
    assert without_private(text).strip() == left


@pytest.mark.parametrize(
    "text",
    [
        "She keeps it private: nobody knows.\n\n\nAnd so on.",
        "A privateer: a ship.\n",
        "```\nPrivate: a line of code\n```",
        "## Private rooms\n\nof the inn",
        "No mark here.\r\nAt all.",
    ],
)
def test_other_words_stay_as_they_are(text):
    assert without_private(text) == text


def test_one_line():
    assert is_private("Private: what I owe")
    assert is_private("**private:** x")
    assert not is_private("Privately: no")


SECRETS = (
    "Private: {0}\nand {0}", "> Private: {0}\n> {0}\n>\n> {0}", "> **Private:** {0}\n{0}",
    "- Private: {0}\n  {0}\n\n  {0}", "1. private: {0}\n    - {0}",
    "Private: {0}\n```\n{0}\n\n{0}\n```", "*Private*: {0} <b>{0}</b>",
    "Private: see {0} [^n{1}]\n\n[^n{1}]: {0}\n\n    {0}",
    "Private: ![{0}](file:{0}) [{0}](leaf:{0})", "## Private: {0}\n\n{0}\n\n## Open",
    "## Private\n\n{0}\n\n> {0}\n\n- {0}\n\n## Open",
    "Private:\n\n{0}\n\n- {0}\n\n# Open",
)  # fmt: skip
OPEN = ("Open {0}.", "## Open {0}", "- Open {0}\n- Open {0}", "1. Open {0}", "**Open** {0}",
        "```\nopen {0}\n\nPrivate: open {0}\n```", "| A | B |\n|---|---|\n| Open {0} | b |",
        "Open {0}[^o{0}]\n\n[^o{0}]: Open {0}")  # fmt: skip


@given(st.lists(st.tuples(st.booleans(), st.integers(0, 99)), min_size=1, max_size=8))
def test_nothing_private_is_ever_shown_and_nothing_else_is_lost(choices):
    blocks, kept = [], []
    for number, (secret, choice) in enumerate(choices):
        forms = SECRETS if secret else OPEN
        word = f"zz{'secret' if secret else 'open'}{number}zz"
        blocks.append(forms[choice % len(forms)].format(word, number))
        if not secret:
            kept.append(word)
    left = without_private("\n\n".join(blocks))
    assert "secret" not in left
    html = to_html(left)
    assert [word for word in kept if word not in html] == []
    assert without_private(left) == left
