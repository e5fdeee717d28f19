"""Quotations always say where they are from."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing.edit import applied
from binder.page.editing.quoting import quoted, quotes, unsourced
from binder.page.markup.markdown import to_html
from tests.page.editing.desk import do, sound

FROM = ("source:lisle#p12", "p. 12", "Lisle")
SAID = "> Lisle, [p. 12](source:lisle#p12)"


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("It is ‸a light.", f"> It is a light.\n>\n{SAID}‸"),
        ("One\n\n‸It is\na light.‸\n\nThree", f"One\n\n> It is\n> a light.\n>\n{SAID}‸\n\nThree"),
        ("One\nTw‸o\nThree", f"One\n\n> Two\n>\n{SAID}‸\n\nThree"),
        ("> It is\n> a l‸ight.\n\nI say so.", f"> It is\n> a light.\n>\n{SAID}‸\n\nI say so."),
        ("‸", f"> ‸\n>\n{SAID}"),
    ],
)
def test_lines_become_a_quotation_with_its_source(before, after):
    assert do(quoted, before, *FROM) == after


def test_one_without_an_author_is_a_link_alone():
    assert do(quoted, "It‸", "source:tin", "Leaflet", "") == "> It\n>\n> [Leaflet](source:tin)‸"


def test_quotes_without_a_source_are_found():
    text = f"Mine.\n\n> Theirs,\n> whole.\n\n> Said.\n>\n{SAID}\n\n```\n> code\n```\n\n> "
    assert next(iter(quotes(text))) == "> Theirs,\n> whole."
    assert unsourced(text) == ["> Theirs,\n> whole."]
    assert unsourced("5 > 3, and a [page](source:lisle)") == []


@given(st.text("ab >\n-#", max_size=30), st.data())
def test_any_selection_makes_one_sourced_quotation(text, data):
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, len(text)))
    edit = quoted(text, start, end, *FROM)
    assert sound(text, edit)
    made = applied(text, edit)
    assert made.count(SAID) == 1
    assert "".join(text.split()).replace(">", "") in "".join(
        made.replace(SAID, "").split()
    ).replace(">", "")
    assert '<a href="source:lisle#p12"' in to_html(made)
