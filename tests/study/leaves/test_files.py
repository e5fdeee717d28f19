"""Files kept in a binder, as a leaf's Markdown names them."""

import pytest

from binder.study.leaves import files


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (
            "![The map](file:abc) and [the sheet](file:d-1).",
            [("abc", "The map"), ("d-1", "the sheet")],
        ),
        ("![one](file:abc)\n\n[two](file:abc)", [("abc", "one")]),
        ('![a [b] c](file:abc "said")', [("abc", "a [b] c")]),
        ("[no](https://example.org) file:abc (file:abc)", []),
        ("", []),
    ],
)
def test_files_a_leaf_names(text, found):
    assert files.linked(text) == found


@pytest.mark.parametrize(
    ("name", "picture", "text"),
    [
        ("The map.png", True, "![The map](file:abc)"),
        ("talk.pdf", False, "[talk](file:abc)"),
        ("a [draft] b.pdf", False, "[a (draft) b](file:abc)"),
    ],
)
def test_the_words_that_show_a_file(name, picture, text):
    """Brackets in a name would end the link's own."""
    assert files.markdown_for("abc", name, picture=picture) == text
    assert files.linked(text) == [("abc", text.partition("[")[2].partition("]")[0])]


def test_a_leaf_without_its_files():
    text = "Before.\n\n![The map](file:abc)\n\nAfter, see [p. 3](source:lisle#p3).\n"
    assert files.without_links(text) == "Before.\n\nAfter, see [p. 3](source:lisle#p3)."
