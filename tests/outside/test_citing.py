"""Notes and bibliography against published examples.

The Chicago Manual of Style, 18th edition (2024), as its Citation Quick Guide gives them for a book
(Charles Yu, *Interior Chinatown*): note, bibliography, author and date. From memory.
"""

import pytest

from tests.paper.reading_back import bare
from tests.paper.test_citations import last_page

YU = {
    "type": "book", "title": "Interior Chinatown", "publisher": "Pantheon Books",
    "author": [{"family": "Yu", "given": "Charles"}], "issued": {"date-parts": [[2020]]},
}  # fmt: skip


@pytest.mark.parametrize(
    ("style", "said"),
    [
        ("notes", "Charles Yu, Interior Chinatown (Pantheon Books, 2020), 45."),
        ("notes", "Yu, Charles. Interior Chinatown. Pantheon Books, 2020."),
        ("author-date", "(Yu 2020, 45)"),
        ("author-date", "Yu, Charles. 2020. Interior Chinatown. Pantheon Books."),
    ],
)
def test_a_book_is_cited_as_the_manual_shows(style, said):
    assert bare(said) in last_page("See [him](source:yu#45).", {"yu": YU}, style)
